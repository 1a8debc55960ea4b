package pdf

import (
	"bytes"
	"fmt"
	"strings"
	"testing"

	"example.com/hingeline/verify/report/sample"
	"example.com/hingeline/verify/result"
)

func card(t *testing.T, r *result.Report) (*document, []byte, string) {
	t.Helper()
	d, err := composeCard(r, Options{})
	if err != nil {
		t.Fatal(err)
	}
	var b bytes.Buffer
	if err := d.write(&b); err != nil {
		t.Fatal(err)
	}
	return d, b.Bytes(), strings.Join(pagesOf(t, b.Bytes()), " ")
}

func TestCardIsOneFoldedPage(t *testing.T) {
	for name, r := range reports() {
		d, document, words := card(t, r)
		if len(d.leaves) != 1 || bytes.Count(document, []byte("<</Type /Page\n")) != 1 {
			t.Errorf("%s: got %d pages", name, len(d.leaves))
		}
		if !bytes.Contains(document, []byte("/MediaBox [0 0 419.53 297.64]")) && !bytes.Contains(document, []byte("/MediaBox [0 0 595.28 419.53]")) {
			t.Errorf("%s: the card is neither 148 by 105 nor 210 by 148 mm", name)
		}
		says(t, words, d.verdict.Word, name)
		says(t, words, r.Model.Name, name)
		for _, p := range d.leaves[0].placed {
			if p.top < 0 || p.bottom > d.height-cardMargin+0.01 || d.height == twice.height && p.top < d.height/2 && p.bottom > d.height/2-cardMargin+0.01 {
				t.Errorf("%s: %s stands from %.1f to %.1f mm", name, p.what, p.top, p.bottom)
			}
		}
	}
}

func TestCardKeepsOffItsFolds(t *testing.T) {
	for name, r := range reports() {
		d, _, _ := card(t, r)
		for _, m := range d.leaves[0].marks {
			w, ok := m.(words)
			if !ok {
				continue
			}
			end := w.x + d.fonts.width(w.text, w.style, w.size)
			if w.x < d.width/2 && end > d.width/2 || end > d.width-cardMargin+0.3 {
				t.Errorf("%s: %q runs from %.1f to %.1f mm", name, w.text, w.x, end)
			}
		}
	}
}

func TestCardTakesTheFoldsItNeeds(t *testing.T) {
	for name, want := range map[string]folded{"passing": once, "crowded": twice} {
		if d, _, words := card(t, reports()[name]); d.width != want.width || strings.Contains(words, "no room") {
			t.Errorf("%s: got a card %.0f mm wide, wanted %.0f, with everything on it", name, d.width, want.width)
		}
	}
}

func TestCardSaysWhatIsWrong(t *testing.T) {
	_, _, words := card(t, with(sample.Failing(), sample.Paper()))
	says(t, words, "DO NOT FLY", "verdict")
	says(t, words, "FAIL elevator drops 14.2° (9.9 mm), wanted rises 14° ± 1°", "failure")
}

func TestCardSaysWhatItLeavesOut(t *testing.T) {
	r := fortyStops()
	one := r.Checks[0]
	r.Checks = nil
	for n := range 200 {
		one.Pose = []string{fmt.Sprintf("flap lever %d %%", n)}
		r.Checks = append(r.Checks, one)
		r.Paper.Pictures = append(r.Paper.Pictures, r.Paper.Pictures[0])
	}
	d, _, words := card(t, r)
	shown := 0
	for _, p := range d.leaves[0].placed {
		if p.what == "row" {
			shown++
		}
	}
	if shown == 0 || shown == len(r.Checks) {
		t.Fatalf("%d of %d rows are on the card", shown, len(r.Checks))
	}
	says(t, words, fmt.Sprintf("%d rows more found no room", len(r.Checks)-shown), "what is left out")
}
