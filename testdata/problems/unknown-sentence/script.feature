Feature: sentences that no model understands
  Scenario: Rolling
    Given rates are high
    When the roll stick is full right
    Then the model flies well
    And whatever the yaw stick, the port flap stays still
    And nothing happens
    And the port aileron drosp
    And the port aileron moves
