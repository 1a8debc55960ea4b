package verify_test

import (
	"fmt"
	"strings"
	"testing"

	"gopkg.in/yaml.v3"

	"example.com/hingeline/airframes"
	"example.com/hingeline/airframes/diag"
	"example.com/hingeline/features"
	"example.com/hingeline/verify"
	"example.com/hingeline/verify/result"
	"example.com/hingeline/verify/script"
)

// TestSingleMistakesInBrackenAreNamed plants, one at a time, every reversed
// channel, every share with the wrong sign and every horn on the wrong side in
// Bracken 20, and wants the check to fail and to name a part that the mistake
// moves.
func TestSingleMistakesInBrackenAreNamed(t *testing.T) {
	const airframe = "bracken-20.yaml"
	text, _ := airframes.ReadShipped(airframe)
	if report := check(t, airframe, text); report.Verdict != result.Passed {
		t.Fatalf("without a mistake: %s", report.Verdict)
	}
	kinds := map[string]int{}
	for _, m := range mistakes(t, text) {
		kinds[m.kind]++
		t.Run(m.name, func(t *testing.T) {
			report := check(t, airframe, m.text)
			if report.Verdict != result.Failed {
				t.Fatalf("verdict %q: the mistake passes", report.Verdict)
			}
			var named []string
			for _, c := range report.Checks {
				if !c.Passed {
					named = append(named, c.Subject)
				}
			}
			for _, part := range m.moves {
				for _, name := range named {
					if name == part {
						return
					}
				}
			}
			t.Errorf("failing checks name %q, want one of %q", named, m.moves)
		})
	}
	for kind, least := range map[string]int{"reversed": 7, "share": 10, "horn": 7} {
		if kinds[kind] < least {
			t.Errorf("%d mistakes of kind %s were planted, want at least %d", kinds[kind], kind, least)
		}
	}
}

func check(t *testing.T, name string, text []byte) *result.Report {
	t.Helper()
	model, problems := airframes.Load(name, text)
	if diag.HasErrors(problems) {
		t.Fatalf("%+v", problems)
	}
	feature := strings.TrimSuffix(name, ".yaml") + ".feature"
	sentences, ok := features.Read(feature)
	if !ok {
		t.Fatalf("no %s", feature)
	}
	report, problems := verify.Check(model, []script.File{{Name: feature, Text: sentences}}, script.Selection{})
	if diag.HasErrors(problems) {
		t.Fatalf("%+v", problems)
	}
	return report
}

// mistake is an airframe file with one thing wrong.
type mistake struct {
	kind, name string
	text       []byte
	moves      []string // the parts that it moves wrongly
}

// mistakes are all single edits of three kinds. Each works on the YAML tree, so
// that nothing depends on how the file is laid out.
func mistakes(t *testing.T, text []byte) []mistake {
	t.Helper()
	var found []mistake
	plant := func(kind, name string, moves []string, edit func(root *yaml.Node)) {
		var document yaml.Node
		if err := yaml.Unmarshal(text, &document); err != nil {
			t.Fatal(err)
		}
		edit(document.Content[0])
		out, err := yaml.Marshal(&document)
		if err != nil {
			t.Fatal(err)
		}
		found = append(found, mistake{kind, name, out, moves})
	}
	var document yaml.Node
	if err := yaml.Unmarshal(text, &document); err != nil {
		t.Fatal(err)
	}
	root := document.Content[0]
	moves := movedBy(root)
	channels := value(root, "channels")
	for i := 0; i < len(channels.Content); i += 2 {
		number := channels.Content[i].Value
		plant("reversed", "channel "+number+" reversed", moves[number], func(root *yaml.Node) {
			toggle(value(value(root, "channels"), number))
		})
		for j, share := range shares(channels.Content[i+1]) {
			name := fmt.Sprintf("channel %s share %d (%s) with the wrong sign", number, j+1, share.Value)
			plant("share", name, moves[number], func(root *yaml.Node) {
				flip(shares(value(value(root, "channels"), number))[j])
			})
		}
	}
	for _, section := range []string{"surfaces", "wheels"} {
		parts := value(root, section)
		for i := 0; i < len(parts.Content); i += 2 {
			name := parts.Content[i].Value
			plant("horn", name+" horn on the other side", []string{name}, func(root *yaml.Node) {
				horn := value(value(value(value(root, section), name), "linkage"), "horn")
				horn.Value = map[string]string{"below": "above", "above": "below", "starboard": "port", "port": "starboard"}[horn.Value]
			})
		}
	}
	return found
}

// movedBy lists the parts of each channel.
func movedBy(root *yaml.Node) map[string][]string {
	moves := map[string][]string{}
	for _, section := range []string{"surfaces", "wheels", "motors"} {
		parts := value(root, section)
		for i := 0; i < len(parts.Content); i += 2 {
			number := value(parts.Content[i+1], "channel").Value
			moves[number] = append(moves[number], parts.Content[i].Value)
		}
	}
	return moves
}

// value is what a key of a mapping has; an empty node where it has none.
func value(mapping *yaml.Node, key string) *yaml.Node {
	for i := 0; i+1 < len(mapping.Content); i += 2 {
		if mapping.Content[i].Value == key {
			return mapping.Content[i+1]
		}
	}
	return &yaml.Node{}
}

func toggle(channel *yaml.Node) {
	spread(channel)
	if reversed := value(channel, "reversed"); reversed.Kind != 0 {
		reversed.Value = map[string]string{"true": "false", "false": "true"}[reversed.Value]
		return
	}
	channel.Content = append(channel.Content, &yaml.Node{Kind: yaml.ScalarNode, Value: "reversed"},
		&yaml.Node{Kind: yaml.ScalarNode, Tag: "!!bool", Value: "true"})
}

// spread writes out the short forms of a channel: its mix becomes a list of
// lines, each with its share.
func spread(channel *yaml.Node) {
	if channel.Kind == yaml.ScalarNode {
		*channel = *mapping("mix", channel.Value)
	}
	mix := value(channel, "mix")
	if mix.Kind == yaml.ScalarNode {
		*mix = yaml.Node{Kind: yaml.SequenceNode, Content: []*yaml.Node{scalar(mix.Value)}}
	}
	for _, line := range mix.Content {
		if line.Kind == yaml.ScalarNode && !strings.HasSuffix(line.Value, "%") {
			*line = *mapping("add", line.Value, "share", "100%")
		}
	}
}

func scalar(value string) *yaml.Node { return &yaml.Node{Kind: yaml.ScalarNode, Value: value} }

func mapping(pairs ...string) *yaml.Node {
	m := &yaml.Node{Kind: yaml.MappingNode}
	for _, p := range pairs {
		m.Content = append(m.Content, scalar(p))
	}
	return m
}

// shares are the percents of every share in a channel's mix.
func shares(channel *yaml.Node) []*yaml.Node {
	spread(channel)
	var found []*yaml.Node
	for _, line := range value(channel, "mix").Content {
		switch share := value(line, "share"); share.Kind {
		case yaml.ScalarNode:
			found = append(found, share)
		case yaml.MappingNode:
			found = append(found, share.Content[1], share.Content[3])
		}
	}
	return found
}

func flip(share *yaml.Node) {
	if rest, negative := strings.CutPrefix(share.Value, "-"); negative {
		share.Value = rest
		return
	}
	share.Value = "-" + share.Value
}
