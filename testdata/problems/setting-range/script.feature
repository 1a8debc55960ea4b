Feature: beyond the end of the travel
  Scenario: Too far
    Given throttle 110%
    When the roll stick is 150% right
    Then the port aileron drops
