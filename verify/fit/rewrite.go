package fit

import (
	"bytes"
	"cmp"
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
	"example.com/hingeline/verify/wording"
)

// Correction is what one part's only servo gets: a linkage or a table.
type Correction struct {
	Part    int
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
	text := w.applied()
	return text, w.hold(text, list)
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

func (w *rewriter) applied() []byte {
	slices.SortStableFunc(w.edits, func(a, b edit) int { return cmp.Compare(a.from, b.from) })
	var b bytes.Buffer
	at := 0
	for _, e := range w.edits {
		b.Write(w.text[at:e.from])
		b.WriteString(e.with)
		at = e.to
	}
	b.Write(w.text[at:])
	return b.Bytes()
}

// hold reads the new text and sees that nothing but the corrections is different.
func (w *rewriter) hold(text []byte, list []Correction) error {
	now, problems := airframes.Load(w.m.Source.Name, text)
	if now == nil {
		p := problems[0]
		return fmt.Errorf("with what was measured the file could not be used: line %d: %s", p.Line, p.Message)
	}
	for _, d := range resolved.Differences(w.m, now) {
		ours := slices.ContainsFunc(list, func(c Correction) bool { return slices.Equal(d.Parts, []string{w.m.Setup.Parts[c.Part].Name}) })
		if !ours {
			return fmt.Errorf("the file cannot be changed there without changing something else: %s; change it by hand", d.Text)
		}
	}
	for _, c := range list {
		d := &now.Setup.Parts[c.Part].Drives[0]
		if c.Linkage != nil && (d.Linkage == nil || !near(d.Linkage, c.Linkage)) || c.Table != nil && !slices.EqualFunc(d.Table, c.Table, nearPoint) {
			return fmt.Errorf("%s does not come out as it was meant; change it by hand", w.m.Setup.Parts[c.Part].Name)
		}
	}
	return nil
}

// written is how close a value is that was written and read again.
const written = 1e-6

func near(a, b *linkage.Geometry) bool {
	return math.Abs(a.Arm-b.Arm) < written && math.Abs(a.ArmDeg-b.ArmDeg) < written && math.Abs(a.Pushrod-b.Pushrod) < written
}

func nearPoint(a, b mixcore.Point) bool {
	return math.Abs(a.X-b.X) < written && math.Abs(a.Y-b.Y) < written
}

// field is the path of a field of a part's only servo, and where its key stands.
func (w *rewriter) field(part int, key string) (diag.Place, bool) {
	name := w.m.Setup.Parts[part].Name
	for _, section := range []string{"surfaces", "wheels"} {
		for _, path := range []string{section + "." + name + "." + key, section + "." + name + ".servos.0." + key} {
			if at, ok := w.m.Places.Fields[path]; ok {
				return at, true
			}
		}
	}
	return diag.Place{}, false
}

func (w *rewriter) correct(c *Correction) error {
	if c.Table != nil {
		return w.table(c)
	}
	was := w.m.Setup.Parts[c.Part].Drives[0].Linkage
	for _, v := range []struct {
		key     string
		was, is float64
	}{{"arm_mm", was.Arm, c.Linkage.Arm}, {"arm_deg", was.ArmDeg, c.Linkage.ArmDeg}, {"pushrod_mm", was.Pushrod, c.Linkage.Pushrod}} {
		if math.Abs(v.was-v.is) < written {
			continue
		}
		if err := w.number(c.Part, v.key, v.is); err != nil {
			return err
		}
	}
	return nil
}

func plainNumber(x float64) string {
	return strconv.FormatFloat(math.Round(x*1000)/1000, 'f', -1, 64)
}

// number writes one value of a linkage, or puts it behind the arm's length.
func (w *rewriter) number(part int, key string, is float64) error {
	if at, ok := w.field(part, "linkage."+key); ok {
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
	at, ok := w.field(part, "linkage.arm_mm")
	if !ok {
		return fmt.Errorf("no arm_mm was found to put %s beside", key)
	}
	_, to, err := w.value(at, "arm_mm")
	if err != nil {
		return err
	}
	start, _ := w.m.Source.Offset(at)
	said := key + ": " + plainNumber(is)
	line := bytes.LastIndexByte(w.text[:start], '\n') + 1
	indent := w.text[line:start]
	if len(bytes.TrimLeft(indent, " ")) > 0 { // {arm_mm: …, …}
		w.edits = append(w.edits, edit{to, to, ", " + said})
		return nil
	}
	if next := bytes.TrimLeft(w.text[to:], " \t"); bytes.HasPrefix(next, []byte(",")) || bytes.HasPrefix(next, []byte("}")) { // of a list in brackets over several lines
		w.edits = append(w.edits, edit{to, to, ", " + said})
		return nil
	}
	ending := "\n"
	if bytes.Contains(w.text, []byte("\r\n")) {
		ending = "\r\n"
	}
	w.edits = append(w.edits, edit{line, line, string(indent) + said + ending})
	return nil
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
	if comment := bytes.Index(rest[:end], []byte(" #")); comment >= 0 {
		end = comment
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

// table writes a measured table in place of the one that is there.
func (w *rewriter) table(c *Correction) error {
	at, ok := w.field(c.Part, "measured")
	if !ok {
		return fmt.Errorf("no measured: was found")
	}
	from, err := w.behind(at, "measured")
	if err != nil {
		return err
	}
	if from >= len(w.text) || w.text[from] != '{' {
		return w.byHand(at, "measured")
	}
	end := bytes.IndexByte(w.text[from:], '}')
	if end < 0 || bytes.ContainsAny(w.text[from:from+end], "#\"'&*[") {
		return w.byHand(at, "measured")
	}
	w.edits = append(w.edits, edit{from, from + end + 1, w.tableText(c)})
	return nil
}

// tableText is a table as a file has it.
func (w *rewriter) tableText(c *Correction) string {
	motion := w.m.Setup.Parts[c.Part].Motion
	var points []string
	for _, p := range c.Table {
		angle := plainNumber(math.Abs(p.Y)) + "°"
		if p.Y != 0 {
			angle += " " + strings.ToLower(wording.Direction(motion, p.Y > 0))
		}
		points = append(points, plainNumber(p.X)+"%: "+angle)
	}
	return "{" + strings.Join(points, ", ") + "}"
}
