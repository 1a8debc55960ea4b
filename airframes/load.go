package airframes

import (
	"fmt"
	"strings"
	"unicode/utf8"

	"gopkg.in/yaml.v3"

	"example.com/hingeline/airframes/diag"
	"example.com/hingeline/mixcore"
)

// Version is the version of the file format that this package reads.
const Version = 1

// Load reads an airframe file. It returns every problem, sorted by place; the
// model is nil if one of them is an error. The name is what problems call the
// file. Text of any kind and size is refused without a panic, and in time and
// memory that are bounded by MaxBytes.
func Load(name string, text []byte) (*Model, []diag.Problem) {
	source := diag.NewSource(name, text)
	if len(text) > MaxBytes {
		return nil, []diag.Problem{{Place: source.Whole(), Code: "file-too-large",
			Message: fmt.Sprintf("the file has %d bytes, want at most %d", len(text), MaxBytes),
			Hint:    "an airframe takes a few thousand; is this the right file?"}}
	}
	if problems := checkText(source); len(problems) > 0 {
		return nil, problems
	}
	document, problems := parse(source)
	if len(problems) > 0 {
		return nil, problems
	}
	r := newReader(source)
	if len(document.Content) == 1 {
		r.readFile(document.Content[0])
	}
	r.compile()
	problems = r.finish()
	if diag.HasErrors(problems) {
		return nil, problems
	}
	return r.model, problems
}

// readFile reads the whole tree.
func (r *reader) readFile(root *yaml.Node) {
	if isNull(root) {
		r.fail(r.source.Whole(), "empty-file", `begin with "hingeline: 1"`, "the file holds nothing, want an airframe")
		return
	}
	r.inspect(root, 0)
	inspected := r.count()
	if readable(root) && root.Kind != yaml.MappingNode {
		hint := `begin with "hingeline: 1"`
		if root.Kind == yaml.ScalarNode && strings.Contains(root.Value, ":") {
			hint = hintColon
		}
		r.fail(r.place(root), codeWrongKind, hint, `the file is %s, want lines such as "hingeline: 1"`, kindOf(root))
		return
	}
	f, ok := r.fields(root, diag.Place{File: r.source.Name, Line: 1}, "", "the airframe", "hingeline", "name", "about", "mass_kg",
		"still_deg", "airspeed_ms", "wing", "script", "controls", "phases", "demands", "channels", "surfaces", "wheels", "motors", "extras")
	if !ok {
		return
	}
	if !r.versionFits(&f) {
		return
	}
	r.readHead(&f)
	before := r.count()
	r.readControls(f.require("controls", "say what you move: controls:"))
	r.readPhases(f.get("phases"))
	r.readDemands(f.require("demands", "say what you ask for: demands:"))
	r.readChannels(f.require("channels", "say what each servo is told: channels:"))
	r.sound = inspected == 0 && r.count() == before
	r.readParts(&f)
	if !f.given("surfaces") && !f.given("wheels") && !f.given("motors") && !f.given("extras") {
		f.missing("surfaces", "say what moves on the model: surfaces, wheels, motors or extras")
	}
}

// versionFits checks the version of the format. A file for another version is
// not looked at any further: what it means is not known.
func (r *reader) versionFits(f *fields) bool {
	n := f.require("hingeline", fmt.Sprintf("begin with \"hingeline: %d\", the version of the format", Version))
	if n == nil {
		return true
	}
	text, ok := r.text(n, "hingeline", fmt.Sprintf("the version of the format, %d", Version))
	if !ok || text == fmt.Sprint(Version) {
		return true
	}
	r.problems, r.more = nil, 0
	r.fail(r.place(n), "unknown-version", "this program may be older than the file", "the file is in version %s of the format, want %d", quoted(text), Version)
	return false
}

// The longest texts, in characters, and what a model as a whole may be.
const (
	longestTitle  = 80
	longestAbout  = 2000
	longestScript = 300
	lightest      = 0.001
	heaviest      = 500
	smallestStill = 0.001
	largestStill  = 2
	slowestAir    = 0.1 // metres a second
	fastestAir    = 200
)

// readHead reads what is said about the model as a whole.
func (r *reader) readHead(f *fields) {
	if n := f.require("name", "give the model a name"); n != nil {
		r.model.Name = r.line(n, "name", longestTitle)
		r.setup.Name = r.model.Name
	}
	if n := f.get("about"); n != nil {
		if text, ok := r.text(n, "about", "a sentence or two"); ok {
			r.model.About = tidy(text)
			if length := utf8.RuneCountInString(text); length > longestAbout {
				r.fail(r.place(n), codeOutOfRange, "", "about has %d characters, want at most %d", length, longestAbout)
			}
		}
	}
	if mass, ok := r.number(f.get("mass_kg"), "mass_kg", inKilos, lightest, heaviest); ok {
		r.model.MassKg = mass
	}
	if still, ok := r.number(f.get("still_deg"), "still_deg", inDegrees, smallestStill, largestStill); ok {
		r.model.Still = mixcore.Degrees(still)
	}
	if speed, ok := r.number(f.get("airspeed_ms"), "airspeed_ms", inSpeed, slowestAir, fastestAir); ok {
		r.model.AirspeedMs = speed
	}
	r.readWing(f)
	if n := f.get("script"); n != nil {
		items := []*yaml.Node{n}
		if n.Kind != yaml.ScalarNode {
			items = r.items(n, "script", "the name of a script or a list of them", maxScripts)
		}
		for _, item := range items {
			if script := r.line(item, "script", longestScript); script != "" {
				r.model.Scripts = append(r.model.Scripts, script)
			}
		}
	}
}

// line reads text of one line that says something.
func (r *reader) line(n *yaml.Node, what string, most int) string {
	text, ok := r.text(n, what, "a line of text")
	if !ok {
		return ""
	}
	switch {
	case text == "":
		r.fail(r.place(n), codeNothingThere, "", "%s is empty", what)
	case strings.ContainsAny(text, "\n\t"):
		r.fail(r.place(n), codeWrongKind, "", "%s goes over several lines, want one", what)
	case utf8.RuneCountInString(text) > most:
		r.fail(r.place(n), codeOutOfRange, "", "%s has %d characters, want at most %d", what, utf8.RuneCountInString(text), most)
	default:
		r.needsNoQuotes(n)
		return text
	}
	return ""
}
