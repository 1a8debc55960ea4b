package bench

import (
	"bytes"
	"encoding/json"
	"errors"
	"fmt"
	"time"

	"example.com/hingeline/airframes"
	"example.com/hingeline/airframes/diag"
	"example.com/hingeline/mixcore"
	"example.com/hingeline/verify/faults/sight"
	"example.com/hingeline/verify/resolved"
	"example.com/hingeline/verify/script"
	"example.com/hingeline/verify/strictjson"
)

// Format is the number of the shape of records that this package writes.
const Format = 1

// Header is the first line of a record: what the model is held against, and how.
type Header struct {
	Format   int        `json:"hingeline_bench"`
	Tool     string     `json:"tool"`
	Model    string     `json:"model"`
	Date     string     `json:"date"`   // RFC 3339, UTC: when it began
	SetUp    string     `json:"set_up"` // digest of the resolved set-up
	Asked    string     `json:"asked"`  // digest of the resolved scripts; empty without any
	Airframe File       `json:"airframe"`
	Scripts  []File     `json:"scripts"`
	Look     LookJSON   `json:"look"`
	How      string     `json:"how"` // the steps were chosen
	Steps    []StepJSON `json:"steps"`
}

// File is a file as it was when the walk began.
type File struct {
	Name string `json:"file"`
	Text string `json:"text"`
}

// LookJSON is a sight.Look as a record has it.
type LookJSON struct {
	Ruler    bool    `json:"ruler"`
	Visible  float64 `json:"visible_deg"`
	Accuracy float64 `json:"accuracy_deg"`
}

// StepJSON is one step as a record has it: where every control stands before and after, in
// the airframe file's order.
type StepJSON struct {
	Before []float64 `json:"before"`
	After  []float64 `json:"after"`
	Lost   [2]bool   `json:"signal_lost"`
	Watch  []string  `json:"watch"` // parts of which it is watched how long they take
	Stand  []string  `json:"stand"` // the same in words
	Move   []string  `json:"move"`
}

// NewHeader is the header of a walk.
func NewHeader(tool, date string, w *Walk, files []script.File, how string) *Header {
	m := w.Model
	h := &Header{
		Format: Format, Tool: tool, Model: m.Name, Date: date, How: how,
		SetUp:    resolved.Digest(resolved.SetUp(m)),
		Airframe: File{m.Source.Name, string(m.Source.Text)}, Scripts: []File{},
		Look: LookJSON{w.Look.Ruler, float64(w.Look.Visible), float64(w.Look.Accuracy)},
	}
	for _, f := range files {
		h.Scripts = append(h.Scripts, File{f.Name, string(f.Text)})
	}
	if len(files) > 0 {
		if asked, problems := resolved.Script(m, files); !diag.HasErrors(problems) {
			h.Asked = resolved.ScriptDigest(asked)
		}
	}
	for i := range w.Steps {
		h.Steps = append(h.Steps, w.written(&w.Steps[i]))
	}
	return h
}

// written is a step as a record has it.
func (w *Walk) written(s *Step) StepJSON {
	one := StepJSON{Before: s.From.Position, After: s.To.Position, Lost: [2]bool{s.From.SignalLost, s.To.SignalLost},
		Watch: []string{}, Stand: filled(s.Said.Stand), Move: filled(s.Said.Move)}
	for _, part := range s.Watch {
		one.Watch = append(one.Watch, w.Model.Setup.Parts[part].Name)
	}
	return one
}

// read is a step of a record, with the parts of which it is watched how long they take.
func (s *StepJSON) read(m *airframes.Model) (step sight.Step, watch []int, err error) {
	step = sight.Step{
		From: mixcore.Input{Position: s.Before, SignalLost: s.Lost[0]},
		To:   mixcore.Input{Position: s.After, SignalLost: s.Lost[1]},
	}
	for _, in := range []*mixcore.Input{&step.From, &step.To} {
		if err := m.Plan.CheckInput(in); err != nil {
			return step, nil, fmt.Errorf("cannot be set: %w", err)
		}
	}
	for _, name := range s.Watch {
		part := partCalled(&m.Setup, name)
		if part < 0 {
			return step, nil, fmt.Errorf("watches %q, and there is no such part", name)
		}
		watch = append(watch, part)
	}
	return step, watch, nil
}

func filled(list []string) []string {
	if list == nil {
		return []string{}
	}
	return list
}

