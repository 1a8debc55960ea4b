package terminal

import (
	"math"
	"strings"
	"testing"

	"pgregory.net/rapid"

	"example.com/hingeline/verify/report/sample"
	"example.com/hingeline/verify/result"
	"example.com/hingeline/verify/result/said"
)

func renderProofs(t *testing.T, r *result.Proofs, o Options) string {
	t.Helper()
	var b strings.Builder
	if err := RenderProofs(&b, r, o); err != nil {
		t.Fatal(err)
	}
	return b.String()
}

func TestRenderProofsGolden(t *testing.T) {
	for name, c := range map[string]struct {
		r *result.Proofs
		o Options
	}{
		"proofs":               {sample.Proofs(), Options{}},
		"proofs_brief":         {sample.Proofs(), Options{Brief: true}},
		"proofs_narrow":        {sample.Proofs(), Options{Width: 44}},
		"proofs_60":            {sample.Proofs(), Options{Width: 60}},
		"proofs_ascii":         {sample.Proofs(), Options{ASCII: true}},
		"proofs_color":         {sample.Proofs(), Options{Color: true}},
		"proofs_all":           {sample.AllProved(), Options{}},
		"proofs_in_part":       {sample.ProvedInPart(), Options{}},
		"proofs_undecided":     {sample.ProofsUndecided(), Options{}},
		"proofs_stopped":       {sample.ProofsStopped(), Options{}},
		"proofs_stopped_brief": {sample.ProofsStopped(), Options{Brief: true}},
		"proofs_nothing":       {sample.NoProofs(), Options{}},
		"universal":            {},
		"universal_brief":      {o: Options{Brief: true}},
		"universal_narrow":     {o: Options{Width: 44}},
		"proofs_of_builtin":    {sample.Proofs(), Options{Brief: true, Airframe: "tarn sampler"}},
	} {
		t.Run(name, func(t *testing.T) {
			if c.r == nil {
				golden(t, name, render(t, sample.Universal(), c.o))
				return
			}
			golden(t, name, renderProofs(t, c.r, c.o))
		})
	}
}

func TestProofVerdictIsLastAndNeverSafe(t *testing.T) {
	warned := sample.AllProved()
	warned.Findings = sample.Proofs().Findings
	for _, c := range []struct {
		r    *result.Proofs
		want string
	}{
		{sample.Proofs(), "✗ DISPROVED, DO NOT FLY: 2 of 10 claims do not hold; 6 proved. Not proved: 1 undecided, 1 without a position to hold at. 1 warning wants a look."},
		{sample.AllProved(), "✓ PROVED: 4 of 4 claims: the set-up as written keeps the laws of this report at every position of the controls, once everything has come to rest. The model itself is still to be checked:"},
		{warned, "▲ PROVED, BUT 1 WARNING: roll throws differ: 90 % right, 85 % left. 4 of 4 claims:"},
		{sample.ProvedInPart(), "▲ PROVED IN PART: 3 of 3 claims: the set-up as written keeps the laws that were selected"},
		{sample.ProofsUndecided(), "▲ UNDECIDED, which is not a yes: 1 of 5 claims without proof; 4 proved, none disproved."},
		{sample.ProofsStopped(), "▲ UNDECIDED, which is not a yes: 1 of 5 claims without proof; 4 proved, none disproved. The run was stopped by hand."},
		{sample.NoProofs(), "▲ NOTHING WAS PROVED: there was nothing to prove, so this says nothing about the model. Not proved: 10 laws left out by --only."},
	} {
		for _, brief := range []bool{false, true} {
			text := renderProofs(t, c.r, Options{Brief: brief})
			paragraphs := strings.Split(strings.TrimSpace(text), "\n\n")
			last := strings.Join(strings.Fields(paragraphs[len(paragraphs)-1]), " ")
			if !strings.HasPrefix(last, c.want) {
				t.Errorf("last paragraph is\n%q, wanted it to begin with\n%q", last, c.want)
			}
			if strings.Contains(strings.ToLower(text), "safe to fly") {
				t.Errorf("says safe to fly:\n%s", text)
			}
			if c.r.Verdict != result.AllProved && strings.Contains(last, "✓") {
				t.Errorf("a tick for %q", last)
			}
		}
	}
}

func TestProofsInColorAddNothingButColor(t *testing.T) {
	colored := renderProofs(t, sample.Proofs(), Options{Color: true})
	if !strings.Contains(colored, "\x1b[") {
		t.Fatal("no colour at all")
	}
	if got, want := withoutColor(colored), renderProofs(t, sample.Proofs(), Options{}); got != want {
		t.Errorf("with its colours taken out:\n%s\nwanted:\n%s", got, want)
	}
}

func TestProofsInASCIIHaveNoOtherSigns(t *testing.T) {
	for _, r := range []*result.Proofs{sample.Proofs(), sample.AllProved(), sample.ProofsStopped(), sample.NoProofs()} {
		for i, c := range renderProofs(t, r, Options{ASCII: true}) {
			if c > 0x7e {
				t.Fatalf("byte %d is %q", i, c)
			}
		}
	}
}

