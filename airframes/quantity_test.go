package airframes

import (
	"strconv"
	"strings"
	"testing"

	"pgregory.net/rapid"

	"example.com/hingeline/airframes/diag"
)

func readNumber(text string, u unit, low, high float64) (float64, []diag.Problem) {
	r := newReader(diag.NewSource("f", nil))
	value, _ := r.numberText(diag.Place{}, text, "x", u, low, high)
	return value, r.problems
}

func TestNumbersAreReadWithTheirUnits(t *testing.T) {
	for _, c := range []struct {
		text string
		unit unit
		want float64
	}{
		{"0", inPercent, 0}, {"12", inPercent, 12}, {"+100%", inPercent, 100}, {"-7.5 %", inPercent, -7.5}, {"33.333", inPercent, 33.333},
		{"0.001", inPercent, 0.001}, {"-0", inPercent, 0}, {"-0.0%", inPercent, 0}, {"12°", inDegrees, 12}, {"12 deg", inDegrees, 12},
		{"12deg", inDegrees, 12}, {"1.5 s", inSeconds, 1.5}, {"1500 µs", inPulse, 1500}, {"1500 μs", inPulse, 1500}, {"1500us", inPulse, 1500},
		{"48 mm", inLength, 48}, {"3.2", inKilos, 3.2}, {"25", inTorque, 25},
	} {
		got, problems := readNumber(c.text, c.unit, -1e6, 1e6)
		if len(problems) > 0 || got != c.want || strings.HasPrefix(strconv.FormatFloat(got, 'g', -1, 64), "-0") && got == 0 {
			t.Errorf("%q: got %v, %+v, want %v", c.text, got, problems, c.want)
		}
	}
}

func TestNumbersInOtherFormsAreRefused(t *testing.T) {
	for text, want := range map[string]struct{ code, hint string }{
		"":                     {codeBadNumber, "such as 50%"},
		"ten":                  {codeBadNumber, "such as 50%"},
		"%":                    {codeBadNumber, "such as 50%"},
		"010":                  {codeBadNumber, "write 10"},
		"00":                   {codeBadNumber, "write 0"},
		"-007.5%":              {codeBadNumber, "write -7"},
		"1_000":                {codeBadNumber, ""},
		"0x10":                 {codeBadNumber, ""},
		"0b1":                  {codeBadNumber, ""},
		"0o7":                  {codeBadNumber, ""},
		"1e2":                  {codeBadNumber, ""},
		"1E-2":                 {codeBadNumber, ""},
		"1.5e3":                {codeBadNumber, ""},
		".5":                   {codeBadNumber, "write 0.5"},
		"-.5":                  {codeBadNumber, "write -0.5"},
		"5.":                   {codeBadNumber, "write 5 or 5.0"},
		"1.2345":               {codeBadNumber, "write 1.234"},
		"1,5":                  {codeBadNumber, "write 1.5"},
		"1 000":                {codeBadNumber, ""},
		"1'000":                {codeBadNumber, ""},
		"--5":                  {codeBadNumber, ""},
		"- 5":                  {codeBadNumber, ""},
		"−5":                   {codeBadNumber, "keyboard"},
		"–5%":                  {codeBadNumber, "keyboard"},
		".nan":                 {codeBadNumber, ""},
		"NaN":                  {codeBadNumber, ""},
		"-.inf":                {codeBadNumber, ""},
		"Inf":                  {codeBadNumber, ""},
		"12345678901234567890": {codeBadNumber, ""},
		"12 mm":                {codeBadUnit, ""},
		"12%%":                 {codeBadUnit, ""},
		"12 s":                 {codeBadUnit, ""},
		"1.5.2":                {codeBadUnit, ""},
		"101":                  {codeOutOfRange, ""},
		"-100.001":             {codeOutOfRange, ""},
	} {
		_, problems := readNumber(text, inPercent, -100, 100)
		if len(problems) != 1 || problems[0].Code != want.code || !strings.Contains(problems[0].Hint, want.hint) {
			t.Errorf("%q: got %+v, want %s with %q", text, problems, want.code, want.hint)
		}
	}
	_, problems := readNumber("120%", inPercent, 0, 100)
	if want := "x is 120 %, want 0 to 100 %"; problems[0].Message != want {
		t.Errorf("got %q, want %q", problems[0].Message, want)
	}
}

// What is written in thousandths comes back exactly.
func TestNumbersOfThousandthsAreExact(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		thousandths := rapid.IntRange(-200_000, 200_000).Draw(t, "thousandths")
		text := strconv.FormatFloat(float64(thousandths)/1000, 'f', 3, 64)
		got, problems := readNumber(text, inPercent, -200, 200)
		if len(problems) > 0 || got != float64(thousandths)/1000 {
			t.Fatalf("%q: got %v, %+v", text, got, problems)
		}
	})
}

func FuzzNumber(f *testing.F) {
	for _, text := range []string{"1", "-7.5 %", "0x1p-2", "1e5", ".inf", "１２", "1\u00A0%"} {
		f.Add(text)
	}
	f.Fuzz(func(t *testing.T, text string) {
		value, problems := readNumber(text, inPercent, -100, 100)
		if len(problems) == 0 && !(value >= -100 && value <= 100) {
			t.Errorf("%q is taken as %v", text, value)
		}
		if len(problems) > 0 && value != 0 {
			t.Errorf("%q is refused, but gives %v", text, value)
		}
	})
}
