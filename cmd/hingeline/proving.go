package main

import (
	"context"

	"example.com/hingeline/airframes"
	"example.com/hingeline/verify"
	"example.com/hingeline/verify/laws"
	"example.com/hingeline/verify/result"
)

// proving is what decides the laws: verify.Prove, or what a test puts in its place.
type proving func(context.Context, *airframes.Model, laws.Options) *result.Proofs

// lawCodes are the codes of all laws, in their order.
func lawCodes() []string {
	var codes []string
	for _, l := range laws.Codes() {
		codes = append(codes, l.Code)
	}
	return codes
}

var reallyProving proving = verify.Prove
