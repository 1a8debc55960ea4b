package signoff

import (
	"bytes"
	"crypto/rsa"
	"crypto/sha256"
	"crypto/sha512"
	"encoding/base64"
	"errors"
	"fmt"
	"slices"
	"strings"

	"golang.org/x/crypto/ssh"
)

// Namespace keeps signatures of records apart from all others that a key makes:
// ssh-keygen -Y verify -n wants it.
const Namespace = "check@hingeline.example.com"

// A signature by ssh-keygen -Y is described in PROTOCOL.sshsig of OpenSSH: armour
// around a blob that names the key, the namespace and the hash, and the key's signature
// over these and the hash of the message.
const (
	armourBegin = "-----BEGIN SSH SIGNATURE-----\n"
	armourEnd   = "-----END SSH SIGNATURE-----\n"
	armourWidth = 70
)

// maxSignatureBytes is the most that a signature file may hold: several times the
// signature of the longest RSA key in use.
const maxSignatureBytes = 16 << 10

// minRSABits is the shortest RSA key that counts.
const minRSABits = 2048

var magic = [6]byte{'S', 'S', 'H', 'S', 'I', 'G'}

type signatureBlob struct {
	Magic     [6]byte
	Version   uint32
	PublicKey string
	Namespace string
	Reserved  string
	Hash      string
	Signature string
}

type signedData struct {
	Magic     [6]byte
	Namespace string
	Reserved  string
	Hash      string
	Digest    string
}

// signature is one made by ssh-keygen -Y sign.
type signature struct {
	key  ssh.PublicKey
	blob signatureBlob
	sig  ssh.Signature
}

// fingerprint is that of the key, as ssh-keygen -l shows it.
func (s *signature) fingerprint() string { return ssh.FingerprintSHA256(s.key) }

func isFingerprint(text string) bool {
	digest, ok := strings.CutPrefix(text, "SHA256:")
	raw, err := base64.RawStdEncoding.Strict().DecodeString(digest)
	return ok && err == nil && len(raw) == sha256.Size
}

// armour is a blob as ssh-keygen writes it.
func armour(blob []byte) []byte {
	var b bytes.Buffer
	b.WriteString(armourBegin)
	for line := range slices.Chunk([]byte(base64.StdEncoding.EncodeToString(blob)), armourWidth) {
		b.Write(line)
		b.WriteByte('\n')
	}
	b.WriteString(armourEnd)
	return b.Bytes()
}

// parseSignature reads a signature file, which must be byte for byte as ssh-keygen
// writes it: so no change of it goes unseen.
func parseSignature(text []byte) (*signature, error) {
	if len(text) > maxSignatureBytes {
		return nil, errors.New("it is too large for a signature")
	}
	inner, begins := bytes.CutPrefix(text, []byte(armourBegin))
	inner, ends := bytes.CutSuffix(inner, []byte(armourEnd))
	if !begins || !ends {
		return nil, errors.New("it is cut short, or no signature made by ssh-keygen")
	}
	raw, err := base64.StdEncoding.DecodeString(string(bytes.ReplaceAll(inner, []byte("\n"), nil)))
	if err != nil || !bytes.Equal(armour(raw), text) {
		return nil, errors.New("it is not as ssh-keygen wrote it")
	}
	s := &signature{}
	if err := ssh.Unmarshal(raw, &s.blob); err != nil || s.blob.Magic != magic || s.blob.Version != 1 || !bytes.Equal(ssh.Marshal(s.blob), raw) {
		return nil, errors.New("it is not as ssh-keygen wrote it")
	}
	if s.key, err = ssh.ParsePublicKey([]byte(s.blob.PublicKey)); err != nil || string(s.key.Marshal()) != s.blob.PublicKey {
		return nil, errors.New("the key in it cannot be read")
	}
	if err := ssh.Unmarshal([]byte(s.blob.Signature), &s.sig); err != nil {
		return nil, errors.New("it is not as ssh-keygen wrote it")
	}
	return s, nil
}

// verify says what is wrong with the signature of a message, nil if nothing is.
func (s *signature) verify(message []byte) error {
	if s.blob.Namespace != Namespace {
		return fmt.Errorf("it was made for %q and not for %s", s.blob.Namespace, Namespace)
	}
	if err := s.usable(); err != nil {
		return err
	}
	var digest []byte
	switch s.blob.Hash {
	case "sha256":
		sum := sha256.Sum256(message)
		digest = sum[:]
	case "sha512":
		sum := sha512.Sum512(message)
		digest = sum[:]
	default:
		return fmt.Errorf("it uses the hash %q, wanted sha256 or sha512", s.blob.Hash)
	}
	data := ssh.Marshal(signedData{magic, s.blob.Namespace, s.blob.Reserved, s.blob.Hash, string(digest)})
	if s.key.Verify(data, &s.sig) != nil {
		return errors.New("it was not made of these bytes with the key that it names")
	}
	return nil
}

// touched is the flag by which a hardware key says that somebody touched it.
const touched = 1

// usable refuses kinds of keys and signatures that prove too little.
func (s *signature) usable() error {
	wanted := []string{s.key.Type()}
	switch s.key.Type() {
	case ssh.KeyAlgoED25519, ssh.KeyAlgoECDSA256, ssh.KeyAlgoECDSA384, ssh.KeyAlgoECDSA521:
	case ssh.KeyAlgoRSA:
		wanted = []string{ssh.KeyAlgoRSASHA256, ssh.KeyAlgoRSASHA512}
		if key, ok := s.key.(ssh.CryptoPublicKey).CryptoPublicKey().(*rsa.PublicKey); !ok || key.N.BitLen() < minRSABits {
			return fmt.Errorf("its RSA key is shorter than %d bits", minRSABits)
		}
	case ssh.KeyAlgoSKED25519, ssh.KeyAlgoSKECDSA256:
		if len(s.sig.Rest) == 0 || s.sig.Rest[0]&touched == 0 {
			return errors.New("nobody touched the hardware key that made it")
		}
		if slices.Contains(wanted, s.sig.Format) {
			return nil
		}
	default:
		return fmt.Errorf("its key is of the kind %s, which is not used here; wanted ed25519, ecdsa, rsa, or one of these on a hardware key", s.key.Type())
	}
	if !slices.Contains(wanted, s.sig.Format) || len(s.sig.Rest) > 0 {
		return fmt.Errorf("it is of the kind %q, wanted %s", s.sig.Format, strings.Join(wanted, " or "))
	}
	return nil
}
