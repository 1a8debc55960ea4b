package pdf

import (
	"bytes"
	"errors"
	"fmt"
	"strings"
	"testing"

	"example.com/hingeline/verify/report/sample"
	"example.com/hingeline/verify/result"
	"example.com/hingeline/verify/result/said"
)

// with is a report with what goes into the hand.
func with(r *result.Report, p *result.Paper) *result.Report {
	if p != nil {
		r.Paper = p
	}
	r.SetUp = "sha256:" + strings.Repeat("0123456789abcdef", 4)
	r.Prints = []result.Print{{File: r.Model.File, SHA256: strings.Repeat("fedcba9876543210", 4)}}
	r.Date = "2026-11-25"
	return r
}

// reports are all kinds of reports.
func reports() map[string]*result.Report {
	signed := with(sample.Passing(), sample.PassingPaper())
	signed.Standing = &result.Standing{
		Summary: "signed 2 days ago by A. Builder; out of date: port flap share −55 → −65 %",
		Signatures: []result.Signature{
			{Number: 1, Name: "A. Builder", Role: "builder", Date: "2026-11-23T10:00:00Z", Key: "SHA256:abc", Genuine: true, Note: "the set-up has changed since"},
			{Number: 2, Name: "B. Other", Role: "second", Date: "2026-11-23T11:00:00Z", Note: "the record was changed after it was signed"},
		},
		Changes:  []result.Change{{Text: "port flap: share of flap −55 → −65 %", Parts: []string{"port flap"}, Place: result.Place{File: "models/tarn-sampler.yaml", Line: 24}}},
		Troubles: []string{"record 2 is not the one that record 3 follows"},
	}
	return map[string]*result.Report{
		"failing":       with(sample.Failing(), sample.Paper()),
		"passing":       with(sample.Passing(), sample.PassingPaper()),
		"signed":        signed,
		"crowded":       with(sample.Crowded(), nil),
		"warned":        with(sample.Warned(), sample.PassingPaper()),
		"in part":       with(sample.InPart(), sample.PassingPaper()),
		"backwards":     with(sample.Backwards(), sample.PassingPaper()),
		"universal":     with(sample.Universal(), nil),
		"offered":       with(sample.Offered(), nil),
		"offered one":   with(sample.OfferedOne(), nil),
		"offered none":  with(sample.OfferedNone(), nil),
		"nothing":       with(sample.Nothing(), nil),
		"without paper": sample.Failing(),
	}
}

func TestReportIsTheSameEveryTime(t *testing.T) {
	all := reports()
	for _, name := range []string{"failing", "signed", "crowded", "nothing"} {
		r := all[name]
		for what, render := range map[string]func(*bytes.Buffer) error{
			"sheet": func(b *bytes.Buffer) error { return render(b, r, Options{}) },
			"card":  func(b *bytes.Buffer) error { return RenderCard(b, r, Options{}) },
		} {
			var first bytes.Buffer
			if err := render(&first); err != nil {
				t.Fatal(name, what, err)
			}
			for range 2 {
				var again bytes.Buffer
				if err := render(&again); err != nil {
					t.Fatal(name, what, err)
				}
				if !bytes.Equal(first.Bytes(), again.Bytes()) {
					t.Errorf("%s: the %s is not the same every time", name, what)
				}
			}
		}
	}
}

func TestReportIsDatedAsItsCheck(t *testing.T) {
	for date, want := range map[string]string{
		"2026-11-25":           "D:20261125000000",
		"2026-11-25T20:15:00Z": "D:20261125201500",
		"":                     "D:20000101000000",
		"yesterday":            "D:20000101000000",
	} {
		r := sample.Passing()
		r.Date = date
		document, _ := rendered(t, r, Options{})
		for _, key := range []string{"/CreationDate (", "/ModDate ("} {
			if !bytes.Contains(document, []byte(key+want)) {
				t.Errorf("date %q: wanted %s%s", date, key, want)
			}
		}
	}
}

