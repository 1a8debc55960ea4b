package airframes_test

import (
	"bytes"
	"encoding/json"
	"regexp"
	"slices"
	"strings"
	"testing"

	"example.com/hingeline/airframes"
	"example.com/hingeline/airframes/diag"
)

// referenceBlocks are the example blocks of reference.md by the heading that
// they stand under, without their indentation.
func referenceBlocks() map[string][]string {
	blocks := map[string][]string{}
	heading, open := "", false
	for _, line := range strings.Split(airframes.Reference(), "\n") {
		code, isCode := strings.CutPrefix(line, "    ")
		switch {
		case strings.HasPrefix(line, "#"):
			heading, open = strings.TrimLeft(line, "# "), false
		case isCode && !open:
			blocks[heading] = append(blocks[heading], code+"\n")
			open = true
		case isCode:
			blocks[heading][len(blocks[heading])-1] += code + "\n"
		default:
			open = open && line == ""
		}
	}
	return blocks
}

// TestReferenceExamplesMakeAnAirframe puts the examples of all sections
// together, with no more around them than they name, and wants it right.
func TestReferenceExamplesMakeAnAirframe(t *testing.T) {
	blocks := referenceBlocks()
	// What the examples name and do not show themselves.
	around := map[string]string{
		"controls": "yaw stick: yaw\nphase switch: [cruise, launch]\nmotor switch: [safe, live]\nbrake switch: [shut, mid, open]\n",
		"channels": "5: pitch\n6: {mix: pitch, reversed: true}\n7: roll\n8: throttle\n9: throttle\n10: roll\n",
	}
	var text strings.Builder
	text.WriteString("hingeline: 1\nname: Examples\n")
	for _, section := range []string{"controls", "phases", "demands", "channels", "surfaces", "wheels", "motors", "extras"} {
		if len(blocks[section]) == 0 {
			t.Fatalf("%s has no example", section)
		}
		text.WriteString(section + ":\n")
		for _, line := range strings.Split(strings.TrimSpace(blocks[section][0]+around[section]), "\n") {
			line = strings.ReplaceAll(line, "linkage: {…}", "linkage: {arm_mm: 11, horn_mm: 15, pivots_mm: 58, horn: above}")
			text.WriteString("  " + line + "\n")
		}
	}
	model, problems := airframes.Load("reference.yaml", []byte(text.String()))
	if model == nil || len(problems) > 0 {
		var all bytes.Buffer
		diag.Write(&all, problems, diag.NewSource("reference.yaml", []byte(text.String())))
		t.Fatalf("%s\n%s", all.String(), text.String())
	}
	if refused := validateText(t, text.String()); refused != nil {
		t.Errorf("the schema refuses it: %v", refused)
	}
}

// TestReferencePlacesMakeAnAirframe puts a model around the example of where
// things are.
func TestReferencePlacesMakeAnAirframe(t *testing.T) {
	block := referenceBlocks()["Where things are"]
	if len(block) != 1 {
		t.Fatalf("there are %d examples, want 1", len(block))
	}
	m := read(t, strings.Replace(small(block[0]), "  3: yaw\n", "  3: yaw\n  4: pitch\n  5: flap\n", 1))
	if m.Setup.Wing == nil || !m.Setup.Parts[0].Place.TiltSaid || !m.Setup.Parts[1].Place.OutSaid {
		t.Errorf("it places %+v", m.Setup.Parts)
	}
}

// TestReferenceConditionsAreConditions fills in the forms of conditions.
func TestReferenceConditionsAreConditions(t *testing.T) {
	model := mustLoad(t, "bracken-20")
	fill := strings.NewReplacer("SWITCH", "rate switch", "LEVER", "flap lever", "DETENT", "landing", "CONTROL", "throttle", "AXIS", "roll stick")
	gap := regexp.MustCompile(` {2,}`)
	tried := 0
	for _, line := range strings.Split(strings.TrimSpace(referenceBlocks()["conditions"][0]), "\n") {
		for _, form := range gap.Split(line, -1) {
			if form != strings.ToUpper(form) && !strings.Contains(form, " is ") || strings.Contains(form, "…") || form == "PHASE" {
				continue // a remark, "… is not …", or what needs a phase
			}
			tried++
			text := strings.Replace(fill.Replace(form), "POSITION", "low", 1)
			text = strings.Replace(text, "POSITION", "high", 1)
			if _, problems := model.ParseCondition(text); len(problems) > 0 {
				t.Errorf("%q, from %q: %s", text, form, problems[0].Message)
			}
		}
	}
	if tried < 6 {
		t.Errorf("only %d conditions were tried", tried)
	}
	// The further words that the page gives in passing.
	for _, text := range []string{
		"throttle is below 20%", "throttle is at least 20%", "throttle is at most 20%",
		"roll stick is left of 5%", "pitch stick is back of 5%", "pitch stick is forward of 5%", "rate switch is not high",
		"rate switch is low or high", "rate switch is low or high and flap lever is above 20%", "not (rate switch is high or flap lever is landing)",
	} {
		if _, problems := model.ParseCondition(text); len(problems) > 0 {
			t.Errorf("%q: %s", text, problems[0].Message)
		}
	}
}

