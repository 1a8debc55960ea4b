Feature: not all of it is Gherkin
  @two words
  Scenario: Neutral
    Then the elevator is at neutral
    some words that fit nothing
    Background:
  Scenario Outline: A table with holes
    Then the <part> is at neutral
    Examples:
      | part     |
      | elevator | rudder |