func TestFirstPageSaysTheVerdict(t *testing.T) {
	for name, want := range map[string]string{
		"failing": "DO NOT FLY", "backwards": "DO NOT FLY", "passing": "PASSED", "warned": "PASSED, BUT 1 WARNING",
		"in part": "PASSED IN PART", "nothing": "NOTHING WAS CHECKED", "without paper": "DO NOT FLY",
	} {
		_, pages := rendered(t, reports()[name], Options{})
		if !strings.Contains(pages[0], want) {
			t.Errorf("%s: page 1 does not say %q", name, want)
		}
		if passed := strings.HasPrefix(want, "PASSED"); passed != strings.Contains(strings.Join(pages, " "), "PASSED") {
			t.Errorf("%s: got that it passed: %v, wanted %v", name, !passed, passed)
		}
	}
}

func TestPagesNeverPromise(t *testing.T) {
	for name, r := range reports() {
		_, pages := rendered(t, r, Options{})
		all := strings.Join(pages, " ")
		for _, never := range []string{"safe to fly", "airworth", "NaN", "Inf", "−0°", "-0 "} {
			if strings.Contains(all, never) {
				t.Errorf("%s: says %q", name, never)
			}
		}
		for i, page := range pages {
			says(t, page, fmt.Sprintf("page %d of %d", i+1, len(pages)), name)
			says(t, page, "a check on paper", name)
			says(t, page, r.Model.Name[:8], name)
		}
	}
}

func TestPagesSayEverything(t *testing.T) {
	for name, r := range reports() {
		t.Run(name, func(t *testing.T) {
			_, pages := rendered(t, r, Options{})
			all := strings.Join(pages, " ")
			for i := range r.Checks {
				c := &r.Checks[i]
				says(t, all, c.Sentence, "sentence")
				says(t, all, c.Wanted, "wanted")
				says(t, all, c.Got, "got")
				says(t, all, c.Miss, "miss")
				for _, why := range c.Why {
					for _, s := range why.Chain {
						says(t, all, s.Value, "value")
						says(t, all, s.Limit, "limit")
					}
					for _, place := range why.LookAt {
						says(t, all, fmt.Sprintf("%s:%d", place.File, place.Line), "place")
					}
				}
			}
			for _, c := range r.Cautions {
				says(t, all, c, "caution")
			}
			for _, f := range r.Findings {
				says(t, all, f.Message, "warning")
				says(t, all, f.Hint, "hint")
			}
			for _, f := range r.Script {
				says(t, all, f.Message, "about the script")
				says(t, all, f.Reason, "reason")
			}
			if r.Repairs != nil {
				says(t, all, said.Offer(r.Repairs), "offer")
				for _, change := range r.Repairs.List {
					says(t, all, change.Change, "change")
				}
			}
			u := r.Uncovered
			for _, names := range [][]string{u.Parts, u.Controls, u.Positions, r.Rest, r.Scripts} {
				for _, n := range names {
					says(t, all, n, "name")
				}
			}
			for _, p := range r.Prints {
				says(t, pages[0], p.SHA256, "fingerprint")
			}
			says(t, pages[0], strings.TrimPrefix(r.SetUp, "sha256:"), "set-up")
			if s := r.Standing; s != nil {
				says(t, all, s.Summary, "summary")
				says(t, all, s.Changes[0].Text, "change")
				says(t, all, s.Troubles[0], "trouble")
				says(t, all, s.Signatures[0].Note, "note")
				says(t, all, "NOT GENUINE", "forged signature")
			}
			if r.Paper != nil {
				onTheBench(t, all, r.Paper)
			}
		})
	}
}

