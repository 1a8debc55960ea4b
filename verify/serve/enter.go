package serve

import (
	"html"
	"net/http"
	"net/netip"
	"strings"
)

const (
	enterPath = "/enter"
	cookie    = "hingeline"
	// mostForm is how many bytes a form with a code may have.
	mostForm = 256
)

// enterPolicy is that of the page that asks for the code, which has a form.
var enterPolicy = strings.Replace(policy, "form-action 'none'", "form-action 'self'", 1)

// openly are what a device is given before it is let in.
var openly = map[string]bool{"/style.css": true, "/icon.svg": true}

// of says whose a request is: of this machine, or of a device of the network. Both false
// is neither.
func (s *Server) of(q *http.Request) (here, lan bool) {
	host := strings.ToLower(q.Host)
	from, err := netip.ParseAddrPort(q.RemoteAddr)
	if err != nil {
		return false, false
	}
	if s.hosts[host] {
		return from.Addr().Unmap().IsLoopback(), false // another device that calls itself this machine is not
	}
	return false, s.door != nil && s.door.hosts[host]
}

// letIn says whether a device of the network has been let in; one that has not is asked
// for the code, or refused.
func (s *Server) letIn(w http.ResponseWriter, q *http.Request) bool {
	if c, err := q.Cookie(cookie); err == nil && s.door.lets(c.Value) {
		s.strangers.letIn(q.Context())
		return true
	}
	switch {
	case q.URL.Path == enterPath && q.Method == http.MethodPost:
		s.enterWith(w, q)
	case q.URL.Path == "/" || q.URL.Path == benchPath:
		s.askCode(w, http.StatusOK, "")
	case openly[q.URL.Path]:
		s.serveAsset(w, q)
	default:
		s.refuse(w, http.StatusForbidden, "%.80q asked for by a device that was not let in (%.40s)", q.URL.Path, q.RemoteAddr)
	}
	return false
}

// enterWith looks at a code that a device sends.
func (s *Server) enterWith(w http.ResponseWriter, q *http.Request) {
	if q.Header.Get("Origin") == "" { // one that is there was looked at
		s.refuse(w, http.StatusForbidden, "a code that does not say from which page")
		return
	}
	q.Body = http.MaxBytesReader(w, q.Body, mostForm)
	if err := q.ParseForm(); err != nil {
		s.refuse(w, http.StatusBadRequest, "a form: %.100q", err)
		return
	}
	key, no := s.door.try(q.PostForm.Get("code"))
	if no != nil {
		log := s.log.add
		if no.tried {
			log = s.log.always
		}
		log("%s (%.40s)", no.log, q.RemoteAddr)
		s.askCode(w, http.StatusForbidden, no.page)
		return
	}
	http.SetCookie(w, &http.Cookie{Name: cookie, Value: key, Path: "/", HttpOnly: true, SameSite: http.SameSiteStrictMode})
	http.Redirect(w, q, "/", http.StatusSeeOther)
}

// askCode gives the page that asks for the code.
func (s *Server) askCode(w http.ResponseWriter, status int, said string) {
	h := w.Header()
	h.Set("Content-Security-Policy", enterPolicy)
	h.Set("Referrer-Policy", "same-origin") // without it a form does not say where it comes from
	h.Set("Content-Type", kinds[".html"])
	text, err := assets.ReadFile("assets/enter.html")
	if err != nil {
		panic("serve: an asset is missing: " + err.Error())
	}
	w.WriteHeader(status)
	w.Write([]byte(strings.ReplaceAll(string(text), "{{said}}", html.EscapeString(said))))
}
