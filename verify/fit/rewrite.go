package fit

import (
	"bytes"
	"cmp"
	"errors"
	"fmt"
	"math"
	"slices"
	"strconv"
	"strings"

	"example.com/hingeline/airframes"
	"example.com/hingeline/airframes/diag"
	"example.com/hingeline/mixcore"
	"example.com/hingeline/mixcore/linkage"
	"example.com/hingeline/verify/resolved"
)

// Correction is what one servo of a part gets: a linkage or a table.
type Correction struct {
	Part    int
	Servo   int // from 0
	Linkage *linkage.Geometry
	Table   []mixcore.Point
}

// Rewrite is an airframe file's text with corrections and nothing else changed. It is read
// again: the error says why a text cannot be changed so, and then nothing is.
func Rewrite(m *airframes.Model, list []Correction) ([]byte, error) {
	w := &rewriter{m: m, text: m.Source.Text}
	for i := range list {
		if err := w.correct(&list[i]); err != nil {
			return nil, fmt.Errorf("%s: %w", m.Setup.Parts[list[i].Part].Name, err)
		}
	}
	text, err := w.applied()
	if err == nil {
		err = w.hold(text, list)
	}
	if err != nil {
		return nil, err
	}
	return text, nil
}

// edit is a stretch of the text and what comes in its place.
type edit struct {
	from, to int
	with     string
}

type rewriter struct {
	m     *airframes.Model
	text  []byte
	edits []edit
}

func (w *rewriter) applied() ([]byte, error) {
	slices.SortStableFunc(w.edits, func(a, b edit) int { return cmp.Compare(a.from, b.from) })
	var b bytes.Buffer
	at := 0
	for _, e := range w.edits {
		if e.from < at {
			return nil, errors.New("two corrections are of the same stretch of the file; change it by hand")
		}
		b.Write(w.text[at:e.from])
		b.WriteString(e.with)
		at = e.to
	}
	b.Write(w.text[at:])
	return b.Bytes(), nil
}

// hold reads the new text and sees that nothing but the corrections is different.
func (w *rewriter) hold(text []byte, list []Correction) error {
	now, problems := airframes.Load(w.m.Source.Name, text)
	if now == nil {
		p := problems[slices.IndexFunc(problems, func(p diag.Problem) bool { return p.Severity == diag.Error })]
		return fmt.Errorf("with what was measured the file could not be used: line %d: %s", p.Line, p.Message)
	}
	for _, d := range resolved.Differences(w.m, now) {
		ours := slices.ContainsFunc(list, func(c Correction) bool { return slices.Equal(d.Parts, []string{w.m.Setup.Parts[c.Part].Name}) })
		if !ours {
			return fmt.Errorf("the file cannot be changed there without changing something else: %s; change it by hand", d.Text)
		}
	}
	for _, c := range list {
		d := &now.Setup.Parts[c.Part].Drives[c.Servo]
		if c.Linkage != nil && (d.Linkage == nil || !near(d.Linkage, c.Linkage)) || c.Table != nil && !slices.EqualFunc(d.Table, c.Table, nearPoint) {
			return fmt.Errorf("%s does not come out as it was meant; change it by hand", w.m.Setup.Parts[c.Part].Name)
		}
	}
	return nil
}

// written is how close a value is that was written and read again.
const written = 1e-6

func near(a, b *linkage.Geometry) bool {
	return math.Abs(a.Arm-b.Arm) < written && math.Abs(a.ArmDeg-b.ArmDeg) < written && math.Abs(a.HornDeg-b.HornDeg) < written && math.Abs(a.Pushrod-b.Pushrod) < written
}

func nearPoint(a, b mixcore.Point) bool {
	return math.Abs(a.X-b.X) < written && math.Abs(a.Y-b.Y) < written
}

// field is where the key of a setting of a servo stands.
func (w *rewriter) field(c *Correction, key string) (diag.Place, bool) {
	for _, path := range w.paths(c, key) {
		for said, at := range w.m.Places.Fields {
			if tidied(said) == path {
				return at, true
			}
		}
	}
	return diag.Place{}, false
}

// paths are those that a setting of a servo may have among Places.Fields: in a list of
// servos, or of the only one beside it.
func (w *rewriter) paths(c *Correction, key string) (paths []string) {
	for _, section := range []string{"surfaces", "wheels"} {
		part := section + "." + w.m.Setup.Parts[c.Part].Name + "."
		paths = append(paths, fmt.Sprintf("%sservos.%d.%s", part, c.Servo, key))
		if c.Servo == 0 {
			paths = append(paths, part+key)
		}
	}
	return paths
}

// tidied is a path as names are taken: one space between two words.
func tidied(path string) string { return strings.Join(strings.Fields(path), " ") }

func (w *rewriter) drive(c *Correction) *mixcore.Drive {
	return &w.m.Setup.Parts[c.Part].Drives[c.Servo]
}

