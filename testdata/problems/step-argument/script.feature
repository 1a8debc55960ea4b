Feature: sentences take nothing below them
  Scenario: Table and text
    Given rates are high
      | low | high |
    Then the elevator is at neutral
      """
      and so is the rudder
      """
