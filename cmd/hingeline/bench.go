package main

import (
	"fmt"
	"os"
	"path/filepath"
	"time"

	"github.com/spf13/cobra"

	"example.com/hingeline/airframes/diag"
	"example.com/hingeline/verify"
	"example.com/hingeline/verify/bench"
	"example.com/hingeline/verify/faults/sight"
)

// benchFlags are the flags of bench.
type benchFlags struct {
	script, shortest, ruler, noPicture, brief, json bool
	asTable                                         bool
	visible, answers, resume, write, date           string

	now func() string // RFC 3339, UTC
}

// newestRecord is the value of --resume without a number.
const newestRecord = "newest"

func (s *session) benchCommand() *cobra.Command {
	var flags benchFlags
	c := &cobra.Command{
		Use:   "bench AIRFRAME [SCRIPT...]",
		Short: "the walk-around with the model in hand, step by step, with a record and a report",
		Long: `Bench leads through the walk-around with the model in hand: each stick alone, both ways,
then the fewest steps that show every other single mistake that can be seen; with
--shortest only the fewest; or with --script the script's own poses. For each
step it says what to set on the radio and what must be seen, in words and as a picture
from behind, and asks what was seen. "y" is "all as expected", and Enter alone is not; "h"
tells what else can be said. Surfaces may be measured: "port flap 12 up", "port flap 9 mm down".

Every answer is written at once, into a record beside the airframe file
(my-model.bench/0001.jsonl). b goes back, s skips, p pauses; --resume goes on with the
newest record, also after a power cut, and shows the report of one that is finished.

Typed at a terminal, a step in which a motor may run, or the transmitter is off, is asked
about once more ("x" is "it was seen"), and what comes sooner than anybody can have looked
is no answer. A file of answers is asked neither way.

The report says what was not as expected, which mistake explains it, what to look at
next, and how what was measured differs from what is computed. --write FILE writes a new
airframe file with lengths, angles or tables that fit what was measured.

It holds the model against its set-up as written. It never says that it may fly.

Exit status: 0 all was seen as expected, 1 something differs, or did before and was not
looked at again, or not all was seen, 3 a file cannot be used, 4 nothing was seen.`,
		Example: `  hingeline bench my-model.yaml
  hingeline bench my-model.yaml --ruler --write my-model-measured.yaml
  hingeline bench my-model.yaml --resume
  hingeline bench my-model.yaml --answers seen.txt --json`,
		ValidArgsFunction: completing(1),
		RunE:              func(c *cobra.Command, args []string) error { return s.bench(c, args, flags) },
	}
	f := c.Flags()
	f.BoolVar(&flags.script, "script", false, "walk through the script's own poses, in walk-around order")
	f.BoolVar(&flags.shortest, "shortest", false, "leave out the steps in which each stick is moved alone, but where they show something")
	f.BoolVar(&flags.ruler, "ruler", false, "how far everything goes is measured too")
	f.StringVar(&flags.visible, "visible", "", "a movement of this many `DEGREES` is seen (2)")
	f.BoolVar(&flags.noPicture, "no-picture", false, "words only")
	f.StringVar(&flags.answers, "answers", "", "take the answers from `FILE`, one a line, or from standard input with -; empty lines and lines that begin with \"# \" do not count; \"finish\" ends the walk without steps that tell which mistake it is")
	f.StringVar(&flags.resume, "resume", "", "go on with the newest record, or with `N`")
	f.Lookup("resume").NoOptDefVal = newestRecord
	f.StringVar(&flags.write, "write", "", "write what measurements offer to correct as a new airframe `FILE`, which must not be there yet")
	f.BoolVar(&flags.asTable, "as-table", false, "with --write, write measured tables in place of linkages")
	f.StringVar(&flags.date, "date", "", "the `DATE` of the answers, as 2026-11-25T20:15:00Z; usually now")
	f.BoolVar(&flags.brief, "brief", false, "of the report only what differs and the verdict")
	f.BoolVar(&flags.json, "json", false, "write the report as JSON (hingeline schema --bench)")
	return c
}

