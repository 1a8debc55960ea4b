//go:build browser

package html

import (
	"bytes"
	"context"
	"fmt"
	"maps"
	"net/http"
	"net/http/httptest"
	"os"
	"slices"
	"strings"
	"sync"
	"testing"

	"github.com/chromedp/cdproto/emulation"
	"github.com/chromedp/chromedp"
)

// axe asks axe-core for violations of WCAG 2.2 at levels A and AA, each as its rule and the
// first element, and for contrasts that it could not decide: but for signs and words of one
// letter, which it never decides, and what a narrow window has scrolled out of sight, which
// the wide one shows. It cannot tell what is behind words in pictures; those have the
// colours that TestColoursCanBeTold measures.
func axe(t *testing.T, ctx context.Context) []string {
	t.Helper()
	if *axeFile == "" {
		t.Fatal("say with -axe where axe.min.js of the npm package axe-core is")
	}
	library, err := os.ReadFile(*axeFile)
	if err != nil {
		t.Fatal(err)
	}
	evaluate[bool](t, ctx, string(library)+"\n;true")
	return evaluate[[]string](t, ctx, `axe.configure({rules: [{id: "color-contrast", selector: "*:not(text):not(title):not(desc)"}]}),
		axe.run(document, {runOnly: ["wcag2a", "wcag2aa", "wcag21a", "wcag21aa", "wcag22aa"], preload: false})
		.then(r => {
			if (r.passes.length < 10) return ["only " + r.passes.length + " rules looked at anything"];
			const why = n => n.any.map(c => c.data && c.data.messageKey).join();
			const known = n => ["shortTextContent", "nonBmp"].includes(why(n)) ||
				innerWidth < 600 && why(n).startsWith("elmPartially") && document.querySelector(n.target[0]).closest(".scroll");
			const open = r.incomplete.filter(v => v.id == "color-contrast")
				.map(v => Object.assign(v, {nodes: v.nodes.filter(n => !known(n))})).filter(v => v.nodes.length);
			return r.violations.concat(open)
				.map(v => v.id + ": " + v.help + " (" + v.nodes.length + "): " + v.nodes[0].html.slice(0, 200) + " " + why(v.nodes[0]));
		})`)
}

func TestAxeFindsNothing(t *testing.T) {
	ctx := browser(t)
	all := reports()
	crowded := all["crowded"] // its first stops are as crowded as all of them
	crowded.Checks, crowded.Paper.Pictures = crowded.Checks[:6], crowded.Paper.Pictures[:6]
	for _, name := range slices.Sorted(maps.Keys(all)) {
		page := render(t, all[name])
		for _, as := range looks {
			t.Run(name+", "+as.name, func(t *testing.T) {
				open(t, ctx, page, as)
				for _, v := range axe(t, ctx) {
					t.Error(v)
				}
			})
		}
	}
}

func TestAxeFindsPlantedFaults(t *testing.T) {
	ctx := browser(t)
	page := render(t, reports()["failing"])
	restyled := func(page []byte, css string) []byte {
		page = bytes.ReplaceAll(page, []byte("http-equiv"), []byte("data-was"))
		return bytes.Replace(page, []byte("</style>"), []byte(css+"</style>"), 1)
	}
	for rule, planted := range map[string][]byte{
		"color-contrast": restyled(page, "p { color: #999999 !important; }"),
		"html-has-lang":  bytes.Replace(page, []byte(` lang="en"`), nil, 1),
		"image-alt":      bytes.Replace(page, []byte("<footer>"), []byte(`<img src="data:,"><footer>`), 1),
		"svg-img-alt":    bytes.ReplaceAll(bytes.ReplaceAll(page, []byte(`aria-labelledby="f1-title"`), nil), []byte(`<title id="f1-title">`), []byte("<title>  </title><title>")),
		"target-size": restyled(bytes.Replace(page, []byte("<footer>"), []byte("<button>a</button><button>b</button><footer>"), 1),
			"button { width: 9px; height: 9px; margin: 0; padding: 0; border: 0; font-size: 6px; }"),
		"document-title":              bytes.Replace(page, []byte("<title>"), []byte("<title></title><title>"), 1),
		"scrollable-region-focusable": bytes.ReplaceAll(page, []byte(` tabindex="0"`), nil),
	} {
		t.Run(rule, func(t *testing.T) {
			open(t, ctx, planted, look{"narrow", 320, "light"})
			found := axe(t, ctx)
			if !slices.ContainsFunc(found, func(v string) bool { return strings.HasPrefix(v, rule+":") }) {
				t.Errorf("not found; found: %q", found)
			}
		})
	}
}

// spacing is the text spacing of WCAG 2.2, 1.4.12.
const spacing = `(() => {
	const s = new CSSStyleSheet();
	s.replaceSync("* { line-height: 1.5 !important; letter-spacing: .12em !important; word-spacing: .16em !important; } p { margin-bottom: 2em !important; }");
	document.adoptedStyleSheets = [s];
	return true;
})()`

// wider says what stands out to the right of the window, but within a region that scrolls.
const wider = `[...document.querySelectorAll("body *:not(svg *)")]
	.filter(e => !e.closest(".scroll, .unseen, .skip") && e.getBoundingClientRect().right > innerWidth + 1)
	.map(e => e.tagName + "." + e.className)
	.concat(document.documentElement.scrollWidth > innerWidth ? ["the page"] : []).slice(0, 5)`

