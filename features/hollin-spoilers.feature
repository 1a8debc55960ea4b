Feature: Hollin, before the first throw off the hill
  With nothing but spoilers a wrong one is never met by a right one on the other
  side. So each is asked for alone: it rises on its own side and only there, with
  the brakes shut, half and open.

  Scenario: At rest
    Given the brake lever is shut
    And the rudder switch is free
    Then all surfaces are at neutral

  Rule: A spoiler rises on its own side only

    @wing
    Scenario Outline: Roll to the <way> with the brakes <brakes>
      Given the brakes are <brakes>
      When the roll stick is full <way>
      Then the <low wing> spoiler rises <rise> ± 1°
      And the <high wing> spoiler stays still
      And the <low wing> spoiler is <up> ± 1° up
      And the model rolls <way>
      And the elevator stays still
      And the rudder stays still
      And every channel is within its travel

      Examples:
        | brakes | way   | low wing  | high wing | rise | up  |
        | shut   | right | starboard | port      | 48°  | 48° |
        | shut   | left  | port      | starboard | 48°  | 48° |
        | half   | right | starboard | port      | 31.4° | 55.2° |
        | half   | left  | port      | starboard | 31.4° | 55.2° |
        | open   | right | starboard | port      | 13°  | 62° |
        | open   | left  | port      | starboard | 13°  | 62° |

    @wing
    Scenario Outline: Half a stick to the <way> is well under half a spoiler
      When the roll stick is half <way>
      Then the <low wing> spoiler rises, between 18° and 23°
      And the <high wing> spoiler is at neutral
      And the model rolls <way>

      Examples:
        | way   | low wing  | high wing |
        | right | starboard | port      |
        | left  | port      | starboard |

  Rule: The brake lever lifts both, and alike

    @brakes
    Scenario: Brakes out
      When the brake lever is at half
      Then both spoilers rise 24° ± 1°
      And the port spoiler moves as far as the starboard spoiler ± 1°
      And the elevator rises 0.7° ± 0.2°
      And the model does not roll
      When the brake lever is open
      Then both spoilers are 48.5° ± 1° up
      And the elevator is 1.4° ± 0.3° up
      And the model does not yaw
      And the rudder stays still

    @brakes
    Scenario: And in again
      Given open brakes
      When the brake lever is shut
      Then both spoilers drop 48.5° ± 1°
      And all surfaces are at neutral

  Rule: Elevator and rudder

    @tail
    Scenario: Elevator
      When the pitch stick is full back
      Then the elevator rises 22° ± 1.5°
      And the model pitches up
      When the pitch stick is full forward
      Then the elevator drops, at least 35°
      And the elevator is 18° ± 1.5° down
      And the model pitches down
      And both spoilers stay still

    @tail
    Scenario Outline: Yaw to the <way>
      When the yaw stick is full <way>
      Then the rudder moves <way> 18.5° ± 1.5°
      And the model yaws <way>
      And both spoilers stay still
      And the elevator stays still

      Examples:
        | way   |
        | right |
        | left  |

    @tail
    Scenario Outline: Coupled, the rudder follows roll to the <way>
      Given the rudder switch is coupled
      When the roll stick is full <way>
      Then the rudder moves <way> 7° ± 1°
      And the <low wing> spoiler rises 48° ± 1°
      And the model yaws <way>
      When the yaw stick is full <way>
      Then the rudder is 26° ± 1.5° <way>
      And channel 4 is within its travel

      Examples:
        | way   | low wing  |
        | right | starboard |
        | left  | port      |

    @tail @trim
    Scenario: Trims
      * with pitch trim full back, the elevator rises 2.8° ± 0.4° and the model pitches up
      * with pitch trim full forward, the elevator drops 2.8° ± 0.4° and the model pitches down
      * with yaw trim full right, the rudder moves right 2.3° ± 0.4° and the model yaws right
      * with yaw trim full left, the rudder moves left 2.3° ± 0.4° and the model yaws left

  Rule: On loss of signal it comes down gently

    @signal
    Scenario: From a turn
      Given full right roll
      And the pitch stick is full back
      And the yaw stick is full right
      When the signal is lost
      Then the port spoiler is 30° ± 1° up
      And the starboard spoiler is 30° ± 1° up
      And the elevator stays still
      And the rudder is at neutral

    @signal
    Scenario: From straight flight
      When the signal is lost
      Then both spoilers rise 30° ± 1°
      And the elevator is at neutral
      And the model does not roll

  Rule: Always and never

    @always
    Scenario: Nothing runs out of travel, wherever everything stands
      Then no channel runs out of travel
      And no surface reaches its stop

    @always
    Scenario: No stick and no lever ever turns a surface back
      Then at every position, the more right the roll stick, the higher the starboard spoiler
      And at every position, the more left the roll stick, the higher the port spoiler
      And at every position, the further the brake lever, the higher both spoilers
      And at every position, the more back the pitch stick, the higher the elevator
      And at every position, the more right the yaw stick, the further right the rudder

    @always
    Scenario: A spoiler never goes below the wing
      Then the spoilers are never down

  Rule: Between centre and full, and one way as far as the other

    Scenario: Half a stick is softer by its expo
      * with the pitch stick half back, the elevator is 10.1° ± 1° up
