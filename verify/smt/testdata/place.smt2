; claim: the port aileron never drops more than 20 degrees
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
(set-logic QF_NRA)
;
; The controls that bear on the claim.
; rate switch: a switch, at exactly one of its positions.
(declare-const |rate switch is at low| Bool)
(declare-const |rate switch is at high| Bool)
(assert (or |rate switch is at low| |rate switch is at high|))
(assert (not (and |rate switch is at low| |rate switch is at high|)))
; roll stick: a stick, -100 left to 100 right.
(declare-const |roll stick| Real)
(assert (<= (- 100.0) |roll stick| 100.0))
; roll trim: a trim, -100 left to 100 right.
(declare-const |roll trim| Real)
(assert (<= (- 100.0) |roll trim| 100.0))
; flap lever: a lever, 0 to 100.
(declare-const |flap lever| Real)
(assert (<= 0.0 |flap lever| 100.0))
;
; What follows from them, in the order of the chain.
; Expo 30 %.
(define-fun |demand roll, rate 1 after expo| () Real
  (+ (* 0.7 |roll stick|) (* 0.00003 (* |roll stick| (* |roll stick| |roll stick|)))))
; With throw 90 %.
(define-fun |demand roll, rate 1| () Real
  (* 0.9 |demand roll, rate 1 after expo|))
; Expo -20 %.
(define-fun |demand roll, rate 2 after expo| () Real
  (ite (>= |roll stick| 0.0) (+ (* 1.4 |roll stick|) (* (- 0.006) (* |roll stick| |roll stick|)) (* 0.00002 (* |roll stick| (* |roll stick| |roll stick|)))) (+ (* 1.4 |roll stick|) (* 0.006 (* |roll stick| |roll stick|)) (* 0.00002 (* |roll stick| (* |roll stick| |roll stick|))))))
; With throw 60 %.
(define-fun |demand roll, rate 2| () Real
  (* 0.6 |demand roll, rate 2 after expo|))
; Demand roll with its trim, in percent.
(define-fun |demand roll| () Real
  (+ (ite |rate switch is at high| |demand roll, rate 1| |demand roll, rate 2|) (* 0.1 |roll trim|)))
; Curve.
(define-fun |demand fade after its curve| () Real
  (+ (* (- 0.6) |flap lever|) 100.0))
; Channel 1 port aileron, line 2 of its mix scaled, in percent.
(define-fun |sum of channel 1 after line 2| () Real
  (* |demand roll| (* 0.01 |demand fade after its curve|)))
; Curve.
(define-fun |demand flap after its curve| () Real
  (ite (< |flap lever| 30.0) (* |flap lever| (+ (* |flap lever| (+ (* (- (/ 12331.0 22018500.0)) |flap lever|) (/ 2321.0 366975.0))) (/ 173.0 105.0))) (+ (* (+ |flap lever| (- 30.0)) (+ (* (+ |flap lever| (- 30.0)) (+ (* (- (/ 23.0 1997975.0)) (+ |flap lever| (- 30.0))) (- (/ 141.0 57085.0)))) (/ 120.0 233.0))) 40.0)))
; Channel 1 port aileron, line 3 of its mix added up, in percent.
(define-fun |sum of channel 1| () Real
  (+ |sum of channel 1 after line 2| (ite |rate switch is at low| (* 0.2 |demand flap after its curve|) 0.0)))
; Channel 1 port aileron: travel limit 100 %.
(define-fun |channel 1 limited and turned| () Real
  (ite (> |sum of channel 1| 100.0) 100.0 (ite (< |sum of channel 1| (- 100.0)) (- 100.0) |sum of channel 1|)))
; Channel 1 port aileron: what leaves it, between the pulse limits.
(define-fun |output of channel 1| () Real
  (ite (> |channel 1 limited and turned| 100.0) 100.0 (ite (< |channel 1 limited and turned| (- 100.0)) (- 100.0) |channel 1 limited and turned|)))
; The angle of port aileron rises above 20.000 degrees beyond an output of 72.762817 percent, found by
; halving to within 0.000000001 percent.
;
; The claim fails.
(assert
  (> |output of channel 1| 72.76281749946065))
(check-sat)
