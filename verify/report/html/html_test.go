package html

import (
	"bytes"
	"encoding/xml"
	"errors"
	"flag"
	"fmt"
	"io"
	"maps"
	"os"
	"path/filepath"
	"regexp"
	"slices"
	"strconv"
	"strings"
	"testing"
	"unicode/utf8"

	"example.com/hingeline/verify/report/sample"
	"example.com/hingeline/verify/result"
)

var update = flag.Bool("update", false, "rewrite the golden pages in testdata")

var (
	pictures = regexp.MustCompile(`(?s)<svg xmlns.*?<title id="[^"]*">(.*?)</title>.*?</svg>`)
	styles   = regexp.MustCompile(`(?s)<style>.*?</style>`)
	hashes   = regexp.MustCompile(`sha256-.*?&#39;`)
)

// TestPageGolden compares whole pages, but for the style sheet and what is in the pictures.
func TestPageGolden(t *testing.T) {
	for name, r := range reports() {
		if name == "crowded" {
			r.Checks, r.Paper.Pictures = r.Checks[:4], r.Paper.Pictures[:4]
		}
		got := pictures.ReplaceAll(render(t, r), []byte("[picture: $1]"))
		got = hashes.ReplaceAll(styles.ReplaceAll(got, []byte("<style>…</style>")), []byte("sha256-…&#39;"))
		file := filepath.Join("testdata", name+".html")
		if *update {
			if err := os.WriteFile(file, got, 0o644); err != nil {
				t.Fatal(err)
			}
			continue
		}
		want, err := os.ReadFile(file)
		if err != nil {
			t.Fatal(err)
		}
		if !bytes.Equal(got, want) {
			t.Errorf("%s differs from %s; see what changed with -update and git diff", name, file)
		}
	}
}

// element is a start of an element of a page, and the words in it.
type element struct {
	name  string
	attrs map[string]string
	words *strings.Builder
}

// read takes a page apart; pages are well formed but for elements that HTML never closes.
func read(t *testing.T, page []byte) []element {
	t.Helper()
	d := xml.NewDecoder(bytes.NewReader(page))
	d.Strict, d.AutoClose, d.Entity = false, xml.HTMLAutoClose, xml.HTMLEntity
	var all []element
	var open []int
	for {
		token, err := d.Token()
		if errors.Is(err, io.EOF) {
			return all
		}
		if err != nil {
			t.Fatal(err)
		}
		switch token := token.(type) {
		case xml.StartElement:
			e := element{token.Name.Local, map[string]string{}, new(strings.Builder)}
			for _, a := range token.Attr {
				e.attrs[a.Name.Local] = a.Value
			}
			open = append(open, len(all))
			all = append(all, e)
		case xml.EndElement:
			open = open[:len(open)-1]
		case xml.CharData:
			for _, i := range open {
				all[i].words.Write(token)
			}
		}
	}
}

// flat is text with every run of spaces as one.
func flat(text string) string { return strings.Join(strings.Fields(text), " ") }

// body is all that can be read in a page.
func body(t *testing.T, page []byte) string {
	for _, e := range read(t, page) {
		if e.name == "body" {
			return flat(e.words.String())
		}
	}
	t.Fatal("no body")
	return ""
}

func TestPageHoldsEverySentence(t *testing.T) {
	for name, r := range reports() {
		said := body(t, render(t, r))
		if name == "hostile" {
			continue // its text is looked for by TestPageTakesNoNameForMarkup
		}
		wanted := slices.Concat(r.Cautions, r.Uncovered.Parts, r.Uncovered.Controls, r.Uncovered.Positions)
		for i := range r.Checks {
			c := &r.Checks[i]
			wanted = append(wanted, c.Sentence, c.Got, c.Miss)
			if !c.Passed {
				wanted = append(wanted, c.Wanted)
			}
			for _, why := range c.Why {
				for _, s := range why.Chain {
					wanted = append(wanted, s.Name, s.Text, s.Value, s.Limit)
				}
				for _, p := range why.LookAt {
					wanted = append(wanted, fmt.Sprintf("%s:%d:%d", p.File, p.Line, p.Column), p.Excerpt, p.Note)
				}
			}
		}
		for _, f := range r.Findings {
			wanted = append(wanted, f.Message, f.Hint, f.Code)
		}
		for _, f := range r.Script {
			wanted = append(wanted, f.Message, f.Reason, f.Picture)
		}
		for _, p := range r.Prints {
			wanted = append(wanted, p.File)
		}
		for _, w := range wanted {
			if !strings.Contains(said, flat(w)) {
				t.Errorf("%s: not on the page: %q", name, w)
			}
		}
	}
}

