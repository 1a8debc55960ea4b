package messages

import (
	"bytes"
	"testing"

	"example.com/hingeline/airframes"
	"example.com/hingeline/features"
	"example.com/hingeline/verify"
	"example.com/hingeline/verify/script"
)

func TestProbe(t *testing.T) {
	m, problems := airframes.LoadShipped("bracken-20")
	_ = problems
	files := []script.File{{Name: "bracken-20.feature", Text: []byte(features.Text("bracken-20"))}}
	r, _ := verify.Check(m, files, script.Selection{})
	r.Sources = script.Messages(m, files)
	var b bytes.Buffer
	if err := Render(&b, r); err != nil {
		t.Fatal(err)
	}
	t.Log(b.Len())
}
