package terminal

import (
	"io"
	"strings"
	"testing"

	"pgregory.net/rapid"

	"example.com/hingeline/verify/report/sample"
	"example.com/hingeline/verify/result"
)

func ofStanding(s *result.Standing) writing {
	return func(w io.Writer, o Options) error { return RenderStanding(w, "0.1.0", sample.SignedModel(), s, o) }
}

var standings = map[string]writing{
	"standing":          ofStanding(sample.Signed()),
	"standing_before":   ofStanding(sample.SignedBefore()),
	"standing_falsely":  ofStanding(sample.SignedFalsely()),
	"standing_one":      ofStanding(sample.SignedByOne()),
	"standing_in_spite": ofStanding(sample.SignedInSpite()),
	"standing_since":    ofStanding(sample.SignedThenSeen()),
	"standing_nothing":  ofStanding(sample.NotSigned()),
}

func TestStandingsGolden(t *testing.T) {
	for name, write := range standings {
		golden(t, name, write.text(t, Options{}))
	}
	for look, o := range map[string]Options{"ascii": {ASCII: true}, "brief": {Brief: true}, "color": {Color: true}, "narrow": {Width: MinWidth}} {
		for _, name := range []string{"standing_before", "standing_falsely"} {
			golden(t, name+"_"+look, standings[name].text(t, o))
		}
	}
}

func TestVerdictOnSignaturesIsLastAndNeverSafe(t *testing.T) {
	for name, want := range map[string]string{
		"standing": "✓ SIGNED AND CURRENT: ", "standing_before": "✗ OUT OF DATE: ", "standing_falsely": "✗ NOT TO BE TRUSTED: ",
		"standing_one": "▲ NO SIGNATURE COUNTS for ", "standing_nothing": "▲ NOT SIGNED: ",
		"standing_since": "✗ DO NOT FLY: signed ",
	} {
		for _, o := range []Options{{}, {Brief: true}} {
			text := standings[name].text(t, o)
			paragraphs := strings.Split(strings.TrimSpace(text), "\n\n")
			if last := paragraphs[len(paragraphs)-1]; !strings.HasPrefix(last, want) {
				t.Errorf("%s ends with %q, want %q", name, last, want)
			}
			if strings.Contains(strings.ToLower(text), "safe") {
				t.Errorf("%s says safe", name)
			}
			o.Color = true
			if colored := standings[name].text(t, o); !strings.Contains(colored, "\x1b[") || withoutColor(colored) != text {
				t.Errorf("%s: with its colours taken out it is another", name)
			}
		}
	}
}

func TestStandingsFit(t *testing.T) {
	text := rapid.StringOfN(rapid.RuneFrom([]rune("aA \t°±µ翼機̈é\u200d😀\x1b\n-m[31\"$'")), 0, 90, -1)
	rapid.Check(t, func(t *rapid.T) {
		s := sample.SignedBefore()
		sig := &s.Signatures[0]
		sig.Name, sig.Place, sig.Remarks, sig.Note = text.Draw(t, "name"), text.Draw(t, "place"), text.Draw(t, "remarks"), text.Draw(t, "note")
		sig.Genuine, sig.Accepted = rapid.Bool().Draw(t, "genuine"), rapid.SliceOf(text).Draw(t, "accepted")
		s.Changes[0].Text, s.Changes[0].Parts, s.Changes[0].Checks = text.Draw(t, "change"), rapid.SliceOf(text).Draw(t, "parts"), rapid.SliceOf(text).Draw(t, "checks")
		s.Troubles, s.Summary = rapid.SliceOf(text).Draw(t, "troubles"), text.Draw(t, "summary")
		o := Options{Width: rapid.IntRange(0, 120).Draw(t, "width"), ASCII: rapid.Bool().Draw(t, "ascii"), Brief: rapid.Bool().Draw(t, "brief")}
		var b strings.Builder
		if err := ofStanding(s)(&b, o); err != nil {
			t.Fatal(err)
		}
		fits(t, b.String(), o)
	})
}

// A name or reason that holds colours of a terminal changes none.
func TestStandingShowsNoControlCharacters(t *testing.T) {
	s := sample.Signed()
	s.Signatures[0].Name, s.Signatures[0].Remarks = "Ada\x1b[31m", "\x1b]0;title\a"
	if text := ofStanding(s).text(t, Options{}); strings.ContainsAny(text, "\x1b\a") {
		t.Errorf("%q", text)
	}
}
