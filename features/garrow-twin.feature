Feature: Garrow Twin, before the mail goes
  Two motors that steer are two motors that can steer the wrong way. Every
  surface and the wheel are asked about in each direction, the motors with the
  thrust switch at both of its positions and the throttle closed, half and full.

  Background:
    Given the legs are lowered

  Scenario: At rest
    Then all surfaces are at neutral
    And the nose wheel is at neutral
    And all retracts are out
    And both motors are stopped

  Rule: The ailerons roll it, and rise further than they drop

    @wing
    Scenario Outline: Roll to the <way> on <rate> rates
      Given rates are <rate>
      When the roll stick is full <way>
      Then the <low wing> aileron rises <rise> ± 1.5°
      And the <high wing> aileron drops <drop> ± 1.5°
      And the <low wing> aileron moves opposite to the <high wing> aileron
      And the <low wing> aileron moves more than the <high wing> aileron
      And the model rolls <way>
      And adverse yaw does not grow
      And the elevator stays still

      Examples:
        | rate | way   | low wing  | high wing | rise | drop |
        | high | right | starboard | port      | 24°  | 18°  |
        | high | left  | port      | starboard | 24°  | 18°  |
        | low  | right | starboard | port      | 16°  | 12°  |
        | low  | left  | port      | starboard | 16°  | 12°  |

    @wing @trim
    Scenario: Roll trim
      * with roll trim full right, the starboard aileron rises 2.2° ± 0.5° and the port aileron drops 1.5° ± 0.5°
      * with roll trim full left, the port aileron rises 2.2° ± 0.5° and the starboard aileron drops 1.5° ± 0.5°
      * with roll trim full right, the model rolls right
      * with roll trim full left, the model rolls left

  Rule: The elevator

    @tail
    Scenario Outline: Pitch on <rate> rates
      Given rates are <rate>
      When the pitch stick is full back
      Then the elevator rises <rise> ± 1.5°
      And the model pitches up
      When the pitch stick is centred
      Then the elevator is at neutral
      When the pitch stick is full forward
      Then the elevator drops <drop> ± 1.5°
      And the model pitches down
      And both ailerons stay still

      Examples:
        | rate | rise | drop |
        | high | 26°  | 23°  |
        | low  | 18°  | 16°  |

    @tail @trim
    Scenario: Pitch trim
      * with pitch trim full back, the elevator rises 3° ± 0.5° and the model pitches up
      * with pitch trim full forward, the elevator drops 3° ± 0.5° and the model pitches down

  Rule: The yaw stick has the rudder, the nose wheel and, if asked, the motors

    @tail
    Scenario Outline: Yaw to the <way>, legs lowered
      When the yaw stick is full <way>
      Then the rudder moves <way> <rudder> ± 1.5°
      And the nose wheel moves <way> <wheel> ± 1.5°
      And the rudder moves together with the nose wheel
      And the model yaws <way>
      And both ailerons stay still
      And the elevator stays still

      Examples:
        | way   | rudder | wheel |
        | right | 29°    | 19°   |
        | left  | 29°    | 18°   |

    @tail
    Scenario Outline: Yaw to the <way>, legs raised
      Given the legs are raised
      When the yaw stick is full <way>
      Then the rudder moves <way> 29° ± 1.5°
      But the nose wheel stays still
      And the nose wheel is at neutral

      Examples:
        | way   |
        | right |
        | left  |

    @tail @trim
    Scenario: Yaw trim is for rudder and wheel, not for the motors
      * with yaw trim full right, the rudder moves right 2.6° ± 0.5° and the nose wheel moves right 1.6° ± 0.5°
      * with yaw trim full left, the rudder moves left 2.6° ± 0.5° and the nose wheel moves left 1.6° ± 0.5°
      * with yaw trim full right, the model yaws right
      * with yaw trim full left, the model yaws left
      * with live motor, steering thrust, half throttle and yaw trim full right, both motors are at 45% ± 0.5%

  Rule: Right yaw needs a harder port motor

    Background:
      Given the motor switch is live

    @motor
    Scenario: Thrust even, the yaw stick leaves the motors alone
      When the throttle is full
      Then both motors speed up
      And both motors are at 100%
      When the throttle is half
      Then both motors slow down
      And both motors are at 50% ± 0.5%
      When the yaw stick is full right
      Then both motors are at 50% ± 0.5%
      When the yaw stick is full left
      Then both motors are at 50% ± 0.5%
      When the throttle is closed
      Then both motors stop

    @motor
    Scenario Outline: Thrust steering to the <way> with throttle <throttle>
      Given the thrust switch is steering
      And the throttle is <throttle>
      When the yaw stick is full <way>
      Then the <outer> motor speeds up by 10% ± 0.5%
      And the <inner> motor slows down by 20% ± 0.5%
      And the <outer> motor is at <outer power> ± 0.5%
      And the <inner> motor is at <inner power> ± 0.5%
      And the model yaws <way>
      And channel 1 is within its travel
      And channel 2 is within its travel

      Examples:
        | throttle | way   | outer     | inner     | outer power | inner power |
        | 30%      | right | port      | starboard | 37%         | 7%          |
        | 30%      | left  | starboard | port      | 37%         | 7%          |
        | half     | right | port      | starboard | 55%         | 25%         |
        | half     | left  | starboard | port      | 55%         | 25%         |
        | full     | right | port      | starboard | 100%        | 70%         |
        | full     | left  | starboard | port      | 100%        | 70%         |

    @motor
    Scenario: Steering takes a tenth off both motors, alike
      Given full throttle
      When the thrust switch is steering
      Then both motors slow down by 10% ± 0.5%
      And both motors are at 90% ± 0.5%

    @motor
    Scenario Outline: Closed is closed, whatever the yaw stick does
      Given the thrust switch is steering
      When the yaw stick is full <way>
      Then both motors stay stopped
      When the throttle is 10%
      Then the <outer> motor is at 13% ± 0.5%
      And the <inner> motor is at 1% ± 0.5%

      Examples:
        | way   | outer     | inner     |
        | right | port      | starboard |
        | left  | starboard | port      |

  Rule: Safe is safe

    @motor
    Scenario Outline: Safe, with thrust <thrust>
      Given the thrust switch is <thrust>
      When the throttle is full
      Then both motors stay stopped
      When the yaw stick is full right
      Then both motors stay stopped
      When the yaw stick is full left
      Then both motors stay stopped

      Examples:
        | thrust   |
        | even     |
        | steering |

    @motor
    Scenario: Safe stops both
      Given the motor switch is live
      And full throttle
      When the motor switch is safe
      Then both motors stop

  Rule: The legs take three seconds

    @slow
    Scenario: Up
      When the legs are raised
      Then all retracts retract
      And all retracts are 50% ± 2% out after 1.5 s
      And all retracts are in within 3 s

    @slow
    Scenario: And down again
      Given the legs are raised
      When the legs are lowered
      Then all retracts extend
      And all retracts are 50% ± 2% out after 1.5 s
      And all retracts are out within 3 s

  Rule: Loss of signal

    @signal
    Scenario: Everything neutral, both motors stopped, the legs as they were
      Given live motor, full throttle, steering thrust and high rates
      And full right roll
      And the pitch stick is full back
      And the yaw stick is full right
      When the signal is lost
      Then both motors stop
      And all surfaces are at neutral
      And the nose wheel is at neutral
      And all retracts stay still

    @signal
    Scenario: The legs stay up
      Given the legs are raised
      When the signal is lost
      Then all retracts stay still
      And all retracts are in

  Rule: Always and never

    @always
    Scenario: Nothing runs out of travel, wherever everything stands
      Then no channel runs out of travel
      And no surface reaches its stop

    @always
    Scenario: No stick and no lever ever turns a surface back
      Then at every position, the more right the roll stick, the higher the starboard aileron and the lower the port aileron
      And at every position, the more back the pitch stick, the higher the elevator
      And at every position, the more right the yaw stick, the further right the rudder

    @always @motor
    Scenario: What is safe stays safe, whatever else moves
      Then no motor ever runs whenever the motor switch is safe
      And whatever else moves, when the signal is lost, both motors are stopped

    @always @motor
    Scenario: Both motors pull alike unless they are to steer
      Given the motor switch is live
      And the thrust switch is even
      Then whatever else moves, the port motor moves as far as the starboard motor

  Rule: Between centre and full, and one way as far as the other

    Scenario: Half a stick is softer by its expo
      * with the roll stick half left and the rate switch high, the port aileron is 9.9° ± 1° up
      * with the roll stick half left, the port aileron is 7.4° ± 0.9° up
      * with the pitch stick half back and the rate switch high, the elevator is 10.4° ± 1° up
      * with the pitch stick half back, the elevator is 8° ± 0.5° up
      * with the yaw stick half left, the rudder is 12.8° ± 1° left
