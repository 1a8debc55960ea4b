package signoff

import (
	"bytes"
	"crypto/ed25519"
	"crypto/rand"
	"os"
	"os/exec"
	"path/filepath"
	"strings"
	"sync"
	"testing"
	"time"

	"golang.org/x/crypto/ssh"

	"example.com/hingeline/airframes"
	"example.com/hingeline/airframes/diag"
	"example.com/hingeline/verify"
	"example.com/hingeline/verify/report/jsonout"
	"example.com/hingeline/verify/script"
)

// An invented model with little to it, so that records are short.
const (
	wren = `hingeline: 1
name: Wren
controls:
  turn stick: {axis: yaw}
  pitch stick: {axis: pitch}
demands:
  yaw: {from: turn stick, throw: 80%}
  pitch: {from: pitch stick, throw: 60%}
channels:
  1: {name: rudder, mix: yaw}
  2: {name: elevator, mix: pitch}
surfaces:
  rudder: {channel: 1, measured: {100%: 30° right}}
  elevator: {channel: 2, measured: {100%: 20° up}}
`
	wrenScript = `Feature: Wren
  Scenario: Both ways
    * with the turn stick full right, the rudder moves right
    * with the turn stick full left, the rudder moves left
    * with the pitch stick full back, the elevator rises
    * with the pitch stick full forward, the elevator drops
`
)

var evening = time.Date(2026, 11, 25, 20, 15, 0, 0, time.UTC)

// checks are those already made, by their texts.
var checks sync.Map

// at is a clock that has stopped.
func at(t time.Time) func() time.Time { return func() time.Time { return t } }

// check is a check of the two texts, as the command makes it. Its report is the caller's
// own, what is in its lists is not.
func check(t testing.TB, airframe, sentences string) Checked {
	t.Helper()
	made, ok := checks.Load([2]string{airframe, sentences})
	if !ok {
		made = checkAnew(t, airframe, sentences)
		checks.Store([2]string{airframe, sentences}, made)
	}
	c := made.(Checked)
	report := *c.Report
	c.Report = &report
	return c
}

func checkAnew(t testing.TB, airframe, sentences string) Checked {
	t.Helper()
	model, problems := airframes.Load("wren.yaml", []byte(airframe))
	if model == nil || diag.HasErrors(problems) {
		t.Fatalf("%v", problems)
	}
	c := Checked{Model: model, Scripts: []script.File{{Name: "wren.feature", Text: []byte(sentences)}}}
	c.Report, problems = verify.Check(model, c.Scripts, script.Selection{})
	if c.Report == nil {
		t.Fatalf("%v", problems)
	}
	c.Report.Findings, c.Report.Script = nil, nil // warnings have tests of their own
	c.Rendered = render(t, c)
	return c
}

func render(t testing.TB, c Checked) []byte {
	t.Helper()
	var b bytes.Buffer
	if err := jsonout.Render(&b, c.Report); err != nil {
		t.Fatal(err)
	}
	return b.Bytes()
}

// request is what Ada Crane signs as the builder.
func request(t testing.TB, airframe string) Request {
	c := check(t, wren, wrenScript)
	return Request{Airframe: airframe, Report: c.Rendered, Checked: c, Name: "Ada Crane", Role: Builder, Date: at(evening)}
}

// by is a request with another signer.
func (req Request) by(name string, role Role, key *Key) Request {
	req.Name, req.Role, req.Key = name, role, key
	return req
}

// quick is the disk without waiting for it: what is looked at here is what was written,
// and not whether it outlasts the power.
type quick struct{ realDisk }

func (quick) create(name string) (diskFile, error) {
	f, err := realDisk{}.create(name)
	return quickFile{f}, err
}

func (quick) settle(string) error { return nil }

type quickFile struct{ diskFile }

func (quickFile) Sync() error { return nil }

// newAirframe is where an airframe file may be, in a directory of its own.
func newAirframe(t testing.TB) string { return filepath.Join(t.TempDir(), "wren.yaml") }

func mustSign(t testing.TB, req Request) *Signed {
	t.Helper()
	s, err := signOn(quick{}, req)
	if err != nil {
		t.Fatal(err)
	}
	return s
}

// newKey makes a key with ssh-keygen and returns the name of its file.
func newKey(t testing.TB, kind ...string) string {
	t.Helper()
	name := filepath.Join(t.TempDir(), "key")
	if out, err := exec.Command("ssh-keygen", append([]string{"-q", "-N", "", "-C", "", "-f", name, "-t"}, kind...)...).CombinedOutput(); err != nil {
		t.Fatalf("%v: %s", err, out)
	}
	return name
}

// quickKey is a key that signs here, without ssh-keygen.
func quickKey(t testing.TB) *Key {
	t.Helper()
	signer := signerOf(t, ed25519Key(t))
	return &Key{Fingerprint: ssh.FingerprintSHA256(signer.PublicKey()), Sign: func(message []byte) ([]byte, error) {
		return made(t, signer, ssh.KeyAlgoED25519, Namespace, "sha512", message), nil
	}}
}

func ed25519Key(t testing.TB) ed25519.PrivateKey {
	t.Helper()
	_, private, err := ed25519.GenerateKey(rand.Reader)
	if err != nil {
		t.Fatal(err)
	}
	return private
}

func keyOf(t testing.TB, file string) *Key {
	t.Helper()
	k, err := KeyFile(file, os.Stderr)
	if err != nil {
		t.Fatal(err)
	}
	return k
}

func read(t testing.TB, name string) []byte {
	t.Helper()
	text, err := os.ReadFile(name)
	if err != nil {
		t.Fatal(err)
	}
	return text
}

func write(t testing.TB, name string, text []byte) {
	t.Helper()
	if err := os.WriteFile(name, text, 0o644); err != nil {
		t.Fatal(err)
	}
}

// entries are the records beside an airframe file.
func entries(t testing.TB, airframe string) []entry {
	t.Helper()
	all, err := readAll(Directory(airframe))
	if err != nil {
		t.Fatal(err)
	}
	return all
}

// wrongs is what is wrong with each record, "" of a genuine one.
func wrongs(t testing.TB, airframe string) []string {
	var all []string
	for _, e := range entries(t, airframe) {
		all = append(all, e.wrong)
	}
	return all
}

func contains(t *testing.T, got, want string) {
	t.Helper()
	if !strings.Contains(got, want) {
		t.Errorf("got %q, want %q in it", got, want)
	}
}
