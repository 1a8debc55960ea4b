Feature: Wren
  A first script, drafted from where each part is on the model and what it is for,
  not from what the set-up does: if a check fails, look at the set-up first. It
  says which way; add how far (rises 20° ± 2°). Some things only you can know: a
  line that is marked "you decide" says what the set-up does. Take the mark away
  if that is right, or write what is.

  Scenario: At rest
    Then all surfaces are at neutral

  Scenario Outline: Roll stick, brake lever <brake lever>, flight switch <flight switch>, rate switch <rate switch>
    Given the brake lever is at <brake lever>
    And the flight switch is <flight switch>
    And the rate switch is <rate switch>
    When the roll stick is full right
    Then the port aileron drops
    And the starboard aileron rises
    And the model rolls right
    And adverse yaw does not grow
    Given the roll stick is centred
    When the roll stick is full left
    Then the port aileron rises
    And the starboard aileron drops
    And the model rolls left
    And adverse yaw does not grow

    Examples:
      | brake lever | flight switch | rate switch |
      | shut        | cruise        | low         |
      | half        | cruise        | low         |
      | open        | cruise        | low         |
      | shut        | thermal       | low         |
      | shut        | speed         | low         |
      | shut        | cruise        | high        |

  Scenario Outline: Roll trim, brake lever <brake lever>, flight switch <flight switch>, rate switch <rate switch>
    Given the brake lever is at <brake lever>
    And the flight switch is <flight switch>
    And the rate switch is <rate switch>
    * with the roll trim full right, the port aileron drops, the starboard aileron rises and the model rolls right
    * with the roll trim full left, the port aileron rises, the starboard aileron drops and the model rolls left

    Examples:
      | brake lever | flight switch | rate switch |
      | shut        | cruise        | low         |
      | half        | cruise        | low         |
      | open        | cruise        | low         |
      | shut        | thermal       | low         |
      | shut        | speed         | low         |
      | shut        | cruise        | high        |

  Scenario Outline: Pitch stick, rate switch <rate switch>
    Given the rate switch is <rate switch>
    When the pitch stick is full back
    Then both v-tails rise
    And the model pitches up
    Given the pitch stick is centred
    When the pitch stick is full forward
    Then both v-tails drop
    And the model pitches down

    Examples:
      | rate switch |
      | low         |
      | high        |

  Scenario Outline: Pitch trim, rate switch <rate switch>
    Given the rate switch is <rate switch>
    * with the pitch trim full back, both v-tails rise and the model pitches up
    * with the pitch trim full forward, both v-tails drop and the model pitches down

    Examples:
      | rate switch |
      | low         |
      | high        |

  Scenario Outline: Yaw stick, rate switch <rate switch>
    Given the rate switch is <rate switch>
    When the yaw stick is full right
    Then the port v-tail rises
    And the starboard v-tail drops
    And the model yaws right
    Given the yaw stick is centred
    When the yaw stick is full left
    Then the port v-tail drops
    And the starboard v-tail rises
    And the model yaws left

    Examples:
      | rate switch |
      | low         |
      | high        |

  Scenario Outline: Yaw trim, rate switch <rate switch>
    Given the rate switch is <rate switch>
    * with the yaw trim full right, the port v-tail rises, the starboard v-tail drops and the model yaws right
    * with the yaw trim full left, the port v-tail drops, the starboard v-tail rises and the model yaws left

    Examples:
      | rate switch |
      | low         |
      | high        |

  Scenario Outline: Brake lever, flight switch <flight switch>, rate switch <rate switch>
    Given the flight switch is <flight switch>
    And the rate switch is <rate switch>
    * when the brake lever is at half, both ailerons rise and both flaps drop
    * with the brake lever at half, when the brake lever is at open, both ailerons rise and both flaps drop
    * with the brake lever at open, when the brake lever is at shut, both ailerons drop and both flaps rise

    Examples:
      | flight switch | rate switch |
      | cruise        | low         |
      | thermal       | low         |
      | speed         | low         |
      | cruise        | high        |
      | thermal       | high        |
      | speed         | high        |

  Scenario Outline: Flight switch, rate switch <rate switch>
    Given the rate switch is <rate switch>
    * when the flight switch is thermal, both ailerons and both flaps drop
    * with the flight switch thermal, when the flight switch is speed, both ailerons and both flaps rise
    * with the flight switch speed, when the flight switch is cruise, both ailerons and both flaps drop

    Examples:
      | rate switch |
      | low         |
      | high        |

  Scenario Outline: Flight switch, brake lever <brake lever>, rate switch <rate switch>
    Given the brake lever is at <brake lever>
    And the rate switch is <rate switch>
    * when the flight switch is thermal, both ailerons and both flaps stay still
    * with the flight switch thermal, when the flight switch is speed, both ailerons and both flaps stay still
    * with the flight switch speed, when the flight switch is cruise, both ailerons and both flaps stay still

    Examples:
      | brake lever | rate switch |
      | half        | low         |
      | open        | low         |
      | half        | high        |
      | open        | high        |

  Scenario: Rate switch
    * when the rate switch is high, both ailerons and both v-tails stay still
    * with the rate switch high, when the rate switch is low, both ailerons and both v-tails stay still

  Scenario: Every control leaves the rest alone
    * with the roll stick full right, both flaps and both v-tails stay still
    * with the roll trim full right, both flaps and both v-tails stay still
    * with the pitch stick full back, both ailerons and both flaps stay still
    * with the pitch trim full back, both ailerons and both flaps stay still
    * with the yaw stick full right, both ailerons and both flaps stay still
    * with the yaw trim full right, both ailerons and both flaps stay still
    * when the brake lever is at open, both v-tails stay still
    * when the flight switch is speed, both v-tails stay still
    * when the rate switch is high, both flaps stay still

  # Loss of signal: where surfaces should go is for you to say.
  # you decide: * with the roll stick full right, the pitch stick full back and the yaw stick full right, when the signal is lost, all surfaces stay still