func onTheBench(t *testing.T, all string, p *result.Paper) {
	t.Helper()
	for _, throw := range p.Throws {
		says(t, all, throw.Part, "part")
		says(t, all, throw.Partner, "difference")
		for _, e := range throw.Ends {
			says(t, all, e.Way, "way")
			says(t, all, e.At, "end")
			says(t, all, said.Degrees(&e)+prefixed(", ", said.Millimetres(&e)), "amount")
		}
	}
	for _, travel := range p.Travel {
		says(t, all, travel.Channel, "channel")
		says(t, all, travel.Bites, "limit")
		says(t, all, strings.Join(travel.Worst, ", "), "worst")
	}
	for _, l := range p.Linkages {
		for _, at := range l.Stands {
			says(t, all, at.Says, "linkage")
		}
	}
	for _, s := range p.Signal {
		says(t, all, s.Channel, "channel")
		says(t, all, s.Does, "loss of signal")
	}
	for _, m := range p.Motors {
		says(t, all, m.Name, "motor")
		says(t, all, m.StoppedWhen, "promise")
	}
	if p.MassKg > 0 {
		says(t, all, fmt.Sprintf("for a model of this mass (%s)", said.Kilograms(p.MassKg)), "mass")
	}
}

func TestMotorThatMayRunIsTold(t *testing.T) {
	r := with(sample.Passing(), sample.PassingPaper())
	const told = "THE MOTOR MAY GO ON RUNNING"
	r.Paper.Signal = []result.Signal{{Channel: "channel 8 (motor)", Does: "holds what it put out", Motor: true}}
	if _, pages := rendered(t, r, Options{}); strings.Contains(strings.Join(pages, " "), told) {
		t.Error("told of a motor that stops")
	}
	r.Paper.Signal[0].Runs = true
	if _, pages := rendered(t, r, Options{}); !strings.Contains(strings.Join(pages, " "), told) {
		t.Error("not told of a motor that may run")
	}
}

func TestFailedReportReleasesNothing(t *testing.T) {
	for name, released := range map[string]bool{"failing": false, "nothing": false, "passing": true, "warned": true} {
		_, pages := rendered(t, reports()[name], Options{})
		if got := strings.Contains(strings.Join(pages, " "), "What is signed"); got != released {
			t.Errorf("%s: got a statement to sign: %v, wanted %v", name, got, released)
		}
	}
}

func TestPaperHasItsSize(t *testing.T) {
	for paper, want := range map[Paper]string{A4: "/MediaBox [0 0 595.28 841.89]", Letter: "/MediaBox [0 0 612.00 792.00]"} {
		document, pages := rendered(t, with(sample.Failing(), sample.Paper()), Options{Paper: paper})
		if !bytes.Contains(document, []byte(want)) {
			t.Errorf("wanted %s", want)
		}
		if got := bytes.Count(document, []byte("<</Type /Page\n")); got != len(pages) {
			t.Errorf("%d pages, %d of them with words", got, len(pages))
		}
	}
}

func TestFailureToWriteIsTold(t *testing.T) {
	full := errors.New("the disk is full")
	if err := render(failing{full}, sample.Passing(), Options{}); !errors.Is(err, full) {
		t.Errorf("got %v", err)
	}
	if err := RenderCard(failing{full}, sample.Passing(), Options{}); !errors.Is(err, full) {
		t.Errorf("got %v", err)
	}
}

type failing struct{ err error }

func (f failing) Write([]byte) (int, error) { return 0, f.err }

func BenchmarkRender(b *testing.B) {
	r := fortyStops()
	for b.Loop() {
		if err := render(nothing{}, r, Options{}); err != nil {
			b.Fatal(err)
		}
	}
}

// fortyStops is a report of a usual model with forty stops.
func fortyStops() *result.Report {
	r := with(sample.Passing(), sample.PassingPaper())
	checks, pictures := r.Checks, r.Paper.Pictures
	r.Checks, r.Paper.Pictures = nil, nil
	for n := range 40 {
		c := checks[n%len(checks)]
		c.Pose = append([]string{fmt.Sprintf("flap lever %d %%", n)}, c.Pose...)
		r.Checks = append(r.Checks, c)
		r.Paper.Pictures = append(r.Paper.Pictures, pictures[n%len(pictures)])
	}
	return r
}
