Feature: one name twice
  Scenario: Neutral
    Then the elevator is at neutral
  Scenario: Neutral
    Then the rudder is at neutral
