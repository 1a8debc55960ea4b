; claim: the motor runs at more than 10 % whenever the throttle is above 20 %
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
; throttle: a lever, 0 to 100.
(declare-const |throttle| Real)
(assert (<= 0.0 |throttle| 100.0))
; motor switch: a switch, at exactly one of its positions.
(declare-const |motor switch is at safe| Bool)
(declare-const |motor switch is at live| Bool)
(assert (or |motor switch is at safe| |motor switch is at live|))
(assert (not (and |motor switch is at safe| |motor switch is at live|)))
;
; What follows from them, in the order of the chain.
; The claim is only about positions where this holds.
(define-fun |the claim counts| () Bool
  (> |throttle| 20.0))
(assert |the claim counts|)
; Curve.
(define-fun |demand throttle after its curve| () Real
  (+ (* 2.0 |throttle|) (- 100.0)))
; Channel 3 motor, line 2 of its mix replaced, in percent.
(define-fun |sum of channel 3| () Real
  (ite |motor switch is at safe| (- 100.0) |demand throttle after its curve|))
; Channel 3 motor: travel limit 100 %.
(define-fun |channel 3 limited and turned| () Real
  (ite (> |sum of channel 3| 100.0) 100.0 (ite (< |sum of channel 3| (- 100.0)) (- 100.0) |sum of channel 3|)))
; Channel 3 motor: what leaves it, between the pulse limits.
(define-fun |output of channel 3| () Real
  (ite (> |channel 3 limited and turned| 100.0) 100.0 (ite (< |channel 3 limited and turned| (- 100.0)) (- 100.0) |channel 3 limited and turned|)))
; Motor motor: 0 % at 1000 us, 100 % at 2000 us.
(define-fun |motor before its ends| () Real
  (* 0.1 (+ (+ (* 5.0 |output of channel 3|) 1500.0) (- 1000.0))))
; Part motor, in percent of power.
(define-fun |motor| () Real
  (ite (> |motor before its ends| 100.0) 100.0 (ite (< |motor before its ends| 0.0) 0.0 |motor before its ends|)))
;
; The claim fails.
(assert
  (or (< |motor| 10.0) (> |motor| 100.0)))
(check-sat)
