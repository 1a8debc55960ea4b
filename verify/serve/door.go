package serve

import (
	"crypto/rand"
	"crypto/sha256"
	"crypto/subtle"
	"fmt"
	"math/big"
	"strings"
	"sync"
	"time"
)

const (
	codeDigits = 8
	// codeLasts is how long a code opens the door: to walk to the bench with a phone.
	codeLasts = 10 * time.Minute
	// voidAfter is how many wrong tries end a code.
	voidAfter = 3
	// mostWrong is how many wrong tries shut the door for the rest of the run: whoever
	// guesses comes in with one chance in ten million.
	mostWrong = 10
	// firstPause is how long nothing is tried after the first wrong try; each further one
	// doubles it, to longestPause.
	firstPause   = time.Second
	longestPause = time.Minute
	// mostDevices is how many devices are let in, in one run.
	mostDevices = 8
)

// door lets other devices of the network in, one for each code.
type door struct {
	hosts     map[string]bool // by which other devices call this machine, with the port
	addresses []string        // the same as addresses to open
	now       func() time.Time
	told      func() // something is to be said anew

	mu      sync.Mutex
	code    string
	until   time.Time
	tries   int // wrong ones of this code
	wrong   int // in this run
	next    time.Time
	shut    bool
	keys    []string // of the devices that were let in
	version int
}

// Door is what is to be said out loud of the door.
type Door struct {
	Addresses []string // to open on the other device
	Code      string   // of the next device; empty where no further is let in
	Until     time.Time
	Devices   int  // that were let in
	Shut      bool // after too many wrong codes
}

func newDoor(addresses []string, now func() time.Time, told func()) *door {
	d := &door{hosts: map[string]bool{}, now: now, told: told}
	for _, a := range addresses {
		d.hosts[strings.ToLower(a)] = true
		if bare, is := strings.CutSuffix(a, fmt.Sprint(":", defaultPort)); is {
			d.hosts[strings.ToLower(bare)] = true
		}
		d.addresses = append(d.addresses, "http://"+a+"/")
	}
	d.renew()
	return d
}

// renew makes a code; whoever calls it holds the lock, or is alone.
func (d *door) renew() {
	d.version++
	d.code, d.tries, d.until = "", 0, d.now().Add(codeLasts)
	if d.shut || len(d.keys) >= mostDevices {
		return
	}
	most := new(big.Int).Exp(big.NewInt(10), big.NewInt(codeDigits), nil)
	n, err := rand.Int(rand.Reader, most)
	if err != nil {
		panic("serve: no random numbers: " + err.Error())
	}
	d.code = fmt.Sprintf("%0*d", codeDigits, n)
}

// say is what is to be said of the door now, and which saying it is.
func (d *door) say() (Door, int) {
	d.mu.Lock()
	defer d.mu.Unlock()
	said := Door{Addresses: d.addresses, Until: d.until, Devices: len(d.keys), Shut: d.shut}
	if d.code != "" {
		said.Code = d.code[:codeDigits/2] + " " + d.code[codeDigits/2:]
	}
	return said, d.version
}

// refusal is why a device is not let in.
type refusal struct {
	page, log string
	tried     bool // the code was held against ours, which is bounded: every one is logged
}

// try lets a device in that knows the code; its key is what it must show from then on. A
// code is good for one device.
func (d *door) try(given string) (key string, no *refusal) {
	key, no, anew := d.tried(strings.Map(digit, given))
	if anew {
		d.told()
	}
	return key, no
}

func digit(r rune) rune {
	if r >= '0' && r <= '9' {
		return r
	}
	return -1
}

func (d *door) tried(given string) (key string, no *refusal, anew bool) {
	d.mu.Lock()
	defer d.mu.Unlock()
	now := d.now()
	switch {
	case d.shut:
		return "", &refusal{"Too many wrong codes: no device is let in any more. Start hingeline serve again.", "a code, after too many wrong ones", false}, false
	case now.Before(d.next):
		return "", &refusal{fmt.Sprintf("Wait %.0f seconds after a wrong code. This one was not looked at.", d.next.Sub(now).Seconds()+0.5), "a code, too soon after a wrong one", false}, false
	case d.code == "":
		return "", &refusal{fmt.Sprintf("%d devices were let in, and no more are.", mostDevices), fmt.Sprintf("a device beside %d others", mostDevices), false}, false
	case !now.Before(d.until):
		d.renew()
		return "", &refusal{"That code is out of date. A new one is where hingeline serve runs.", "a code that is out of date", true}, true
	case same(given, d.code):
		key = rand.Text()
		d.keys = append(d.keys, key)
		d.renew()
		return key, nil, true
	}
	d.wrong, d.tries = d.wrong+1, d.tries+1
	d.next = now.Add(min(firstPause<<(d.wrong-1), longestPause))
	no = &refusal{"That is not the code.", fmt.Sprintf("a wrong code, the %d. of %d", d.wrong, mostWrong), true}
	switch {
	case d.wrong >= mostWrong:
		d.shut = true
		d.renew()
		return "", &refusal{"That is not the code. No device is let in any more: start hingeline serve again.", no.log + "; no device is let in any more", true}, true
	case d.tries >= voidAfter:
		d.renew()
		no.page += " A new one is where hingeline serve runs."
		no.log += "; there is a new code"
		return "", no, true
	}
	return "", no, false
}

// lets says whether a key is one of a device that was let in. It takes as long whichever it
// is.
func (d *door) lets(key string) bool {
	d.mu.Lock()
	defer d.mu.Unlock()
	in := false
	for _, k := range d.keys {
		in = same(key, k) || in
	}
	return in
}

// same compares in a time that says nothing of where texts differ, or how long they are.
func same(a, b string) bool {
	x, y := sha256.Sum256([]byte(a)), sha256.Sum256([]byte(b))
	return subtle.ConstantTimeCompare(x[:], y[:]) == 1
}
