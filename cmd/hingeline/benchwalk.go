package main

import (
	"context"
	"errors"
	"fmt"
	"os"
	"strings"

	"example.com/hingeline/airframes"
	"example.com/hingeline/verify"
	"example.com/hingeline/verify/bench"
	"example.com/hingeline/verify/report/jsonout"
	"example.com/hingeline/verify/report/terminal"
	"example.com/hingeline/verify/resolved"
	"example.com/hingeline/verify/result"
	"example.com/hingeline/verify/result/said"
	"example.com/hingeline/verify/script"
	"example.com/hingeline/verify/signoff"
)

// benchRun is one run of bench.
type benchRun struct {
	s       *session
	in      *inputs
	flags   *benchFlags
	named   string
	answers *answersFile // nil where somebody types

	walk    *bench.Walk
	header  *bench.Header
	journal *recordFile
	guide   *bench.Guide
}

// walkThrough asks until the walk is over, and reports.
func (r *benchRun) walkThrough(ctx context.Context) error {
	defer r.journal.close()
	r.welcome()
	if err := r.ask(ctx); err != nil {
		return r.notKept(err)
	}
	if r.guide.HasRefused() && !r.flags.json {
		r.s.tell("hingeline: nothing was begun")
		r.s.status = statusNothingChecked
		return nil
	}
	return r.report()
}

// notKept says that an answer could not be written.
func (r *benchRun) notKept(err error) error {
	return written(fmt.Errorf("the last answer was not kept: %w", err))
}

// welcome says what is about to be done.
func (r *benchRun) welcome() {
	text := terminal.NewText(r.s.layout(false))
	text.Title(r.in.model.Name + ": the walk-around with the model in hand")
	if says, fails := verify.ScriptAsWritten(r.in.model, r.in.scripts); fails {
		text.Paragraph(0, "DO NOT FLY: "+said.ScriptFails(says)+". What the walk shows as expected is what this wrong set-up does, so a yes to it is no yes to the model. Put the set-up right first: hingeline check "+inQuotes(r.named))
	}
	steps := fmt.Sprintf("%d steps", len(r.walk.Steps))
	if len(r.walk.Steps) == 1 {
		steps = "1 step"
	}
	text.Paragraph(0, steps+": "+r.header.How+". Say what you see, as it is and not as it should be. Every answer is kept at once in "+r.journal.shown()+".")
	text.Paragraph(0, "At rest: "+strings.Join(verify.Resting(r.in.model), ", ")+".")
	text.Gap()
	text.Render(r.s.stderr)
}

// ask goes on until nothing is asked any more.
func (r *benchRun) ask(ctx context.Context) error {
	from := r.lines(ctx)
	defer from.stop()
	if from.byHand {
		r.guide.ByHand()
	}
	for !r.guide.Over() {
		ask := r.guide.Ask()
		r.show(&ask)
		from.forget()
		fmt.Fprint(r.s.stderr, ask.Prompt)
		asked := r.s.clock()
		line, more := from.next()
		if !more {
			fmt.Fprintln(r.s.stderr)
			if leave := r.guide.Leave(); leave != "" {
				r.say(leave)
			}
			return r.guide.Stop()
		}
		take := r.guide.Take
		if from.byHand && r.s.clock().Sub(asked) < bench.ShortestLook {
			take = r.guide.TakeSoon
		}
		reply, err := take(line)
		if err != nil {
			return err
		}
		if reply.Text != "" {
			r.say(reply.Text)
		}
		if reply.Hint != "" {
			r.say(reply.Hint)
		}
	}
	return nil
}

// answering is where answers come from.
type answering struct {
	next   func() (line string, more bool)
	forget func() // what was said before the question stood there
	stop   func()
	byHand bool // somebody types them one by one, with the model in front of them
}

