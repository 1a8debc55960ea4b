package terminal

import (
	"fmt"
	"io"
	"strings"
	"testing"

	"pgregory.net/rapid"

	"example.com/hingeline/verify/report/sample"
	"example.com/hingeline/verify/result"
)

// writing is a report that is only to be written.
type writing func(io.Writer, Options) error

func ofFaults(r *result.Faults) writing {
	return func(w io.Writer, o Options) error { return RenderFaults(w, r, o) }
}

func ofWalk(r *result.Walk) writing {
	return func(w io.Writer, o Options) error { return RenderWalk(w, r, o) }
}

func ofCauses(r *result.Causes) writing {
	return func(w io.Writer, o Options) error { return RenderCauses(w, r, o) }
}

func (write writing) text(t *testing.T, o Options) string {
	t.Helper()
	var b strings.Builder
	if err := write(&b, o); err != nil {
		t.Fatal(err)
	}
	return b.String()
}

var mistakeReports = map[string]writing{
	"faults":         ofFaults(sample.Faults()),
	"faults_none":    ofFaults(sample.NoneMissed()),
	"faults_in_part": ofFaults(sample.NoneMissedInPart()),
	"faults_stopped": ofFaults(sample.FaultsStopped()),
	"faults_wrong":   ofFaults(sample.FaultsOfWrong()),
	"faults_nothing": ofFaults(sample.NoMistakes()),
	"walk":           ofWalk(sample.Walk()),
	"walk_ruler":     ofWalk(sample.WalkMeasured()),
	"walk_nothing":   ofWalk(sample.NoWalk()),
	"causes":         ofCauses(sample.Causes()),
	"causes_one":     ofCauses(sample.OneCause()),
	"causes_none":    ofCauses(sample.NoCause()),
	"causes_near":    ofCauses(sample.NearCauses()),
	"causes_often":   ofCauses(sample.Commoner()),
	"causes_file":    ofCauses(sample.FileInQuestion()),
	"causes_right":   ofCauses(sample.SeenAsItShould()),
	"causes_open":    ofCauses(sample.NotToldApart()),
}

func TestReportsOfMistakesGolden(t *testing.T) {
	for name, write := range mistakeReports {
		t.Run(name, func(t *testing.T) { golden(t, name, write.text(t, Options{})) })
	}
	for _, name := range []string{"faults", "walk", "causes"} {
		for look, o := range map[string]Options{
			"narrow": {Width: 40}, "color": {Color: true}, "ascii": {ASCII: true}, "brief": {Brief: true},
		} {
			t.Run(name+"_"+look, func(t *testing.T) { golden(t, name+"_"+look, mistakeReports[name].text(t, o)) })
		}
	}
	for name, r := range map[string]*result.Report{
		"offered": sample.Offered(), "offered_one": sample.OfferedOne(), "offered_none": sample.OfferedNone(),
	} {
		t.Run(name, func(t *testing.T) { golden(t, name, render(t, r, Options{})) })
	}
}

