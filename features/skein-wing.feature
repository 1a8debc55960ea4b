Feature: Skein, before the first launch of the year
  No fin, no rudder: which tip opens is which way the nose goes, and a wing like
  this forgives a wrong one for about two seconds.

  Background:
    Given the motor switch is safe

  Scenario: At rest
    Given the brake lever is shut
    Then both elevons are at neutral
    And both drag rudders are in
    And the motor is stopped

  Rule: The elevons roll, and the inside tip helps a little

    @wing
    Scenario Outline: Roll to the <way>, rates <rate>
      Given rates are <rate>
      When the roll stick is full <way>
      Then the <low> elevon rises <up> ± 0.8°
      And the <high> elevon drops <down> ± 0.8°
      And the <low> elevon moves more than the <high> elevon
      And the <low> elevon moves opposite to the <high> elevon
      And the <low> drag rudder extends by 10% ± 1%
      And the <high> drag rudder stays still
      And the model rolls <way>
      And adverse yaw does not grow

      Examples:
        | rate | way   | low       | high      | up    | down  |
        | low  | right | starboard | port      | 10.2° | 8°    |
        | low  | left  | port      | starboard | 10.1° | 7.6°  |
        | high | right | starboard | port      | 14.1° | 11°   |
        | high | left  | port      | starboard | 13.9° | 10.5° |

    @wing
    Scenario: Half a stick
      * with half right roll, the starboard elevon rises, less than 5°, and the port elevon drops, less than 4°

    @wing @trim
    Scenario Outline: Roll trim to the <way> leaves the tips shut
      When the roll trim is full <way>
      Then the <low> elevon rises 1.2° ± 0.3°
      And the <high> elevon drops 1° ± 0.2°
      And both drag rudders stay still
      And the model rolls <way>

      Examples:
        | way   | low       | high      |
        | right | starboard | port      |
        | left  | port      | starboard |

  Rule: The elevons pitch

    @wing
    Scenario Outline: Back and forward, rates <rate>
      Given rates are <rate>
      When the pitch stick is full back
      Then the port elevon rises <back> ± 0.8°
      And the starboard elevon rises <back> ± 0.8°
      And the port elevon moves as far as the starboard elevon ± 0.5°
      And both drag rudders stay still
      And the model pitches up
      When the pitch stick is centred
      Then both elevons are at neutral
      When the pitch stick is full forward
      Then the port elevon drops <forward> ± 0.8°
      And the starboard elevon drops <forward> ± 0.8°
      And the model pitches down

      Examples:
        | rate | back  | forward |
        | low  | 8°    | 6.1°    |
        | high | 11.5° | 9.5°    |

    @wing @trim
    Scenario: Pitch trim
      * with pitch trim full back, both elevons rise 1.4° ± 0.3° and the model pitches up
      * with pitch trim full forward, both elevons drop 1.3° ± 0.3° and the model pitches down

    @wing
    Scenario: Both sticks in the corner, both trims as well
      Given rates are high
      When the pitch stick is full back, pitch trim full back, roll stick full right and roll trim full right
      Then the starboard elevon rises, at least 25°
      And every channel is within its travel
      And the elevons are not at their stops
      And both elevon servos have at least twice the torque it needs at 22 m/s

  Rule: The tip that opens is the way the nose goes

    @wing
    Scenario Outline: Yaw to the <way>
      When the yaw stick is full <way>
      Then the <inner> drag rudder extends by 46.8% ± 2%
      And the <outer> drag rudder is in
      And the <outer> drag rudder stays still
      And both elevons stay still
      And the model yaws <way>

      Examples:
        | way   | inner     | outer     |
        | right | starboard | port      |
        | left  | port      | starboard |

    @wing @trim
    Scenario Outline: Yaw trim to the <way>
      * with yaw trim full <way>, the <inner> drag rudder extends by 5.5% ± 1% and the <outer> drag rudder stays still
      * with yaw trim full <way>, the model yaws <way>

      Examples:
        | way   | inner     | outer     |
        | right | starboard | port      |
        | left  | port      | starboard |

  Rule: The brake lever opens both

    @brakes
    Scenario: Open, half, shut
      When the brake lever is open
      Then both drag rudders extend by 33% ± 1%
      And the port drag rudder moves as far as the starboard drag rudder
      And both elevons stay still
      And the model does not yaw
      And the model does not roll
      When the brake lever is half
      Then both drag rudders are 16.5% ± 1% out
      When the brake lever is shut
      Then both drag rudders retract
      And both drag rudders are in

    @brakes
    Scenario Outline: Yaw to the <way> with the brakes at <detent>
      Given the brake lever is at <detent>
      When the yaw stick is full <way>
      Then the <inner> drag rudder extends by 46.8% ± 2%
      And the <outer> drag rudder retracts by <less> ± 1%
      And the model yaws <way>

      Examples:
        | detent | way   | inner     | outer     | less  |
        | half   | right | starboard | port      | 12.7% |
        | half   | left  | port      | starboard | 12.7% |
        | open   | right | starboard | port      | 25.5% |
        | open   | left  | port      | starboard | 25.5% |

    @brakes
    Scenario Outline: Brake, yaw and roll to the <way> all at once
      Given open brakes
      When the yaw stick is full <way>, the yaw trim is full <way> and the roll stick is full <way>
      Then the <inner> drag rudder is 95.3% ± 1% out
      And the <outer> drag rudder is 4.5% ± 1% out
      And every channel is within its travel

      Examples:
        | way   | inner     | outer     |
        | right | starboard | port      |
        | left  | port      | starboard |

  Rule: The motor runs only when it is asked to

    @motor
    Scenario: The throttle runs it
      Given the motor switch is live
      Then the motor is stopped
      When the throttle is full
      Then the motor speeds up
      And the motor is at 100%
      And channel 5 is within its travel
      When the throttle is half
      Then the motor is at 50%
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
      And full right roll, the pitch stick half back and half right yaw
      When the signal is lost
      Then the motor stops
      And both elevons are at neutral
      And both drag rudders are 33% ± 1% out

  Rule: Always and never

    @always
    Scenario: Nothing runs out of travel, wherever everything stands
      Then no channel runs out of travel
      And no surface reaches its stop

    @always
    Scenario: No stick and no lever ever turns a surface back
      Then at every position, the more right the roll stick, the higher the starboard elevon and the lower the port elevon
      And at every position, the more back the pitch stick, the higher both elevons

    @always @motor
    Scenario: What is safe stays safe, whatever else moves
      Then the motor never runs whenever the motor switch is safe
      And whatever else moves, when the signal is lost, the motor is stopped

  Rule: Between centre and full, and one way as far as the other

    Scenario: Half a stick is softer by its expo
      * with the roll stick half left and the rate switch high, the port elevon is 5.5° ± 1° up
      * with the pitch stick half back and the rate switch high, the port elevon is 4.3° ± 1° up
      * with the pitch stick half back, the port elevon is 3.4° ± 0.5° up
      * with the yaw stick half left, the port drag rudder is 19.9% ± 1.7% out
      * with the roll stick half left, the port drag rudder is 4.3% ± 0.7% out
