Feature: one script twice
  Scenario: Neutral
    Then the elevator is at neutral
