package signoff

import (
	"crypto/ed25519"
	"crypto/sha256"

	"golang.org/x/crypto/ssh"
)

// hardware is a signature as a hardware key makes it, after PROTOCOL.u2f of OpenSSH: over
// the hash of the application, flags, a counter and the hash of the data.
func hardware(private ed25519.PrivateKey, application string, flags byte, data []byte) []byte {
	app, message := sha256.Sum256([]byte(application)), sha256.Sum256(data)
	const counter = 7
	blob := append(app[:], flags, 0, 0, 0, counter)
	blob = append(blob, message[:]...)
	return ssh.Marshal(ssh.Signature{
		Format: ssh.KeyAlgoSKED25519, Blob: ed25519.Sign(private, blob), Rest: []byte{flags, 0, 0, 0, counter},
	})
}
