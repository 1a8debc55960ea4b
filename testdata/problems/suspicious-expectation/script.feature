Feature: Sedge

  Scenario: Backwards
    * with low rates and right roll, the starboard aileron rises and the port aileron drops
    * with high rates and right roll, the starboard aileron drops and the port aileron rises
    * with roll trim full right, the model rolls left
    * with pitch stick full back, the elevator rises
    * with pitch knob full back, the elevator drops on purpose
