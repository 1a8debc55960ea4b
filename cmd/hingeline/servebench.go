package main

import (
	"context"
	"errors"
	"fmt"
	"strings"
	"time"

	"example.com/hingeline/airframes/diag"
	"example.com/hingeline/verify/bench"
	"example.com/hingeline/verify/faults/sight"
	"example.com/hingeline/verify/report/terminal"
	"example.com/hingeline/verify/result"
	"example.com/hingeline/verify/serve"
)

// benchWalks are the walks of bench, for its page: the same steps, the same records.
type benchWalks struct {
	s    *session
	args []string
}

// phoneColumns is how wide a report is that is read on a phone.
const phoneColumns = 44

// run is a run of bench with the files as they are now.
func (b *benchWalks) run() *benchRun {
	r := &benchRun{s: b.s, in: b.s.gatherFaults(b.args, &faultsFlags{ask: true}), named: b.args[0]}
	r.flags = &benchFlags{now: func() string { return time.Now().UTC().Format(time.RFC3339) }}
	return r
}

func (b *benchWalks) usable() (*benchRun, error) {
	r := b.run()
	for i := range r.in.problems {
		if p := &r.in.problems[i]; diag.HasErrors(r.in.problems[i : i+1]) {
			return nil, fmt.Errorf("a file cannot be used: %s: %s", p.Place.File, p.Message)
		}
	}
	if r.in.model == nil {
		return nil, errors.New("the airframe file cannot be used")
	}
	return r, nil
}

func (b *benchWalks) Unfinished() int {
	if r := b.run(); r.in.model != nil {
		return unfinished(recordDirectory(r.in))
	}
	return 0
}

func (b *benchWalks) Begin(ctx context.Context) (*serve.Walk, error) {
	r, err := b.usable()
	if err != nil {
		return nil, err
	}
	chosen := bench.Usual(ctx, r.in.model, sight.Eye, func(string) {})
	if len(chosen.Steps) == 0 {
		return nil, errors.New("there is no step to do: nothing that moves can be told from what should be")
	}
	r.start(chosen, sight.Eye)
	return r.onPage(), nil
}

func (b *benchWalks) Resume(number int) (*serve.Walk, error) {
	r, err := b.usable()
	if err != nil {
		return nil, err
	}
	record, no := r.replay(recordDirectory(r.in), number)
	if no == nil {
		no = r.reopen(recordDirectory(r.in), number, record)
	}
	if no != nil {
		return nil, errors.New(no.problem)
	}
	if err := r.guide.Resume(); err != nil {
		return nil, errors.Join(err, r.journal.close())
	}
	return r.onPage(), nil
}

// onPage is a run as the page has it.
func (r *benchRun) onPage() *serve.Walk {
	return &serve.Walk{
		Steps: r.walk, Guide: r.guide, How: r.header.How, Record: r.journal.path, Close: r.journal.close,
		Report: func(ctx context.Context) (*result.Bench, string) {
			report := r.comeTo(ctx)
			var text strings.Builder
			if err := terminal.RenderBench(&text, report, terminal.Options{Width: phoneColumns, Airframe: r.named}); err != nil {
				return report, "the report cannot be written: " + err.Error()
			}
			return report, text.String()
		},
	}
}
