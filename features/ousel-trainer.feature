Feature: Ousel Trainer, before every flight

  Scenario: At rest
    Then all surfaces are at neutral
    And the tail wheel is at neutral
    And the motor is stopped

  @wing
  Scenario: Right stick, right aileron up
    When the roll stick is full right
    Then the starboard aileron rises 16° ± 2°
    And the port aileron drops 16° ± 2°

  @wing
  Scenario: Left stick, left aileron up
    When the roll stick is full left
    Then the port aileron rises 16° ± 2°
    And the starboard aileron drops 16° ± 2°

  @tail
  Scenario: Elevator
    * with the pitch stick full back, the elevator rises 14° ± 2°
    * with the pitch stick full forward, the elevator drops 14° ± 2°

  @tail
  Scenario: Rudder and tail wheel
    * with the yaw stick full right, the rudder moves right 25° ± 2° and the tail wheel moves right
    * with the yaw stick full left, the rudder moves left 25° ± 2° and the tail wheel moves left

  @motor
  Scenario: Safe means safe
    When the throttle is full
    Then the motor stays stopped

  @motor
  Scenario: The throttle runs the motor
    Given the motor switch is live
    When the throttle is full
    Then the motor speeds up
    And the motor is at 100%
    And channel 3 is within its travel
    When the throttle is closed
    Then the motor stops

  @motor
  Scenario: Loss of signal
    Given the motor switch is live
    And full throttle
    And right roll, the pitch stick full back and the yaw stick full right
    When the signal is lost
    Then the motor stops
    And all surfaces stay still

  Rule: Always and never

    @always
    Scenario: Nothing runs out of travel, wherever everything stands
      Then no channel runs out of travel

    @always
    Scenario: No stick and no lever ever turns a surface back
      Then at every position, the more right the roll stick, the higher the starboard aileron and the lower the port aileron
      And at every position, the more back the pitch stick, the higher the elevator
      And at every position, the more right the yaw stick, the further right the rudder and the further right the tail wheel

    @always
    Scenario: Each stick has its own surface
      Then the elevator depends on nothing but the pitch stick
      And the rudder depends on nothing but the yaw stick
      And both ailerons depend on nothing but the roll stick

    @always @motor
    Scenario: What is safe stays safe, whatever else moves
      Then the motor never runs whenever the motor switch is safe
      And whatever else moves, when the signal is lost, the motor is stopped

  Rule: Between centre and full, and one way as far as the other

    Scenario: Half a stick is softer by its expo
      * with the roll stick half left, the port aileron is 6.8° ± 1° up
      * with the pitch stick half forward, the elevator is 6.1° ± 1° down

    Scenario: Without a signal from rest
      * with the signal lost, the rudder is at neutral