// check says what makes no sense among the flags, and how it is looked at.
func (f *benchFlags) check(c *cobra.Command, args []string) (look sight.Look, err error) {
	wrong := func(message, hint string) (sight.Look, error) {
		return look, &usageError{message: message, hint: hint, usage: usageOf(c)}
	}
	for _, name := range []string{"visible", "answers", "write", "date", "resume"} {
		if flag := c.Flags().Lookup(name); flag.Changed && flag.Value.String() == "" {
			return wrong("--"+name+" is there, but nothing behind it", "")
		}
	}
	resumes := f.resume != ""
	switch {
	case len(args) == 0:
		return wrong(noAirframe())
	case args[0] == "-":
		return wrong("the airframe file cannot come from standard input: the record is kept beside it", "name a file")
	case f.script && f.shortest:
		return wrong("--script and --shortest do not go together: the script's poses are walked through as they are", "")
	case resumes && (f.script || f.shortest || f.ruler || f.visible != ""):
		return wrong("--script, --shortest, --ruler and --visible do not go with --resume: the record says how it was begun", "")
	case f.asTable && f.write == "":
		return wrong("--as-table is about what --write writes, and that is not there", "--write my-model-measured.yaml --as-table")
	case f.brief && f.json:
		return wrong("--brief and --json do not go together: the JSON report is always whole", "")
	}
	if hint := resumeHint(args, f.resume); hint != "" {
		return wrong("--resume is without a number, and there is no file "+args[len(args)-1], hint)
	}
	look, problem := lookOf(f.ruler, f.visible)
	if problem != "" {
		return wrong(problem, "")
	}
	if f.resume != "" && f.resume != newestRecord && numberOf(f.resume) == 0 {
		return wrong(fmt.Sprintf("--resume is %q, wanted the number of a record", f.resume), "--resume alone goes on with the newest; with a number it is --resume=3")
	}
	if f.date != "" {
		t, err := dateOf(c, f.date)
		if err != nil {
			return look, err
		}
		f.now = func() string { return t.UTC().Format(time.RFC3339) }
		return look, nil
	}
	f.now = func() string { return time.Now().UTC().Format(time.RFC3339) }
	return look, nil
}

// resumeHint is what is said to "--resume 2", which names a script 2; empty where something
// is called so, or the words are others.
func resumeHint(args []string, resume string) string {
	last := args[len(args)-1]
	if resume != newestRecord || len(args) < 2 || numberOf(last) == 0 {
		return ""
	}
	if _, err := os.Lstat(last); err == nil {
		return ""
	}
	return "to go on with record " + last + ": --resume=" + last
}

// bench leads through the walk, or goes on with it, and reports.
func (s *session) bench(c *cobra.Command, args []string, flags benchFlags) error {
	look, err := flags.check(c, args)
	if err != nil {
		return err
	}
	s.asJSON = flags.json
	if flags.write != "" {
		if _, err := os.Lstat(flags.write); err == nil {
			return s.refuse(flags.write+" is there already, so nothing was begun", "choose another name: no airframe file is ever written over")
		}
	}
	in := s.gatherFaults(args, &faultsFlags{ask: !flags.script}) // a script helps but need not be there
	if in.model == nil || diag.HasErrors(in.problems) {
		return &inputError{in.problems, in.sources}
	}
	answers, problem := s.answers(flags.answers)
	if problem != "" {
		return s.refuse(problem, "")
	}
	run := &benchRun{s: s, in: in, flags: &flags, named: args[0], answers: answers}
	if flags.write != "" && run.leavesScripts() {
		return s.refuse(fmt.Sprintf("%s would be in another directory than %s, which names its script by the place beside it, so nothing was begun", flags.write, in.disk[0].name),
			"write it beside the airframe file: --write "+inQuotes(filepath.ToSlash(filepath.Join(filepath.Dir(in.disk[0].name), filepath.Base(flags.write)))))
	}
	if flags.resume != "" {
		return run.resume()
	}
	return run.begin(look)
}

// begin chooses the steps of a new walk and goes through them.
func (r *benchRun) begin(look sight.Look) error {
	ctx, stop := untilLeft()
	defer stop()
	var chosen bench.Chosen
	if r.flags.script {
		var problems []diag.Problem
		if chosen, problems = bench.OfScript(r.in.model, r.in.scripts, look); diag.HasErrors(problems) {
			return &inputError{append(r.in.problems, problems...), r.in.sources}
		}
	} else {
		line := r.s.progress()
		progress := func(string) {}
		if line != nil {
			progress = line.tell
		}
		choose := bench.Usual
		if r.flags.shortest {
			choose = bench.Shortest
		}
		chosen = choose(ctx, r.in.model, look, progress)
		line.erase()
	}
	if len(chosen.Steps) == 0 {
		r.s.status = statusNothingChecked
		r.s.tell("hingeline: there is no step to do: nothing that moves can be told from what should be")
		return nil
	}
	r.start(chosen, look)
	if err := r.answers.rehearsed(bench.NewGuide(r.walk, bench.Nowhere{}, r.flags.now), r.in); err != nil {
		return err
	}
	if n := unfinished(r.journal.dir); n > 0 {
		r.s.tell(fmt.Sprintf("hingeline: record %d in %s is not finished; --resume goes on with it. This begins a new one.", n, r.journal.shown()))
	}
	return r.walkThrough(ctx)
}

// start is before the first question of a new walk: nothing is written yet.
func (r *benchRun) start(chosen bench.Chosen, look sight.Look) {
	r.walk = bench.NewWalk(r.in.model, chosen, look)
	r.header = bench.NewHeader(verify.Version, r.flags.now(), r.walk, r.in.scripts, chosen.How)
	r.journal = newRecordFile(recordDirectory(r.in), r.header)
	r.guide = bench.NewGuide(r.walk, r.journal, r.flags.now)
}