func TestPageGivesTheVerdictFirst(t *testing.T) {
	for name, want := range map[string]string{
		"failing": "✗ DO NOT FLY", "backwards": "✗ DO NOT FLY", "passing": "✓ PASSED", "warned": "▲ PASSED, BUT 1 WARNING",
		"in_part": "▲ PASSED IN PART", "nothing": "▲ NOTHING WAS CHECKED",
	} {
		page := render(t, reports()[name])
		said := strings.TrimPrefix(body(t, page), "Skip to the verdict ")
		if !strings.HasPrefix(said, want+" Tarn Sampler: control check") {
			t.Errorf("%s begins with %.80q, wanted %q", name, said, want)
		}
		if strings.Contains(strings.ToLower(said), "safe to fly") {
			t.Errorf("%s says that it is safe to fly", name)
		}
		if name == "passing" && !strings.Contains(said, "the set-up as written does what the script asks") {
			t.Error("a pass does not say what it speaks for")
		}
	}
}

// build complains about how a page is built.
func build(t *testing.T, page []byte) (complaints []string) {
	complain := func(format string, args ...any) { complaints = append(complaints, fmt.Sprintf(format, args...)) }
	all := read(t, page)
	ids := map[string]bool{}
	heads, last, mains := 0, 0, 0
	for _, e := range all {
		if id, ok := e.attrs["id"]; ok {
			if ids[id] {
				complain("two elements are called %q", id)
			}
			ids[id] = true
		}
		switch e.name {
		case "h1", "h2", "h3", "h4", "h5", "h6":
			level := int(e.name[1] - '0')
			if level > last+1 {
				complain("%s %q follows a heading of level %d", e.name, flat(e.words.String()), last)
			}
			if last = level; level == 1 {
				heads++
			}
		case "main":
			mains++
		case "script", "iframe", "object", "form":
			complain("there is a %s", e.name)
		}
		for name, value := range e.attrs {
			if name == "style" || strings.HasPrefix(name, "on") {
				complain("%s has %s=%q", e.name, name, value)
			}
			if (name == "src" || name == "href") && !strings.HasPrefix(value, "#") && value != "data:," {
				complain("%s leads out of the page: %q", e.name, value)
			}
		}
	}
	if heads != 1 || mains != 1 {
		complain("%d first headings and %d main parts, wanted one of each", heads, mains)
	}
	for _, e := range all {
		for _, name := range []string{"aria-labelledby", "aria-describedby"} {
			if id, ok := e.attrs[name]; ok && !ids[id] {
				complain("%s is named by %q, which is not there", e.name, id)
			}
		}
		if id, ok := strings.CutPrefix(e.attrs["href"], "#"); ok && !ids[id] {
			complain("a link leads to %q, which is not there", id)
		}
	}
	tables, captions, figures, told := 0, 0, 0, 0
	for _, e := range all {
		switch e.name {
		case "table":
			tables++
		case "caption":
			captions++
		case "figure":
			figures++
		case "figcaption":
			told++
		case "th":
			if e.attrs["scope"] == "" {
				complain("the head %q has no scope", flat(e.words.String()))
			}
		}
	}
	if tables != captions || figures != told {
		complain("%d tables with %d captions, %d figures with %d", tables, captions, figures, told)
	}
	return complaints
}

func TestPageIsBuiltWell(t *testing.T) {
	for name, r := range reports() {
		for _, c := range build(t, render(t, r)) {
			t.Errorf("%s: %s", name, c)
		}
	}
}

func TestPlantedFaultsAreFound(t *testing.T) {
	page := string(render(t, reports()["failing"]))
	for what, planted := range map[string]string{
		"script":        strings.Replace(page, "<footer>", "<script></script><footer>", 1),
		"style":         strings.Replace(page, "<footer>", `<footer style="x">`, 1),
		"handler":       strings.Replace(page, "<footer>", `<footer onclick="x">`, 1),
		"two heads":     strings.Replace(page, "<footer>", "<h1>a</h1><footer>", 1),
		"skipped level": strings.Replace(page, "<footer>", "<h6>a</h6><footer>", 1),
		"same id":       strings.Replace(page, "<footer>", `<footer id="walk">`, 1),
		"dead link":     strings.Replace(page, `id="walk"`, `id="wall"`, 1),
		"way out":       strings.Replace(page, "<footer>", `<a href="https://example.com">a</a><footer>`, 1),
		"caption":       regexp.MustCompile(`<caption.*</caption>`).ReplaceAllString(page, ""),
		"scope":         strings.Replace(page, ` scope="col"`, "", 1),
	} {
		if len(build(t, []byte(planted))) == 0 {
			t.Errorf("%s: not found", what)
		}
	}
}

// TestPagePolicyNamesItsStyle works the hash out from the page as a browser does.
func TestPagePolicyNamesItsStyle(t *testing.T) {
	page := render(t, sample.Passing())
	css := styles.Find(page)
	if got := string(bytes.TrimSuffix(bytes.TrimPrefix(css, []byte("<style>")), []byte("</style>"))); got != styleText {
		t.Error("the style sheet in the page is not the one that was hashed")
	}
	for _, e := range read(t, page) {
		if e.attrs["http-equiv"] == "Content-Security-Policy" {
			if got := e.attrs["content"]; got != policy() || !strings.HasPrefix(got, "default-src 'none'; style-src 'sha256-") {
				t.Errorf("the policy is %q", got)
			}
			return
		}
	}
	t.Error("there is no policy")
}

