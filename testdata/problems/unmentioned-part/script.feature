Feature: Sedge

  Scenario: Half a wing
    * with low rates and right roll, the starboard aileron rises
    * with high rates and right roll, the starboard aileron rises
    * with roll trim full right, the model rolls right
    * with pitch stick full back, the elevator rises
    * with pitch knob full back, the elevator rises
