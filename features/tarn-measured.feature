Feature: Tarn, first flight with new owner
  Nobody knows how it was built, so the check asks for what the throw gauge
  should read. The brakes, the camber and the slowed flaps get their own rules.

  Background:
    Given the motor switch is safe
    And the wheel switch is lowered

  Scenario: At rest
    Given the flight switch is cruise
    And the brake lever is shut
    Then all surfaces are at neutral
    And the wheel retract is out
    And the motor is stopped

  Rule: Roll comes from the ailerons alone

    @wing
    Scenario Outline: Roll to the <way> in <flight>
      Given the flight switch is <flight>
      When the roll stick is full <way>
      Then the <low wing> aileron rises <rise> ± 2°
      And the <high wing> aileron drops <drop> ± 2°
      And both flaps stay still
      And both v-tails stay still

      Examples:
        | flight  | way   | low wing  | high wing | rise  | drop  |
        | cruise  | right | starboard | port      | 22.6° | 11.8° |
        | cruise  | left  | port      | starboard | 21.9° | 11.3° |
        | thermal | right | starboard | port      | 22.6° | 11.8° |
        | thermal | left  | port      | starboard | 21.9° | 11.3° |
        | speed   | right | starboard | port      | 15.8° | 8.4°  |
        | speed   | left  | port      | starboard | 15.3° | 8°    |

    @wing
    Scenario: Half a stick is well under half the roll
      When the roll stick is half right
      Then the starboard aileron rises, less than 10°
      And the starboard aileron moves more than the port aileron
      And the starboard aileron moves opposite to the port aileron

    @wing @trim
    Scenario: Roll trim
      * with roll trim full right, the starboard aileron rises 2.2° ± 0.5° and the port aileron drops 1.2° ± 0.5°
      * with roll trim full left, the port aileron rises 2.2° ± 0.5° and the starboard aileron drops 1.2° ± 0.5°

  Rule: The V-tail is elevator and rudder in one

    @tail
    Scenario: Pitch moves both sides alike
      When the pitch stick is full back
      Then the port v-tail rises 10.4° ± 1.5°
      And the starboard v-tail rises 9.9° ± 1.5°
      And the port v-tail moves as far as the starboard v-tail
      When the pitch stick is full forward
      Then the port v-tail drops
      And the starboard v-tail drops
      And the port v-tail is 8.4° ± 1.5° down
      And the starboard v-tail is 9° ± 1.5° down

    @tail
    Scenario: Yaw moves them apart
      When the yaw stick is full right
      Then the port v-tail rises 7.8° ± 1.5°
      And the starboard v-tail drops 7.4° ± 1.5°
      And the port v-tail moves opposite to the starboard v-tail
      When the yaw stick is full left
      Then the port v-tail is 7.1° ± 1° down
      And the starboard v-tail is 7.4° ± 1° up

    @tail @trim
    Scenario: Pitch trim
      * with pitch trim full back, both v-tails rise 1.3° ± 0.5°
      * with pitch trim full forward, both v-tails drop 1.3° ± 0.5°

  Rule: The brake lever raises the ailerons and lowers the flaps

    @wing @brakes
    Scenario: Brakes out
      When the brake lever is at open
      Then both ailerons rise, between 13° and 18°
      And both flaps drop, between 57° and 62°
      And both v-tails drop, at least 1.5°
      And the port flap moves opposite to the port aileron
      And every channel is within its travel

    @wing @brakes
    Scenario: Half brakes
      When the brake lever is at half
      Then both ailerons rise, at least 5°
      And both flaps drop, at least 18°
      When the brake lever is shut
      Then both ailerons drop
      And both flaps rise
      And all surfaces are at neutral

    @wing @brakes
    Scenario: A nudge of the lever does nothing
      When the brake lever is at 8%
      Then all surfaces stay still

    @wing @brakes
    Scenario Outline: Roll to the <way> with the brakes out
      Given open brakes
      When the roll stick is full <way>
      Then the <low wing> aileron rises, at least 15°
      And the <high wing> aileron drops, at least 9°
      And both flaps stay still
      And every channel is within its travel

      Examples:
        | way   | low wing  | high wing |
        | right | starboard | port      |
        | left  | port      | starboard |

    @brakes
    Scenario: Brakes take the camber off
      * with the flight switch thermal and open brakes, the port aileron is 15.5° ± 2° up
      * with the flight switch speed and open brakes, the port aileron is 15.5° ± 2° up
      * with the flight switch thermal and open brakes, the starboard aileron is 15.5° ± 2° up
      * with the flight switch speed and open brakes, the starboard aileron is 15.5° ± 2° up
      * with the flight switch thermal and open brakes, the port flap is 59.4° ± 1° down
      * with the flight switch thermal and open brakes, the starboard flap is 60.6° ± 1° down
      * with the flight switch speed and open brakes, the port flap is 59.4° ± 1° down
      * with the flight switch speed and open brakes, the starboard flap is 60.6° ± 1° down

  Rule: The flaps are slow: 1.5 s for all of their travel

    @slow
    Scenario: Brakes out, by the watch
      When the brake lever is at open
      Then the port flap is less than 25° down after 0.5 s
      And the starboard flap is less than 25° down after 0.5 s
      And the port flap is more than 40° down after 1.2 s
      And both flaps are at least 57° down within 1.4 s
      But both ailerons rise, at least 13°, after 0.1 s

    @slow
    Scenario: The wheel takes three seconds
      When the wheel switch is raised
      Then the wheel retract is 50% ± 2% out after 1.5 s
      And the wheel retract is in within 3 s
      When the wheel switch is lowered
      Then the wheel retract extends
      And the wheel retract is out

  Rule: Camber comes in gently

    @wing @slow
    Scenario: Thermal
      When the flight switch is thermal
      Then both ailerons drop, between 2.5° and 4°
      And both flaps drop, between 6° and 8°
      And the port aileron drops, less than 2.5°, after 0.75 s
      And both ailerons drop, at least 2.5°, within 1.5 s

    @wing @slow
    Scenario: Speed
      When the flight switch is speed
      Then both ailerons rise, between 1.5° and 3.5°
      And the port flap rises 1.6° ± 0.2°
      And the starboard flap rises 1.6° ± 0.2°
      And both ailerons rise, less than 1.5°, after 0.4 s
      And both ailerons rise, at least 1.5°, within 0.8 s

    @wing
    Scenario: Back to cruise
      Given the flight switch is thermal
      When the flight switch is cruise
      Then both ailerons rise
      And both flaps rise
      And all surfaces are at neutral

  Rule: The motor folds away when it should

    @motor
    Scenario: Climb, and brakes
      When the motor switch is climb
      Then the motor is at 92.5% ± 1%
      When the brake lever is at half
      Then the motor stops
      When the brake lever is shut
      Then the motor runs
      When the motor switch is safe
      Then the motor stops

    @motor @signal
    Scenario: Loss of signal
      Given the motor switch is climb
      And the roll stick is full right
      And the pitch stick is full back
      And the yaw stick is full right
      When the signal is lost
      Then the motor stops
      And both ailerons are at neutral
      And both v-tails are at neutral
      And the motor channel is at 1000 µs

    @brakes @signal
    Scenario: Loss of signal on the approach
      Given open brakes
      When the signal is lost
      Then both flaps stay still
      And the wheel retract stays still
      And the motor stays stopped
      But both ailerons are at neutral

  Rule: Always and never

    @always
    Scenario: Nothing runs out of travel, wherever everything stands
      Then no channel runs out of travel

    @always
    Scenario: No stick and no lever ever turns a surface back
      Then at every position, the more right the roll stick, the higher the starboard aileron and the lower the port aileron
      And at every position, the more back the pitch stick, the higher both v-tails

    @always @motor
    Scenario: What is safe stays safe, whatever else moves
      Then the motor never runs whenever the motor switch is safe
      And the motor never runs whenever the brake lever is above 10 %
      And whatever else moves, when the signal is lost, the motor is stopped

  Rule: Between centre and full, and one way as far as the other

    Scenario: Half a stick is softer by its expo
      * with the roll stick half left and the flight switch speed, the port aileron is 8.9° ± 1° up
      * with the pitch stick half back, the port v-tail is 4.2° ± 0.9° up
      * with the yaw stick half left, the starboard v-tail is 3.3° ± 0.2° up

    Scenario: Full stick back, measured
      * with the pitch stick full back, the port v-tail is 10.4° ± 0.5° up

    Scenario: The wheel stays where it is without a signal
      * with the wheel switch raised and the signal lost, the wheel retract is in
