Feature: keywords
  Scenaro: A heading that is lost
  Scenario: Steps that are lost
    Whem the roll stick is full right
    the port aileron drops
    Then the elevator is at neutral
  Scenario: A step that fits nothing
    Then the elevator is at neutral
    Annd the rudder is at neutral
