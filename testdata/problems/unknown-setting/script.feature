Feature: positions that controls do not have
  Scenario: Landing
    Given rates hihg
    And the pitch stick is full right
    When landign flap
    And the roll stick is 50%
    Then the flaps drop
