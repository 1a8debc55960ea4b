package walk

import (
	"context"
	"fmt"
	"testing"

	"example.com/hingeline/airframes"
	"example.com/hingeline/verify/script"
)

// halfWay stands, runs and is out half way, where a sentence that asks too little holds
// with a mistake as well: a motor that should slow down stops, an elevon that should stand
// down hardly does. What counts as still is more than half of what an eye sees, or less.
const halfWay = `hingeline: 1
name: Half way
still_deg: %s
controls:
  pitch stick: pitch
  slow switch: [brisk, slow]
demands:
  pitch: pitch stick
  slow: {from: slow switch, values: {brisk: 0%%, slow: 50%%}}
channels:
  1: {name: motor, mix: [0%%, {add: slow, share: -90%%}]}
  2: {name: elevon, mix: [{add: pitch, share: -60%%}, 28%%]}
  3: {name: brake, mix: [20%%]}
  4: {name: tab, mix: [7%%]}
surfaces:
  port elevon: {channel: 2, measured: {100%%: 20° down}}
  starboard elevon: {channel: 2, measured: {100%%: 20° down}}
  centre flap: {channel: 4, measured: {100%%: 20° down}}
motors:
  motor: {channel: 1}
extras:
  brake: {channel: 3}
`

// The script of a walk-around catches every mistake that the walk-around shows.
func TestScriptAsksForAsMuchAsIsSeen(t *testing.T) {
	for _, still := range []string{"1.5", "0.5"} {
		m, problems := airframes.Load("half.yaml", fmt.Appendf(nil, halfWay, still))
		if m == nil {
			t.Fatal(problems)
		}
		f := Shortest(context.Background(), m, Options{})
		text := f.Script()
		trial, problems := script.NewTrial(m, []script.File{{Name: "half.feature", Text: text}})
		if trial == nil || len(trial.Failing(m, 1)) > 0 {
			t.Fatalf("%v\n%s", problems, text)
		}
		visible := 0
		for i := range f.Table.Mistakes {
			if !f.Visible(i) {
				continue
			}
			visible++
			if variant, _ := f.Table.Mistakes[i].Variant(m); len(trial.Failing(variant, 1)) == 0 {
				t.Errorf("still %s: the walk shows that %s, and its script passes", still, f.Table.Mistakes[i].Text)
			}
		}
		if visible < 20 {
			t.Errorf("only %d mistakes can be seen", visible)
		}
	}
}
