package signoff

import (
	"bytes"
	"os"
	"path/filepath"
	"strings"
	"testing"

	"example.com/hingeline/airframes"
	"example.com/hingeline/verify/result"
	"example.com/hingeline/verify/script"
)

// forged writes a record that Sign would not have written, with a sum that is right.
func forged(t *testing.T, airframe string, number int, change func(r *Record)) {
	t.Helper()
	req := request(t, airframe)
	r, err := req.record()
	if err != nil {
		t.Fatal(err)
	}
	r.Number = number
	if number > 1 {
		r.Previous = digestOf(read(t, filepath.Join(Directory(airframe), nameOf(number-1))))
	}
	change(r)
	text, err := r.encode()
	if err != nil {
		t.Fatal(err)
	}
	os.MkdirAll(Directory(airframe), 0o755)
	write(t, filepath.Join(Directory(airframe), nameOf(number)), text)
}

func TestStandingDoesNotCountOnePersonTwice(t *testing.T) {
	for _, name := range []string{"Ada Crane", "ada-crane"} {
		airframe := newAirframe(t)
		mustSign(t, request(t, airframe))
		forged(t, airframe, 2, func(r *Record) { r.Name, r.Role, r.Statement = name, Second, Second.Statement() })
		forged(t, airframe, 3, func(r *Record) { r.Name, r.Role, r.Statement = "Ben Poole", Second, Second.Statement() })
		s := standing(t, airframe, wren, wrenScript)
		if stands(s) != "GC1 GC- GC1" {
			t.Errorf("%s %+v", stands(s), s)
		}
		contains(t, s.Signatures[1].Note, "the same person as signature 1")
		if strings.Contains(s.Summary, name+" (second") {
			t.Error(s.Summary)
		}
	}
}

func TestStandingSeesThroughRecordsThatAreNotTrue(t *testing.T) {
	reversed := strings.Replace(wren, "mix: pitch}", "mix: pitch, reversed: true}", 1)
	for _, c := range []struct {
		name, want string
		change     func(r *Record)
	}{
		{"a report that is another", "its report is not the one", func(r *Record) { r.Report.SHA256 = hexDigest(nil) }},
		{"a set-up that does not pass", "its digests are not those", func(r *Record) { r.Airframe = fileOf(r.Airframe.File, []byte(reversed)) }},
		{"a digest that is another", "its digests are not those", func(r *Record) { r.SetUp = digestOf(nil) }},
		{"a script that is another", "its digests are not those", func(r *Record) { r.Asked = digestOf(nil) }},
		{"another model", "its model is called Wren and not Finch", func(r *Record) { r.Model = "Finch" }},
		{"counts that are others", "its counts are not those", func(r *Record) { r.Counts.Checks = 40 }},
		{"a warning that nobody gave", "its counts are not those", func(r *Record) { r.Accepted = []Accepted{{Code: "idle", Reason: "it is meant to be so"}} }},
		{"files that are none", "cannot read", func(r *Record) { r.Airframe = fileOf(r.Airframe.File, []byte("none: [")) }},
		{"a set-up that does not pass, with its digests", "run again, its check does not pass: FAILED", func(r *Record) {
			r.Airframe = fileOf(r.Airframe.File, []byte(reversed))
			w, err := r.work()
			if err != nil {
				t.Fatal(err)
			}
			r.SetUp, r.Asked = w.setUp, w.asked
		}},
	} {
		airframe := newAirframe(t)
		forged(t, airframe, 1, c.change)
		s := standing(t, airframe, wren, wrenScript)
		if s.Stands() || s.Signatures[0].Genuine || s.Signatures[0].Counts || len(s.Troubles) != 1 {
			t.Errorf("%s: %+v", c.name, s)
			continue
		}
		contains(t, s.Troubles[0], c.want)
		contains(t, s.Summary, "not to be trusted")
	}
	// What another version found, this one cannot say.
	airframe := newAirframe(t)
	forged(t, airframe, 1, func(r *Record) { r.Tool, r.Report.SHA256, r.SetUp = "0.0.1", hexDigest(nil), digestOf(nil) })
	if s := standing(t, airframe, wren, wrenScript); stands(s) != "GC1" || s.Signatures[0].Tool != "0.0.1" {
		t.Errorf("by another version: %+v", s)
	}
	// But a check that it does not pass is none.
	airframe = newAirframe(t)
	forged(t, airframe, 1, func(r *Record) { r.Tool, r.Airframe = "0.0.1", fileOf(r.Airframe.File, []byte(reversed)) })
	s := standing(t, airframe, reversed, wrenScript)
	if stands(s) != "GC-" || s.Stands() {
		t.Errorf("by another version, and failing: %+v", s)
	}
	contains(t, s.Signatures[0].Note, "checked by Hingeline 0.0.1; with 0.1.0: run again, its check does not pass")
}

