package sheet

import (
	"context"

	"example.com/hingeline/airframes"
	"example.com/hingeline/verify/prove"
	"example.com/hingeline/verify/result"
	"example.com/hingeline/verify/script"
)

// The parts of a paper, each made alone.

func motorsOf(m *airframes.Model) []result.Motor {
	return motors(context.Background(), m, prove.New(m.Plan))
}

func picturesOf(m *airframes.Model, record *script.Record) []result.Picture {
	shape := Shape(m)
	return pictures(m, record, &shape)
}

func travelOf(ctx context.Context, m *airframes.Model) []result.Travel {
	return travel(ctx, m, prove.New(m.Plan))
}
