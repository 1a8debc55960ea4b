package figure_test

import (
	"bytes"
	"encoding/xml"
	"errors"
	"io"
	"math"
	"regexp"
	"strings"
	"testing"

	"pgregory.net/rapid"

	"example.com/hingeline/verify/report/figure"
	"example.com/hingeline/verify/report/sample"
	"example.com/hingeline/verify/result"
)

// written is a drawing as SVG.
func written(t interface{ Fatal(...any) }, d *figure.Drawing, id string) string {
	var b bytes.Buffer
	if err := figure.SVG(&b, d, figure.SVGOptions{ID: id}); err != nil {
		t.Fatal(err)
	}
	return b.String()
}

// parsed is the title, the description and the ids of an svg, if it is well-formed XML.
func parsed(text string) (title, description string, ids []string, err error) {
	decoder := xml.NewDecoder(strings.NewReader(text))
	within := ""
	for {
		token, err := decoder.Token()
		if errors.Is(err, io.EOF) {
			return title, description, ids, nil
		}
		if err != nil {
			return "", "", nil, err
		}
		switch token := token.(type) {
		case xml.StartElement:
			within = token.Name.Local
			for _, a := range token.Attr {
				if a.Name.Local == "id" {
					ids = append(ids, a.Value)
				}
			}
		case xml.EndElement:
			within = ""
		case xml.CharData:
			switch within {
			case "title":
				title += string(token)
			case "desc":
				description += string(token)
			}
		}
	}
}

var longNumber = regexp.MustCompile(`[0-9]\.[0-9]{3}`)

func TestSVGIsWellFormedWhateverTheNames(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		s, p := aModel(t)
		title := rapid.String().Draw(t, "title")
		d := figure.Behind(s, p, title)
		text := written(t, &d, "behind-1")
		_, description, ids, err := parsed(text)
		if err != nil {
			t.Fatalf("not well-formed: %v\n%s", err, text)
		}
		if description == "" {
			t.Fatal("nothing is described")
		}
		for _, id := range ids {
			if !strings.HasPrefix(id, "behind-1") {
				t.Fatalf("id %q does not begin with the one asked for", id)
			}
		}
		if found := longNumber.FindString(withoutWords.ReplaceAllString(text, "")); found != "" {
			t.Fatalf("a number has more than two decimals: …%s…", found)
		}
		if again := written(t, &d, "behind-1"); again != text {
			t.Fatal("written twice, it differs")
		}
	})
}

var withoutWords = regexp.MustCompile(`(?s)>[^<]*<`)

func TestSVGEscapesAndDropsControls(t *testing.T) {
	d := figure.Drawing{Width: 10, Height: 10, Title: "a<b>&\"c\"\x00\x1b[31m\u202e\nend", Description: "what \xff is"}
	title, description, _, err := parsed(written(t, &d, `1" onload="x`))
	if err != nil {
		t.Fatal(err)
	}
	if want := `a<b>&"c"[31m end`; title != want {
		t.Errorf("title %q, want %q", title, want)
	}
	if want := "what \ufffd is"; description != want {
		t.Errorf("description %q, want %q", description, want)
	}
	if text := written(t, &d, `1" onload="x`); strings.Contains(text, `onload="`) {
		t.Errorf("an id becomes an attribute: %s", text)
	}
}

func TestSVGRefusesWhatIsNoNumber(t *testing.T) {
	for _, bad := range []float64{math.NaN(), math.Inf(1), math.Inf(-1), 1e300} {
		for _, d := range []figure.Drawing{
			{Width: bad, Height: 1},
			{Width: 1, Height: 1, Items: []figure.Item{figure.Path{Points: []figure.Point{{X: bad}}}}},
			{Width: 1, Height: 1, Items: []figure.Item{figure.Arc{Radius: bad}}},
			{Width: 1, Height: 1, Items: []figure.Item{figure.Text{At: figure.Point{Y: bad}, Words: "a"}}},
		} {
			var b bytes.Buffer
			if err := figure.SVG(&b, &d, figure.SVGOptions{}); err == nil || b.Len() > 0 {
				t.Errorf("%+v: error %v and %d bytes, want an error and none", d, err, b.Len())
			}
		}
	}
}

// full refuses everything.
type full struct{}

func (full) Write([]byte) (int, error) { return 0, errors.New("the disk is full") }

func TestSVGTellsOfAWriterThatFails(t *testing.T) {
	p := sample.Paper()
	d := figure.Behind(&p.Shape, &p.Pictures[1], "")
	if err := figure.SVG(full{}, &d, figure.SVGOptions{}); err == nil {
		t.Error("no error from a writer that fails")
	}
}

// contrast is the contrast ratio of two colours, as "contrast ratio" and "relative
// luminance" are defined in the Web Content Accessibility Guidelines 2.2.
func contrast(a, b figure.Ink) float64 {
	light, dark := luminance(a), luminance(b)
	if light < dark {
		light, dark = dark, light
	}
	return (light + 0.05) / (dark + 0.05)
}

func luminance(i figure.Ink) float64 {
	r, g, b := i.RGB()
	linear := func(c uint8) float64 {
		v := float64(c) / 255
		if v <= 0.04045 {
			return v / 12.92
		}
		return math.Pow((v+0.055)/1.055, 2.4)
	}
	return 0.2126*linear(r) + 0.7152*linear(g) + 0.0722*linear(b)
}

// enough is the least contrast of small words, success criterion 1.4.3 of the same.
const enough = 4.5

func TestInksAreReadOnPaper(t *testing.T) {
	for _, ink := range []figure.Ink{figure.Black, figure.Grey, figure.Good, figure.Bad} {
		for _, ground := range []figure.Ink{figure.White, figure.Pale} {
			if got := contrast(ink, ground); got < enough {
				t.Errorf("ink %d on %d: contrast %.2f, want %g", ink, ground, got, enough)
			}
		}
	}
}

// TestPartsCanBePointedAt sees a group for every part of the model in both views, and
// nothing else beside what is drawn without groups.
func TestPartsCanBePointedAt(t *testing.T) {
	group := regexp.MustCompile(`<g data-part="(\d+)">\n`)
	for name, of := range map[string]func(*result.Shape, *result.Picture, string) figure.Drawing{"behind": figure.Behind, "above": figure.Plan} {
		paper := sample.Paper()
		d := of(&paper.Shape, &paper.Pictures[0], name)
		var b bytes.Buffer
		if err := figure.SVG(&b, &d, figure.SVGOptions{ID: name, Parts: true}); err != nil {
			t.Fatal(err)
		}
		if _, _, _, err := parsed(b.String()); err != nil {
			t.Errorf("%s: %v", name, err)
		}
		seen := map[string]bool{}
		for _, m := range group.FindAllStringSubmatch(b.String(), -1) {
			seen[m[1]] = true
		}
		if len(seen) != len(paper.Shape.Parts) {
			t.Errorf("%s: groups of %d parts, wanted %d", name, len(seen), len(paper.Shape.Parts))
		}
		if plain := strings.ReplaceAll(group.ReplaceAllString(b.String(), ""), "</g>\n", ""); plain != written(t, &d, name) {
			t.Errorf("%s: with groups something else is drawn", name)
		}
	}
}
