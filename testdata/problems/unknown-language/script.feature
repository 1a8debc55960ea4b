# language: qq
Feature: a language nobody speaks
  Scenario: Neutral
    Then the elevator is at neutral
