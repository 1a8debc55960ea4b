Feature: scenarios without an outcome
  Scenario: Only moving
    Given rates are high
    When the roll stick is full right
