package effect

import "math"

// Flap is what thin-aerofoil theory says of a plain flap. Real flaps do less
// (NACA Report 721; R&M 2622): take each as an upper figure.
type Flap struct {
	Effectiveness float64 // τ: degrees of incidence that a degree of flap is worth, 0…1
	HingeLift     float64 // b1: hinge moment coefficient per radian of incidence, negative
	HingeFlap     float64 // b2: hinge moment coefficient per radian of flap, negative
	Moment        float64 // dCm about the quarter chord per radian of flap, negative or 0
}

// ThinFlap is the flap whose chord is a part of the whole chord, 0 < part ≤ 1.
//
// With cos θ = 2E − 1: τ = 1 − (θ − sin θ)/π (Glauert, R&M 1095, in Houghton &
// Carpenter, Aerodynamics for Engineering Students, eqs 4.49–4.57), b2 from
// their eq. 4.56; b1 and dCm are the same theory's, checked by quadrature.
func ThinFlap(part float64) Flap {
	theta := math.Acos(2*part - 1)
	sin, cos := math.Sincos(theta)
	rest := math.Pi - theta
	square := part * part
	return Flap{
		Effectiveness: 1 - (theta-sin)/math.Pi,
		HingeLift:     -(2*rest*(2*cos-1) + 4*sin - math.Sin(2*theta)) / (4 * square),
		HingeFlap:     -((1 - math.Cos(2*theta)) - 2*rest*rest*(1-2*cos) + 4*rest*sin) / (4 * math.Pi * square),
		Moment:        -sin * (1 + cos) / 2,
	}
}
