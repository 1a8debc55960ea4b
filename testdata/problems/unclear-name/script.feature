Feature: names that fit several things
  Scenario: Landing
    When the flap lever is at landing
    Then the flap drops
    And the port flap moves together with the ailerons
    And both surfaces drop
