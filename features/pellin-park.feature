Feature: Pellin, before a pupil throws it

  Scenario: At rest
    Then all surfaces are at neutral

  @tail
  Scenario Outline: Turning <way>, <rate>
    Given rates are <rate>
    When the turn stick is full <way>
    Then the rudder moves <way> <throw> ± 1°
    And the model yaws <way>
    And the elevator stays still

    Examples:
      | rate   | way   | throw |
      | gentle | right | 16.5° |
      | gentle | left  | 16.5° |
      | lively | right | 25.5° |
      | lively | left  | 25.5° |

  @tail
  Scenario Outline: Up and down, <rate>
    Given rates are <rate>
    When the pitch stick is full back
    Then the elevator rises <up> ± 1°
    And the model pitches up
    And the rudder stays still
    When the pitch stick is full forward
    Then the elevator is <down> ± 1° down
    And the elevator drops
    And the model pitches down

    Examples:
      | rate   | up    | down  |
      | gentle | 11°   | 10.5° |
      | lively | 17.6° | 16.8° |

  @tail @trim
  Scenario: Trims
    * with yaw trim full right, the rudder moves right 3.6° ± 0.5° and the model yaws right
    * with yaw trim full left, the rudder moves left 3.6° ± 0.5° and the model yaws left
    * with pitch trim full back, the elevator rises 2.6° ± 0.5° and the model pitches up
    * with pitch trim full forward, the elevator drops 2.5° ± 0.5° and the model pitches down

  @signal
  Scenario: Without a signal it circles
    Given the turn stick is full left
    And the pitch stick is full back
    When the signal is lost
    Then the rudder is 7.5° ± 1° right
    And the elevator is at neutral

  Rule: Always and never

    @always
    Scenario: Nothing runs out of travel, wherever everything stands
      Then no channel runs out of travel

    @always
    Scenario: No stick and no lever ever turns a surface back
      Then at every position, the more right the turn stick, the further right the rudder
      And at every position, the more back the pitch stick, the higher the elevator

    @always
    Scenario: Each stick has its own surface
      Then the rudder depends on nothing but the turn stick, the yaw trim and the rate switch
      And the elevator depends on nothing but the pitch stick, the pitch trim and the rate switch
