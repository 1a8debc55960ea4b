// Package sheet fills what a report on paper has beside its checks (result.Paper): how the
// model can be drawn, where every part stands in each check, the throws, how much travel
// is used, what happens on loss of signal, and each linkage to scale.
//
// It makes plain values and words and draws nothing. All arithmetic is mixcore's and
// prove's; what passed and what failed is the script's record and is never judged again.
// Where the airframe file leaves something out, a usual place or size stands for it
// (common practice, no source) and is marked as such: it is good for a picture and for no
// number.
// Start at [Of].
package sheet

import (
	"context"

	"example.com/hingeline/airframes"
	"example.com/hingeline/verify/prove"
	"example.com/hingeline/verify/result"
	"example.com/hingeline/verify/script"
)

// Of makes the paper of a check. If ctx is done, what is left of the search for travel
// is not sure, and says so.
func Of(ctx context.Context, m *airframes.Model, record *script.Record) *result.Paper {
	p := prove.New(m.Plan)
	shape, used := Shape(m), travel(ctx, m, p)
	return &result.Paper{
		MassKg:   m.MassKg,
		Shape:    shape,
		Pictures: pictures(m, record, &shape),
		Linkages: linkages(m, used),
		Throws:   throwsOf(m),
		Travel:   used,
		Signal:   signals(m),
		Motors:   motors(ctx, m, p),
	}
}
