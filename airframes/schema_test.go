package airframes_test

import (
	"bytes"
	"encoding/json"
	"regexp"
	"strings"
	"testing"

	"github.com/santhosh-tekuri/jsonschema/v6"
	"gopkg.in/yaml.v3"
	"pgregory.net/rapid"

	"example.com/hingeline/airframes"
	"example.com/hingeline/airframes/airframestest"
	"example.com/hingeline/airframes/diag"
)

func compileSchema(t *testing.T) *jsonschema.Schema {
	t.Helper()
	document, err := jsonschema.UnmarshalJSON(bytes.NewReader(airframes.Schema()))
	if err != nil {
		t.Fatalf("the schema is no JSON: %v", err)
	}
	compiler := jsonschema.NewCompiler()
	if err := compiler.AddResource("airframe.json", document); err != nil {
		t.Fatal(err)
	}
	compiled, err := compiler.Compile("airframe.json") // checks it against the 2020-12 meta-schema too
	if err != nil {
		t.Fatalf("the schema does not compile: %v", err)
	}
	return compiled
}

var plainDecimal = regexp.MustCompile(`^[+-]?(0|[1-9][0-9]*)(\.[0-9]+)?$`)

// instance is a YAML tree as the JSON that the schema describes: plain decimals
// are numbers, everything else stays as it is written.
func instance(n *yaml.Node) any {
	switch n.Kind {
	case yaml.DocumentNode:
		return instance(n.Content[0])
	case yaml.MappingNode:
		object := map[string]any{}
		for i := 0; i+1 < len(n.Content); i += 2 {
			object[n.Content[i].Value] = instance(n.Content[i+1])
		}
		return object
	case yaml.SequenceNode:
		list := []any{}
		for _, item := range n.Content {
			list = append(list, instance(item))
		}
		return list
	}
	plain := n.Style&(yaml.DoubleQuotedStyle|yaml.SingleQuotedStyle|yaml.LiteralStyle|yaml.FoldedStyle) == 0
	switch {
	case plain && n.Tag == "!!null":
		return nil
	case plain && (n.Value == "true" || n.Value == "false"):
		return n.Value == "true"
	case plain && plainDecimal.MatchString(n.Value):
		return json.Number(strings.TrimPrefix(n.Value, "+"))
	}
	return n.Value
}

func parseYAML(text []byte) (*yaml.Node, error) {
	var document yaml.Node
	err := yaml.Unmarshal(text, &document)
	return &document, err
}

