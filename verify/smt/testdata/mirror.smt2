; claim: the port aileron and the starboard aileron mirror each other
; model: Wren
;
; This file asks for a position of the controls at which the claim FAILS.
;   unsat: there is none; the claim holds at every position that it is about.
;   sat:   there is one; have the solver print the constants to see it
;          (z3 -model FILE; cvc5 --dump-models FILE).
; Linkages are written with a bound of their error, on the safe side: unsat is
; certain; at a position that sat gives, the claim fails or has less than 0.066740 to
; spare (in the unit of the claim).
;
; Numbers are exact. Sticks, trims, demands, sums and outputs are in percent of full
; travel, angles in degrees: plus is right, back (nose up), trailing edge down or left.
; Everything has come to rest: phases have faded, slow channels have arrived.
; Two positions are compared; what belongs to the second only says (other).
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
; port aileron: swing of the servo arm, plus aft, 45 degrees for 100 %.
(define-fun |port aileron arm| () Real
  (* (- 0.45) |output of channel 1|))
; A linkage: swing of the horn for a swing of the arm, in degrees, plus aft. Arm 10 mm,
; horn 16 mm, hinge 62 mm aft and 0 mm up; its horn is within 0.016685 degrees of
; these 27 straight pieces, and its slope between 0.4545 and 0.6291.
(define-fun |linkage| ((arm Real)) Real
  (ite (< arm (- 42.188)) (+ (* (/ 743967067.0 1406000000.0) (+ arm 45.0)) (- 26.747348758))
  (ite (< arm (- 39.375)) (+ (* (/ 1526769123.0 2813000000.0) (+ arm 42.188)) (- 25.259414624))
  (ite (< arm (- 36.563)) (+ (* (/ 195161463.0 351500000.0) (+ arm 39.375)) (- 23.732645501))
  (ite (< arm (- 33.75)) (+ (* (/ 3434881.0 6062500.0) (+ arm 36.563)) (- 22.171353797))
  (ite (< arm (- 30.938)) (+ (* (/ 1622095941.0 2812000000.0) (+ arm 33.75)) (- 20.577569013))
  (ite (< arm (- 28.125)) (+ (* (/ 1648598701.0 2813000000.0) (+ arm 30.938)) (- 18.955473072))
  (ite (< arm (- 25.313)) (+ (* (/ 835526321.0 1406000000.0) (+ arm 28.125)) (- 17.306874371))
  (ite (< arm (- 22.5)) (+ (* (/ 845947473.0 1406500000.0) (+ arm 25.313)) (- 15.635821729))
  (ite (< arm (- 19.688)) (+ (* (/ 46183933.0 76000000.0) (+ arm 22.5)) (- 13.943926783))
  (ite (< arm (- 16.875)) (+ (* (/ 107766381.0 175812500.0) (+ arm 19.688)) (- 12.235121262))
  (ite (< arm (- 11.25)) (+ (* (/ 1160672207.0 1875000000.0) (+ arm 16.875)) (- 10.510859166))
  (ite (< arm (- 5.625)) (+ (* (/ 877601503.0 1406250000.0) (+ arm 11.25)) (- 7.028842545))
  (ite (< arm 0.0) (+ (* (/ 3518436533.0 5625000000.0) (+ arm 5.625)) (- 3.518436533))
  (ite (< arm 5.625) (* (/ 1752923677.0 2812500000.0) arm)
  (ite (< arm 11.25) (+ (* (/ 867966689.0 1406250000.0) (+ arm (- 5.625))) 3.505847354)
  (ite (< arm 14.063) (+ (* (/ 1716461023.0 2813000000.0) (+ arm (- 11.25))) 6.97771411)
  (ite (< arm 16.875) (+ (* (/ 1698698809.0 2812000000.0) (+ arm (- 14.063))) 8.694175133)
  (ite (< arm 19.688) (+ (* (/ 1678993037.0 2813000000.0) (+ arm (- 16.875))) 10.392873942)
  (ite (< arm 22.5) (+ (* (/ 165477937.0 281200000.0) (+ arm (- 19.688))) 12.071866979)
  (ite (< arm 25.313) (+ (* (/ 814120309.0 1406500000.0) (+ arm (- 22.5))) 13.726646349)
  (ite (< arm 28.125) (+ (* (/ 399208699.0 703000000.0) (+ arm (- 25.313))) 15.354886967)
  (ite (< arm 30.938) (+ (* (/ 312524259.0 562600000.0) (+ arm (- 28.125))) 16.951721763)
  (ite (< arm 33.75) (+ (* (/ 1523100297.0 2812000000.0) (+ arm (- 30.938))) 18.514343058)
  (ite (< arm 36.563) (+ (* (/ 1480187063.0 2813000000.0) (+ arm (- 33.75))) 20.037443355)
  (ite (< arm 39.375) (+ (* (/ 37669763.0 74000000.0) (+ arm (- 36.563))) 21.517630418)
  (ite (< arm 42.188) (+ (* (/ 1378645999.0 2813000000.0) (+ arm (- 39.375))) 22.949081412)
  (+ (* (/ 26388989.0 56240000.0) (+ arm (- 42.188))) 24.327727411))))))))))))))))))))))))))))
