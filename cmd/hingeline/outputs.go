package main

import (
	"bytes"
	"fmt"
	"io"
	"os"
	"path/filepath"
	"slices"
	"strings"
	"sync"
	"time"

	"github.com/spf13/pflag"

	"example.com/hingeline/verify/report/html"
	"example.com/hingeline/verify/report/jsonout"
	"example.com/hingeline/verify/report/junit"
	"example.com/hingeline/verify/report/messages"
	"example.com/hingeline/verify/report/pdf"
	"example.com/hingeline/verify/report/sarif"
	"example.com/hingeline/verify/report/tap"
	"example.com/hingeline/verify/result"
)

// toStdout is the name of a file that is standard output.
const toStdout = "-"

// output is one further form of the report, and where it goes.
type output struct {
	flag  string // "html"
	usage string
	what  string                 // "a web page of a control check"
	ours  func(text []byte) bool // whether a file that is there is an older one
	paper bool                   // it shows what result.Paper holds
	raw   bool                   // bytes that no terminal should be sent

	render func(io.Writer, *result.Report) error
	name   string // of the file; toStdout is standard output, empty for none
}

// outputs are all forms that check writes besides the terminal's.
type outputs struct {
	list    []*output
	date    string
	paper   string // size of the sheets
	font    string // file
	sheets  pdf.Options
	missing []rune // letters of the PDF that was written which no font has
}

func newOutputs() *outputs {
	o := &outputs{}
	o.list = []*output{
		{flag: "json", usage: "write the report as JSON to `FILE`, or without one to the screen (hingeline schema --report)",
			what: "a JSON report of a control check", ours: jsonout.IsReport, paper: true, render: jsonout.Render},
		{flag: "html", usage: "write the report as one web page to `FILE`",
			what: "a web page of a control check", ours: html.IsReport, paper: true, render: html.Render},
		{flag: "pdf", usage: "write the report to print and sign to `FILE`",
			what: "a PDF of a control check", ours: pdf.IsReport, paper: true, raw: true,
			render: o.print},
		{flag: "card", usage: "write a card for the shirt pocket, as PDF, to `FILE`",
			what: "a PDF of a field card", ours: pdf.IsCard, paper: true, raw: true,
			render: func(w io.Writer, r *result.Report) error { return pdf.RenderCard(w, r, o.sheets) }},
		{flag: "junit", usage: "write JUnit XML to `FILE`",
			what: "the JUnit XML of a control check", ours: junit.IsReport, render: junit.Render},
		{flag: "tap", usage: "write TAP 14 to `FILE`",
			what: "the TAP of a control check", ours: tap.IsReport, render: tap.Render},
		{flag: "messages", usage: "write Cucumber messages, one in each line, to `FILE`",
			what: "the Cucumber messages of a control check", ours: messages.IsReport, render: messages.Render},
		{flag: "sarif", usage: "write what was found as SARIF 2.1.0 to `FILE`",
			what: "the SARIF of a control check", ours: sarif.IsReport, render: sarif.Render},
	}
	return o
}

// flags adds the flags of all outputs.
func (o *outputs) flags(f *pflag.FlagSet) {
	for _, out := range o.list {
		f.StringVar(&out.name, out.flag, "", out.usage)
	}
	f.Lookup("json").NoOptDefVal = toStdout
	f.StringVar(&o.date, "date", "", "the `DATE` that reports bear, as 2026-11-25 or 2026-11-25T20:15:00Z; usually now")
	f.StringVar(&o.paper, "paper", "a4", "`SIZE` of the sheets of a PDF: a4 or letter")
	f.StringVar(&o.font, "font", "", "TrueType font `FILE` of a PDF, for letters that the built-in font has not got")
}

