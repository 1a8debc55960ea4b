# The shortest walk-around: go through it with the model in hand. Take the propeller
# off, or restrain the model, before you switch on.
#
# Bring the controls to where Given says, look, move what When says, and look again.
# Where the model does something else, write here what it really does, and let
# "hingeline faults --seen" with this file say what is wrong. Take out what you did not
# look at.
#
# What you see is which way each part goes and how far, to 1°; less than 2° is not seen as a movement.
Feature: Pellin, the shortest walk-around

  Scenario: Step 1, yaw trim full left
    Given everything rests
    Then the rudder is at neutral
    And the elevator is at neutral
    When the yaw trim is full left
    Then the rudder moves left 3.6° ± 0.9°
    And the rudder is 3.6° left ± 0.9°
    And the elevator stays still
    And the elevator is at neutral

  Scenario: Step 2, pitch trim full forward
    Given everything rests
    When the pitch trim is full forward
    Then the rudder stays still
    And the rudder is at neutral
    And the elevator drops 2.5° ± 0.9°
    And the elevator is 2.5° down ± 0.9°

  Scenario: Step 3, turn stick full right, pitch stick full back
    Given everything rests
    When the turn stick is full right
    And the pitch stick is full back
    Then the rudder moves right 16.5° ± 0.9°
    And the rudder is 16.5° right ± 0.9°
    And the elevator rises 11° ± 0.9°
    And the elevator is 11° up ± 0.9°

  Scenario: Step 4, turn stick full left, pitch stick full forward
    Given everything rests
    When the turn stick is full left
    And the pitch stick is full forward
    Then the rudder moves left 16.5° ± 0.9°
    And the rudder is 16.5° left ± 0.9°
    And the elevator drops 10.5° ± 0.9°
    And the elevator is 10.5° down ± 0.9°

  Scenario: Step 5, turn stick full right, pitch stick full back
    Given the rate switch is lively
    Then the rudder is at neutral
    And the elevator is at neutral
    When the turn stick is full right
    And the pitch stick is full back
    Then the rudder moves right 25.5° ± 0.9°
    And the rudder is 25.5° right ± 0.9°
    And the elevator rises 17.6° ± 0.9°
    And the elevator is 17.6° up ± 0.9°

  Scenario: Step 6, signal lost
    Given the turn stick is full left
    And the pitch stick is full forward
    And the rate switch is lively
    Then the rudder is 25.5° left ± 0.9°
    And the elevator is 16.8° down ± 0.9°
    When the signal is lost
    Then the rudder moves right 33° ± 0.9°
    And the rudder is 7.5° right ± 0.9°
    And the elevator rises 16.8° ± 0.9°
    And the elevator is at neutral
