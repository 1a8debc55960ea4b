# The shortest walk-around: go through it with the model in hand. Take the propeller
# off, or restrain the model, before you switch on.
#
# Bring the controls to where Given says, look, move what When says, and look again.
# Where the model does something else, write here what it really does, and let
# "hingeline faults --seen" with this file say what is wrong. Take out what you did not
# look at.
#
# What you see is which way each part goes; less than 2° is not seen.
Feature: Pellin, the shortest walk-around

  Scenario: Step 1, as it stands
    Given everything rests
    Then the rudder is at neutral
    And the elevator is at neutral

  Scenario: Step 2, yaw trim full left
    Given everything rests
    When the yaw trim is full left
    Then the rudder moves left
    And the elevator stays still

  Scenario: Step 3, pitch trim full forward
    Given everything rests
    When the pitch trim is full forward
    Then the rudder stays still
    And the elevator drops

  Scenario: Step 4, signal lost
    Given everything rests
    When the signal is lost
    Then the rudder moves right
    And the elevator stays still

  Scenario: Step 5, signal lost
    Given the turn stick is full right
    And the pitch stick is full back
    When the signal is lost
    Then the rudder moves left, at least 1°
    And the elevator drops