// beyondStructure are the problems that take more than one place of the file to
// see, or that JSON cannot show, so that the schema passes over them. A problem
// is one if its code is the same and its message holds the words.
var beyondStructure = []struct{ code, words, why string }{
	{"unknown-name", "", "what a name stands for is elsewhere in the file"},
	{"bad-condition", "", "a condition is one string to the schema"},
	{"later-phase", "", "looks at the order of phases"},
	{"duplicate-name", "", "names are the same after folding capitals, spaces and sides"},
	{"duplicate-key", "", "two spellings of one number or name are two keys to the schema"},
	{"rates-order", "", "JSON Schema cannot single out the last item of a list"},
	{"detents-too-close", "", "compares two values"},
	{"curve-ends", "", "which ends a curve must have depends on the control it comes from"},
	{"measured-too-little", "", "looks at a key's value in a table of one point"},
	{"side-against-name", "", "compares a value with a name"},
	{"missing-key", "holds both sides", "a side must be said if a name holds both"},
	{"missing-key", `comes from a switch and has no "values"`, "depends on the kind of the control"},
	{"missing-key", `has no "values"`, "depends on the kind of the control"},
	{"missing-key", "has none for", "depends on the switch's positions"},
	{"not-together", "which a demand from a switch cannot have", "depends on the kind of the control"},
	{"not-together", "is no switch", "depends on the kind of the control"},
	{"not-together", "comes from a trim", "depends on the kind of the control"},
	{"not-together", "only an axis has one", "depends on the kind of the control"},
	{"not-together", "does not come from an axis", "depends on the kind of the control"},
	{"unknown-key", "throw has no setting", "which two sides a throw has depends on the control"},
	{"missing-key", "throw has no", "which two sides a throw has depends on the control"},
	{"unknown-key", "share has no setting", "which two sides a share has depends on the control"},
	{"missing-key", "share has no", "which two sides a share has depends on the control"},
	{"out-of-range", "a position of curve", "an axis's curve begins at -100 %, a lever's at 0 %"},
	{"out-of-range", "want one within its pulse limits", "compares two values"},
	{"out-of-range", "want min below max", "compares two values"},
	{"out-of-range", "want idle below full", "compares two values"},
	{"out-of-range", "want it outwards", "compares two values"},
	{"out-of-range", "want at most half the wing's span", "compares two values"},
	{"out-of-range", "want at most the wing's chord", "compares two values"},
	{"not-together", "but on neither side", "the side may be in the name"},
	{"bad-number", "places behind the point", "multipleOf 0.001 fails for right values wherever numbers are binary"},
	{"bad-number", "want a whole number", "+7 and 7.0 are 7 in JSON"},
	{"bad-name", "is not taken as a name", "YAML takes 1_000 for a number, JSON shows it as it is written"},
	{"too-many", "parts, want at most", "counts over four sections"},
	{"linkage-impossible", "", "arithmetic"},
	{"linkage-locks", "", "arithmetic"},
	{"linkage-over-centre", "", "arithmetic"},
	{"table-too-short", "", "compares a table with its channel"},
	{"table-turns-back", "", "arithmetic"},
	{"scale-out-of-range", "", "arithmetic"},
}

func structural(problems []diag.Problem) []diag.Problem {
	var list []diag.Problem
	for _, p := range problems {
		beyond := p.Severity != diag.Error
		for _, b := range beyondStructure {
			beyond = beyond || p.Code == b.code && strings.Contains(p.Message, b.words)
		}
		if !beyond {
			list = append(list, p)
		}
	}
	return list
}

// verdicts counts how often schema and loader said what, so that a test can
// tell that it saw all cases.
type verdicts struct{ right, wrongStructure, wrongBeyond int }

// compare holds the schema's verdict on a text against the loader's. It returns
// how they differ, or nothing.
func (v *verdicts) compare(schema *jsonschema.Schema, text []byte) string {
	document, err := parseYAML(text)
	if err != nil {
		return ""
	}
	if keyTwice(document) {
		return "" // JSON keeps one of the two, nobody says which
	}
	refused := schema.Validate(instance(document))
	model, problems := airframes.Load("airframe.yaml", text)
	told := func() string {
		var all bytes.Buffer
		diag.Write(&all, problems, diag.NewSource("airframe.yaml", text))
		return all.String()
	}
	switch {
	case refused != nil && model != nil:
		return "the schema refuses what the loader takes:\n" + refused.Error()
	case refused == nil && len(structural(problems)) > 0:
		return "the schema takes what the loader refuses:\n" + told()
	case refused != nil:
		v.wrongStructure++
	case model == nil:
		v.wrongBeyond++
	default:
		v.right++
	}
	return ""
}

// keyTwice says whether a mapping has a key twice.
func keyTwice(n *yaml.Node) bool {
	seen := map[string]bool{}
	for i, c := range n.Content {
		isKey := n.Kind == yaml.MappingNode && i%2 == 0
		if isKey && seen[c.Value] || keyTwice(c) {
			return true
		}
		seen[c.Value] = seen[c.Value] || isKey
	}
	return false
}

func TestSchemaTakesTheShippedModels(t *testing.T) {
	schema := compileSchema(t)
	for _, name := range airframes.Shipped() {
		text, _ := airframes.ReadShipped(name)
		document, err := parseYAML(text)
		if err != nil {
			t.Fatal(err)
		}
		if err := schema.Validate(instance(document)); err != nil {
			t.Errorf("%s: %v", name, err)
		}
	}
}

