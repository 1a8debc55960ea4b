Feature: selecting
  @wing
  Scenario: Ailerons
    When the roll stick is full right
    Then the port aileron drops