// Record is a record as it was read.
type Record struct {
	Header *Header
	Events []Event
	Whole  int // bytes of the lines that are whole: what was half written when the program was killed is behind them
	Text   []byte
}

// Ended says whether the walk was gone through to its end.
func (r *Record) Ended() bool {
	n := len(r.Events)
	return n > 0 && r.Events[n-1].Kind == End
}

// errNoRecord is what Read says of a file whose first line is not that of a record.
var errNoRecord = errors.New("it is no record of a bench walk")

// Read reads a record. What is behind the last line end was never answered for, and is
// left out. The error says in words which line cannot be used.
func Read(text []byte) (*Record, error) {
	r := &Record{Whole: bytes.LastIndexByte(text, '\n') + 1, Text: text}
	if r.Whole == 0 {
		return nil, fmt.Errorf("%w: it is empty, or cut off in its first line", errNoRecord)
	}
	lines := bytes.Split(text[:r.Whole-1], []byte("\n"))
	r.Header = &Header{}
	if err := strictjson.Read(lines[0], r.Header); err != nil {
		return nil, fmt.Errorf("%w: %v", errNoRecord, err)
	}
	if r.Header.Format != Format {
		return nil, fmt.Errorf("it is of format %d, and this version reads format %d", r.Header.Format, Format)
	}
	if err := dated(r.Header.Date); err != nil {
		return nil, fmt.Errorf("line 1 of it %w", err)
	}
	for i, line := range lines[1:] {
		var e Event
		if err := strictjson.Read(line, &e); err != nil {
			return nil, fmt.Errorf("line %d of it cannot be read: %v", i+2, err)
		}
		if err := dated(e.At); err != nil {
			return nil, fmt.Errorf("line %d of it %w", i+2, err)
		}
		r.Events = append(r.Events, e)
	}
	return r, nil
}

// dated says what is wrong with a date as records have it.
func dated(date string) error {
	if _, err := time.Parse(time.RFC3339, date); err != nil {
		return fmt.Errorf("has the date %q, wanted one such as 2026-11-25T20:15:00Z", date)
	}
	return nil
}

// model reads the airframe file that a record holds.
func (h *Header) model() (*airframes.Model, error) {
	m, problems := airframes.Load(h.Airframe.Name, []byte(h.Airframe.Text))
	if m == nil {
		return nil, fmt.Errorf("the airframe file in it cannot be read: %s", problems[0].Message)
	}
	if got := resolved.Digest(resolved.SetUp(m)); got != h.SetUp {
		return nil, fmt.Errorf("the airframe file in it is not the one that its digest is of")
	}
	return m, nil
}

// look is how a record was looked at.
func (h *Header) look() sight.Look {
	return sight.Look{Ruler: h.Look.Ruler, Visible: mixcore.Degrees(h.Look.Visible), Accuracy: mixcore.Degrees(h.Look.Accuracy)}
}

// Walk is the walk of a record, with the model that it holds.
func (h *Header) Walk() (*Walk, error) {
	m, err := h.model()
	if err != nil {
		return nil, err
	}
	if !(h.Look.Visible > 0) || h.Look.Ruler && !(h.Look.Accuracy > 0) {
		return nil, errors.New("it does not say how it was looked at")
	}
	c := Chosen{How: h.How}
	for i := range h.Steps {
		step, watch, err := h.Steps[i].read(m)
		if err != nil {
			return nil, fmt.Errorf("step %d in it %w", i+1, err)
		}
		c.Steps, c.Watch = append(c.Steps, step), append(c.Watch, watch)
	}
	return NewWalk(m, c, h.look()), nil
}

func partCalled(s *mixcore.Setup, name string) int {
	for i := range s.Parts {
		if s.Parts[i].Name == name {
			return i
		}
	}
	return -1
}

// Journal is where a record goes, one line in one write, which is safe once it returns.
type Journal interface {
	Append(line []byte) error
}

// encode is one line of a record.
func encode(v any) ([]byte, error) {
	var b bytes.Buffer
	e := json.NewEncoder(&b)
	e.SetEscapeHTML(false)
	err := e.Encode(v)
	return b.Bytes(), err
}

// Begin writes the header of a record.
func (h *Header) Begin(to Journal) error {
	line, err := encode(h)
	if err != nil {
		return err
	}
	return to.Append(line)
}