func TestSchemaTakesEveryRightAirframe(t *testing.T) {
	schema := compileSchema(t)
	rapid.Check(t, func(t *rapid.T) {
		text := airframestest.Generate(t)
		document, err := parseYAML(text)
		if err != nil {
			t.Fatalf("%v\n%s", err, text)
		}
		if err := schema.Validate(instance(document)); err != nil {
			t.Fatalf("%v\n%s", err, text)
		}
	})
}

// TestSchemaAgreesWithTheLoaderOnWrongAirframes changes right airframes here
// and there and wants schema and loader of one mind about the structure.
func TestSchemaAgreesWithTheLoaderOnWrongAirframes(t *testing.T) {
	schema := compileSchema(t)
	var seen verdicts
	rapid.Check(t, func(t *rapid.T) {
		right, err := parseYAML(airframestest.Generate(t))
		if err != nil {
			t.Fatal(err)
		}
		for range 6 {
			document := copyOf(right)
			for range rapid.IntRange(1, 2).Draw(t, "changes") {
				change(t, document)
			}
			changed, err := yaml.Marshal(document)
			if err != nil {
				t.Fatal(err)
			}
			if difference := seen.compare(schema, changed); difference != "" {
				t.Fatalf("%s\n%s", difference, changed)
			}
		}
	})
	t.Logf("%+v", seen)
	const enough = 20
	if seen.right < enough || seen.wrongStructure < enough || seen.wrongBeyond < enough {
		t.Errorf("of each kind at least %d are wanted, there were %+v", enough, seen)
	}
}

// change makes one change somewhere in a tree.
func change(t *rapid.T, document *yaml.Node) {
	values := valuesIn("", document.Content[0])
	draw := func(label string, most int) int { return rapid.IntRange(0, most).Draw(t, label) }
	at := values[draw("where", len(values)-1)]
	n := at.node
	switch how := draw("how", 7); {
	case how <= 1: // what another place has under the same key
		var same []*yaml.Node
		for _, other := range values {
			if other.key == at.key {
				same = append(same, other.node)
			}
		}
		*n = *copyOf(same[draw("what", len(same)-1)])
	case how == 2: // what stands anywhere
		*n = *copyOf(values[draw("what", len(values)-1)].node)
	case how == 3, len(n.Content) == 0: // another value
		*n = *strayValue(t)
	case n.Kind == yaml.SequenceNode && how <= 5: // an item less
		i := draw("item", len(n.Content)-1)
		n.Content = append(n.Content[:i:i], n.Content[i+1:]...)
	case n.Kind == yaml.SequenceNode: // an item too many times
		for range []int{1, 4, 8, 70}[draw("times", 3)] {
			n.Content = append(n.Content, copyOf(n.Content[0]))
		}
	default:
		i := 2 * draw("key", len(n.Content)/2-1)
		switch how {
		case 4, 5: // a key less
			n.Content = append(n.Content[:i:i], n.Content[i+2:]...)
		case 6: // a key more
			n.Content = append(n.Content, strayKey(t), strayValue(t))
		default: // another key
			n.Content[i] = strayKey(t)
		}
	}
}

// keyed is a value with the key that it is under.
type keyed struct {
	key  string
	node *yaml.Node
}

// valuesIn lists all values of a tree.
func valuesIn(key string, n *yaml.Node) []keyed {
	list := []keyed{{key, n}}
	for i, c := range n.Content {
		switch {
		case n.Kind == yaml.SequenceNode:
			list = append(list, valuesIn(key, c)...)
		case i%2 == 1:
			list = append(list, valuesIn(n.Content[i-1].Value, c)...)
		}
	}
	return list
}

func copyOf(n *yaml.Node) *yaml.Node {
	clone := *n
	clone.Content = nil
	for _, c := range n.Content {
		clone.Content = append(clone.Content, copyOf(c))
	}
	return &clone
}