// schemaKeys are all keys of the format, by the schema.
func schemaKeys(t *testing.T) []string {
	t.Helper()
	var document any
	if err := json.Unmarshal(airframes.Schema(), &document); err != nil {
		t.Fatal(err)
	}
	keys := map[string]bool{}
	var walk func(v any)
	walk = func(v any) {
		switch v := v.(type) {
		case []any:
			for _, item := range v {
				walk(item)
			}
		case map[string]any:
			for key, item := range v {
				if properties, ok := item.(map[string]any); ok && key == "properties" {
					for name := range properties {
						keys[name] = true
					}
				}
				walk(item)
			}
		}
	}
	walk(document)
	var list []string
	for key := range keys {
		list = append(list, key)
	}
	slices.Sort(list)
	return list
}

func TestReferenceNamesEveryKeyOfTheSchema(t *testing.T) {
	page := airframes.Reference()
	keys := schemaKeys(t)
	const fewest = 70
	if len(keys) < fewest {
		t.Errorf("the schema has %d keys, want at least %d", len(keys), fewest)
	}
	for _, key := range keys {
		named := regexp.MustCompile(`\*\*` + key + `\*\*|` + "`" + key + "`" + `|(^|[\s{(,` + "`" + `])` + key + `:`)
		if !named.MatchString(page) {
			t.Errorf("reference.md says nothing of the key %q", key)
		}
	}
}

// TestReferenceNamesNoKeyThatTheSchemaHasNot looks at the keys that the page
// explains: those in bold, and those in code at the head of an item.
func TestReferenceNamesNoKeyThatTheSchemaHasNot(t *testing.T) {
	keys := schemaKeys(t)
	explained := 0
	for number, line := range strings.Split(airframes.Reference(), "\n") {
		var found []string
		for _, match := range regexp.MustCompile(`\*\*([a-z_0-9]+)\*\*`).FindAllStringSubmatch(line, -1) {
			found = append(found, match[1])
		}
		if item, ok := strings.CutPrefix(strings.TrimSpace(line), "- `"); ok {
			head, _, _ := strings.Cut(item, ":")
			for _, part := range strings.Split(head, ",") {
				found = append(found, strings.Trim(part, " `"))
			}
		}
		for _, key := range found {
			explained++
			if !slices.Contains(keys, key) {
				t.Errorf("reference.md:%d explains %q, which is no key of the schema", number+1, key)
			}
		}
	}
	const fewest = 50
	if explained < fewest {
		t.Errorf("%d keys are explained, want at least %d", explained, fewest)
	}
}

// TestReferenceOverviewListsTheTopLevel holds the first block of the page
// against the schema.
func TestReferenceOverviewListsTheTopLevel(t *testing.T) {
	var document struct {
		Properties map[string]any `json:"properties"`
	}
	if err := json.Unmarshal(airframes.Schema(), &document); err != nil {
		t.Fatal(err)
	}
	var listed, wanted []string
	for _, line := range strings.Split(referenceBlocks()["The airframe file"][0], "\n") {
		if key, _, ok := strings.Cut(line, ":"); ok {
			listed = append(listed, key)
		}
	}
	for key := range document.Properties {
		wanted = append(wanted, key)
	}
	slices.Sort(listed)
	slices.Sort(wanted)
	if !slices.Equal(listed, wanted) {
		t.Errorf("the overview lists\n%v\nthe schema has\n%v", listed, wanted)
	}
}

func validateText(t *testing.T, text string) error {
	t.Helper()
	document, err := parseYAML([]byte(text))
	if err != nil {
		t.Fatal(err)
	}
	return compileSchema(t).Validate(instance(document))
}
