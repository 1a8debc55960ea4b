Feature: Wren
  A first script, drafted from where each part is on the model and what it is for,
  not from what the set-up does: if a check fails, look at the set-up first. It
  says which way; add how far (rises 20° ± 2°). Some things only you can know: a
  line that is marked "you decide" says what the set-up does. Take the mark away
  if that is right, or write what is.

  Scenario: At rest
    Then all surfaces and the nose wheel are at neutral
    And both motors are stopped

  Scenario Outline: Roll stick, rate switch <rate switch>
    Given the rate switch is <rate switch>
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
      | rate switch |
      | low         |
      | high        |

  Scenario Outline: Roll trim, rate switch <rate switch>
    Given the rate switch is <rate switch>
    * with the roll trim full right, the port aileron drops, the starboard aileron rises and the model rolls right
    * with the roll trim full left, the port aileron rises, the starboard aileron drops and the model rolls left

    Examples:
      | rate switch |
      | low         |
      | high        |

  Scenario Outline: Pitch stick, rate switch <rate switch>
    Given the rate switch is <rate switch>
    When the pitch stick is full back
    Then the elevator rises
    And the model pitches up
    Given the pitch stick is centred
    When the pitch stick is full forward
    Then the elevator drops
    And the model pitches down

    Examples:
      | rate switch |
      | low         |
      | high        |

  Scenario Outline: Pitch trim, rate switch <rate switch>
    Given the rate switch is <rate switch>
    * with the pitch trim full back, the elevator rises and the model pitches up
    * with the pitch trim full forward, the elevator drops and the model pitches down

    Examples:
      | rate switch |
      | low         |
      | high        |

  Scenario Outline: Yaw stick, throttle <throttle>, thrust switch <thrust switch>, motor switch <motor switch>
    Given the throttle is at <throttle>
    And the thrust switch is <thrust switch>
    And the motor switch is <motor switch>
    When the yaw stick is full right
    Then the rudder and the nose wheel move right
    And both motors stay stopped
    And the model yaws right
    Given the yaw stick is centred
    When the yaw stick is full left
    Then the rudder and the nose wheel move left
    And both motors stay stopped
    And the model yaws left

    Examples:
      | throttle | thrust switch | motor switch |
      | 0%       | even          | safe         |
      | 50%      | even          | safe         |
      | 100%     | even          | safe         |
      | 0%       | steering      | safe         |
      | 0%       | even          | live         |
      | 50%      | steering      | safe         |
      | 100%     | steering      | safe         |
      | 0%       | steering      | live         |

  Scenario Outline: Yaw stick, motor switch live, throttle <throttle>, thrust switch <thrust switch>
    Given the motor switch is live
    And the throttle is at <throttle>
    And the thrust switch is <thrust switch>
    When the yaw stick is full right
    Then the rudder and the nose wheel move right
    And the model yaws right
    Given the yaw stick is centred
    When the yaw stick is full left
    Then the rudder and the nose wheel move left
    And the model yaws left

    Examples:
      | throttle | thrust switch |
      | 50%      | even          |
      | 100%     | even          |
      | 100%     | steering      |

  Scenario: Yaw stick, throttle 50%, thrust switch steering, motor switch live
    Given the throttle is at 50%
    And the thrust switch is steering
    And the motor switch is live
    When the yaw stick is full right
    Then the rudder and the nose wheel move right
    And the port motor speeds up
    And the starboard motor slows down
    And the model yaws right
    Given the yaw stick is centred
    When the yaw stick is full left
    Then the rudder and the nose wheel move left
    And the port motor slows down
    And the starboard motor speeds up
    And the model yaws left

  Scenario: Yaw trim
    * with the yaw trim full right, the rudder and the nose wheel move right and the model yaws right
    * with the yaw trim full left, the rudder and the nose wheel move left and the model yaws left

  Scenario: Rate switch
    * when the rate switch is high, both ailerons and the elevator stay still
    * with the rate switch high, when the rate switch is low, both ailerons and the elevator stay still

  Scenario Outline: Throttle, thrust switch <thrust switch>
    Given the thrust switch is <thrust switch>
    * when the throttle is at 50%, both motors stay stopped
    * with the throttle at 50%, when the throttle is at 100%, both motors stay stopped
    * with the throttle at 100%, when the throttle is at 0%, both motors stay stopped

    Examples:
      | thrust switch |
      | even          |
      | steering      |

  Scenario Outline: Throttle, motor switch live, thrust switch <thrust switch>
    Given the motor switch is live
    And the thrust switch is <thrust switch>
    * when the throttle is at 50%, both motors speed up
    * with the throttle at 50%, when the throttle is at 100%, both motors speed up
    * with the throttle at 100%, when the throttle is at 0%, both motors slow down

    Examples:
      | thrust switch |
      | even          |
      | steering      |

  Scenario: Thrust switch
    * when the thrust switch is steering, both motors stay stopped
    * with the thrust switch steering, when the thrust switch is even, both motors stay stopped

  Scenario Outline: Motor switch, thrust switch <thrust switch>
    Given the thrust switch is <thrust switch>
    * with the motor switch live, when the motor switch is safe, both motors stay stopped

    Examples:
      | thrust switch |
      | even          |
      | steering      |

  Scenario Outline: Motor switch, throttle <throttle>, thrust switch <thrust switch>
    Given the throttle is at <throttle>
    And the thrust switch is <thrust switch>
    * when the motor switch is live, both motors speed up
    * with the motor switch live, when the motor switch is safe, both motors stop

    Examples:
      | throttle | thrust switch |
      | 50%      | even          |
      | 100%     | even          |
      | 50%      | steering      |
      | 100%     | steering      |

  Scenario: Every control leaves the rest alone
    * with the roll stick full right, the elevator, the rudder and the nose wheel stay still
    * with the roll trim full right, the elevator, the rudder and the nose wheel stay still
    * with the pitch stick full back, both ailerons, the rudder and the nose wheel stay still
    * with the pitch trim full back, both ailerons, the rudder and the nose wheel stay still
    * with the yaw stick full right, both ailerons and the elevator stay still
    * with the yaw trim full right, both ailerons and the elevator stay still
    * when the rate switch is high, the rudder and the nose wheel stay still
    * when the throttle is at 100%, all surfaces and the nose wheel stay still
    * when the thrust switch is steering, all surfaces and the nose wheel stay still
    * when the motor switch is live, all surfaces and the nose wheel stay still

  Scenario: Loss of signal
    Given the roll stick is full right
    And the pitch stick is full back
    And the yaw stick is full right
    And the throttle is at 50%
    And the motor switch is live
    When the signal is lost
    Then both motors stop
    # you decide: And all surfaces and the nose wheel stay still