// strays are values that stand somewhere in an airframe, or should not.
var strays = []string{
	"true", "false", "no", "Yes", "on", "16 m/s", "{span_mm: 2000, root_chord_mm: 260, tip_chord_mm: 200}", "~", `""`, `"  "`, "{}", "[]", "{colour: red}", "[1, 2]", "[up, down]", "[140, 470]", "[a]",
	"0", "-0", "1", "3", "33", "-1", "0.5", "+7", "100", "151", "-150", "400", "2600", "1000000", `"50"`,
	"50%", "50 %", "-50%", "250%", "-250 %", "50%%", "5 °", "12deg", "130°", "3 s", "61s", "-1 s", "1500 µs", "2600us", "12 mm", "12 cm",
	"25° up", "25 deg down", "130° up", "20° left", "20 right", "25°up", "0°", "up", "up 20°",
	"roll", "Pitch", "yaw", "lever", "aft", "FORE", "above", "below", "port", "Left", "starboard", "centre", "nose", "tail", "hold", "Hold", "out", "in",
	"flap", "rudder", "V tail", "retract", "motor", ".nan", ".inf", "1e3", "0x10", "1_000", "007", "1,5", "1.2345", "− 5",
	"some text", "2nd", "it is so", "under_score", "a name of more than forty characters, far too long", "a-b c",
	"{plus: 10%, minus: 20%}", "{right: 10%, left: 20%}", "{back: 10%, forward: 20%}", "{right: 10%}", "{plus_swings: aft}", "{swing_deg: 30}",
	"{up: 10°, down: 20°}", "{left: 10°, right: 20°}", "{100%: 20° up}", "{100%: 20° left}", "{0%: 0%, 100%: 50%}", "{when: some text}", "{range: 10%}",
	"{min: 900, max: 2100}", "{add: some text, share: 50%}", "{fixed: 50%, share: 10%}", "{replace_with: 5, fixed: 5}", "{arm_mm: 10, horn_mm: 20, pivots_mm: 300, horn: above}",
	`"line\nline"`,
	"0.65", "1", "1.5%", "2", "-0.65", `"0.65"`, `"1 %"`, "{right: 0.65, left: 2}", "half", "Full", "left", "[low, half]", "[neutral, out]",
	"{shut: 0, half: 50}", "{shut: 0, half: 40, full: 100%}", "{shut: 0, centre: 50}", "{range: 1%, name: Roll}", "{range: 1, name: rolling trim}",
	"hоok", "flαps", "тангаж",
}

func strayValue(t *rapid.T) *yaml.Node {
	document, err := parseYAML([]byte(rapid.SampledFrom(strays).Draw(t, "value")))
	if err != nil {
		t.Fatal(err)
	}
	return document.Content[0]
}

// strayKeys are keys of an airframe, names, numbers and none of these.
var strayKeys = []string{
	"hingeline", "name", "about", "axis", "lever", "switch", "trim", "aka", "range", "reversed", "when", "fade", "from", "throw", "expo", "rates",
	"curve", "smooth", "values", "mix", "limit", "end_points", "sub_trim", "pulse_us", "slow", "failsafe", "add", "share", "fixed", "scale_by",
	"replace_with", "kind", "side", "channel", "servos", "servo", "linkage", "measured", "chord_mm", "span_mm", "aft_mm", "up_mm", "out_mm", "tilt_deg", "wing", "airspeed_ms", "stops", "up", "left", "place",
	"plus_swings", "max_deg", "horn", "arm", "arm_deg", "offset_mm", "pushrod_mm", "idle_us", "stopped_below", "stopped_when", "plus_moves",
	"plus", "minus", "right", "back", "min", "colour", "Name", "2nd", "left flap", "big rudder", "odd thing", "it is so", "under_score",
	"33", "0", "12", "12.5", "-150%", "50%", "250%",
}

func strayKey(t *rapid.T) *yaml.Node {
	return &yaml.Node{Kind: yaml.ScalarNode, Value: rapid.SampledFrom(strayKeys).Draw(t, "key")}
}
