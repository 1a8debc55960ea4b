package airframes

import (
	"encoding/json"
	"regexp"
	"slices"
	"strconv"
	"strings"
	"testing"
)

// howLarge are the rows of the tables under "How large" of the reference page,
// what by how much.
func howLarge(t *testing.T) map[string]string {
	t.Helper()
	_, page, ok := strings.Cut(Reference(), "\n## How large\n")
	if !ok {
		t.Fatal(`reference.md has no section "How large"`)
	}
	page, _, _ = strings.Cut(page, "\n## ")
	rows := map[string]string{}
	for _, line := range strings.Split(page, "\n") {
		if cells := strings.Split(strings.Trim(line, "|"), "|"); len(cells) == 2 && !strings.Contains(line, "---") {
			rows[strings.TrimSpace(cells[0])] = strings.TrimSpace(cells[1])
		}
	}
	return rows
}

func TestReferenceSaysHowManyThereMayBe(t *testing.T) {
	rows := howLarge(t)
	number := regexp.MustCompile(`\d+`)
	for what, want := range map[string][]int{
		"the file":                     {MaxBytes >> 20, maxDepth},
		"name, about, a script's name": {longestTitle, longestAbout, longestScript},
		"scripts":                      {maxScripts},
		"controls, phases, demands":    {maxControls, maxPhases, maxDemands},
		"surfaces, wheels, motors and extras together":          {maxParts},
		"detents of a lever, rates of a demand, lines of a mix": {maxDetents, maxRates, maxMixLines},
		"servos on one part, names under `aka`":                 {maxServos, maxAka},
		"a condition":                                           {maxCondition, maxTests, maxBrackets},
	} {
		var got []int
		for _, digits := range number.FindAllString(rows[what], -1) {
			n, _ := strconv.Atoi(digits)
			got = append(got, n)
		}
		if !slices.Equal(got, want) {
			t.Errorf("%s: the page says %v, the loader has %v", what, got, want)
		}
	}
}

// schemaRanges are the ranges of numbers that the schema gives to each key,
// written "1 to 90"; a key may have several.
func schemaRanges(t *testing.T) map[string][]string {
	t.Helper()
	var document map[string]any
	if err := json.Unmarshal(Schema(), &document); err != nil {
		t.Fatal(err)
	}
	var rangesOf func(v any) []string
	rangesOf = func(v any) []string {
		m, _ := v.(map[string]any)
		if ref, ok := m["$ref"].(string); ok {
			return rangesOf(document["$defs"].(map[string]any)[strings.TrimPrefix(ref, "#/$defs/")])
		}
		low, hasLow := m["minimum"].(float64)
		if high, ok := m["maximum"].(float64); ok && hasLow {
			return []string{plainNumber(low) + " to " + plainNumber(high)}
		}
		var all []string
		if choices, ok := m["anyOf"].([]any); ok {
			for _, choice := range choices {
				all = append(all, rangesOf(choice)...)
			}
		}
		return append(all, rangesOfItems(m, rangesOf)...)
	}
	ranges := map[string][]string{}
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
					for name, property := range properties {
						ranges[name] = append(ranges[name], rangesOf(property)...)
					}
				}
				walk(item)
			}
		}
	}
	walk(document)
	return ranges
}

func rangesOfItems(m map[string]any, rangesOf func(any) []string) []string {
	if items, ok := m["items"]; ok {
		return rangesOf(items)
	}
	return nil
}

func TestReferenceSaysTheRangesOfTheSchema(t *testing.T) {
	ranges := schemaRanges(t)
	key := regexp.MustCompile("`([a-z_]+)`")
	compared := 0
	for what, want := range howLarge(t) {
		if !strings.Contains(want, " to ") {
			continue
		}
		for _, match := range key.FindAllStringSubmatch(what, -1) {
			compared++
			if !slices.Contains(ranges[match[1]], want) {
				t.Errorf("%s: the page says %s, the schema %v", match[1], want, ranges[match[1]])
			}
		}
	}
	if compared < 20 {
		t.Errorf("only %d keys were compared", compared)
	}
}
