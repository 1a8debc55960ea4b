Feature: saved in another encoding
  Scenario: Neutral
    Then the elevator rises 5°
