package signoff

import (
	"bytes"
	"crypto/ed25519"
	"crypto/rand"
	"crypto/rsa"
	"crypto/sha512"
	"os/exec"
	"strings"
	"testing"

	"golang.org/x/crypto/ssh"
)

// kinds of keys that ssh-keygen makes without hardware.
var kinds = [][]string{{"ed25519"}, {"ecdsa", "-b", "256"}, {"ecdsa", "-b", "384"}, {"ecdsa", "-b", "521"}, {"rsa", "-b", "2048"}}

var message = []byte("{\"name\": \"Wren\"}\n")

// made is a signature as a key of x/crypto makes it, with whatever is asked for.
func made(t testing.TB, signer ssh.Signer, algorithm, namespace, hash string, message []byte) []byte {
	t.Helper()
	sum := sha512.Sum512(message)
	data := ssh.Marshal(signedData{magic, namespace, "", hash, string(sum[:])})
	sig, err := signer.(ssh.AlgorithmSigner).SignWithAlgorithm(rand.Reader, data, algorithm)
	if err != nil {
		t.Fatal(err)
	}
	return armour(ssh.Marshal(signatureBlob{magic, 1, string(signer.PublicKey().Marshal()), namespace, "", hash, string(ssh.Marshal(sig))}))
}

func signerOf(t testing.TB, key any) ssh.Signer {
	t.Helper()
	s, err := ssh.NewSignerFromKey(key)
	if err != nil {
		t.Fatal(err)
	}
	return s
}

// verified reads and verifies.
func verified(text, message []byte) error {
	s, err := parseSignature(text)
	if err != nil {
		return err
	}
	return s.verify(message)
}

// keygenVerifies asks ssh-keygen.
func keygenVerifies(t testing.TB, allowed, principal string, signature, message []byte) error {
	t.Helper()
	dir := t.TempDir()
	write(t, dir+"/allowed", []byte(allowed))
	write(t, dir+"/sig", signature)
	c := exec.Command("ssh-keygen", "-Y", "verify", "-f", dir+"/allowed", "-I", principal, "-n", Namespace, "-s", dir+"/sig")
	c.Stdin = bytes.NewReader(message)
	out, err := c.CombinedOutput()
	if err != nil {
		t.Logf("ssh-keygen: %s", out)
	}
	return err
}

func TestSignatureOfKeygenIsUnderstood(t *testing.T) {
	for _, kind := range kinds {
		key := keyOf(t, newKey(t, kind...))
		text, err := key.Sign(message)
		if err != nil {
			t.Fatal(err)
		}
		if _, err := checkSignature(text, message, key.Fingerprint); err != nil {
			t.Errorf("%v: %v", kind, err)
		}
		if err := verified(text, append(message, ' ')); err == nil {
			t.Errorf("%v: accepted for another message", kind)
		}
	}
}

func TestKeygenUnderstandsWhatWeTakeForASignature(t *testing.T) {
	_, private, err := ed25519.GenerateKey(rand.Reader)
	if err != nil {
		t.Fatal(err)
	}
	signer := signerOf(t, private)
	text := made(t, signer, ssh.KeyAlgoED25519, Namespace, "sha512", message)
	if err := verified(text, message); err != nil {
		t.Error(err)
	}
	allowed := `"Ada Crane" ` + string(ssh.MarshalAuthorizedKey(signer.PublicKey()))
	if err := keygenVerifies(t, allowed, "Ada Crane", text, message); err != nil {
		t.Error(err)
	}
	if keygenVerifies(t, allowed, "Ada Crane", text, append(message, ' ')) == nil {
		t.Error("ssh-keygen accepts another message: this test proves nothing")
	}
}

func TestSignatureRefusesEveryFlippedByte(t *testing.T) {
	for _, kind := range [][]string{{"ed25519"}, {"ecdsa", "-b", "256"}, {"rsa", "-b", "2048"}} {
		text, err := keyOf(t, newKey(t, kind...)).Sign(message)
		if err != nil {
			t.Fatal(err)
		}
		for i := range text {
			for _, bit := range []byte{1, 0x20} {
				bad := bytes.Clone(text)
				bad[i] ^= bit
				if verified(bad, message) == nil {
					t.Fatalf("%v: byte %d, %q, was flipped to %q and accepted", kind, i, text[i], bad[i])
				}
			}
			if verified(text[:i], message) == nil {
				t.Fatalf("%v: accepted with %d of %d bytes", kind, i, len(text))
			}
		}
		for _, more := range []string{"\n", string(text)} {
			if verified(append(bytes.Clone(text), more...), message) == nil {
				t.Errorf("%v: accepted with %.10q behind it", kind, more)
			}
		}
	}
}

