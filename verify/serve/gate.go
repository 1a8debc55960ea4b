package serve

import (
	"crypto/sha256"
	"crypto/subtle"
	"embed"
	"encoding/hex"
	"html"
	"io/fs"
	"net/http"
	"path"
	"strings"
)

//go:embed assets
var assets embed.FS

// kinds are the media types of what the browser is given, by the end of its name.
var kinds = map[string]string{
	".html": "text/html; charset=utf-8",
	".css":  "text/css; charset=utf-8",
	".js":   "text/javascript; charset=utf-8",
	".svg":  "image/svg+xml",
}

// policy lets the page use what this server gives it and nothing else.
const policy = "default-src 'none'; script-src 'self'; style-src 'self'; img-src 'self'; connect-src 'self'; " +
	"base-uri 'none'; form-action 'none'; frame-ancestors 'none'"

// Paths. The token follows where a socket's ends.
const (
	socketPath      = "/socket/"
	benchSocketPath = "/socket/bench/"
	benchPath       = "/bench"
)

// ServeHTTP lets in who asks for the page by a name of this machine, and devices of the
// network that were let in.
func (s *Server) ServeHTTP(w http.ResponseWriter, q *http.Request) {
	defer s.bugs.abort()
	h := w.Header()
	h.Set("Content-Security-Policy", policy)
	h.Set("X-Content-Type-Options", "nosniff")
	h.Set("X-Frame-Options", "DENY")
	h.Set("Referrer-Policy", "no-referrer")
	h.Set("Cross-Origin-Resource-Policy", "same-origin")
	h.Set("Cross-Origin-Opener-Policy", "same-origin")
	h.Set("Permissions-Policy", "camera=(), microphone=(), geolocation=(), usb=(), serial=(), bluetooth=(), hid=()")
	h.Set("Cache-Control", "no-store")
	here, lan := s.of(q)
	posts := lan && q.URL.Path == enterPath && q.Method == http.MethodPost
	switch {
	case !here && !lan:
		s.refuse(w, http.StatusMisdirectedRequest, "host %.80q is no name of this page (another name that leads here?)", q.Host)
	case !posts && q.Method != http.MethodGet && q.Method != http.MethodHead:
		h.Set("Allow", "GET, HEAD")
		s.refuse(w, http.StatusMethodNotAllowed, "method %.20q", q.Method)
	case crossSite(q):
		asked := q.URL.Path
		if strings.HasPrefix(asked, socketPath) {
			asked = socketPath + "…" // the rest may be the token
		}
		s.refuse(w, http.StatusForbidden, "%.80q asked for by a page of somebody else", asked)
	case lan && !s.letIn(w, q):
	case strings.HasPrefix(q.URL.Path, socketPath):
		s.serveSocket(w, q, here)
	default:
		s.serveAsset(w, q)
	}
}

// crossSite is true for what a page of another site asks for, by what the browser says;
// following a link to the page itself is no such thing.
func crossSite(q *http.Request) bool {
	if origin := q.Header.Get("Origin"); origin != "" && !strings.EqualFold(origin, "http://"+q.Host) {
		return true
	}
	switch q.Header.Get("Sec-Fetch-Site") {
	case "", "same-origin", "none":
		return false
	}
	return q.URL.Path != "/" || q.Header.Get("Sec-Fetch-Mode") != "navigate" || q.Header.Get("Sec-Fetch-Dest") != "document"
}

// serveAsset gives the page or something that belongs to it.
func (s *Server) serveAsset(w http.ResponseWriter, q *http.Request) {
	name, known := map[string]string{
		"/": "page.html", benchPath: "bench.html", "/style.css": "style.css", "/icon.svg": "icon.svg",
		"/bench.js": "bench.js", "/element.js": "element.js", "/drawing.js": "drawing.js", "/page.js": "page.js", "/link.js": "link.js", "/hands.js": "hands.js", "/sight.js": "sight.js",
	}[q.URL.Path]
	if !known {
		s.refuse(w, http.StatusNotFound, "path %.80q", q.URL.Path)
		return
	}
	text, err := assets.ReadFile(path.Join("assets", name))
	if err != nil {
		s.refuse(w, http.StatusNotFound, "path %.80q", q.URL.Path)
		return
	}
	if path.Ext(name) == ".html" {
		text = []byte(strings.NewReplacer("{{token}}", html.EscapeString(s.token), "{{build}}", build()).Replace(string(text)))
	}
	w.Header().Set("Content-Type", kinds[path.Ext(name)])
	if q.Method != http.MethodHead {
		w.Write(text)
	}
}

// build is a name for what the browser is given, so that a page can tell that a newer
// program answers it.
func build() string {
	sum := sha256.New()
	fs.WalkDir(assets, "assets", func(name string, d fs.DirEntry, _ error) error {
		if !d.IsDir() {
			text, _ := assets.ReadFile(name)
			sum.Write(text)
		}
		return nil
	})
	return hex.EncodeToString(sum.Sum(nil)[:8])
}

// known says whether a socket's path has this run's token.
func (s *Server) known(path string) bool {
	token := strings.TrimPrefix(strings.TrimPrefix(path, benchSocketPath), socketPath)
	return subtle.ConstantTimeCompare([]byte(token), []byte(s.token)) == 1
}