// lines is where answers come from: a file, which is echoed, or whoever types.
func (r *benchRun) lines(ctx context.Context) answering {
	nothing := func() {}
	if r.answers != nil {
		i := 0
		return answering{func() (string, bool) {
			if i == len(r.answers.lines) || ctx.Err() != nil {
				return "", false
			}
			i++
			line := r.answers.lines[i-1]
			fmt.Fprintln(r.s.stderr, line)
			return line, true
		}, nothing, nothing, false}
	}
	ctx, cancel := context.WithCancel(ctx)
	if t := terminalFile(r.s.stdin); t != nil {
		hand := typedUntil(ctx, t)
		return answering{hand.line, hand.forget, cancel, true}
	}
	piped := r.s.linesUntil(ctx)
	return answering{func() (string, bool) {
		select {
		case line, more := <-piped:
			if more {
				fmt.Fprintln(r.s.stderr, line) // so that what is written down reads as it was asked
			}
			return line, more
		case <-ctx.Done():
			return "", false
		}
	}, nothing, cancel, false}
}

// askRows is how many rows of the screen are for what is asked below a step.
const askRows = 3

// show writes what stands before a question.
func (r *benchRun) show(a *bench.Ask) {
	if a.Step != nil {
		_, rows := r.s.messageSize()
		fmt.Fprintln(r.s.stderr)
		terminal.RenderBenchStep(r.s.stderr, a.Step, terminal.BenchLook{Picture: !r.flags.noPicture, Ruler: r.walk.Look.Ruler, Rows: max(rows-askRows, 0)}, r.s.layout(false))
	}
	if a.Said != "" {
		r.say(a.Said)
	}
}

func (r *benchRun) say(text string) {
	t := terminal.NewText(r.s.layout(false))
	for line := range strings.Lines(text) {
		t.Paragraph(2, strings.TrimRight(line, "\n"))
	}
	t.Render(r.s.stderr)
}

// report says what the walk has come to.
func (r *benchRun) report() error {
	ctx, stop := untilInterrupted()
	defer stop()
	report := r.comeTo(ctx)
	r.s.status = statusOfBench(report)
	if r.flags.json {
		if err := jsonout.RenderBench(r.s.results(), report); err != nil {
			return written(err)
		}
	} else {
		fmt.Fprintln(r.s.stderr)
		layout := r.s.layout(r.flags.brief)
		layout.Airframe = r.named
		if err := terminal.RenderBench(r.s.results(), report, layout); err != nil {
			return written(err)
		}
	}
	if r.flags.write != "" {
		return r.writeCorrected()
	}
	return nil
}

// comeTo is the report on a walk as far as it has come.
func (r *benchRun) comeTo(ctx context.Context) *result.Bench {
	report := r.guide.Report(ctx, r.in.scripts)
	verify.FinishBench(report, r.in.model, r.in.scripts)
	report.Record, report.SetUp, report.Asked, report.Walk = r.journal.path(), r.header.SetUp, r.header.Asked, r.header.How
	report.Findings = append(verify.Findings(r.in.problems, r.in.sources...), report.Findings...)
	report.Look = bench.LookWords(r.walk.Look)
	if report.Verdict == result.SeenAsExpected {
		report.Stands = signoff.StandsBefore(recordedAs(r.in), r.header.SetUp)
	}
	if report.Stands != "" {
		report.Cautions = append([]string{"Look again: " + report.Stands + "."}, report.Cautions...)
	}
	return report
}

// statusOfBench is a yes only where everything was seen, as the set-up does it, the script
// passes on that, and nothing speaks against it that was measured before.
func statusOfBench(r *result.Bench) int {
	switch {
	case r.Verdict == result.NothingSeen:
		return statusNothingChecked
	case r.Verdict == result.SeenAsExpected && !r.Fails && r.Stands == "":
		return statusYes
	}
	return statusNo
}

// resume goes on with a record, or reports on one that is finished.
func (r *benchRun) resume() error {
	dir := recordDirectory(r.in)
	n := newestWritten(dir)
	if r.flags.resume != newestRecord {
		n = numberOf(r.flags.resume)
	}
	if n == 0 {
		return r.s.refuse("there is no record to go on with in "+dir, "without --resume bench begins one")
	}
	record, no := r.replay(dir, n)
	if no != nil {
		return r.s.refuse(no.problem, no.hint)
	}
	if record.Ended() {
		if no := r.reopen(dir, n, record); no != nil {
			return r.s.refuse(no.problem, no.hint)
		}
		defer r.journal.close()
		return r.report()
	}
	ctx, stop := untilLeft()
	defer stop()
	if err := r.guide.Resume(); err != nil {
		return r.notKept(err)
	}
	if err := r.answers.rehearsed(r.guide, r.in); err != nil {
		return err
	}
	if no := r.reopen(dir, n, record); no != nil {
		return r.s.refuse(no.problem, no.hint)
	}
	if err := r.guide.Resume(); err != nil {
		return r.notKept(err)
	}
	fmt.Fprintf(r.s.stderr, "going on with record %d\n", n)
	return r.walkThrough(ctx)
}