// A record that leaves out the warnings of its report was not written by Sign.
func TestStandingSeesWarningsThatNobodyAccepted(t *testing.T) {
	airframe := newAirframe(t)
	req := warned(t, airframe)
	const why = "it is a trainer and flies slowly"
	req.Accept = []Acceptance{{"low-rates", why}, {"idle:5", why}, {"idle:9", why}}
	rewrite := func(n *Now) {
		n.Rewrite = func(*airframes.Model, []script.File, string) (*result.Report, []byte, error) {
			return req.Checked.Report, req.Checked.Rendered, nil
		}
	}
	mustSign(t, req)
	s := standing(t, airframe, wren, wrenScript, rewrite)
	if !s.Stands() || len(s.Signatures[0].Accepted) != 3 || s.Signatures[0].Accepted[0] != "rates are low [low-rates]: "+why {
		t.Errorf("%+v", s)
	}
	for _, c := range []struct {
		want   string
		change func(r *Record)
	}{
		{"its counts", func(r *Record) { r.Accepted = r.Accepted[:2] }},
		{"the warnings accepted", func(r *Record) { r.Accepted[1].Code = "late" }},
		{"the warnings accepted", func(r *Record) { r.Accepted[1].Line++ }},
	} {
		airframe := newAirframe(t)
		req.Airframe = airframe
		r, err := req.record()
		if err != nil {
			t.Fatal(err)
		}
		c.change(r)
		forged(t, airframe, 1, func(to *Record) { r.Number = 1; *to = *r })
		s := standing(t, airframe, wren, wrenScript, rewrite)
		if len(s.Troubles) != 1 || s.Stands() {
			t.Errorf("%s: %+v", c.want, s)
			continue
		}
		contains(t, s.Troubles[0], c.want)
	}
}

