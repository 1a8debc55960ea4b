package airframes_test

import (
	"os"
	"path/filepath"
	"testing"

	"pgregory.net/rapid"

	"example.com/hingeline/airframes"
	"example.com/hingeline/airframes/airframestest"
)

// startFuzzing gives a fuzz test the shipped models and the broken files.
func startFuzzing(f *testing.F) {
	for _, name := range airframes.Shipped() {
		text, _ := airframes.ReadShipped(name)
		f.Add(text)
	}
	broken, err := filepath.Glob(filepath.Join(problemsDir, "*", "airframe.yaml"))
	if err != nil || len(broken) == 0 {
		f.Fatal("no broken files are found")
	}
	for _, path := range broken {
		text, err := os.ReadFile(path)
		if err != nil {
			f.Fatal(err)
		}
		f.Add(text)
	}
}

func FuzzLoad(f *testing.F) {
	startFuzzing(f)
	f.Fuzz(func(t *testing.T, text []byte) {
		model, problems := airframes.Load("f", text)
		checkProblems(t, text, model, problems)
		if model == nil {
			return
		}
		in, out := model.Plan.Rest(), model.Plan.NewOutput()
		if err := model.Plan.CheckInput(&in); err != nil {
			t.Fatal(err)
		}
		model.Plan.Eval(&in, out)
		for _, part := range out.Parts {
			if part.Angle != part.Angle || part.Amount != part.Amount {
				t.Error("a part stands at NaN")
			}
		}
	})
}

// A right file with one piece taken out, doubled or exchanged must load or be
// refused in order, like any other text.
func TestLoadStandsDamage(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		text := airframestest.Generate(t)
		from := rapid.IntRange(0, len(text)-1).Draw(t, "from")
		to := min(len(text), from+rapid.IntRange(0, 12).Draw(t, "length"))
		piece := rapid.SampledFrom([]string{"", "\t", ":", "{", "]", "\"", "'", "\n", "- ", "#", "null", "&a ", "*a", "!t ", "1e5", "\n  ", "<<: ", "é", "%"}).Draw(t, "piece")
		damaged := append(append(append([]byte{}, text[:from]...), piece...), text[to:]...)
		model, problems := airframes.Load("f", damaged)
		checkProblems(t, damaged, model, problems)
	})
}

func BenchmarkLoad(b *testing.B) {
	text, ok := airframes.ReadShipped("bracken-20")
	if !ok {
		b.Fatal("the model is not shipped")
	}
	b.SetBytes(int64(len(text)))
	b.ReportAllocs()
	for b.Loop() {
		if model, _ := airframes.Load("f", text); model == nil {
			b.Fatal("it is refused")
		}
	}
}
