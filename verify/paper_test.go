package verify

import (
	"context"
	"reflect"
	"testing"

	"example.com/hingeline/airframes"
	"example.com/hingeline/features"
	"example.com/hingeline/verify/script"
)

// The report on paper is the report of a check, with the paper and digests beside it; no
// other check pays for them.
func TestCheckOnPaperIsCheckWithPaper(t *testing.T) {
	for _, name := range airframes.Shipped() {
		text, _ := airframes.ReadShipped(name)
		asked, _ := features.Read(name)
		m := load(t, string(text))
		files := []script.File{{Name: name + ".feature", Text: asked}}
		plain, _ := Check(m, files, script.Selection{})
		paper, problems := CheckOnPaper(context.Background(), m, files, script.Selection{})
		if paper == nil || paper.Paper == nil || plain.Paper != nil {
			t.Fatalf("%s: %+v", name, problems)
		}
		p := paper.Paper
		if len(p.Pictures) != len(paper.Checks) || len(p.Travel) != len(m.Setup.Channels) || len(p.Signal) != len(m.Setup.Channels) || len(p.Shape.Parts) != len(m.Setup.Parts) || p.MassKg != m.MassKg {
			t.Errorf("%s: %d pictures of %d checks, %d travels and %d failsafes of %d channels, %d of %d parts", name,
				len(p.Pictures), len(paper.Checks), len(p.Travel), len(p.Signal), len(m.Setup.Channels), len(p.Shape.Parts), len(m.Setup.Parts))
		}
		if paper.SetUp == "" || paper.Asked == "" || plain.SetUp != "" || plain.Asked != "" {
			t.Errorf("%s: digests %q and %q, of a plain check %q and %q", name, paper.SetUp, paper.Asked, plain.SetUp, plain.Asked)
		}
		paper.Paper, paper.SetUp, paper.Asked = nil, "", ""
		if !reflect.DeepEqual(plain, paper) {
			t.Errorf("%s: the two reports differ", name)
		}
	}
}

func TestCheckOnPaperRefusesWhatCheckRefuses(t *testing.T) {
	r, problems := CheckOnPaper(context.Background(), load(t, fennel), []script.File{{Name: "f.feature", Text: []byte("Feature: f\n Scenario: s\n  Then nonsense\n")}}, script.Selection{})
	if r != nil || len(problems) == 0 {
		t.Errorf("%+v, %+v", r, problems)
	}
}

// BenchmarkCheckOnPaper is a check of Bracken 20 without and with its paper: what the
// paper costs beside the check.
func BenchmarkCheckOnPaper(b *testing.B) {
	text, _ := airframes.ReadShipped("bracken-20")
	asked, _ := features.Read("bracken-20")
	m, _ := airframes.Load("bracken-20.yaml", text)
	files := []script.File{{Name: "bracken-20.feature", Text: asked}}
	b.Run("check", func(b *testing.B) {
		for b.Loop() {
			Check(m, files, script.Selection{})
		}
	})
	b.Run("on paper", func(b *testing.B) {
		for b.Loop() {
			CheckOnPaper(context.Background(), m, files, script.Selection{})
		}
	})
}