func (w *rewriter) correct(c *Correction) error {
	switch {
	case c.Table != nil && w.drive(c).Linkage != nil:
		return w.intoTable(c)
	case c.Table != nil:
		return w.table(c)
	}
	was := w.drive(c).Linkage
	for _, v := range []struct {
		key     string
		was, is float64
	}{{"arm_mm", was.Arm, c.Linkage.Arm}, {"arm_deg", was.ArmDeg, c.Linkage.ArmDeg}, {"horn_deg", was.HornDeg, c.Linkage.HornDeg}, {"pushrod_mm", was.Pushrod, c.Linkage.Pushrod}} {
		if math.Abs(v.was-v.is) < written {
			continue
		}
		if err := w.number(c, v.key, v.is); err != nil {
			return err
		}
	}
	return nil
}

func plainNumber(x float64) string {
	return strconv.FormatFloat(airframes.Thousandths(x), 'f', -1, 64)
}

// number writes one value of a linkage, or puts it behind the arm's length.
func (w *rewriter) number(c *Correction, key string, is float64) error {
	if at, ok := w.field(c, "linkage."+key); ok {
		from, to, err := w.value(at, key)
		if err != nil {
			return err
		}
		old := string(w.text[from:to])
		quote := ""
		if old != "" && (old[0] == '"' || old[0] == '\'') {
			quote = old[:1]
		}
		w.edits = append(w.edits, edit{from, to, quote + plainNumber(is) + unitOf(strings.Trim(old, `"'`)) + quote})
		return nil
	}
	at, ok := w.field(c, "linkage.arm_mm")
	if !ok {
		return fmt.Errorf("no arm_mm was found to put %s beside", key)
	}
	start, to, err := w.value(at, "arm_mm")
	if err != nil {
		return err
	}
	said := key + ": " + plainNumber(is)
	flow, err := w.inBrackets(c, "linkage")
	if err != nil {
		return err
	}
	if flow {
		w.edits = append(w.edits, edit{to, to, ", " + said})
		return nil
	}
	return w.lineBefore(at, start, said)
}

// inBrackets says whether the settings behind a key stand in brackets.
func (w *rewriter) inBrackets(c *Correction, key string) (bool, error) {
	at, ok := w.field(c, key)
	if !ok {
		return false, fmt.Errorf("no %s: was found", key)
	}
	from, err := w.behind(at, key)
	return err == nil && from < len(w.text) && w.text[from] == '{', err
}

// lineBefore puts a line before that of a key, set in as far.
func (w *rewriter) lineBefore(at diag.Place, value int, said string) error {
	line, indent, err := w.setIn(at, value)
	if err == nil {
		w.edits = append(w.edits, edit{line, line, indent + said + w.ending()})
	}
	return err
}

// setIn is where the line of a key begins, and how far the key is set in.
func (w *rewriter) setIn(at diag.Place, value int) (line int, indent string, err error) {
	start, ok := w.m.Source.Offset(at)
	if !ok || start > value {
		return 0, "", w.byHand(at, "a key")
	}
	line = bytes.LastIndexByte(w.text[:start], '\n') + 1
	indent = string(w.text[line:start])
	if strings.Trim(indent, " ") != "" {
		return 0, "", fmt.Errorf("line %d: something stands before the key; change it by hand", at.Line)
	}
	return line, indent, nil
}

// ending is how lines of the file end.
func (w *rewriter) ending() string {
	if bytes.Contains(w.text, []byte("\r\n")) {
		return "\r\n"
	}
	return "\n"
}

// unitOf is the unit behind a number as it is written, with the spaces before it.
func unitOf(text string) string { return strings.TrimLeft(text, "+-.0123456789") }

// value is the stretch of a plain or quoted value behind its key.
func (w *rewriter) value(at diag.Place, key string) (from, to int, err error) {
	from, err = w.behind(at, key)
	if err != nil {
		return 0, 0, err
	}
	rest := w.text[from:]
	if len(rest) > 0 && (rest[0] == '"' || rest[0] == '\'') {
		end := bytes.IndexByte(rest[1:], rest[0])
		if end < 0 {
			return 0, 0, w.byHand(at, key)
		}
		return from, from + end + 2, nil
	}
	end := bytes.IndexAny(rest, ",}\r\n")
	if end < 0 {
		end = len(rest)
	}
	for i := 1; i < end; i++ {
		if rest[i] == '#' && (rest[i-1] == ' ' || rest[i-1] == '\t') { // a comment
			end = i
		}
	}
	plain := bytes.TrimRight(rest[:end], " \t")
	if len(plain) == 0 || !bytes.ContainsRune([]byte("+-.0123456789"), rune(plain[0])) {
		return 0, 0, w.byHand(at, key)
	}
	return from, from + len(plain), nil
}

func (w *rewriter) byHand(at diag.Place, key string) error {
	return fmt.Errorf("line %d: the value of %s is not written plainly behind it; change it by hand", at.Line, key)
}

// behind is where what follows a key begins, on its line.
func (w *rewriter) behind(at diag.Place, key string) (int, error) {
	start, ok := w.m.Source.Offset(at)
	if !ok {
		return 0, w.byHand(at, key)
	}
	rest := w.text[start:]
	for _, said := range []string{key, `"` + key + `"`, "'" + key + "'"} {
		if after, is := bytes.CutPrefix(rest, []byte(said)); is {
			after = bytes.TrimLeft(after, " \t")
			if after, is = bytes.CutPrefix(after, []byte(":")); is {
				return len(w.text) - len(bytes.TrimLeft(after, " \t")), nil
			}
		}
	}
	return 0, w.byHand(at, key)
}
