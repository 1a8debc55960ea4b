package said

import "testing"

func TestShellWord(t *testing.T) {
	for word, want := range map[string]string{
		"models/tarn.yaml": "models/tarn.yaml", "roll stick=5%": `"roll stick=5%"`, "": `""`,
		`it's $5`: `'it'\''s $5'`, `say "x"`: `'say "x"'`, `C:\models\a b.yaml`: `"C:\models\a b.yaml"`,
	} {
		if got := ShellWord(word); got != want {
			t.Errorf("%q is %s to a shell, wanted %s", word, got, want)
		}
	}
}
