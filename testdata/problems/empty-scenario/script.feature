Feature: scenarios without steps
  Scenario: To be written
  Scenario: Written
    Then the elevator is at neutral
