package provetest_test

import (
	"fmt"
	"math/rand/v2"
	"testing"

	"example.com/hingeline/mixcore"
	"example.com/hingeline/verify/prove/provetest"
	"pgregory.net/rapid"
)

// Setups and claims that are drawn must be right by the rules they are made for.
func TestClaimsSpeakOfTheirPoses(t *testing.T) {
	kinds := map[string]int{}
	rapid.Check(t, func(t *rapid.T) {
		plan, faults := mixcore.Compile(provetest.Setup(t))
		if faults != nil {
			t.Fatal(faults)
		}
		claim := provetest.Claim(t, plan)
		kinds[fmt.Sprintf("%T", claim.Want)]++
		poses := provetest.Poses(plan, claim, rand.New(rand.NewPCG(1, 2)))
		for range 50 {
			if at, ok := poses.Draw(); ok {
				if err := provetest.Covers(plan, claim, at); err != nil {
					t.Fatal(err)
				}
			}
		}
	})
	t.Log(kinds)
}