// jsonFile takes a JSON file's name from among the arguments: "--json report.json" reads
// as "--json" without a file, and no airframe or script ends in .json.
func (o *outputs) jsonFile(args []string) ([]string, *usageError) {
	out := o.of("json")
	if out.name != toStdout {
		return args, nil
	}
	var rest []string
	for _, a := range args {
		switch {
		case !strings.EqualFold(filepath.Ext(a), ".json"):
			rest = append(rest, a)
		case out.name != toStdout:
			return nil, &usageError{
				message: fmt.Sprintf("--json goes to one file, and %s and %s both end in .json", out.name, a),
				hint:    "an airframe file ends in .yaml and a script in .feature",
			}
		default:
			out.name = a
		}
	}
	return rest, nil
}

// of is the output that a flag asks for.
func (o *outputs) of(flag string) *output {
	return o.list[slices.IndexFunc(o.list, func(out *output) bool { return out.flag == flag })]
}

// wanted are the outputs that were asked for.
func (o *outputs) wanted() []*output {
	var list []*output
	for _, out := range o.list {
		if out.name != "" {
			list = append(list, out)
		}
	}
	return list
}

// onScreen is the output that goes to standard output, nil for the terminal's own.
func (o *outputs) onScreen() *output {
	for _, out := range o.wanted() {
		if out.name == toStdout {
			return out
		}
	}
	return nil
}

// needPaper says whether any output shows what result.Paper holds.
func (o *outputs) needPaper() bool {
	return slices.ContainsFunc(o.wanted(), func(out *output) bool { return out.paper })
}

func (o *outputs) needMessages() bool { return o.of("messages").name != "" }

// prepare looks at all that was said, before anything is checked.
func (o *outputs) prepare(s *session, f *pflag.FlagSet) *usageError {
	names := map[string]string{}
	for _, out := range o.list {
		if out.name == "" && f.Changed(out.flag) {
			return &usageError{message: fmt.Sprintf("--%s is there, but nothing behind it", out.flag), hint: "name a file"}
		}
	}
	for _, out := range o.wanted() {
		goal := out.goal()
		if other, twice := names[goal]; twice {
			return &usageError{message: fmt.Sprintf("--%s and --%s both go to %s", other, out.flag, out.name), hint: "name a file for each"}
		}
		names[goal] = out.flag
		if wrong := out.unusable(s); wrong != nil {
			return wrong
		}
	}
	switch strings.ToLower(o.paper) {
	case "a4":
		o.sheets.Paper = pdf.A4
	case "letter":
		o.sheets.Paper = pdf.Letter
	default:
		return &usageError{message: fmt.Sprintf("--paper is %q, wanted a4 or letter", o.paper)}
	}
	if o.font != "" {
		font, err := readFont(o.font)
		if err != nil {
			return &usageError{message: fmt.Sprintf("--font: %v", err), hint: "name a TrueType font, a file that ends in .ttf"}
		}
		o.sheets.Font = font
	}
	return o.dated(time.Now())
}

// maxFontBytes is the most that a font file may hold: several times the largest one with
// the letters of all languages.
const maxFontBytes = 64 << 20

// readFont reads a font that a PDF can be set in.
func readFont(name string) ([]byte, error) {
	if info, err := os.Stat(name); err == nil && !info.Mode().IsRegular() {
		return nil, fmt.Errorf("%s is no plain file", name)
	}
	f, err := os.Open(name)
	if err != nil {
		return nil, err
	}
	defer f.Close()
	font, err := readUpTo(f, maxFontBytes)
	if err != nil {
		return nil, fmt.Errorf("%s: %w", name, err)
	}
	if err := pdf.Usable(font); err != nil {
		return nil, fmt.Errorf("%s: %w", name, err)
	}
	return font, nil
}

// dated reads the date, or takes the time given.
func (o *outputs) dated(now time.Time) *usageError {
	if o.date == "" {
		o.date = now.UTC().Format(time.RFC3339)
		return nil
	}
	if _, err := momentOf(o.date); err == nil {
		return nil
	}
	return &usageError{message: fmt.Sprintf("--date is %q, wanted a date", o.date), hint: "as 2026-11-25, or with the time as 2026-11-25T20:15:00Z"}
}

