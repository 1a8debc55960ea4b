Feature: measures that the airframe file lacks
  Scenario: Pitch
    When the pitch stick is full back
    Then the elevator rises 20 mm
    And the rudder is not at its stop
    And the ailerons add at least 60 % to the roll
    And the elevator servo has twice the torque it needs at 30 m/s
