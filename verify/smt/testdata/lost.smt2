; claim: with the signal lost, the motor is stopped
; model: Wren
;
; This file asks for a position of the controls at which the claim FAILS.
;   unsat: there is none; the claim holds at every position that it is about.
;   sat:   there is one; have the solver print the constants to see it
;          (z3 -model FILE; cvc5 --dump-models FILE).
;
; Numbers are exact. Sticks, trims, demands, sums and outputs are in percent of full
; travel, angles in degrees: plus is right, back (nose up), trailing edge down or left.
; Everything has come to rest: phases have faded, slow channels have arrived.
(set-logic QF_LRA)
;
; The controls that bear on the claim.
;
; What follows from them, in the order of the chain.
;
; The claim fails.
(assert
  false)
(check-sat)
