package resolved

import (
	"slices"
	"strings"

	"example.com/hingeline/airframes"
	"example.com/hingeline/airframes/diag"
	"example.com/hingeline/verify/script"
)

// Script is what scripts ask of a model, one text for each sentence, with all the settings
// and movements before it; sorted, each once. It returns every problem of the scripts;
// there is nothing else where one of them is an error.
func Script(m *airframes.Model, files []script.File) ([]string, []diag.Problem) {
	asked, problems := script.Resolve(m, files)
	if diag.HasErrors(problems) {
		return nil, problems
	}
	list := []string{}
	for i := range asked {
		list = append(list, Text(&asked[i]))
	}
	slices.Sort(list)
	return slices.Compact(list), problems
}

// ScriptDigest is a fingerprint of what scripts ask: "sha256:" and 64 hexadecimal digits.
func ScriptDigest(sentences []string) string {
	h := newHash(scriptFormat, len(sentences))
	for _, s := range sentences {
		write(h, s)
	}
	return said(h)
}

// Text is one sentence with what stands before it, a step on each line.
func Text(a *script.Asked) string {
	var t strings.Builder
	for _, b := range a.Before {
		t.WriteString(b.Keyword + " " + b.Sentence + "\n")
	}
	t.WriteString("then " + a.Sentence)
	return t.String()
}

// ScriptDifferences are the sentences that only one of two scripts asks, each read for its
// own model. It returns every problem of either; there is nothing else where one of them is
// an error. There is no difference if and only if the digests are the same.
func ScriptDifferences(old, new *airframes.Model, was, is []script.File) ([]Difference, []diag.Problem) {
	before, problems := script.Resolve(old, was)
	after, more := script.Resolve(new, is)
	problems = append(problems, more...)
	if diag.HasErrors(problems) {
		return nil, problems
	}
	gone, come := only(before, after), only(after, before)
	var list []Difference
	for _, a := range come {
		k := slices.IndexFunc(gone, func(b script.Asked) bool {
			return b.Scenario == a.Scenario && (b.Sentence == a.Sentence) != sameBefore(&b, &a)
		})
		if k < 0 {
			list = append(list, Difference{Text: "new check: " + whole(&a), Is: Text(&a), Path: "script", Place: a.Place})
			continue
		}
		b := gone[k]
		gone = slices.Delete(gone, k, k+1)
		d := Difference{Was: Text(&b), Is: Text(&a), Path: "script", Place: a.Place}
		if sameBefore(&a, &b) {
			d.Text = "check changed: " + quote(b.Text) + " → " + whole(&a)
		} else {
			d.Text = "check asked elsewhere: " + whole(&a) + "; it was asked " + stands(&b)
		}
		list = append(list, d)
	}
	for _, b := range gone {
		list = append(list, Difference{Text: "check gone: " + whole(&b), Was: Text(&b), Path: "script", Place: b.Place, Gone: true})
	}
	return list, problems
}

// only is what of one list is not in another, each once.
func only(list, other []script.Asked) (rest []script.Asked) {
	seen := map[string]bool{}
	for i := range other {
		seen[Text(&other[i])] = true
	}
	for i := range list {
		if t := Text(&list[i]); !seen[t] {
			seen[t] = true
			rest = append(rest, list[i])
		}
	}
	return rest
}

func sameBefore(a, b *script.Asked) bool { return slices.Equal(a.Before, b.Before) }

func quote(sentence string) string { return "\"" + sentence + "\"" }

// whole is a sentence with where it is asked.
func whole(a *script.Asked) string { return quote(a.Text) + " (" + stands(a) + ")" }

func stands(a *script.Asked) string {
	if len(a.Before) == 0 {
		return "with everything at rest"
	}
	said := make([]string, len(a.Before))
	for i, b := range a.Before {
		said[i] = b.Keyword + " " + b.Sentence
	}
	return strings.Join(said, ", ")
}