func TestPageFlowsInANarrowWindow(t *testing.T) {
	ctx := browser(t)
	for name, r := range reports() {
		open(t, ctx, render(t, r), looks[2])
		if out := evaluate[[]string](t, ctx, wider); len(out) > 0 {
			t.Errorf("%s: wider than the window: %q", name, out)
		}
		evaluate[bool](t, ctx, spacing)
		if out := evaluate[[]string](t, ctx, wider); len(out) > 0 {
			t.Errorf("%s: wider than the window with more space between letters: %q", name, out)
		}
	}
	planted := bytes.Replace(render(t, reports()["passing"]), []byte("<footer>"), []byte("<table><tr><td>"+strings.Repeat("wide\u00a0", 60)+"</table><footer>"), 1)
	planted = bytes.Replace(planted, []byte("overflow-wrap: break-word"), []byte("overflow-wrap: normal;"), 1)
	open(t, ctx, bytes.ReplaceAll(planted, []byte("http-equiv"), []byte("data-was")), looks[2])
	if out := evaluate[[]string](t, ctx, wider); len(out) == 0 {
		t.Error("a table that is too wide is not found")
	}
}

// TestPageAsksForNothing serves a page and counts what is asked for beside it, as it is and
// with something planted in it that would ask for more or run.
func TestPageAsksForNothing(t *testing.T) {
	ctx := browser(t)
	page := render(t, reports()["failing"])
	planted := bytes.Replace(page, []byte("<footer>"), []byte(`<script>document.title = "ran"</script><script src="/a.js"></script>`+
		`<img src="/a.png" alt="" onerror="document.title = 'ran'"><link rel="stylesheet" href="/a.css"><iframe title="a" src="/a.html"></iframe><footer>`), 1)
	for _, c := range []struct {
		name string
		page []byte
		asks []string
		runs bool
	}{
		{"as it is", page, nil, false},
		{"planted", planted, nil, false},
		{"planted, without the policy", bytes.Replace(planted, []byte("http-equiv"), []byte("data-was"), 1), []string{"/a.css", "/a.html", "/a.js", "/a.png"}, true},
	} {
		var lock sync.Mutex
		asked := map[string]bool{}
		server := httptest.NewServer(http.HandlerFunc(func(w http.ResponseWriter, q *http.Request) {
			if q.URL.Path != "/" {
				lock.Lock()
				asked[q.URL.Path] = true
				lock.Unlock()
				http.NotFound(w, q)
				return
			}
			w.Header().Set("Content-Type", "text/html; charset=utf-8")
			w.Write(c.page)
		}))
		do(t, ctx, chromedp.Navigate(server.URL+"/"))
		title := evaluate[string](t, ctx, "document.title")
		styled := evaluate[string](t, ctx, `getComputedStyle(document.querySelector(".skip")).position`)
		server.Close()
		if paths := slices.Sorted(maps.Keys(asked)); !slices.Equal(paths, c.asks) || (title == "ran") != c.runs {
			t.Errorf("%s: asked for %q, wanted %q; the title is %q", c.name, paths, c.asks, title)
		}
		if styled != "absolute" {
			t.Errorf("%s: the style sheet was refused", c.name)
		}
	}
	scripts := evaluate[int](t, ctx, `document.querySelectorAll("script").length`)
	if scripts == 0 {
		t.Error("a planted script is not found")
	}
	open(t, ctx, page, looks[0])
	if n := evaluate[int](t, ctx, `document.querySelectorAll("script, iframe, form, [onload], [onclick], [style]").length`); n > 0 {
		t.Errorf("%d elements that run or are styled by themselves", n)
	}
}

func TestPageCanBeWalkedByKeyboard(t *testing.T) {
	ctx := browser(t)
	open(t, ctx, render(t, reports()["failing"]), looks[0])
	do(t, ctx, chromedp.KeyEvent("\t"))
	seen := evaluate[string](t, ctx, `(() => { const e = document.activeElement, b = e.getBoundingClientRect();
		return e.className + " " + (b.left >= 0 && b.top >= 0) + " " + getComputedStyle(e).outlineStyle; })()`)
	if seen != "skip true solid" {
		t.Errorf("the first stop is %q, wanted the skip link, in sight and outlined", seen)
	}
	do(t, ctx, chromedp.KeyEvent("\r"))
	if at := evaluate[string](t, ctx, `document.activeElement.id`); at != "main" {
		t.Errorf("the skip link leads to %q", at)
	}
}

func TestPrintedPageIsDarkOnLight(t *testing.T) {
	ctx := browser(t)
	open(t, ctx, render(t, reports()["failing"]), looks[1])
	media := emulation.SetEmulatedMediaParams{Media: "print", Features: []*emulation.MediaFeature{{Name: "prefers-color-scheme", Value: "dark"}}}
	if _, err := chromedp.Call(ctx, emulation.SetEmulatedMedia, media); err != nil {
		t.Fatal(err)
	}
	got := evaluate[string](t, ctx, `getComputedStyle(document.documentElement).backgroundColor + " " + getComputedStyle(document.querySelector("nav")).display + " " + getComputedStyle(document.querySelector("p.fill")).display`)
	if want := "rgb(255, 255, 255) none flex"; got != want {
		t.Errorf("got %s, wanted %s", got, want)
	}
	for _, paper := range []chromedp.PaperSize{chromedp.PaperA4, chromedp.PaperLetter} {
		pdf, err := chromedp.Run(ctx, chromedp.PrintToPDF(chromedp.PDFPaper(paper)))
		if err != nil || !bytes.HasPrefix(pdf, []byte("%PDF-")) {
			t.Error(fmt.Sprint(paper, err))
		}
	}
}
