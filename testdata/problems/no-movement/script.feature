Feature: nothing moves
  Scenario: No When
    Given rates are high
    Then the port flap stays still
  Scenario: A When that changes nothing
    Given the flap lever is at landing
    When the flap lever goes to landing
    Then the flaps stay still
