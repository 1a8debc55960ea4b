package resolved_test

import (
	"bytes"
	"strings"
	"testing"

	"gopkg.in/yaml.v3"
	"pgregory.net/rapid"

	"example.com/hingeline/airframes"
	"example.com/hingeline/airframes/airframestest"
	"example.com/hingeline/verify/faults/mistake"
	"example.com/hingeline/verify/resolved"
	"example.com/hingeline/verify/verifytest"
)

// shuffled is a file whose things stand in another order, with remarks strewn in and
// everything written out anew. Phases keep their order: one may rest on those before it.
func shuffled(t *rapid.T, text []byte) []byte {
	var document yaml.Node
	if err := yaml.Unmarshal(bytes.TrimPrefix(text, []byte("\uFEFF")), &document); err != nil {
		t.Fatal(err)
	}
	var mix func(n *yaml.Node, path string)
	mix = func(n *yaml.Node, path string) {
		for i, c := range n.Content {
			under := path
			if n.Kind == yaml.MappingNode && i%2 == 1 {
				under = path + "/" + n.Content[i-1].Value
			}
			mix(c, under)
		}
		if rapid.IntRange(0, 9).Draw(t, "remark") == 9 && n.Kind == yaml.MappingNode && n.Style != yaml.FlowStyle && len(n.Content) > 0 {
			n.Content[0].HeadComment = "a remark"
		}
		if n.Kind != yaml.MappingNode || path == "/phases" {
			return
		}
		pairs := make([][2]*yaml.Node, len(n.Content)/2)
		for i := range pairs {
			pairs[i] = [2]*yaml.Node{n.Content[2*i], n.Content[2*i+1]}
		}
		for i, p := range rapid.Permutation(pairs).Draw(t, "order") {
			n.Content[2*i], n.Content[2*i+1] = p[0], p[1]
		}
	}
	mix(document.Content[0], "")
	out, err := yaml.Marshal(&document)
	if err != nil {
		t.Fatal(err)
	}
	return out
}

func TestOrderAndRemarksChangeNothing(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		text := airframestest.Generate(t)
		one, problems := airframes.Load("one.yaml", text)
		if one == nil {
			t.Fatalf("%+v", problems)
		}
		again := shuffled(t, text)
		other, problems := airframes.Load("other.yaml", again)
		if other == nil {
			t.Fatalf("%+v\n%s", problems, again)
		}
		if d := resolved.Differences(one, other); len(d) > 0 || digest(one) != digest(other) {
			t.Fatalf("%q\n%s\n%s", texts(d), text, again)
		}
	})
}

// Two files have no difference just where their digests are the same; the second is the
// first with one number changed in it, if it can be read so.
func TestDifferencesAndDigestsAgree(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		text := airframestest.Generate(t)
		one, _ := airframes.Load("one.yaml", text)
		other, _ := airframes.Load("other.yaml", text)
		if rapid.Bool().Draw(t, "another") {
			other, _ = airframes.Load("other.yaml", airframestest.Generate(t))
		} else if digits := digitsOf(text); len(digits) > 0 {
			changed := bytes.Clone(text)
			changed[rapid.SampledFrom(digits).Draw(t, "at")] = byte('0' + rapid.IntRange(0, 9).Draw(t, "digit"))
			if m, _ := airframes.Load("other.yaml", changed); m != nil {
				other = m
			}
		}
		there, back := resolved.Differences(one, other), resolved.Differences(other, one)
		if same := digest(one) == digest(other); same != (len(there) == 0) || same != (len(back) == 0) {
			t.Fatalf("the same digest: %v, but %q and back %q", same, texts(there), texts(back))
		}
		for _, d := range append(there, back...) {
			if d.Text == "" || d.Path == "" || d.Was == d.Is {
				t.Fatalf("%+v", d)
			}
		}
	})
}

func digitsOf(text []byte) (at []int) {
	for i, c := range text {
		if c >= '0' && c <= '9' {
			at = append(at, i)
		}
	}
	return at
}

// Mistakes of every kind of the catalogue are differences, and bear on the parts that they
// touch.
func TestEveryMistakeIsADifference(t *testing.T) {
	for _, name := range airframes.Shipped() {
		m := verifytest.Shipped(t, name)
		whole := digest(m)
		const each = 1 // of a kind and a model
		tried := map[string]int{}
		for _, wrong := range mistake.All(m, mistake.Options{}) {
			if tried[wrong.Kind.Code]++; tried[wrong.Kind.Code] > each {
				continue
			}
			variant, faults := wrong.Variant(m)
			if faults != nil {
				continue
			}
			list := resolved.Differences(m, variant)
			if len(list) == 0 || digest(variant) == whole {
				t.Errorf("%s: %s: %q", name, wrong.Text, texts(list))
				continue
			}
			bears := map[string]bool{}
			for _, d := range list {
				for _, p := range d.Parts {
					bears[p] = true
				}
				if d.Place.Line == 0 && !strings.HasSuffix(d.Text, "is new") { // the file does not have what a mistake adds
					t.Errorf("%s: %s: no place: %+v", name, wrong.Text, d)
				}
			}
			for _, p := range mistake.Touched(m.Plan, variant.Plan) {
				if !bears[m.Setup.Parts[p].Name] {
					t.Errorf("%s: %s: does not bear on %s: %+v", name, wrong.Text, m.Setup.Parts[p].Name, list)
				}
			}
		}
	}
}
