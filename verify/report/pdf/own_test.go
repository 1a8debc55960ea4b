package pdf

import (
	"bytes"
	"testing"

	"example.com/hingeline/verify/report/sample"
	"example.com/hingeline/verify/result"
)

func TestOwnDocumentsAreToldFromOthers(t *testing.T) {
	for name, r := range map[string]*result.Report{"passing": sample.Passing(), "hostile": sample.Hostile(), "nothing": sample.Nothing()} {
		var sheet, card bytes.Buffer
		if err := render(&sheet, r, Options{}); err != nil {
			t.Fatal(err)
		}
		if err := RenderCard(&card, r, Options{}); err != nil {
			t.Fatal(err)
		}
		if !IsReport(sheet.Bytes()) || IsCard(sheet.Bytes()) || IsReport(card.Bytes()) || !IsCard(card.Bytes()) {
			t.Errorf("%s: a report and a card are not told apart", name)
		}
		other := bytes.Replace(sheet.Bytes(), wide(maker), wide("Othertool "), 1)
		if IsReport(other) || IsReport([]byte("%PDF-1.4\n/Producer (Hingeline)")) {
			t.Errorf("%s: a document that somebody else made is taken for ours", name)
		}
	}
}
