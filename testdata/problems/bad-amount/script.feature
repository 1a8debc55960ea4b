Feature: amounts
  Scenario: Landing
    When the flap lever is at landing
    Then the port flap drops -40°
    And the port flap drops 0°
    And the port flap drops between 40° and 30°
    And the port flap drops 40° ± 0°
    And the port flap drops 4000°