(declare-const |port aileron horn| Real)
(assert (<= (- 0.016685) (- |port aileron horn| (|linkage| |port aileron arm|)) 0.016685))
(define-fun |port aileron before its stops| () Real
  (- |port aileron horn|))
; Expo 30 %.
(define-fun |demand roll, rate 1 (other) after expo| () Real
  (+ (* 0.7 (- |roll stick|)) (* 0.00003 (* (- |roll stick|) (* (- |roll stick|) (- |roll stick|))))))
; With throw 90 %.
(define-fun |demand roll, rate 1 (other)| () Real
  (* 0.9 |demand roll, rate 1 (other) after expo|))
; Expo -20 %.
(define-fun |demand roll, rate 2 (other) after expo| () Real
  (ite (>= (- |roll stick|) 0.0) (+ (* 1.4 (- |roll stick|)) (* (- 0.006) (* (- |roll stick|) (- |roll stick|))) (* 0.00002 (* (- |roll stick|) (* (- |roll stick|) (- |roll stick|))))) (+ (* 1.4 (- |roll stick|)) (* 0.006 (* (- |roll stick|) (- |roll stick|))) (* 0.00002 (* (- |roll stick|) (* (- |roll stick|) (- |roll stick|)))))))
; With throw 60 %.
(define-fun |demand roll, rate 2 (other)| () Real
  (* 0.6 |demand roll, rate 2 (other) after expo|))
; Demand roll with its trim, in percent.
(define-fun |demand roll (other)| () Real
  (+ (ite |rate switch is at high| |demand roll, rate 1 (other)| |demand roll, rate 2 (other)|) (* 0.1 (- |roll trim|))))
; Channel 2 starboard aileron, line 1 of its mix added up, in percent.
(define-fun |sum of channel 2 after line 1 (other)| () Real
  (- |demand roll (other)|))
; Channel 2 starboard aileron, line 2 of its mix scaled, in percent.
(define-fun |sum of channel 2 after line 2 (other)| () Real
  (* |sum of channel 2 after line 1 (other)| (* 0.01 |demand fade after its curve|)))
; Channel 2 starboard aileron, line 3 of its mix added up, in percent.
(define-fun |sum of channel 2 (other)| () Real
  (+ |sum of channel 2 after line 2 (other)| (ite |rate switch is at low| (* 0.2 |demand flap after its curve|) 0.0)))
; Channel 2 starboard aileron: travel limit 100 %.
(define-fun |channel 2 limited and turned (other)| () Real
  (ite (> |sum of channel 2 (other)| 100.0) 100.0 (ite (< |sum of channel 2 (other)| (- 100.0)) (- 100.0) |sum of channel 2 (other)|)))
; Channel 2 starboard aileron: what leaves it, between the pulse limits.
(define-fun |output of channel 2 (other)| () Real
  (ite (> |channel 2 limited and turned (other)| 100.0) 100.0 (ite (< |channel 2 limited and turned (other)| (- 100.0)) (- 100.0) |channel 2 limited and turned (other)|)))
; starboard aileron: swing of the servo arm, plus aft, 45 degrees for 100 %.
(define-fun |starboard aileron arm (other)| () Real
  (* (- 0.45) |output of channel 2 (other)|))
(declare-const |starboard aileron horn (other)| Real)
(assert (<= (- 0.016685) (- |starboard aileron horn (other)| (|linkage| |starboard aileron arm (other)|)) 0.016685))
(define-fun |starboard aileron horn (other) arm by| () Real
  (- |starboard aileron arm (other)| |port aileron arm|))
(assert (ite (>= |starboard aileron horn (other) arm by| 0.0) (<= (* 0.4544723 |starboard aileron horn (other) arm by|) (- |starboard aileron horn (other)| |port aileron horn|) (* 0.6290913 |starboard aileron horn (other) arm by|)) (<= (* 0.6290913 |starboard aileron horn (other) arm by|) (- |starboard aileron horn (other)| |port aileron horn|) (* 0.4544723 |starboard aileron horn (other) arm by|))))
(define-fun |starboard aileron before its stops (other)| () Real
  (- |starboard aileron horn (other)|))
; What must stay between two bounds.
(define-fun |difference| () Real
  (- |port aileron before its stops| |starboard aileron before its stops (other)|))
;
; The claim fails.
(assert
  (or (< |difference| (- 0.5)) (> |difference| 0.5)))
(check-sat)
