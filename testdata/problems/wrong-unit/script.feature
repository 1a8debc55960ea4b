Feature: units
  Scenario: Landing
    When the flap lever is at landing
    Then the port flap drops 40
    And the port flap drops 40%
    And the port flap drops 40° ± 2 mm
    And the port flap is down after 2 mm
