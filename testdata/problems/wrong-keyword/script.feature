Feature: keywords
  Scenario: The wrong way round
    Given the port flap is at neutral
    When the port flap drops
    Then the flap lever is at landing
    And the port flap is at neutral