// Whatever is in the answers: no line is wider than asked, no control character
// gets through, and every claim without a proof is told with its law, in brief too.
func TestRenderProofsLaws(t *testing.T) {
	text := rapid.StringOfN(rapid.RuneFrom([]rune("aA \t°±µ翼機̈é\u200d😀\x1b\n-m[31\"$'")), 0, 90, -1)
	answers := rapid.SampledFrom([]result.ProofAnswer{result.Proved, result.Disproved, result.Undecided, result.Empty, "else"})
	rapid.Check(t, func(t *rapid.T) {
		r := sample.Proofs()
		r.Model.File = text.Draw(t, "file")
		for i := range r.Laws {
			r.Laws[i].Code = "qq"
			r.Laws[i].Title, r.Laws[i].Means, r.Laws[i].None = text.Draw(t, "title"), text.Draw(t, "means"), text.Draw(t, "none")
			for k := range r.Laws[i].Claims {
				c := &r.Laws[i].Claims[k]
				c.Claim, c.Over, c.Answer = text.Draw(t, "claim"), text.Draw(t, "over"), answers.Draw(t, "answer")
				if m := c.Margin; m != nil {
					m.Value, m.AtLeast = rapid.Float64().Draw(t, "value"), rapid.Float64().Draw(t, "at least")
				}
				if c.Counter != nil {
					c.Counter.Got, c.Counter.Set = text.Draw(t, "got"), rapid.SliceOf(text).Draw(t, "set")
				}
			}
		}
		o := Options{
			Width:    rapid.IntRange(0, 120).Draw(t, "width"),
			ASCII:    rapid.Bool().Draw(t, "ascii"),
			Brief:    rapid.Bool().Draw(t, "brief"),
			Airframe: text.Draw(t, "airframe"),
		}
		var b strings.Builder
		if err := RenderProofs(&b, r, o); err != nil {
			t.Fatal(err)
		}
		fits(t, b.String(), o)
		c := r.Counts()
		if strings.Contains(b.String(), "NaN") || strings.Contains(b.String(), "Inf") {
			t.Fatalf("a number that is none:\n%s", b.String())
		}
		if got := strings.Count(b.String(), "\n   law      "); got < c.Disproved || got > c.Disproved+c.Undecided {
			t.Fatalf("%d laws told for %d claims disproved and %d undecided", got, c.Disproved, c.Undecided)
		}
		if got := strings.Count(b.String(), markUndecided); !o.ASCII && o.Brief && got != c.Undecided {
			t.Fatalf("%d claims told as undecided, wanted %d", got, c.Undecided)
		}
	})
}

// A reason that is told already is not told again.
func TestTheSameReasonIsToldOnce(t *testing.T) {
	r := sample.Proofs()
	again := r.Laws[2].Claims[0]
	again.Claim = "the elevator does what its throw says"
	r.Laws = append(r.Laws, result.Law{Code: "rates", Title: "Rates", Claims: []result.Proof{again}})
	text := renderProofs(t, r, Options{Brief: true})
	if got := strings.Count(text, "why, from the pilot's hand to the elevator:"); got != 1 {
		t.Errorf("the reason is told %d times:\n%s", got, text)
	}
	if !strings.Contains(text, "3. DISPROVED ✗  the elevator does what its throw says\n") || !strings.Contains(text, "   why      as at 2 above\n") {
		t.Errorf("the third does not point at the second:\n%s", text)
	}
	again.LookAt = again.LookAt[:1]
	r.Laws[len(r.Laws)-1].Claims[0] = again
	if text := renderProofs(t, r, Options{Brief: true}); strings.Contains(text, "as at") {
		t.Errorf("another line of the file is taken for the same reason:\n%s", text)
	}
}

// A command line can be copied: put together again it is the words it was made of.
func TestCommandLinesCanBeCopied(t *testing.T) {
	for _, width := range []int{40, 60, 80} {
		text := renderProofs(t, sample.Proofs(), Options{Brief: true, Width: width, Airframe: "bracken-20"})
		joined := strings.Join(strings.Fields(strings.ReplaceAll(text, "\\\n", " ")), " ")
		for _, want := range []string{
			`hingeline show bracken-20 --set "rate switch=high" --set "flap lever=landing" --set "roll stick=full right"`,
			`hingeline show bracken-20 --set "pitch stick=full back"`,
			`hingeline prove bracken-20 --only symmetry --boxes 2000000`,
		} {
			if !strings.Contains(joined, want) {
				t.Errorf("%d columns: the report lacks %s:\n%s", width, want, text)
			}
		}
	}
}

// A proved bound that is less than the margin found is said, and never rounded up.
func TestMarginSaysWhatIsProved(t *testing.T) {
	for _, c := range []struct {
		value, least float64
		unit, want   string
	}{
		{2.13, 2.13, "°", ""},
		{2.13, 2.129999, "°", ""},
		{2.13, 2.0499, "°", " (proved: nowhere under 2.04°)"},
		{20, 0, "%", " (proved: nowhere under 0 %)"},
		{0.5, -0.01239, "", " (proved: nowhere under -0.0124)"},
		{1234, 1199.9, "°", " (proved: nowhere under 1190°)"},
		{1, 1e-320, "°", " (proved: nowhere under 0°)"},
		{1, -1e-320, "°", " (proved: nowhere under -0.000001°)"},
		{1, math.Inf(-1), "°", ""},
		{1, math.NaN(), "°", ""},
	} {
		if got := provedLess(&result.Margin{Value: c.value, AtLeast: c.least, Unit: c.unit}); got != c.want {
			t.Errorf("%g found and %g proved: %q, wanted %q", c.value, c.least, got, c.want)
		}
	}
}

func TestCountGroupsThousands(t *testing.T) {
	for n, want := range map[int]string{1: "1 box", 0: "0 boxes", 999: "999 boxes", 1536: "1,536 boxes", 2000000: "2,000,000 boxes"} {
		if got := said.Count(n, "box"); got != want {
			t.Errorf("%d: %q, wanted %q", n, got, want)
		}
	}
}