// Whatever somebody does to the files, it shows.
func TestStandingSeesWhatWasDoneToTheRecords(t *testing.T) {
	key, other := quickKey(t), quickKey(t)
	rename := func(dir, from, to string) { os.Rename(filepath.Join(dir, from), filepath.Join(dir, to)) }
	edit := func(dir, name, from, to string) {
		file := filepath.Join(dir, name)
		text := read(t, file)
		changed := bytes.Replace(text, []byte(from), []byte(to), 1)
		if bytes.Equal(text, changed) {
			t.Fatalf("%q is not in %s", from, name)
		}
		if strings.HasSuffix(name, ".json") {
			changed = summed(changed)
		}
		write(t, file, changed)
	}
	for _, c := range []struct {
		name  string
		do    func(dir string)
		which string // are genuine
		want  string
	}{
		{"nothing", func(string) {}, "GGG", ""},
		{"the signer renamed", func(dir string) { edit(dir, "0001.json", "Ada Crane", "Eve Crane") }, "--G", "record 1: its signature is not right: it was not made of these bytes"},
		{"the last signer renamed", func(dir string) { edit(dir, "0003.json", "Cy Lund", "Eve Lund") }, "GGG", ""}, // without a key: nobody can tell
		{"a record cut short", func(dir string) {
			text := read(t, dir+"/0002.json")
			write(t, dir+"/0002.json", text[:len(text)-30])
		}, "G--", "record 2: it is cut short"},
		{"a record emptied", func(dir string) { write(t, dir+"/0003.json", nil) }, "GG-", "record 3: it is cut short"},
		{"the middle removed", func(dir string) { os.Remove(dir + "/0002.json"); os.Remove(dir + "/0002.json.sig") }, "G-", "record 2, before it, is missing"},
		{"the middle removed, the others moved up", func(dir string) {
			os.Remove(dir + "/0002.json")
			os.Remove(dir + "/0002.json.sig")
			rename(dir, "0003.json", "0002.json")
		}, "G-", "it was record 3"},
		{"the first removed", func(dir string) { os.Remove(dir + "/0001.json"); os.Remove(dir + "/0001.json.sig") }, "-G", "record 1, before it, is missing"},
		{"signatures exchanged", func(dir string) {
			rename(dir, "0001.json.sig", "x")
			rename(dir, "0002.json.sig", "0001.json.sig")
			rename(dir, "x", "0002.json.sig")
		}, "--G", "its signature is not right: it is by the key"},
		{"a signature removed", func(dir string) { os.Remove(dir + "/0001.json.sig") }, "-GG", "the signature of its key is missing"},
		{"a signature without a key", func(dir string) { write(t, dir+"/0003.json.sig", read(t, dir+"/0002.json.sig")) }, "GG-", "a signature beside it that it does not speak of"},
		{"the key taken out", func(dir string) {
			edit(dir, "0001.json", key.Fingerprint, "")
			os.Remove(dir + "/0001.json.sig")
		}, "G-G", "record 1 is not the one that was before it"},
		{"another key", func(dir string) {
			text, err := other.Sign(read(t, dir+"/0001.json"))
			if err != nil {
				t.Fatal(err)
			}
			write(t, dir+"/0001.json.sig", text)
		}, "-GG", "wanted " + key.Fingerprint},
		{"dated back", func(dir string) { edit(dir, "0003.json", `"date": "2026-11-25`, `"date": "2026-11-24`) }, "GG-", "dated before record 2"},
	} {
		airframe := newAirframe(t)
		mustSign(t, request(t, airframe).by("Ada Crane", Builder, key))
		mustSign(t, request(t, airframe).by("Ben Poole", Second, other))
		mustSign(t, request(t, airframe).by("Cy Lund", Inspector, nil))
		c.do(Directory(airframe))
		s := standing(t, airframe, wren, wrenScript)
		got := ""
		for _, sig := range s.Signatures {
			if sig.Genuine {
				got += "G"
			} else {
				got += "-"
			}
		}
		if got != c.which || (c.want == "") != (len(s.Troubles) == 0) || (c.want == "") != s.Stands() {
			t.Errorf("%s: got %s, want %s: %q", c.name, got, c.which, s.Troubles)
		}
		contains(t, strings.Join(s.Troubles, "\n"), c.want)
		if c.want != "" {
			if _, err := Sign(request(t, airframe).by("Dot Vane", Inspector, nil)); err == nil {
				t.Errorf("%s: signed behind it", c.name)
			}
		}
	}
}

// A flipped byte in a record or its signature is seen, whichever it is; and in a record
// with a key even where the sum was made anew.
func TestStandingSeesFlippedBytes(t *testing.T) {
	airframe := newAirframe(t)
	key := quickKey(t)
	file := mustSign(t, request(t, airframe).by("Ada Crane", Builder, key)).File
	record, armoured := read(t, file), read(t, file+".sig")
	const stride = 97 // of the bytes that are flipped in the file itself
	for i := range record {
		bad := bytes.Clone(record)
		bad[i] ^= 1
		if again := summed(bad); !bytes.Equal(again, record) {
			if _, err := checkSignature(armoured, again, key.Fingerprint); err == nil {
				t.Fatalf("byte %d of the record was flipped, its sum made anew, and accepted", i)
			}
		}
		if i%stride == 0 {
			write(t, file, bad)
			if wrong := wrongs(t, airframe); wrong[0] == "" {
				t.Fatalf("byte %d of the record was flipped and accepted", i)
			}
		}
	}
	write(t, file, record)
	for i := range armoured {
		bad := bytes.Clone(armoured)
		bad[i] ^= 1
		write(t, file+".sig", bad)
		if wrong := wrongs(t, airframe); wrong[0] == "" {
			t.Fatalf("byte %d of the signature was flipped and accepted", i)
		}
	}
	write(t, file+".sig", armoured)
	if wrong := wrongs(t, airframe); wrong[0] != "" {
		t.Error(wrong)
	}
}
