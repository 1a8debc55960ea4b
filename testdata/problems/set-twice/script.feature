Feature: two places at once
  Scenario: Rates
    Given rates are high
    And low rates
    When the roll stick is full right and left roll
    Then the port aileron drops
