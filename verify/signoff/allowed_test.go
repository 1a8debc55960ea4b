package signoff

import (
	"strings"
	"testing"

	"golang.org/x/crypto/ssh"
)

// What ssh-keygen says of the same file and signature is the outside opinion; asks is the
// principal that it is asked about, empty where it cannot be asked the same.
func TestAllowedSignersVouchForTheSigner(t *testing.T) {
	file := newKey(t, "ed25519")
	public := strings.TrimSpace(string(read(t, file+".pub")))
	other := strings.TrimSpace(string(read(t, newKey(t, "ed25519")+".pub")))
	text, err := keyOf(t, file).Sign(message)
	if err != nil {
		t.Fatal(err)
	}
	s, err := parseSignature(text)
	if err != nil {
		t.Fatal(err)
	}
	for _, c := range []struct{ line, principal, asks, wrong string }{
		{`"Ada Crane" ` + public, "Ada Crane", "Ada Crane", ""},
		{`ada.crane@club.example ` + public, "ada.crane@club.example", "ada.crane@club.example", ""},
		{`AdaCrane ` + public, "AdaCrane", "AdaCrane", ""},
		{`ada-crane,ada@home ` + public + " a remark", "ada-crane", "ada-crane", ""},
		{`*.crane@club.example ` + public, "*.crane@club.example", "ada.crane@club.example", ""},
		{`*@club.example ` + public, "*@club.example", "ada.crane@club.example", ""},
		{`*,!ada.crane ` + public, "", "ada.crane", "the key is that of"},
		{`ben.poole@club.example ` + public, "", "", "the key is that of ben.poole@club.example in club"},
		{`ada.crane@club.example ` + other, "", "ada.crane@club.example", "the key is not in club"},
		{`ada-crane namespaces="` + Namespace + `" ` + public, "ada-crane", "ada-crane", ""},
		{`ada-crane namespaces="file,check@*" ` + public, "ada-crane", "ada-crane", ""},
		{`ada-crane namespaces="file,git" ` + public, "", "ada-crane", "for other things only"},
		{`ada-crane valid-after="20260101",valid-before="20300101" ` + public, "ada-crane", "", ""},
		{`ada-crane valid-before="20260101" ` + public, "", "ada-crane", "at that date"},
		{`ada-crane valid-after="20261125201600Z" ` + public, "", "", "at that date"},
		{`ada-crane valid-after="20261125201500Z" ` + public, "ada-crane", "", ""},
		{`ada-crane cert-authority ` + public, "", "ada-crane", "the key is not in club"},
		{"# Ada's\n\nada-crane " + other + "\nada-crane " + public, "ada-crane", "ada-crane", ""},
	} {
		a, err := ReadAllowed("club", []byte(c.line+"\n"))
		if err != nil {
			t.Errorf("%.40s: %v", c.line, err)
			continue
		}
		principal, err := a.vouches(s.key, "Ada Crane", evening)
		if principal != c.principal || (err == nil) != (c.wrong == "") {
			t.Errorf("%.60s: got %q, %v, want %q", c.line, principal, err, c.principal)
		}
		if err != nil {
			contains(t, err.Error(), c.wrong)
		}
		if c.asks != "" {
			if theirs := keygenVerifies(t, c.line+"\n", c.asks, text, message); (theirs == nil) != (c.wrong == "") {
				t.Errorf("%.60s: ssh-keygen says %v", c.line, theirs)
			}
		}
	}
}

func TestAllowedSignersNamesEveryLineThatIsWrong(t *testing.T) {
	public := string(ssh.MarshalAuthorizedKey(signerOf(t, ed25519Key(t)).PublicKey()))
	for line, want := range map[string]string{
		"ada":                                "wanted principals, then a public key",
		"ada ssh-ed25519 AAAA":               "cannot be read",
		`"ada ` + public:                     "a quote is not closed",
		`ada valid-before="never" ` + public: `"never" is no time`,
		`ada no-touch ` + public:             `no option "no-touch"`,
	} {
		_, err := ReadAllowed("club", []byte("# first\n"+strings.TrimSpace(line)+"\nnone\n"))
		if err == nil {
			t.Errorf("%.40s: accepted", line)
			continue
		}
		contains(t, err.Error(), "club:2: ")
		contains(t, err.Error(), want)
		contains(t, err.Error(), "club:3: ")
	}
}

func TestPatternsOfOpenSSHAreUnderstood(t *testing.T) {
	for _, c := range []struct {
		pattern, text string
		want          bool
	}{
		{"a*e", "ade", true}, {"a?e", "ade", true}, {"a?e", "ae", false}, {"*", "", true}, {"*", "a/b", true},
		{"[ab]", "a", false}, {"[ab]", "[ab]", true}, {`a\b`, `a\b`, true}, {"a.c", "abc", false},
	} {
		if got := matches(c.pattern, c.text); got != c.want {
			t.Errorf("%s, %s: got %v", c.pattern, c.text, got)
		}
	}
}
