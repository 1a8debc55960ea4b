Feature: outlines that do not run
  Scenario Outline: Only a heading row
    When the yaw stick is full <way>
    Then the rudder moves <way>
    Examples:
      | way |
  Scenario Outline: No Examples at all
    Then the rudder is at neutral
