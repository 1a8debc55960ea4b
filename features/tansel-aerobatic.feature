Feature: Tansel, before it goes over the gravel pit
  Two servos on an aileron hide each other's mistakes: with one reversed the
  aileron hardly moves, with one off by a tooth it moves almost right. So the
  throws are asked for to the degree, and at rest every channel's pulse.

  Scenario: At rest
    Then all surfaces are at neutral
    And the motor is stopped

  @bench
  Scenario: Pulses at rest, for the servo tester
    Then channel 2 is at 1500 µs ± 2 µs
    And channel 3 is at 1500 µs ± 2 µs
    And channel 4 is at 1500 µs ± 2 µs
    And channel 5 is at 1520 µs ± 2 µs
    And channel 6 is at 1500 µs ± 2 µs
    And channel 7 is at 1486.5 µs ± 2 µs
    And channel 8 is at 1500 µs ± 2 µs

  Rule: Three rates, each of them even left and right

    @wing
    Scenario Outline: Roll to the <way>, <rate>
      Given rates are <rate>
      When the roll stick is full <way>
      Then the <low wing> aileron rises <throw> ± 1°
      And the <high wing> aileron drops <throw> ± 1°
      And the <low wing> aileron moves opposite to the <high wing> aileron
      And the model rolls <way>
      And the <low wing> aileron moves as far as the <high wing> aileron ± 0.5°
      And both elevators stay still
      And the rudder stays still

      Examples:
        | rate  | way   | low wing  | high wing | throw |
        | soft  | right | starboard | port      | 9.5°  |
        | soft  | left  | port      | starboard | 9.5°  |
        | sport | right | starboard | port      | 16°   |
        | sport | left  | port      | starboard | 16°   |
        | wild  | right | starboard | port      | 23.2° |
        | wild  | left  | port      | starboard | 23.2° |

    @tail
    Scenario Outline: Pitch, <rate>
      Given rates are <rate>
      When the pitch stick is full back
      Then both elevators rise <up> ± 1°
      And the port elevator moves together with the starboard elevator
      And the port elevator moves as far as the starboard elevator ± 0.5°
      And the model pitches up
      When the pitch stick is centred
      Then both elevators are at neutral
      When the pitch stick is full forward
      Then both elevators drop <down> ± 1°
      And the port elevator moves as far as the starboard elevator ± 0.5°
      And the model pitches down
      And both ailerons stay still

      Examples:
        | rate  | up    | down  |
        | soft  | 10.4° | 9.4°  |
        | sport | 17.4° | 15.8° |
        | wild  | 31.5° | 30.9° |

    @tail
    Scenario Outline: Yaw to the <way>, <rate>
      Given rates are <rate>
      When the yaw stick is full <way>
      Then the rudder moves <way> <throw> ± 1.5°
      And the model yaws <way>
      And both elevators stay still
      And both ailerons stay still

      Examples:
        | rate  | way   | throw |
        | soft  | right | 20°   |
        | soft  | left  | 20°   |
        | sport | right | 28°   |
        | sport | left  | 28°   |
        | wild  | right | 38°   |
        | wild  | left  | 38°   |

    @wing
    Scenario: Half a stick is much less than half on wild
      Given rates are wild
      When the roll stick is half right
      Then the starboard aileron rises, between 4.5° and 8°
      When the pitch stick is half back
      Then both elevators rise, between 7° and 11°

  Rule: Trims, both ways

    @wing @trim
    Scenario: Roll trim
      * with roll trim full right, the starboard aileron rises 1.35° ± 0.4° and the port aileron drops 1.35° ± 0.4°
      * with roll trim full left, the port aileron rises 1.35° ± 0.4° and the starboard aileron drops 1.35° ± 0.4°
      * with roll trim full right, the model rolls right
      * with roll trim full left, the model rolls left

    @tail @trim
    Scenario: Pitch and yaw trim
      * with pitch trim full back, both elevators rise 2.8° ± 0.4° and the model pitches up
      * with pitch trim full forward, both elevators drop 2.8° ± 0.4° and the model pitches down
      * with yaw trim full right, the rudder moves right 2.4° ± 0.4° and the model yaws right
      * with yaw trim full left, the rudder moves left 2.4° ± 0.4° and the model yaws left

  Rule: Both sticks in the corner

    @wing
    Scenario Outline: A snap to the <way> comes to no stop
      Given rates are wild
      When full back pitch, full <way> roll and full <way> yaw
      Then the <low wing> aileron rises, at least 21°
      And the <high wing> aileron drops, at least 21°
      And both elevators rise, at least 30°
      And the rudder moves <way>, at least 35°
      And all surfaces are not at their stops
      And both aileron servos have twice the torque they need at 30 m/s
      And every channel is within its travel

      Examples:
        | way   | low wing  | high wing |
        | right | starboard | port      |
        | left  | port      | starboard |

  Rule: The motor

    @motor
    Scenario: The throttle runs it
      Given the motor switch is live
      When the throttle is half
      Then the motor speeds up
      And the motor is at 60% ± 0.5%
      When the throttle is full
      Then the motor is at 100%
      When the throttle is closed
      Then the motor stops

    @motor
    Scenario: Safe is safe
      When the throttle is full
      Then the motor stays stopped
      When the motor switch is live
      Then the motor runs
      When the motor switch is safe
      Then the motor stops

    @signal
    Scenario: Loss of signal
      Given live motor, full throttle and wild rates
      And full right roll
      And the pitch stick is full back
      And the yaw stick is full left
      When the signal is lost
      Then the motor stops
      And all surfaces are at neutral
      And the motor channel is at 1000 µs

  Rule: Always and never

    @always
    Scenario: Nothing runs out of travel, wherever everything stands
      Then no channel runs out of travel
      And no surface reaches its stop

    @always
    Scenario: No stick and no lever ever turns a surface back
      Then at every position, the more right the roll stick, the higher the starboard aileron and the lower the port aileron
      And at every position, the more back the pitch stick, the higher both elevators
      And at every position, the more right the yaw stick, the further right the rudder

    @always
    Scenario: The elevator halves stay level
      Then whatever else moves, the port elevator moves as far as the starboard elevator ± 0.5°

    @always @motor
    Scenario: What is safe stays safe, whatever else moves
      Then the motor never runs whenever the motor switch is safe
      And whatever else moves, when the signal is lost, the motor is stopped

  Rule: Between centre and full, and one way as far as the other

    Scenario: Half a stick is softer by its expo
      * with the roll stick half left and the rate switch sport, the port aileron is 6.3° ± 1° up
      * with the roll stick half left, the port aileron is 4.2° ± 0.5° up
      * with the pitch stick half back and the rate switch sport, the port elevator is 6.8° ± 1° up
      * with the pitch stick half back, the port elevator is 4.7° ± 0.5° up
      * with the yaw stick half left and the rate switch wild, the rudder is 13.3° ± 1° left
      * with the yaw stick half left and the rate switch sport, the rudder is 11.5° ± 1° left
      * with the yaw stick half left, the rudder is 9° ± 1° left
