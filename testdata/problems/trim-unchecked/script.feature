Feature: Sedge

  Scenario: No trim
    * with low rates and right roll, the starboard aileron rises and the port aileron drops
    * with high rates and right roll, the starboard aileron rises and the port aileron drops
    * with pitch stick full back, the elevator rises
    * with pitch knob full back, the elevator rises
