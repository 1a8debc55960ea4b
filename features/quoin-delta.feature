Feature: Quoin, before it is thrown off a hill
  Two elevons are all of roll and all of pitch. One reversed elevon makes roll of
  pitch, so both are asked about for every stick, at both rates, and with the
  brake door open.

  Background:
    Given the motor switch is safe

  Scenario: At rest the elevons stand a little up
    Given the brake lever is shut
    Then both elevons are 2° ± 0.5° up
    And the rudder is at neutral
    And the airbrake is at neutral
    And the motor is stopped

  Rule: The elevons roll

    @wing
    Scenario Outline: Roll to the <way>, rates <rate>
      Given rates are <rate>
      When the roll stick is full <way>
      Then the <low> elevon rises <far> ± 1°
      And the <high> elevon drops <far> ± 1°
      And the port elevon moves as far as the starboard elevon ± 0.5°
      And the port elevon moves opposite to the starboard elevon
      And the rudder stays still
      And the airbrake stays still
      And the model rolls <way>

      Examples:
        | rate | way   | low       | high      | far   |
        | low  | right | starboard | port      | 8.7°  |
        | low  | left  | port      | starboard | 8.7°  |
        | high | right | starboard | port      | 13.3° |
        | high | left  | port      | starboard | 13.3° |

    @wing
    Scenario: Half a stick is well under half the roll
      When the roll stick is half right
      Then the starboard elevon rises, less than 4.2°
      And the port elevon drops, less than 4.2°

    @wing @trim
    Scenario: Roll trim
      * with roll trim full right, the starboard elevon rises 1.2° ± 0.3°, the port elevon drops 1.2° ± 0.3° and the model rolls right
      * with roll trim full left, the port elevon rises 1.2° ± 0.3°, the starboard elevon drops 1.2° ± 0.3° and the model rolls left

  Rule: The elevons pitch

    @wing
    Scenario Outline: Back and forward, rates <rate>
      Given rates are <rate>
      When the pitch stick is full back
      Then the port elevon rises <back> ± 1°
      And the starboard elevon rises <back> ± 1°
      And the port elevon moves together with the starboard elevon
      And the port elevon moves as far as the starboard elevon ± 0.5°
      And the model pitches up
      And the model does not roll
      When the pitch stick is centred
      Then both elevons are 2° ± 0.5° up
      When the pitch stick is full forward
      Then the port elevon drops <forward> ± 1°
      And the starboard elevon drops <forward> ± 1°
      And the model pitches down
      And the rudder stays still

      Examples:
        | rate | back  | forward |
        | low  | 9.5°  | 8°      |
        | high | 13.3° | 12°     |

    @wing @trim
    Scenario: Pitch trim
      * with pitch trim full back, both elevons rise 1.6° ± 0.3° and the model pitches up
      * with pitch trim full forward, both elevons drop 1.6° ± 0.3° and the model pitches down

    @wing
    Scenario Outline: Both sticks in the corner, <pitch> and <way>
      Given rates are high
      And the pitch stick is full <pitch>
      And the pitch trim is full <pitch>
      When the roll stick is full <way> and the roll trim is full <way>
      Then the <low> elevon rises, at least 12°
      And the <high> elevon drops, at least 12°
      And every channel is within its travel
      And the elevons are not at their stops
      And both elevon servos have at least twice the torque it needs at 20 m/s
      And the model rolls <way>

      Examples:
        | pitch   | way   | low       | high      |
        | back    | right | starboard | port      |
        | back    | left  | port      | starboard |
        | forward | right | starboard | port      |
        | forward | left  | port      | starboard |

  Rule: The rudder

    @tail
    Scenario Outline: Rudder to the <way>
      * with the yaw stick full <way>, the rudder moves <way> 23.2° ± 1.5°, both elevons stay still and the model yaws <way>
      * with the yaw trim full <way>, the rudder moves <way> 2.6° ± 0.5° and the model yaws <way>

      Examples:
        | way   |
        | right |
        | left  |

  Rule: The brake door

    @brakes
    Scenario: Open, half, shut
      When the brake lever is open
      Then the airbrake rises 58° ± 2°
      And both elevons drop 2° ± 0.3°
      And the rudder stays still
      And the model does not roll
      And the model does not yaw
      When the brake lever is half
      Then the airbrake is 25.7° ± 2° up
      And both elevons are 1.1° ± 0.3° up
      When the brake lever is shut
      Then the airbrake drops
      And the airbrake is at neutral
      And both elevons are 2° ± 0.5° up

    @brakes
    Scenario: A nudge of the lever does nothing
      When the brake lever is at 9%
      Then all surfaces stay still

    @brakes @slow
    Scenario: It opens in about a second, the elevons at once
      When the brake lever is open
      Then the airbrake is between 24° and 34° up after 0.45 s
      And the airbrake is 58° ± 2° up within 1 s
      And both elevons drop 2° ± 0.3°, after 0.2 s

    @wing @brakes
    Scenario Outline: Control to the <way> with the door open
      Given open brakes
      When the roll stick is full <way>
      Then the <low> elevon rises 8.7° ± 1°
      And the <high> elevon drops 8.7° ± 1°
      And the airbrake stays still
      And every channel is within its travel

      Examples:
        | way   | low       | high      |
        | right | starboard | port      |
        | left  | port      | starboard |

  Rule: The motor runs only when it is asked to

    @motor
    Scenario: The throttle runs it
      Given the motor switch is live
      Then the motor is stopped
      When the throttle is half
      Then the motor speeds up
      And the motor is at 55%
      When the throttle is full
      Then the motor is at 100%
      And channel 5 is within its travel
      When the motor switch is safe
      Then the motor stops

    @motor
    Scenario: Safe is safe
      When the throttle is full
      Then the motor stays stopped

    @motor @signal
    Scenario: Loss of signal
      Given the motor switch is live
      And full throttle
      And rates are high
      And full right roll, the pitch stick half back and full right yaw
      When the signal is lost
      Then the motor stops
      And both elevons are 2° ± 0.5° up
      And the rudder is at neutral
      And the airbrake rises 58° ± 2°

  Rule: Always and never

    @always
    Scenario: Nothing runs out of travel, wherever everything stands
      Then no channel runs out of travel
      And no surface reaches its stop

    @always
    Scenario: No stick and no lever ever turns a surface back
      Then at every position, the more right the roll stick, the higher the starboard elevon and the lower the port elevon
      And at every position, the more back the pitch stick, the higher both elevons
      And at every position, the more right the yaw stick, the further right the rudder
      And at every position, the further the brake lever, the higher the airbrake

    @always @motor
    Scenario: What is safe stays safe, whatever else moves
      Then the motor never runs whenever the motor switch is safe
      And whatever else moves, when the signal is lost, the motor is stopped

  Rule: Between centre and full, and one way as far as the other

    Scenario: Half a stick is softer by its expo
      * with the roll stick half left and the rate switch high, the port elevon is 6.9° ± 1° up
      * with the pitch stick half back and the rate switch high, the port elevon is 7.2° ± 1° up
      * with the pitch stick half back, the port elevon is 6.2° ± 0.5° up
      * with the yaw stick half left, the rudder is 9.9° ± 1° left
