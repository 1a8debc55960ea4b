Feature: placeholders
  Scenario Outline: The rudder <wya>
    When the yaw stick is full <way>
    Then the rudder moves <direction>
    Examples:
      | way   |
      | right |
  Scenario: No outline
    Then the <part> is at neutral