// momentOf reads a date, with or without a time.
func momentOf(date string) (time.Time, error) {
	if day, err := time.Parse(time.DateOnly, date); err == nil {
		return day, nil
	}
	return time.Parse(time.RFC3339, date)
}

// goal is one name of where an output goes, however it is named and whatever links lead
// there.
func (out *output) goal() string {
	if out.name == toStdout {
		return toStdout
	}
	name := out.name
	if real, err := filepath.EvalSymlinks(name); err == nil {
		name = real
	} else if dir, err := filepath.EvalSymlinks(filepath.Dir(name)); err == nil {
		name = filepath.Join(dir, filepath.Base(name))
	}
	if whole, err := filepath.Abs(name); err == nil {
		name = whole
	}
	return name
}

// unusable says why an output cannot go where it should.
func (out *output) unusable(s *session) *usageError {
	if out.name == toStdout {
		if out.raw && terminalFile(s.stdout) != nil {
			return &usageError{message: fmt.Sprintf("--%s is no text, so it does not go to a terminal", out.flag), hint: "name a file, or send it on with |"}
		}
		return nil
	}
	if info, err := os.Stat(out.name); err == nil && info.IsDir() {
		return &usageError{message: fmt.Sprintf("--%s: %s is a directory, wanted a file", out.flag, out.name)}
	}
	if dir := filepath.Dir(out.name); !isDirectory(dir) {
		return &usageError{message: fmt.Sprintf("--%s: there is no directory %s", out.flag, dir), hint: "make it first, or choose another"}
	}
	if wrong := out.file().taken(); wrong != "" {
		return &usageError{message: fmt.Sprintf("--%s: %s", out.flag, wrong), hint: "choose another name, or move that file away"}
	}
	return nil
}

func isDirectory(name string) bool {
	info, err := os.Stat(name)
	return err == nil && info.IsDir()
}

func (out *output) file() *ownFile { return &ownFile{name: out.name, what: out.what, ours: out.ours} }

// write renders the outputs that go to files, side by side, and then writes one after
// another. The error is that of the first that could not be written; the others are
// written all the same.
func (o *outputs) write(r *result.Report) error {
	var files []*output
	for _, out := range o.wanted() {
		if out.name != toStdout {
			files = append(files, out)
		}
	}
	texts, errs, bugs := make([]bytes.Buffer, len(files)), make([]error, len(files)), make([]any, len(files))
	var all sync.WaitGroup
	for i, out := range files {
		all.Go(func() {
			defer func() { bugs[i] = recover() }()
			errs[i] = out.render(&texts[i], r)
		})
	}
	all.Wait()
	for _, bug := range bugs {
		if bug != nil {
			panic(bug) // here, where it is told as ours
		}
	}
	var first error
	for i, out := range files {
		if errs[i] == nil {
			errs[i] = out.file().put(texts[i].Bytes())
		}
		if errs[i] != nil && first == nil {
			first = fmt.Errorf("--%s: %w", out.flag, errs[i])
		}
	}
	return written(first)
}

// print writes the sheets of a PDF, and remembers the letters that no font has.
func (o *outputs) print(w io.Writer, r *result.Report) error {
	sheets, err := pdf.Lay(r, o.sheets)
	if err != nil {
		return err
	}
	o.missing = sheets.Missing()
	return sheets.Write(w)
}

// sayMissing says which letters of a PDF stand there as numbers.
func (o *outputs) sayMissing(to io.Writer) {
	if len(o.missing) > 0 {
		fmt.Fprintf(to, "hingeline: the PDF has no letter for %q, so their numbers stand there\n  --font FILE takes them from a TrueType font\n", string(o.missing))
	}
}

// sayStale names the files that an earlier run left: where nothing was checked they are
// not written anew.
func (o *outputs) sayStale(to io.Writer) {
	for _, out := range o.wanted() {
		if info, err := os.Stat(out.name); err == nil && info.Mode().IsRegular() && info.Size() > 0 {
			fmt.Fprintf(to, "hingeline: %s was not written anew: it is of an earlier check\n", out.name)
		}
	}
}
