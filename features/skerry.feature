Feature: Skerry, before the first tow of the season
  Every surface of the wing is camber, roll and brake at once. So every stick is
  asked about in every phase, every lever with and without the others, and what
  comes in gently is asked about on its way.

  Scenario: At rest the wing is as it was drawn
    Given the phase switch is thermal
    And the camber lever is at none
    And the brake lever is shut
    Then all surfaces are at neutral

  Rule: Ailerons and outer flaps roll, the inner flaps only in speed

    @wing
    Scenario Outline: Roll to the <way> in <phase>
      Given the phase switch is <phase>
      When the roll stick is full <way>
      Then the <low> aileron rises <up> ± 1°
      And the <low> outer flap rises <flap up> ± 0.8°
      And the <low> inner flap <inner low>
      And the <high> inner flap <inner high>
      And the <high> outer flap drops <flap down> ± 0.6°
      And the <high> aileron drops <down> ± 1°
      And both v-tails stay still
      And the model rolls <way>

      Examples:
        | phase   | way   | low       | high      | up    | flap up | flap down | down  | inner low         | inner high         |
        | thermal | right | starboard | port      | 21.4° | 11.3°   | 7.6°      | 14.4° | stays still       | stays still        |
        | thermal | left  | port      | starboard | 21.4° | 11.3°   | 7.6°      | 14.4° | stays still       | stays still        |
        | launch  | right | starboard | port      | 17.1° | 9.4°    | 6.2°      | 11.5° | stays still       | stays still        |
        | launch  | left  | port      | starboard | 17.1° | 9.4°    | 6.2°      | 11.5° | stays still       | stays still        |
        | speed   | right | starboard | port      | 13.9° | 7.3°    | 4.8°      | 9.4°  | rises 4.1° ± 0.4° | drops 2.7° ± 0.25° |
        | speed   | left  | port      | starboard | 13.9° | 7.3°    | 4.8°      | 9.4°  | rises 4.1° ± 0.4° | drops 2.7° ± 0.25° |

    @wing
    Scenario: Half a stick, and who goes how far
      When the roll stick is half right
      Then the starboard aileron rises, between 7° and 9°
      And the starboard outer flap moves together with the starboard aileron
      And the starboard outer flap moves less than the starboard aileron
      And the port outer flap moves together with the port aileron
      And the port outer flap moves less than the port aileron
      And the port aileron moves opposite to the starboard aileron
      And the starboard aileron moves more than the port aileron
      And the flaps add at least 25 % to the roll
      And adverse yaw does not grow

    @wing @trim
    Scenario: Roll trim
      * with roll trim full right, the starboard aileron rises 1.7° ± 0.4°, the starboard outer flap rises 0.9° ± 0.3°, the port outer flap drops 0.6° ± 0.1° and the port aileron drops 1.2° ± 0.3°
      * with roll trim full left, the port aileron rises 1.7° ± 0.4°, the port outer flap rises 0.9° ± 0.3°, the starboard outer flap drops 0.6° ± 0.1° and the starboard aileron drops 1.2° ± 0.3°
      * with roll trim full right, all inner flaps stay still and the model rolls right

  Rule: The V-tail is elevator and rudder in one

    @tail
    Scenario Outline: Elevator in <phase>
      Given the phase switch is <phase>
      When the pitch stick is full back
      Then the port v-tail rises <back> ± 1°
      And the starboard v-tail rises <back> ± 1°
      And the port v-tail moves as far as the starboard v-tail ± 0.5°
      And the model pitches up
      And the model does not roll
      When everything rests
      And the phase switch is <phase>
      And the pitch stick is full forward
      Then the port v-tail is <forward> ± 0.9° down
      And the starboard v-tail is <forward> ± 0.9° down
      And the model pitches down

      Examples:
        | phase   | back  | forward |
        | thermal | 10.6° | 9.2°    |
        | launch  | 10.6° | 9.2°    |
        | speed   | 7.1°  | 5.8°    |

    @tail
    Scenario Outline: Rudder to the <way>
      When the yaw stick is full <way>
      Then the <down> v-tail drops 8.6° ± 1°
      And the <up> v-tail rises 8.8° ± 1°
      And the port v-tail moves opposite to the starboard v-tail
      And all flaps stay still
      And both ailerons stay still
      And the model yaws <way>

      Examples:
        | way   | down      | up        |
        | right | starboard | port      |
        | left  | port      | starboard |

    @tail @trim
    Scenario: Pitch and yaw trim
      * with pitch trim full back, both v-tails rise 1.4° ± 0.3° and the model pitches up
      * with pitch trim full forward, both v-tails drop 1.4° ± 0.3° and the model pitches down
      * with yaw trim full right, the starboard v-tail drops 0.7° ± 0.15°, the port v-tail rises 0.7° ± 0.15° and the model yaws right
      * with yaw trim full left, the port v-tail drops 0.7° ± 0.15°, the starboard v-tail rises 0.7° ± 0.15° and the model yaws left

  Rule: Snap flap follows the stick in launch and in speed

    @wing
    Scenario Outline: Pull and push in <phase>
      * with the phase switch <phase> and the pitch stick full back, both ailerons drop 3.7° ± 0.4°, both outer flaps drop <outer> ± 0.4° and both inner flaps drop <inner> ± 0.4°
      * with the phase switch <phase> and the pitch stick full forward, both ailerons rise 2.5° ± 0.4°, both outer flaps rise 3.2° ± 0.4° and both inner flaps rise 2.6° ± 0.4°
      * with the phase switch <phase> and the pitch trim full back, both ailerons stay still, all flaps stay still and both v-tails rise

      Examples:
        | phase  | outer | inner |
        | launch | 5°    | 4.5°  |
        | speed  | 4.7°  | 4.2°  |

    @wing
    Scenario: Not in thermal
      * with the pitch stick full back, both ailerons stay still and all flaps stay still
      * with the pitch stick full forward, both ailerons stay still and all flaps stay still

  Rule: Camber comes from the lever and from the phase

    @wing
    Scenario: The camber lever
      When the camber lever is full
      Then both ailerons drop 4.1° ± 0.4°
      And both outer flaps drop 4.8° ± 0.4°
      And both inner flaps drop 4.3° ± 0.4°
      And both v-tails stay still
      And the model does not roll
      When the camber lever is half
      Then both ailerons rise, at least 1.5°
      And both outer flaps are 2.4° ± 0.4° down
      And both inner flaps are 2.1° ± 0.4° down

    @wing @slow
    Scenario: Launch comes in over a second
      When the phase switch is launch
      Then both ailerons drop 3.3° ± 0.4°
      And both outer flaps drop 6.5° ± 0.5°
      And both inner flaps drop 7° ± 0.5°
      And both v-tails stay still
      And both inner flaps are 3.5° ± 0.5° down after 0.5 s
      And both outer flaps are 6.5° ± 0.5° down within 1.1 s
      And the model does not roll

    @wing @slow
    Scenario: Speed comes in faster
      When the phase switch is speed
      Then both ailerons rise 2.1° ± 0.3°
      And both outer flaps rise 2.6° ± 0.3°
      And both inner flaps rise 2.1° ± 0.3°
      And both v-tails stay still
      And both outer flaps are 1.3° ± 0.3° up after 0.3 s
      And both outer flaps are 2.6° ± 0.3° up within 0.7 s
      When the phase switch is thermal
      Then all surfaces are at neutral

  Rule: The brake lever raises the ailerons and lowers the flaps

    @wing @brakes
    Scenario: Brakes out and in
      When the brake lever is open
      Then both ailerons rise 16.5° ± 1°
      And both outer flaps drop 43.7° ± 1.5°
      And both inner flaps drop 53.7° ± 1.5°
      And both v-tails drop 3.5° ± 0.4°
      And the model does not roll
      And the model does not yaw
      And the flaps are not at their stops
      And every servo has at least twice the torque it needs at 12 m/s
      When the brake lever is half
      Then both ailerons are 7.4° ± 0.8° up
      And both outer flaps are 18.5° ± 1° down
      And both inner flaps are 22.2° ± 1° down
      And the port v-tail is 2.8° ± 0.3° down
      And the starboard v-tail is 3° ± 0.3° down
      When the brake lever is shut
      Then all surfaces are at neutral

    @wing @brakes
    Scenario: A nudge of the lever does nothing
      When the brake lever is at 5%
      Then all surfaces stay still

    @wing @brakes
    Scenario Outline: Roll to the <way> with the brakes at <detent>
      Given the brake lever is at <detent>
      When the roll stick is full <way>
      Then the <low> aileron rises 21° ± 1°
      And the <low> outer flap rises, at least 11°
      And the <high> outer flap drops, at least 7.5°
      And the <high> aileron drops 21.4° ± 1°
      And both inner flaps stay still
      And every channel is within its travel
      And the model rolls <way>

      Examples:
        | detent | way   | low       | high      |
        | half   | right | starboard | port      |
        | half   | left  | port      | starboard |
        | open   | right | starboard | port      |
        | open   | left  | port      | starboard |

    @wing @brakes
    Scenario Outline: Brakes take camber and snap flap off in <phase>
      Given the phase switch is <phase>
      And full camber
      And open brakes
      When the pitch stick is full back
      Then both ailerons are 16.5° ± 1° up
      And both outer flaps are 43.7° ± 1° down
      And both inner flaps are 53.7° ± 1° down
      And all flaps stay still
      And both v-tails rise

      Examples:
        | phase   |
        | thermal |
        | launch  |
        | speed   |

    @brakes
    Scenario: All that the channels can be asked for at once
      Given the brakes are open
      And full camber
      When the pitch stick is full forward, pitch trim full forward, yaw stick full right, yaw trim full right, roll stick full right and roll trim full right
      Then every channel is within its travel
      When the yaw stick is full left, yaw trim full left, roll stick full left and roll trim full left
      Then every channel is within its travel

  Rule: Without a signal it comes down nearby

    @brakes @signal
    Scenario: Loss of signal in a fast turn
      Given the phase switch is speed
      And full right roll, the pitch stick full back and full right yaw
      When the signal is lost
      Then both ailerons are 16.5° ± 1° up
      And both outer flaps are 43.7° ± 1° down
      And both inner flaps are 53.7° ± 1° down
      And the port v-tail is 1.8° ± 0.3° down
      And the starboard v-tail is 4.9° ± 0.3° down
      When the signal is back
      Then all flaps rise, at least 35°
      And the port v-tail rises, at least 15°

  Rule: Always and never

    @always
    Scenario: Nothing runs out of travel, wherever everything stands
      Then no channel runs out of travel
      And no surface reaches its stop

    @always
    Scenario: No stick and no lever ever turns a surface back
      Then at every position, the more right the roll stick, the higher the starboard aileron and the lower the port aileron
      And at every position, the more back the pitch stick, the higher both v-tails

  Rule: Between centre and full, and one way as far as the other

    Scenario: Half a stick is softer by its expo
      * with the roll stick half left and the phase switch speed, the port aileron is 7.7° ± 1° up
      * with the roll stick half left and the phase switch launch, the port aileron is 3.3° ± 1° up
      * with the pitch stick half back and the phase switch speed, the port v-tail is 3.1° ± 0.5° up
      * with the pitch stick half back, the port v-tail is 4.3° ± 1° up
      * with the yaw stick half left, the port v-tail is 3.8° ± 0.4° down