// The last paragraph is the verdict, and only one that is a yes has a tick.
func TestVerdictOnMistakesIsLastAndNeverSafe(t *testing.T) {
	enough := sample.Faults()
	enough.Min = 28
	paired := sample.NoneMissed()
	paired.Pairs = true
	short := sample.Faults()
	short.Min = 29
	for name, c := range map[string]struct {
		write writing
		want  string
	}{
		"missed":           {ofFaults(sample.Faults()), "✗ 4 MISSED, 1 UNDECIDED: 2 of 7 single mistakes that can be seen are caught (28 %). Besides: 3 invisible by nature, 1 not worked out. 1 warning wants a look."},
		"enough":           {ofFaults(enough), "▲ 4 MISSED, 1 UNDECIDED: 2 of 7 single mistakes that can be seen are caught (28 %). Besides: 3 invisible by nature, 1 not worked out. 1 warning wants a look. --min 28 is reached."},
		"not enough":       {ofFaults(short), "✗ 4 MISSED, 1 UNDECIDED: 2 of 7 single mistakes that can be seen are caught (28 %). Besides: 3 invisible by nature, 1 not worked out. 1 warning wants a look. --min 29 is not reached."},
		"none":             {ofFaults(sample.NoneMissed()), "✓ NONE MISSED: 2 of 2 single mistakes that can be seen are caught (100 %). Besides: 1 not worked out. Two mistakes at once may hide each other. The model itself is still to be checked:"},
		"pairs":            {ofFaults(paired), "✓ NONE MISSED: 2 of 2 mistakes that can be seen are caught (100 %). Besides: 1 not worked out. Some of them are two mistakes at once;"},
		"in part":          {ofFaults(sample.NoneMissedInPart()), "▲ NONE MISSED, IN PART: 2 of 2 single mistakes that can be seen are caught (100 %). Besides: 1 not worked out, 34 kinds left out by --only."},
		"stopped":          {ofFaults(sample.FaultsStopped()), "✗ 0 MISSED, 1 UNDECIDED: 2 of 3 single mistakes that can be seen are caught (66 %). Besides: 1 not worked out. The run was stopped by hand. --min 50 is not reached."},
		"already wrong":    {ofFaults(sample.FaultsOfWrong()), "✗ DO NOT FLY: the script does not pass on this set-up as it is"},
		"nothing":          {ofFaults(sample.NoMistakes()), "▲ NOTHING WAS TRIED: no mistake of these kinds can be made in this model. Besides: 34 kinds left out by --only."},
		"walk":             {ofWalk(sample.Walk()), "▲ 3 steps show 13 single mistakes: of the 42 steps that were tried no fewer do (proved); 9 movements of controls by hand, no order of them with fewer (proved). Whatever does not do what stands here: DO NOT FLY"},
		"walk, stopped":    {ofWalk(sample.WalkMeasured()), "▲ 3 steps show 13 single mistakes: of the 42 steps that were tried 2 may do, fewer do not (proved); 9 movements of controls by hand, no order of them with fewer than 7 (proved)."},
		"no walk":          {ofWalk(sample.NoWalk()), "▲ NOTHING TO WALK AROUND FOR"},
		"several causes":   {ofCauses(sample.Causes()), "✗ SEVERAL CAUSES, DO NOT FLY: 2 mistakes would look so."},
		"one cause":        {ofCauses(sample.OneCause()), "✗ ONE CAUSE, DO NOT FLY: channel 4 (port flap) is reversed, or 1 other that looks the same, if only one thing is wrong."},
		"no cause":         {ofCauses(sample.NoCause()), "✗ NO CAUSE FOUND, DO NOT FLY: none of 115 single mistakes looks so."},
		"as it should":     {ofCauses(sample.SeenAsItShould()), "✓ AS IT SHOULD, AS FAR AS WAS LOOKED: nothing of 6 things seen speaks against the set-up as written. 31 of 115 single mistakes would look the same in all of them. The model itself is still to be checked:"},
		"not decided":      {ofCauses(sample.NotToldApart()), "▲ NOT DECIDED, which is not a yes: 1 thing seen, and the model may be as it should, or not."},
		"offered, a check": {func(w io.Writer, o Options) error { return Render(w, sample.Offered(), o) }, "✗ DO NOT FLY: "},
	} {
		for _, brief := range []bool{false, true} {
			text := c.write.text(t, Options{Brief: brief})
			paragraphs := strings.Split(strings.TrimSpace(text), "\n\n")
			if last := strings.Join(strings.Fields(paragraphs[len(paragraphs)-1]), " "); !strings.HasPrefix(last, c.want) {
				t.Errorf("%s: the last paragraph is\n%q, wanted it to begin with\n%q", name, last, c.want)
			}
			if strings.Contains(strings.ToLower(text), "safe to fly") {
				t.Errorf("%s says safe to fly:\n%s", name, text)
			}
		}
	}
}

func TestReportsOfMistakesInOtherLooks(t *testing.T) {
	for name, write := range mistakeReports {
		bare := write.text(t, Options{})
		colored := write.text(t, Options{Color: true})
		if !strings.Contains(colored, "\x1b[") || withoutColor(colored) != bare {
			t.Errorf("%s: with its colours taken out:\n%s\nwanted:\n%s", name, withoutColor(colored), bare)
		}
		for i, c := range write.text(t, Options{ASCII: true}) {
			if c > 0x7e {
				t.Errorf("%s: byte %d is %q", name, i, c)
			}
		}
	}
}

// What to know before a step is said before what to look at, at that step and no other.
func TestWalkSaysWhatToBewareOf(t *testing.T) {
	r := sample.Walk()
	const warning = "▲ a motor runs here"
	for n, list := range [][]string{nil, {"a motor runs here: propeller off"}} {
		r.Steps[2].Beware = list
		for _, brief := range []bool{false, true} {
			if got := strings.Count(ofWalk(r).text(t, Options{Brief: brief}), warning); got != n {
				t.Errorf("of %d said %d", n, got)
			}
		}
	}
}

