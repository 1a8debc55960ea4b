Feature: what cannot be asked of every position
  Scenario: Times
    Then whatever the flap lever does, after 1 s, both flaps stay still
    And whatever the flap lever does, the port aileron stays still within 2 s
  Scenario: One movement
    Then whatever else moves, the motor stops
    And at every switch position, the elevator is at its stop
  Scenario: Never, by which amount?
    Then the port flap never drops 10° ± 1°
    And the port flap never drops between 10° and 20°
    And the motor never stays stopped
    And the port flap never stays still
    And the port flap never moves together with the starboard flap
  Scenario: More of a switch
    Then the more the rate switch, the higher the port flap
