Feature: Sedge

  Scenario: At odds
    * with low rates and right roll, the starboard aileron rises and the port aileron drops
    * with high rates and right roll, the starboard aileron rises and the port aileron drops
    * with roll trim full right, the model rolls right
    * with pitch stick full back, the elevator rises
    * with pitch knob full back, the elevator rises
    * with pitch stick full back, the elevator rises 14° ± 1°
    * with pitch stick full back, the elevator rises 10° ± 1°
