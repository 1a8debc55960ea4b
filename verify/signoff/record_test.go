package signoff

import (
	"bytes"
	"reflect"
	"strings"
	"testing"

	"pgregory.net/rapid"
)

// sample is a record and its bytes.
func sample(t testing.TB) (*Record, []byte) {
	req := request(t, "wren.yaml")
	r, err := req.record()
	if err != nil {
		t.Fatal(err)
	}
	r.Number = 1
	r.Accepted = []Accepted{{"low-rates", "low rates are low", "wren.yaml", 7, "first flights are on low rates"}}
	text, err := r.encode()
	if err != nil {
		t.Fatal(err)
	}
	return r, text
}

// summed is the text of a record with its sum made anew, as somebody would who wants to
// deceive.
func summed(text []byte) []byte {
	end := bytes.LastIndex(text, []byte("\n"+sumLine)) + 1
	return append(bytes.Clone(text[:end]), sumLine+hexDigest(text[:end])+"\"\n}\n"...)
}

func TestRecordIsReadAsItWasWritten(t *testing.T) {
	r, text := sample(t)
	got, err := decode(text)
	if err != nil {
		t.Fatal(err)
	}
	if !reflect.DeepEqual(got, r) {
		t.Errorf("got %+v, want %+v", got, r)
	}
	again, err := got.encode()
	if err != nil || !bytes.Equal(again, text) {
		t.Errorf("written again it is another: %v", err)
	}
	if bytes.Contains(text, []byte(`\u003c`)) {
		t.Error("signs that need no escape have one")
	}
}

func TestRecordRefusesEveryFlippedByte(t *testing.T) {
	_, text := sample(t)
	for i := range text {
		for _, bit := range []byte{1, 0x20, 0x80} {
			bad := bytes.Clone(text)
			bad[i] ^= bit
			if _, err := decode(bad); err == nil {
				t.Fatalf("byte %d of %d, %q, was flipped to %q and accepted", i, len(text), text[i], bad[i])
			}
		}
	}
}

func TestRecordRefusesToBeCutShortOrGoOn(t *testing.T) {
	_, text := sample(t)
	for n := range len(text) {
		if _, err := decode(text[:n]); err == nil {
			t.Fatalf("accepted with %d of %d bytes", n, len(text))
		}
	}
	for _, more := range []string{"\n", " ", "{}", "\x00"} {
		if _, err := decode(append(bytes.Clone(text), more...)); err == nil {
			t.Errorf("accepted with %q behind it", more)
		}
	}
	if _, err := decode(bytes.ReplaceAll(text, []byte("\n"), []byte("\r\n"))); err == nil {
		t.Error("accepted with the line ends of Windows")
	}
}

// Whoever can make the sum anew still cannot write what Sign does not.
func TestRecordIsReadStrictly(t *testing.T) {
	_, text := sample(t)
	for _, c := range []struct{ from, to, want string }{
		{`"number": 1,`, `"number": 1, "trust": true,`, "unknown field"},
		{`"number": 1,`, `"number": 1, "number": 1,`, "twice"},
		{`"number": 1,`, `"Number": 1,`, "shape"},
		{`"number": 1,`, ``, "shape"},
		{`"number": 1,`, `"number": "1",`, "cannot be read"},
		{`"number": 1,`, `"number": 1.0,`, "cannot be read"},
		{`"number": 1,`, `"number": 0,`, "number is 0"},
		{`"number": 1,`, `"number": 10000,`, "number is 10000"},
		{`"number": 1,`, `"number": 2,`, "which record is before"},
		{`"previous": "",`, `"previous": "sha256:12",`, "which record is before"},
		{`"hingeline_record": 1`, `"hingeline_record": 2`, "format 2"},
		{`"role": "builder"`, `"role": "owner"`, "role"},
		{`"role": "builder"`, `"role": "second"`, "statement"},
		{`With the airframe file`, `Without the airframe file`, "statement"},
		{`"verdict": "passed"`, `"verdict": "passed in part"`, "only a passed check"},
		{`"verdict": "passed"`, `"verdict": "failed"`, "only a passed check"},
		{`"name": "Ada Crane"`, `"name": "Ada  Crane"`, "nobody can sign"},
		{`"name": "Ada Crane"`, `"name": ""`, "nobody can sign"},
		{`"date": "2026-11-25T20:15:00Z"`, `"date": "2026-11-25"`, "its date"},
		{`"date": "2026-11-25T20:15:00Z"`, `"date": "2026-11-25T20:15:00+00:00"`, "its date"},
		{`"date": "2026-11-25T20:15:00Z"`, `"date": "2026-11-25T20:15:00.5Z"`, "its date"},
		{`throw: 80%`, `throw: 81%`, "the text of wren.yaml"},
		{`the rudder moves right`, `the rudder moves left`, "the text of wren.feature"},
		{`"key": ""`, `"key": "SHA256:abc"`, "fingerprint"},
		{`"key": ""`, `"key": null`, "shape"},
		{`"accepted": [`, `"accepted": [null, `, "shape"},
		{`first flights are on low rates`, `so`, "without a reason"},
		{`"set_up": "sha256:`, `"set_up": "md5:`, "digest"},
	} {
		bad := strings.Replace(string(text), c.from, c.to, 1)
		if bad == string(text) {
			t.Fatalf("%q is not in the record", c.from)
		}
		_, err := decode(summed([]byte(bad)))
		if err == nil {
			t.Errorf("%q: accepted", c.to)
			continue
		}
		contains(t, err.Error(), c.want)
	}
}

func TestRecordHoldsTextOnly(t *testing.T) {
	r, _ := sample(t)
	r.Airframe.Text = "name: \xff"
	if _, err := r.encode(); err == nil {
		t.Error("a file that is no text was put into a record, where it cannot be read again")
	}
}

// Whatever is in the files comes back as it was: byte order marks, the line ends of
// Windows, signs that JSON escapes.
func TestRecordKeepsEveryText(t *testing.T) {
	r, _ := sample(t)
	rapid.Check(t, func(t *rapid.T) {
		r := *r
		text := rapid.OneOf(rapid.String(), rapid.SampledFrom([]string{"\ufeffa: b\r\n", "\u2028\u2029<&>\x00\x7f", "\n  \"sum\": \"sha256:"})).Draw(t, "text")
		r.Airframe = fileOf("a.yaml", []byte(text))
		r.Scripts = []File{fileOf("b.feature", []byte(text))}
		written, err := r.encode()
		if err != nil {
			t.Fatal(err)
		}
		got, err := decode(written)
		if err != nil || got.Airframe.Text != text || got.Scripts[0].Text != text {
			t.Fatalf("%q came back as %q: %v", text, got.Airframe.Text, err)
		}
	})
}

func FuzzRecord(f *testing.F) {
	_, text := sample(f)
	f.Add(text)
	f.Fuzz(func(t *testing.T, text []byte) {
		for _, bytes := range [][]byte{text, summed(append(text, "\n"+sumLine...))} {
			if r, err := decode(bytes); err == nil {
				if err := r.check(); err != nil {
					t.Error(err)
				}
			}
		}
	})
}
