package airframes_test

import (
	"bytes"
	"testing"

	"pgregory.net/rapid"

	"example.com/hingeline/airframes"
	"example.com/hingeline/airframes/airframestest"
	"example.com/hingeline/airframes/diag"
)

func TestLoadTakesEveryRightFile(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		text := airframestest.Generate(t)
		model, problems := airframes.Load("drawn.yaml", text)
		if model == nil || len(problems) > 0 {
			var shown bytes.Buffer
			diag.Write(&shown, problems, diag.NewSource("drawn.yaml", text))
			t.Fatalf("a right file is refused:\n%s\n%s", shown.String(), text)
		}
	})
}