// Where a list is cut the report says how many are left.
func TestLongListsSayWhatIsLeft(t *testing.T) {
	long := func(state result.FaultState) *result.Faults {
		r := sample.FaultsOfWrong()
		r.Verdict = result.SomeMissed
		for i := range mostTold + 2 {
			r.Faults = append(r.Faults, result.Fault{Kind: "y-lead", Title: "T", State: state, Text: fmt.Sprintf("mistake <%d>", i), Reason: "because", Consequence: "so"})
		}
		return r
	}
	for _, state := range []result.FaultState{result.Missed, result.Open, result.Invisible, result.NotBuilt} {
		text := ofFaults(long(state)).text(t, Options{})
		if got := strings.Count(text, "mistake <"); got != mostTold || !strings.Contains(text, "… and 2 mistakes more; --json has them all\n") {
			t.Errorf("%s: %d mistakes told, wanted %d and that 2 are left:\n%s", state, got, mostTold, text)
		}
	}
	exact := long(result.Missed)
	exact.Faults = exact.Faults[:mostTold]
	if text := ofFaults(exact).text(t, Options{}); strings.Contains(text, "more; --json") {
		t.Errorf("%d mistakes and says that more are left:\n%s", mostTold, text)
	}
}

// A sentence stands once; where it is needed again the report points at it.
func TestTheSameSentenceIsProposedOnce(t *testing.T) {
	text := ofFaults(sample.Faults()).text(t, Options{})
	if got := strings.Count(text, "   add       * with the rate switch high"); got != 1 || !strings.Contains(text, "   add       the sentence of 2 above\n") {
		t.Errorf("the sentence stands %d times, wanted once and a pointer:\n%s", got, text)
	}
}

// Whatever is in the answers: no line is wider than asked and no control character gets
// through.
func TestReportsOfMistakesFit(t *testing.T) {
	text := rapid.StringOfN(rapid.RuneFrom([]rune("aA \t°±µ翼機̈é\u200d😀\x1b\n-m[31\"$'")), 0, 90, -1)
	rapid.Check(t, func(t *rapid.T) {
		faults, walk, causes := sample.Faults(), sample.Walk(), sample.Causes()
		for i := range faults.Faults {
			f := &faults.Faults[i]
			f.Title, f.Text, f.Consequence, f.Sentence, f.Reason = text.Draw(t, "title"), text.Draw(t, "text"), text.Draw(t, "so"), text.Draw(t, "add"), text.Draw(t, "reason")
		}
		walk.Ruler = rapid.Bool().Draw(t, "ruler")
		for i := range walk.Steps {
			s := &walk.Steps[i]
			s.Ready, s.Move, s.Kinds = rapid.SliceOf(text).Draw(t, "ready"), rapid.SliceOf(text).Draw(t, "move"), rapid.SliceOf(text).Draw(t, "kinds")
			s.Parts[0].Name, s.Parts[0].Way, s.Parts[0].Exact = text.Draw(t, "name"), text.Draw(t, "way"), text.Draw(t, "exact")
		}
		causes.Suspects[0].Text, causes.Suspects[0].Alike = text.Draw(t, "suspect"), rapid.SliceOf(text).Draw(t, "alike")
		causes.Wrong[0].Sentence, causes.Wrong[0].Got = text.Draw(t, "seen"), text.Draw(t, "should")
		causes.Next.Answers[0].See, causes.Repairs[0].Change = rapid.SliceOf(text).Draw(t, "see"), text.Draw(t, "change")
		o := Options{Width: rapid.IntRange(0, 120).Draw(t, "width"), ASCII: rapid.Bool().Draw(t, "ascii"), Brief: rapid.Bool().Draw(t, "brief")}
		for _, write := range []writing{ofFaults(faults), ofWalk(walk), ofCauses(causes)} {
			var b strings.Builder
			if err := write(&b, o); err != nil {
				t.Fatal(err)
			}
			fits(t, b.String(), o)
		}
	})
}

// Changes that were not tried are told, whatever else is offered.
func TestOfferSaysWhatWasNotTried(t *testing.T) {
	for name, r := range map[string]*result.Report{"several": sample.Offered(), "one": sample.OfferedOne(), "none": sample.OfferedNone()} {
		for open, want := range map[int]string{0: "", 1: "1 more change was not tried: it would have taken too long.", 31: "31 more changes were not tried: it would have taken too long."} {
			r.Repairs.Open = open
			var out strings.Builder
			if err := Render(&out, r, Options{Width: 100}); err != nil {
				t.Fatal(err)
			}
			if got := strings.Contains(out.String(), "not tried"); got != (open > 0) || !strings.Contains(out.String(), want) {
				t.Errorf("%s, %d open: wanted %q", name, open, want)
			}
		}
	}
}
