Feature: Bracken 20, before the maiden flight
  Four servos in the wing, full-span roll on high rates. One reversed flap is
  enough to lose this model on take-off, so every surface is asked about in
  every direction, at every rate and at every detent of the flap lever: which
  way it goes, and how far.

  Background:
    Given the motor switch is safe
    And the flap lever is parked

  Scenario: At rest everything is neutral and nothing turns
    Then the port aileron is at neutral
    And the port flap is at neutral
    And the elevator is at neutral
    And the rudder is at neutral
    And the nose wheel is at neutral
    And the starboard flap is at neutral
    And the starboard aileron is at neutral
    And the motor is stopped

  Rule: On high rates the whole trailing edge rolls

    Background:
      Given rates are high

    @wing
    Scenario: Right stick, right wing down
      When the roll stick is full right
      Then the starboard aileron rises 23.5° ± 1.5°
      And the starboard flap rises, at least 8°
      And the port aileron drops 16.2° ± 1.5°
      And the port flap drops 6.8° ± 1°
      And the model rolls right
      And the flaps add at least 10% to the roll
      And adverse yaw does not grow

    @wing
    Scenario: Left stick, left wing down
      When the roll stick is full left
      Then the port aileron rises 23.5° ± 1.5°
      And the port flap rises, at least 8°
      And the starboard aileron drops 16.2° ± 1.5°
      And the starboard flap drops 6.8° ± 1°
      And the model rolls left

    @wing @flaps
    Scenario Outline: Full-span roll to the <way> with the flap lever at <detent>
      Given the flap lever is at <detent>
      When the roll stick is full <way>
      Then the <low wing> aileron rises 23.5° ± 1.5°
      And the <low wing> flap rises <rise> ± 1°
      And the <high wing> flap drops <drop> ± 1°
      And the <high wing> aileron drops 16.2° ± 1.5°
      And every channel is within its travel
      And the flaps are not at their stops

      Examples: parked, the flaps must be able to go up
        | detent  | way   | low wing  | high wing | rise | drop |
        | parked  | right | starboard | port      | 9.3° | 6.8° |
        | parked  | left  | port      | starboard | 9.3° | 6.8° |

      Examples: down, the flaps must still roll
        | detent  | way   | low wing  | high wing | rise  | drop |
        | takeoff | right | starboard | port      | 10°   | 7.3° |
        | takeoff | left  | port      | starboard | 10°   | 7.3° |
        | landing | right | starboard | port      | 11.2° | 8.4° |
        | landing | left  | port      | starboard | 11.2° | 8.4° |

    @wing @flaps
    Scenario: Said in one line
      * with rates high, landing flap and right roll, the port flap drops and the starboard flap rises
      * with rates high, landing flap and left roll, the starboard flap drops and the port flap rises

    @wing
    Scenario: A flap goes with its own aileron, but not as far
      When the roll stick is half right
      Then the starboard flap moves together with the starboard aileron
      And the starboard flap moves less than the starboard aileron
      And the port flap moves together with the port aileron
      And the port flap moves less than the port aileron
      And the port flap moves opposite to the starboard flap
      And the port aileron moves opposite to the starboard aileron
      And the starboard aileron moves more than the port aileron

    @tail
    Scenario: Elevator on high rates
      When the pitch stick is full back
      Then the elevator rises 23.8° ± 2°
      And the model pitches up
      When the pitch stick is centred
      Then the elevator drops 23.8° ± 2°
      When the pitch stick is full forward
      Then the elevator drops 21.1° ± 2°
      And the model pitches down

    @trim
    Scenario: Roll trim reaches the flaps too
      When the roll trim is full right
      Then the starboard aileron rises, at least 1°
      And the starboard flap rises
      And the port aileron drops, at least 1°

    @trim
    Scenario: Roll trim the other way
      When the roll trim is full left
      Then the port aileron rises, at least 1°
      And the port flap rises
      And the starboard aileron drops, at least 1°

  Rule: On low rates only the ailerons roll

    Background:
      Given rates are low

    @wing @flaps
    Scenario Outline: The flaps leave roll alone, flap lever at <detent>
      Given the flap lever is at <detent>
      When the roll stick is full <way>
      Then the <low wing> aileron rises 15° ± 1.5°
      And the <high wing> aileron drops 10° ± 1.5°
      And both flaps stay still

      Examples:
        | detent  | way   | low wing  | high wing |
        | parked  | right | starboard | port      |
        | parked  | left  | port      | starboard |
        | takeoff | right | starboard | port      |
        | takeoff | left  | port      | starboard |
        | landing | right | starboard | port      |
        | landing | left  | port      | starboard |

    @tail
    Scenario: Elevator on low rates
      When the pitch stick is full back
      Then the elevator rises 15.8° ± 2°
      And both ailerons stay still
      And both flaps stay still
      When the pitch stick is full forward
      Then the elevator drops, between 28° and 33°
      And the elevator is 14.4° ± 2° down

    @trim
    Scenario: Trim, from each input and both ways
      * with roll trim full right, the starboard aileron rises 2.2° ± 0.5° and the port aileron drops 1.5° ± 0.5°
      * with roll trim full left, the port aileron rises 2.2° ± 0.5° and the starboard aileron drops 1.5° ± 0.5°
      * with roll trim full right, both flaps stay still
      * with pitch trim full back, the elevator rises 2.9° ± 0.5°
      * with pitch trim full forward, the elevator drops 2.9° ± 0.5°
      * with yaw trim full right, the rudder moves right 2.5° ± 0.5° and the nose wheel moves right 2° ± 0.5°
      * with yaw trim full left, the rudder moves left 2.5° ± 0.5° and the nose wheel moves left 2° ± 0.5°

  Rule: The flap lever lowers both flaps, and alike

    @wing @flaps
    Scenario: Takeoff flap
      When the flap lever is at takeoff
      Then the port flap drops 14.3° ± 1.5°
      And the starboard flap drops 14.3° ± 1.5°
      And the port flap moves as far as the starboard flap ± 0.5°
      And both ailerons stay still

    @wing @flaps
    Scenario: Landing flap
      When the flap lever is at landing
      Then the port flap drops, between 35° and 40°
      And the starboard flap drops, between 35° and 40°
      And the port flap moves as far as the starboard flap ± 0.5°
      And both ailerons stay still
      But the elevator drops 1.5° ± 0.5°

    @wing @flaps
    Scenario: A tape measure at the trailing edge
      Given landing flap
      Then the port flap is 31 mm ± 2 mm down
      And the starboard flap is 31 mm ± 2 mm down

    @wing @flaps
    Scenario: And back up again
      Given the flap lever is at landing
      When the flap lever is at takeoff
      Then both flaps rise 23.5° ± 2°
      When the flap lever is parked
      Then both flaps rise 14.3° ± 1.5°
      And both flaps are at neutral

    @wing @flaps
    Scenario: With roll held, a flap may rise and still be down
      Given rates are high
      And landing flap
      When the roll stick is full right
      Then the starboard flap rises
      And the starboard flap is 26.6° ± 2° down
      And the port flap is 46.2° ± 2° down

    @bench
    Scenario: Pulses, for the servo tester
      Given landing flap
      Then the port flap channel is at 1825 µs
      And the starboard flap channel is at 1190 µs

  Rule: The rudder and the nose wheel share one channel

    @tail
    Scenario: Right rudder
      When the yaw stick is full right
      Then the rudder moves right 27° ± 2°
      And the nose wheel moves right 20.4° ± 2°
      And the rudder moves together with the nose wheel
      And the model yaws right
      And the elevator stays still

    @tail
    Scenario: Left rudder
      When the yaw stick is full left
      Then the rudder moves left 26.5° ± 2°
      And the nose wheel moves left 21.6° ± 2°
      And the model yaws left
      And the elevator stays still

  Rule: The motor runs only when it is asked to

    @motor
    Scenario: The throttle runs it
      Given the motor switch is live
      Then the motor is stopped
      When the throttle is full
      Then the motor speeds up
      And the motor is at 100%
      And channel 1 is within its travel
      When the throttle is half
      Then the motor slows down
      And the motor is at 50% ± 2%

    @motor
    Scenario: Safe is safe
      When the throttle is full
      Then the motor stays stopped
      When the throttle is half
      Then the motor stays stopped

    @motor
    Scenario: Safe stops it
      Given the motor switch is live
      And the throttle is full
      When the motor switch is safe
      Then the motor stops

    @motor @signal
    Scenario: Loss of signal
      Given the motor switch is live
      And full throttle
      And rates are high
      And landing flap
      And full right roll
      And the pitch stick is full back
      And the yaw stick is full right
      When the signal is lost
      Then the motor stops
      And both flaps stay still
      And the elevator stays still
      But both ailerons are at neutral
      And the rudder is at neutral
      And the nose wheel is at neutral

  Rule: Always and never

    @always
    Scenario: Nothing runs out of travel, wherever everything stands
      Then no channel runs out of travel
      And no surface reaches its stop

    @always
    Scenario: No stick and no lever ever turns a surface back
      Then at every position, the more right the roll stick, the higher the starboard aileron and the lower the port aileron
      And at every position, the more back the pitch stick, the higher the elevator
      And at every position, the more right the yaw stick, the further right the rudder and the further right the nose wheel
      And at every position, the further the flap lever, the lower both flaps

    @always @flaps
    Scenario: Low rates leave the flaps alone, and the flaps keep together
      Then whenever rates are low, the port flap depends on nothing but the flap lever
      And whenever rates are low, the starboard flap depends on nothing but the flap lever
      And at every switch position, whatever the flap lever does, the port flap moves as far as the starboard flap ± 0.5°

    @always @motor
    Scenario: What is safe stays safe, whatever else moves
      Then the motor never runs whenever the motor switch is safe
      And whatever else moves, when the signal is lost, the motor is stopped

  Rule: Between centre and full, and one way as far as the other

    Scenario: Half a stick is softer by its expo
      * with the roll stick half left and the rate switch high, the port aileron is 9.7° ± 1° up
      * with the roll stick half left, the port aileron is 6.8° ± 0.8° up
      * with the pitch stick half back and the rate switch high, the elevator is 9.6° ± 1° up
      * with the pitch stick half back, the elevator is 7.1° ± 0.8° up
      * with the yaw stick half left, the rudder is 11.8° ± 1° left

    Scenario: Full stick forward, measured
      * with the pitch stick full forward, the elevator is 14.4° ± 0.6° down
