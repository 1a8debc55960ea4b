package main

import (
	"fmt"
	"net"
	"strings"

	"example.com/hingeline/verify/serve"
)

// lanWarning is said before anybody is let in from the network.
const lanWarning = `⚠ --lan: other devices on this network can ask for this page. A code lets each in once.
  The line to them is not encrypted: whoever listens on the network sees it, and can take
  part. Do so on a network of your own only, and end it with Ctrl-C when you are done.
`

// listenPrivately listens on every address that this machine has on a private network.
func listenPrivately(port int) ([]net.Listener, error) {
	found, err := net.InterfaceAddrs()
	if err != nil {
		return nil, &outputError{fmt.Errorf("the addresses of this machine cannot be read: %w", err)}
	}
	var list []net.Listener
	var why error
	for _, a := range found {
		of, ok := a.(*net.IPNet)
		if !ok || !of.IP.IsPrivate() {
			continue
		}
		l, err := net.Listen("tcp", net.JoinHostPort(of.IP.String(), fmt.Sprint(port)))
		if err != nil {
			why = err
			continue
		}
		list = append(list, l)
	}
	switch {
	case len(list) > 0:
		return list, nil
	case why != nil:
		return nil, &usageError{message: "cannot listen on the network: " + why.Error(), hint: "choose another --port, or leave it out for one that is free"}
	}
	return nil, &usageError{message: "--lan: this machine has no address on a private network", hint: "without --lan the page is for this machine alone"}
}

// doorWords is what is said of the door.
func doorWords(d serve.Door) string {
	switch {
	case d.Shut:
		return "⚠ --lan: too many wrong codes: no device is let in any more; start again to let one in"
	case d.Code == "":
		return fmt.Sprintf("--lan: %d devices were let in, and no more are", d.Devices)
	}
	return fmt.Sprintf("--lan: on the other device open %s and give the code %s; it is for one device, until %s",
		strings.Join(d.Addresses, " or "), d.Code, d.Until.Format("15:04"))
}
