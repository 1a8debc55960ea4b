// Package terminal renders a control check as text for a terminal, a pipe or a
// plain file: in walk-around order, at most 80 columns wide, with every verdict
// as a word and a symbol beside its colour, so that nothing is lost in black
// and white or to a screen reader.
//
// It knows package result only, and never decides anything: whether a check
// passed, in which order and in which words is settled before it gets here.
// Start at [Render]; [RenderShown] is the same for one position of the controls,
// [RenderProofs] for what holds at all of them, [RenderFaults], [RenderWalk] and
// [RenderCauses] for mistakes.
package terminal

import (
	"io"

	"example.com/hingeline/verify/result"
)

// MaxWidth is the widest that a line gets, in columns: what every terminal and
// a sheet of paper can show.
const MaxWidth = 80

// MinWidth is the narrowest that lines are wrapped to, in columns; narrower
// terminals wrap again themselves.
const MinWidth = 40

// Options say how a report is laid out.
type Options struct {
	Width int  // columns at hand; 0, or more than MaxWidth, is MaxWidth
	Color bool // colour as well as words and symbols
	ASCII bool // symbols that every terminal has: "ok" for a tick, "+/-" for a plus-minus sign
	Brief bool // only the failures, the warnings in a line each, and the verdict with the first failure

	Airframe string // the model as a command line names it, for commands that show something again; empty: as its file
}

// Render writes the report. The error is the writer's.
func Render(w io.Writer, r *result.Report, o Options) error {
	p := newPage(o)
	p.survey(r)
	if !o.Brief {
		p.heading(r)
		p.walkAround(r)
	}
	p.failures(r)
	if !o.Brief {
		p.offer(r.Repairs)
	}
	p.aboutScript(r, o.Brief)
	if o.Brief {
		p.warningsInBrief(r.Findings)
	} else {
		p.warnings(r.Findings, "that no check decides")
		p.uncovered(r)
		p.cautions(r.Cautions)
	}
	p.signed(r.Standing)
	p.verdict(r)
	if o.Brief {
		p.firstFailure(r)
	}
	return p.flush(w)
}
