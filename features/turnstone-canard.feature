Feature: Turnstone, before anybody says that it is reversed
  # The canard goes DOWN for back stick. It is asked about first, then what is the
  # same as on any other model, then the rudders that are also brakes.

  Background:
    Given the motor switch is safe

  Scenario: At rest
    Given the brake lever is shut
    Then all surfaces are at neutral
    And the nose wheel is at neutral
    And the motor is stopped

  Rule: The canard is in front

    @tail
    Scenario Outline: Back and forward, rates <rate>
      Given rates are <rate>
      When the pitch stick is full back
      Then the canard drops <back> ± 1.2°
      And both ailerons stay still
      And both rudders stay still
      And the model pitches up
      When the pitch stick is centred
      Then the canard is at neutral
      When the pitch stick is full forward
      Then the canard rises <forward> ± 1.2°
      And the model pitches down
      And the model does not roll
      And the model does not yaw

      Examples:
        | rate | back  | forward |
        | low  | 14.5° | 11°     |
        | high | 20.8° | 15.2°   |

    @tail @trim
    Scenario: Pitch trim
      * with pitch trim full back, the canard drops 2.9° ± 0.4° and the model pitches up
      * with pitch trim full forward, the canard rises 2.6° ± 0.4° and the model pitches down
      * with pitch stick half back, the canard drops, less than 7°

  Rule: The ailerons roll, further up than down

    @wing
    Scenario Outline: Roll to the <way>, rates <rate>
      Given rates are <rate>
      When the roll stick is full <way>
      Then the <low> aileron rises <up> ± 1°
      And the <high> aileron drops <down> ± 1°
      And the <low> aileron moves more than the <high> aileron
      And the <low> aileron moves opposite to the <high> aileron
      And the canard stays still
      And both rudders stay still
      And the model rolls <way>
      And both aileron servos have at least twice the torque it needs at 25 m/s
      And adverse yaw does not grow

      Examples:
        | rate | way   | low       | high      | up    | down  |
        | low  | right | starboard | port      | 16.3° | 10.8° |
        | low  | left  | port      | starboard | 16.3° | 10.8° |
        | high | right | starboard | port      | 23.5° | 16°   |
        | high | left  | port      | starboard | 23.5° | 16°   |

    @wing @trim
    Scenario Outline: Roll trim to the <way>
      When the roll trim is full <way>
      Then the <low> aileron rises 2.2° ± 0.4°
      And the <high> aileron drops 1.4° ± 0.3°
      And the model rolls <way>

      Examples:
        | way   | low       | high      |
        | right | starboard | port      |
        | left  | port      | starboard |

    @wing
    Scenario: Half a stick
      * with half right roll, the starboard aileron rises, less than 8.1°, and the port aileron drops, less than 5.4°

  Rule: Both rudders steer, and so does the wheel

    @tail
    Scenario Outline: Yaw to the <way>
      When the yaw stick is full <way>
      Then the port rudder moves <way> 17.1° ± 1.2°
      And the starboard rudder moves <way> 17.1° ± 1.2°
      And the nose wheel moves <way> 13.5° ± 1°
      And the port rudder moves together with the starboard rudder
      And the nose wheel moves less than the port rudder
      And the canard stays still
      And both ailerons stay still
      And the model yaws <way>

      Examples:
        | way   |
        | right |
        | left  |

    @tail @trim
    Scenario: Yaw trim
      * with yaw trim full right, both rudders move right 1.5° ± 0.3° and the nose wheel moves right 1.2° ± 0.3°
      * with yaw trim full left, both rudders move left 1.5° ± 0.3° and the nose wheel moves left 1.2° ± 0.3°
      * with yaw trim full right, the model yaws right
      * with yaw trim full left, the model yaws left

  Rule: The brake lever opens both rudders outwards

    @tail @brakes
    Scenario: Open, half, shut
      When the brake lever is open
      Then the port rudder moves left 12.8° ± 1°
      And the starboard rudder moves right 12.8° ± 1°
      And the port rudder moves as far as the starboard rudder ± 0.5°
      And the nose wheel stays still
      And the model does not yaw
      When the brake lever is half
      Then the port rudder is 6.4° ± 0.8° left
      And the starboard rudder is 6.4° ± 0.8° right
      When the brake lever is shut
      Then both rudders are at neutral

    @tail @brakes
    Scenario Outline: Yaw to the <way> with the brakes open
      Given open brakes
      When the yaw stick is full <way> and the yaw trim is full <way>
      Then the port rudder moves <way>, at least 16°
      And the starboard rudder moves <way>, at least 16°
      And every channel is within its travel
      And the rudders are not at their stops
      And the model yaws <way>

      Examples:
        | way   |
        | right |
        | left  |

  Rule: The motor runs only when it is asked to

    @motor
    Scenario: The throttle runs it
      Given the motor switch is live
      Then the motor is stopped
      When the throttle is full
      Then the motor speeds up
      And the motor is at 100%
      And channel 7 is within its travel
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
      And half brakes
      And full right roll, the pitch stick full back and full right yaw
      When the signal is lost
      Then the motor stops
      And the canard is 2.4° ± 0.4° down
      And both ailerons are at neutral
      And both rudders are at neutral
      And the nose wheel is at neutral

  Rule: Always and never

    @always
    Scenario: Nothing runs out of travel, wherever everything stands
      Then no channel runs out of travel
      And no surface reaches its stop

    @always
    Scenario: No stick and no lever ever turns a surface back
      Then at every position, the more right the roll stick, the higher the starboard aileron and the lower the port aileron
      And at every position, the more back the pitch stick, the lower the canard
      And at every position, the more right the yaw stick, the further right both rudders

    @always @motor
    Scenario: What is safe stays safe, whatever else moves
      Then the motor never runs whenever the motor switch is safe
      And whatever else moves, when the signal is lost, the motor is stopped

  Rule: Between centre and full, and one way as far as the other

    Scenario: Half a stick is softer by its expo
      * with the roll stick half left and the rate switch high, the port aileron is 9.7° ± 1° up
      * with the pitch stick half back and the rate switch high, the canard is 7.9° ± 1° down
      * with the yaw stick half left, the port rudder is 8° ± 0.6° left
