Feature: which came first
  Scenario: Signal
    Given the motor switch is live
    When the throttle is full
    And the signal is lost
    Then the motor stays stopped
