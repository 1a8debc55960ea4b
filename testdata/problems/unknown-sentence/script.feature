Feature: sentences that no model understands
  Scenario: Rolling
    Given rates are high
    When the roll stick is full right
    Then the model flies well
    And whatever the roll stick does, the port flap stays still
    And no surface reaches its stop
    And the port aileron drosp
    And the port aileron moves
