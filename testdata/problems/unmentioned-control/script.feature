Feature: Sedge

  Scenario: No switch
    * with low rates and right roll, the starboard aileron rises and the port aileron drops
    * with roll trim full right, the model rolls right
    * with pitch stick full back, the elevator rises
    * with pitch knob full back, the elevator rises
