Feature: movements
  Scenario: Yaw
    When the yaw stick is full right
    Then the rudder rises
    And the motor stays still
    And the rudder moves together with the port flap
    And channel 7 moves right
