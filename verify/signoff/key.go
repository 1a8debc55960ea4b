package signoff

import (
	"bytes"
	"errors"
	"fmt"
	"io"
	"os/exec"
	"strings"
)

// Key signs records.
type Key struct {
	Fingerprint string // "SHA256:…"
	Sign        func(message []byte) (armoured []byte, err error)
}

// ErrNoKeygen is that ssh-keygen is not on this machine.
var ErrNoKeygen = errors.New("ssh-keygen is not on this machine, and it is what signs with a key")

// KeyFile is a key in a file, private or public with its private half in an agent, used
// by ssh-keygen: which asks for a passphrase or a touch by itself, and to which said is
// where it speaks.
func KeyFile(name string, said io.Writer) (*Key, error) {
	keygen, err := exec.LookPath("ssh-keygen")
	if err != nil {
		return nil, ErrNoKeygen
	}
	listed, err := runKeygen(keygen, nil, said, "-l", "-E", "sha256", "-f", name)
	if err != nil {
		return nil, fmt.Errorf("the key %s cannot be read: %w", name, err)
	}
	k := &Key{}
	for word := range strings.FieldsSeq(string(listed)) {
		if isFingerprint(word) {
			k.Fingerprint = word
			break
		}
	}
	if k.Fingerprint == "" {
		return nil, fmt.Errorf("the key %s cannot be read: ssh-keygen tells no fingerprint of it", name)
	}
	k.Sign = func(message []byte) ([]byte, error) {
		armoured, err := runKeygen(keygen, message, said, "-q", "-Y", "sign", "-f", name, "-n", Namespace)
		if err != nil {
			return nil, fmt.Errorf("the key %s does not sign: %w", name, err)
		}
		return armoured, nil
	}
	return k, nil
}

func runKeygen(keygen string, stdin []byte, said io.Writer, args ...string) ([]byte, error) {
	var out, complaint bytes.Buffer
	c := exec.Command(keygen, args...)
	c.Stdin, c.Stdout, c.Stderr = bytes.NewReader(stdin), &out, io.MultiWriter(&complaint, said)
	if err := c.Run(); err != nil {
		if last := lastLine(complaint.String()); last != "" {
			return nil, fmt.Errorf("ssh-keygen: %s", last)
		}
		return nil, fmt.Errorf("ssh-keygen: %w", err)
	}
	return out.Bytes(), nil
}

func lastLine(text string) string {
	lines := strings.Split(strings.TrimSpace(text), "\n")
	return strings.TrimSpace(lines[len(lines)-1])
}
