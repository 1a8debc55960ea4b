Feature: measures that the airframe file lacks
  Scenario: Pitch
    When the pitch stick is full back
    Then the elevator rises 20 mm
    And the rudder is not at its stop
