Feature: names that nothing has
  Scenario: Rolling
    Given the rol stick is full right
    When the flap levr goes to landing
    Then the port flpa drops
    And channel 12 is at 1500 µs