func TestPageIsTheSameEveryTime(t *testing.T) {
	for name := range reports() {
		if a, b := render(t, reports()[name]), render(t, reports()[name]); !bytes.Equal(a, b) {
			t.Errorf("%s differs", name)
		}
	}
}

// hostile are names that would break out of a page that does not take care.
var hostile = []string{
	`<script>alert(1)</script>`, `"><img src=x onerror=y>`, `' onclick='x`, `</title></style><h1>x`, `{{.Report}}`,
	`مرحبا بالجناح`, `\u202egnp.exe`, "control\x07\x00", "高性能グライダー右補助翼外側長翼", strings.Repeat("W", 40), `&amp;&lt;`, "a\xffb",
}

func TestPageTakesNoNameForMarkup(t *testing.T) {
	clean := kinds(t, render(t, renamed("plain")))
	for _, name := range hostile {
		page := render(t, renamed(name))
		if got := kinds(t, page); !maps.Equal(got, clean) {
			t.Errorf("%q: elements %v, wanted %v", name, got, clean)
		}
		for _, c := range build(t, page) {
			t.Errorf("%q: %s", name, c)
		}
		for _, r := range string(page) {
			if r == 0x202e || r < ' ' && r != '\n' && r != '\t' || r == 0x7f {
				t.Errorf("%q: %U is in the page", name, r)
			}
		}
		asIs := utf8.ValidString(name) && !strings.Contains(name, "\x07") && !strings.Contains(name, `\u`)
		if asIs && !strings.Contains(body(t, page), name) {
			t.Errorf("%q cannot be read in the page", name)
		}
	}
}

// kinds counts the elements of a page but for those in pictures.
func kinds(t *testing.T, page []byte) map[string]int {
	count := map[string]int{}
	for _, e := range read(t, pictures.ReplaceAll(page, nil)) {
		count[e.name]++
	}
	return count
}

// renamed is the failing report with a name wherever a file could put one.
func renamed(name string) *result.Report {
	name = strings.ReplaceAll(name, `\u202e`, "\u202e")
	r := reports()["failing"]
	r.Model = result.Model{Name: name, File: name}
	r.Scripts, r.Rest, r.Cautions, r.Tool, r.Date = []string{name}, []string{name}, []string{name}, name, name
	r.Uncovered = result.Uncovered{Parts: []string{name}, Controls: []string{name}, Positions: []string{name}}
	place := result.Place{File: name, Line: 1, Column: 1, Excerpt: name, Note: name}
	for i := range r.Checks {
		c := &r.Checks[i]
		c.Scenario, c.Subject, c.Sentence, c.Wanted, c.Got, c.Pose = name, name, name+strconv.Itoa(i), name, name, []string{name}
		c.Place, c.Before, c.Moved = place, []string{name}, []string{name}
		for k := range c.Why {
			c.Why[k].Of, c.Why[k].LookAt = name, []result.Place{place}
		}
	}
	r.Findings = []result.Finding{{Code: name, Message: name, Hint: name, Place: place}}
	for i := range r.Paper.Shape.Parts {
		r.Paper.Shape.Parts[i].Name = name
	}
	for i := range r.Paper.Throws {
		r.Paper.Throws[i].Part, r.Paper.Throws[i].Control = name, name
	}
	r.Standing.Signatures[0].Name, r.Standing.Summary = name, name
	r.Repairs.List[0].Change = name
	return r
}

func TestPageStaysSmall(t *testing.T) {
	const (
		checks = 100
		most   = 8 << 20 // bytes
	)
	r := sample.Crowded()
	for len(r.Checks) < checks {
		r.Checks = append(r.Checks, r.Checks[len(r.Checks)-40])
		r.Paper.Pictures = append(r.Paper.Pictures, r.Paper.Pictures[len(r.Paper.Pictures)-40])
		r.Checks[len(r.Checks)-1].Pose = []string{fmt.Sprint(len(r.Checks))}
	}
	if n := len(render(t, r)); n > most {
		t.Errorf("%d bytes for %d checks, wanted %d at most", n, checks, most)
	}
}

type full struct{}

func (full) Write([]byte) (int, error) { return 0, errors.New("the disk is full") }

func TestRenderTellsOfAFullDisk(t *testing.T) {
	if err := Render(full{}, sample.Passing()); err == nil || err.Error() != "the disk is full" {
		t.Errorf("got %v", err)
	}
}

func TestChecksOfOnePositionShareItsPictures(t *testing.T) {
	r := reports()["passing"]
	page := render(t, r)
	if got := bytes.Count(page, []byte("From behind")); got != 3 {
		t.Errorf("%d pictures from behind, wanted 3: one for each position of each stage", got)
	}
}