// notReopened is why a record cannot be gone on with.
type notReopened struct{ problem, hint string }

func unusable(name string, err error) *notReopened {
	return &notReopened{fmt.Sprintf("%s cannot be gone on with: %v", name, err), "begin a new one: bench without --resume"}
}

// replay reads a record and brings its walk to where it was, with a guide that keeps nothing.
func (r *benchRun) replay(dir string, n int) (*bench.Record, *notReopened) {
	name := recordPath(dir, n)
	text, err := readRecord(name, maxRecordBytes)
	if errors.Is(err, os.ErrNotExist) {
		return nil, &notReopened{"there is no record " + name, ""}
	}
	if err != nil {
		return nil, &notReopened{fmt.Sprintf("%s cannot be read: %v", name, err), ""}
	}
	record, err := bench.Read(text)
	if err != nil {
		return nil, unusable(name, err)
	}
	r.header = record.Header
	if changed := r.changed(); len(changed) > 0 {
		return nil, &notReopened{fmt.Sprintf("%s is of another set-up, so it is not gone on with; since then:\n  - %s", name, strings.Join(changed, "\n  - ")),
			"walk around anew: bench without --resume"}
	}
	if r.walk, err = record.Header.Walk(); err != nil {
		return nil, unusable(name, err)
	}
	r.guide = bench.NewGuide(r.walk, bench.Nowhere{}, r.flags.now)
	if err := r.guide.Replay(record.Events); err != nil {
		return nil, unusable(name, err)
	}
	return record, nil
}

// reopen opens a record that was replayed, to go on with it. Of one that is finished the
// file is open only to be reported on.
func (r *benchRun) reopen(dir string, n int, record *bench.Record) *notReopened {
	name := recordPath(dir, n)
	var err error
	if record.Ended() {
		r.journal = &recordFile{dir: dir, number: n}
		if r.journal.file, err = os.Open(name); err != nil {
			return unusable(name, err)
		}
		return nil
	}
	if r.journal, err = openRecordFile(dir, n, record); err != nil {
		return &notReopened{fmt.Sprintf("%s cannot be written to: %v", name, err), ""}
	}
	r.guide = bench.NewGuide(r.walk, r.journal, r.flags.now)
	if err := r.guide.Replay(record.Events); err != nil {
		r.journal.close()
		return unusable(name, err)
	}
	return nil
}

// changed are what differs between the set-up and scripts of a record and those at hand.
func (r *benchRun) changed() (list []string) {
	m := r.in.model
	if r.header.SetUp != resolved.Digest(resolved.SetUp(m)) {
		old, _ := airframes.Load(r.header.Airframe.Name, []byte(r.header.Airframe.Text))
		if old == nil {
			return []string{"the airframe file that it holds cannot be read any more"}
		}
		for _, d := range resolved.Differences(old, m) {
			list = append(list, d.Text)
		}
		if list == nil {
			list = []string{"the digest of the set-up"}
		}
		return list
	}
	asked := ""
	if len(r.in.scripts) > 0 {
		if sentences, _ := resolved.Script(m, r.in.scripts); sentences != nil {
			asked = resolved.ScriptDigest(sentences)
		}
	}
	if asked == r.header.Asked {
		return nil
	}
	var old []script.File
	for _, f := range r.header.Scripts {
		old = append(old, script.File{Name: f.Name, Text: []byte(f.Text)})
	}
	switch {
	case len(old) == 0:
		return []string{"there is a script now"}
	case len(r.in.scripts) == 0:
		return []string{"the script " + old[0].Name + " is not found any more"}
	}
	differences, _ := resolved.ScriptDifferences(m, m, old, r.in.scripts)
	for _, d := range differences {
		list = append(list, d.Text)
	}
	if list == nil {
		list = []string{"what the script means"}
	}
	return list
}