func TestSignatureOfAnotherKindIsRefused(t *testing.T) {
	_, private, _ := ed25519.GenerateKey(rand.Reader)
	ed := signerOf(t, private)
	long, err := rsa.GenerateKey(rand.Reader, 2048)
	if err != nil {
		t.Fatal(err)
	}
	short, err := rsa.GenerateKey(rand.Reader, 1024)
	if err != nil {
		t.Fatal(err)
	}
	for _, c := range []struct {
		name, want string
		text       []byte
	}{
		{"another namespace", "was made for", made(t, ed, ssh.KeyAlgoED25519, "file", "sha512", message)},
		{"no namespace", "was made for", made(t, ed, ssh.KeyAlgoED25519, "", "sha512", message)},
		{"another hash", "uses the hash", made(t, ed, ssh.KeyAlgoED25519, Namespace, "md5", message)},
		{"the old RSA signature", "of the kind", made(t, signerOf(t, long), ssh.KeyAlgoRSA, Namespace, "sha512", message)},
		{"a short RSA key", "shorter than", made(t, signerOf(t, short), ssh.KeyAlgoRSASHA512, Namespace, "sha512", message)},
		{"another message", "not made of these bytes", made(t, ed, ssh.KeyAlgoED25519, Namespace, "sha512", []byte("another"))},
		{"no signature", "cut short", []byte("Ada Crane")},
	} {
		err := verified(c.text, message)
		if err == nil {
			t.Errorf("%s: accepted", c.name)
			continue
		}
		contains(t, err.Error(), c.want)
	}
	if err := verified(made(t, signerOf(t, long), ssh.KeyAlgoRSASHA256, Namespace, "sha512", message), message); err != nil {
		t.Errorf("RSA with SHA-256: %v", err)
	}
}

// A hardware key's flags are signed, and say whether somebody touched it.
func TestSignatureWantsATouchOfAHardwareKey(t *testing.T) {
	public, private, _ := ed25519.GenerateKey(rand.Reader)
	const application = "ssh:"
	blob := ssh.Marshal(struct{ Kind, Key, Application string }{ssh.KeyAlgoSKED25519, string(public), application})
	for _, c := range []struct {
		flags byte
		want  string
	}{{1, ""}, {5, ""}, {0, "nobody touched"}, {4, "nobody touched"}} {
		sum := sha512.Sum512(message)
		data := ssh.Marshal(signedData{magic, Namespace, "", "sha512", string(sum[:])})
		inner := hardware(private, application, c.flags, data)
		text := armour(ssh.Marshal(signatureBlob{magic, 1, string(blob), Namespace, "", "sha512", string(inner)}))
		err := verified(text, message)
		switch {
		case c.want == "" && err != nil:
			t.Errorf("flags %d: %v", c.flags, err)
		case c.want != "" && (err == nil || !strings.Contains(err.Error(), c.want)):
			t.Errorf("flags %d: got %v, want %q", c.flags, err, c.want)
		}
	}
}

// A certificate says more than whose key it is, and none of that would be looked at.
func TestSignatureByACertificateIsRefused(t *testing.T) {
	_, private, _ := ed25519.GenerateKey(rand.Reader)
	ed := signerOf(t, private)
	cert := &ssh.Certificate{Key: ed.PublicKey(), CertType: ssh.UserCert, ValidPrincipals: []string{"ada"}, ValidBefore: ssh.CertTimeInfinity}
	if err := cert.SignCert(rand.Reader, ed); err != nil {
		t.Fatal(err)
	}
	sum := sha512.Sum512(message)
	sig, err := ed.Sign(rand.Reader, ssh.Marshal(signedData{magic, Namespace, "", "sha512", string(sum[:])}))
	if err != nil {
		t.Fatal(err)
	}
	text := armour(ssh.Marshal(signatureBlob{magic, 1, string(cert.Marshal()), Namespace, "", "sha512", string(ssh.Marshal(sig))}))
	if err := verified(text, message); err == nil {
		t.Error("accepted")
	} else {
		contains(t, err.Error(), "of the kind ssh-ed25519-cert-v01@openssh.com")
	}
}

func TestKeyFileSaysWhatIsWrong(t *testing.T) {
	missing := t.TempDir() + "/key"
	if _, err := KeyFile(missing, new(bytes.Buffer)); err == nil {
		t.Error("a key that is not there was taken")
	} else {
		contains(t, err.Error(), "cannot be read: ssh-keygen:")
	}
	t.Setenv("PATH", t.TempDir())
	if _, err := KeyFile(missing, new(bytes.Buffer)); err != ErrNoKeygen {
		t.Errorf("got %v, want %v", err, ErrNoKeygen)
	}
}

// A public key that is not the private one's would put a false fingerprint into a record.
func TestSignRefusesAKeyThatIsNotWhatItSays(t *testing.T) {
	one, other := keyOf(t, newKey(t, "ed25519")), keyOf(t, newKey(t, "ed25519"))
	airframe := newAirframe(t)
	_, err := Sign(request(t, airframe).by("Ada Crane", Builder, &Key{Fingerprint: one.Fingerprint, Sign: other.Sign}))
	if err == nil {
		t.Fatal("signed")
	}
	contains(t, err.Error(), "it is by the key "+other.Fingerprint)
	if got := entries(t, airframe); len(got) > 0 {
		t.Errorf("%d records were written", len(got))
	}
}

func FuzzSignature(f *testing.F) {
	_, private, _ := ed25519.GenerateKey(rand.Reader)
	f.Add(made(f, signerOf(f, private), ssh.KeyAlgoED25519, Namespace, "sha512", message))
	f.Fuzz(func(t *testing.T, text []byte) {
		if s, err := parseSignature(text); err == nil && !bytes.Equal(armour(ssh.Marshal(s.blob)), text) {
			t.Error("accepted in another form than ssh-keygen's")
		}
	})
}
