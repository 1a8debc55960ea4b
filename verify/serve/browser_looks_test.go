//go:build browser

package serve

import (
	"context"
	"fmt"
	"os"
	"path/filepath"
	"testing"
	"time"

	"github.com/chromedp/cdproto/emulation"
	"github.com/chromedp/chromedp"
)

// axe asks axe-core for violations of WCAG 2.2 at levels A and AA, each as its rule and the
// first element, and for contrast that it could not decide; that of words in drawings, which
// it never can, is held by the inks of package figure, and a sign is never without its word.
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
	return evaluate[[]string](t, ctx, `axe.run(document, {runOnly: ["wcag2a", "wcag2aa", "wcag21a", "wcag21aa", "wcag22aa"], preload: false})
		.then(r => {
			if (r.passes.length < 10) return ["only " + r.passes.length + " rules looked at anything"];
			return r.violations.concat(r.incomplete.filter(v => v.id == "color-contrast")
				.map(v => ({...v, nodes: v.nodes.filter(n => !document.querySelector(n.target[0]).closest("svg, .sign"))})).filter(v => v.nodes.length))
				.map(v => v.id + ": " + v.help + " (" + v.nodes.length + "): " + v.nodes[0].html.slice(0, 200) + " " + (v.nodes[0].any[0]?.message ?? ""));
		})`)
}

// looks are how the page is looked at.
var looks = []struct {
	name          string
	width, height int64
	scheme        string
}{
	{"desktop", 1366, 900, "light"}, {"desktop-dark", 1366, 900, "dark"}, {"tablet", 820, 1100, "light"},
	{"phone", 360, 740, "light"}, {"phone-dark", 360, 740, "dark"},
}

// wider says what stands out to the right of the window, but within a region that scrolls.
const wider = `[...document.querySelectorAll("body *:not(svg *)")]
	.filter(e => !e.closest(".scroll, .unseen, .skip") && e.getBoundingClientRect().right > innerWidth + 1)
	.map(e => e.tagName + "." + e.className)
	.concat(document.documentElement.scrollWidth > innerWidth ? ["the page"] : []).slice(0, 5)`

// posed is a pose in which limits bite and much is off neutral.
const posed = `(() => { for (const c of document.querySelectorAll("input[type=range]")) { c.value = c.max * 0.9; c.dispatchEvent(new Event("input", {bubbles: true})); }
	document.querySelectorAll("#controls fieldset").forEach((f, i, all) => { if (i < all.length - 1) [...f.querySelectorAll("input")].at(-1).click(); });
	document.querySelectorAll("details").forEach(d => { d.open = true; });
	document.querySelector("#write").click(); return true; })()`

func TestAxeFindsNothingAndThePageFits(t *testing.T) {
	ctx := browser(t)
	failing := unreversed(t)
	for name, now := range map[string]Now{"bracken-20": shipping(t, "bracken-20"), "skerry": shipping(t, "skerry"), "failing": failing} {
		r := run(t, now)
		for i, as := range looks {
			if name == "skerry" && i%3 != 0 { // the largest model: wide and narrow
				continue
			}
			t.Run(name+", "+as.name, func(t *testing.T) {
				lookedAs(t, ctx, "prefers-color-scheme", as.scheme)
				do(t, ctx, chromedp.EmulateViewport(as.width, as.height), chromedp.Navigate("about:blank"))
				visit(t, ctx, r)
				evaluate[bool](t, ctx, "(sessionStorage.clear(), true)")
				picture(t, ctx, name+"-"+as.name+"-rest", false)
				evaluate[bool](t, ctx, posed)
				holds(t, ctx, `document.querySelector("#scenario").value !== ""`)
				holds(t, ctx, `!("moving" in document.documentElement.dataset)`)
				evaluate[bool](t, ctx, "(scrollTo(0, 0), true)")
				for _, v := range axe(t, ctx) {
					t.Error(v)
				}
				if out := evaluate[[]string](t, ctx, wider); len(out) > 0 {
					t.Errorf("wider than the window: %q", out)
				}
				picture(t, ctx, name+"-"+as.name+"-posed", true)
				for _, id := range []string{"hands", "parts", "travel"} {
					evaluate[bool](t, ctx, "(document.getElementById('"+id+"').scrollIntoView(), true)")
					time.Sleep(100 * time.Millisecond)
					picture(t, ctx, name+"-"+as.name+"-"+id, false)
				}
				evaluate[bool](t, ctx, "(sessionStorage.clear(), true)")
			})
		}
	}
}

// lookedAs tells a page what its reader wants, as pairs of a media feature and its value.
func lookedAs(t *testing.T, ctx context.Context, wants ...string) {
	t.Helper()
	p := emulation.SetEmulatedMediaParams{}
	for i := 0; i < len(wants); i += 2 {
		p.Features = append(p.Features, &emulation.MediaFeature{Name: wants[i], Value: wants[i+1]})
	}
	if _, err := chromedp.Call(ctx, emulation.SetEmulatedMedia, p); err != nil {
		t.Fatal(err)
	}
}

// differ says whether two elements can be told apart by their lines or their ground.
const differ = `((a, b) => {
	const [p, q] = [a, b].map(e => { const s = getComputedStyle(document.querySelector(e)); return [s.borderTopWidth, s.borderTopStyle, s.outlineStyle, s.outlineWidth, s.backgroundColor].join(); });
	return p !== q;
})`

// TestNothingIsLostInForcedColoursAndNothingMovesByItself holds that what a colour tells is
// told otherwise too, where a reader has colours of their own.
func TestNothingIsLostInForcedColoursAndNothingMovesByItself(t *testing.T) {
	ctx := browser(t)
	lookedAs(t, ctx, "forced-colors", "active", "prefers-reduced-motion", "reduce", "prefers-color-scheme", "dark")
	apart := func(one, other string) {
		t.Helper()
		if !evaluate[bool](t, ctx, fmt.Sprintf("%s(%q, %q)", differ, one, other)) {
			t.Errorf("%s looks as %s does", one, other)
		}
	}
	quiet := func() {
		t.Helper()
		if list := evaluate[[]string](t, ctx, `[...document.querySelectorAll("*")].filter(e => { const s = getComputedStyle(e); return s.animationName !== "none" || s.transitionDuration.split(", ").some(d => parseFloat(d) > 0) || s.scrollBehavior === "smooth"; }).map(e => e.tagName + "." + e.className)`); len(list) > 0 {
			t.Errorf("these move by themselves: %q", list)
		}
	}
	now := unreversed(t)
	r := run(t, now)
	visit(t, ctx, r)
	evaluate[bool](t, ctx, fmt.Sprintf(`(document.getElementById("control-%d-1").click(), true)`, named(now.Model, "motor switch")))
	evaluate[bool](t, ctx, setTo(t, now, "throttle", 100))
	holds(t, ctx, `document.querySelector("#motors.runs")`)
	row := func(part string) string { return fmt.Sprintf("#row-%d", partCalled(now.Model, part)) }
	evaluate[bool](t, ctx, fmt.Sprintf(`(document.querySelector("#name-%d").click(), true)`, partCalled(now.Model, "rudder")))
	holds(t, ctx, fmt.Sprintf(`document.querySelector(%q)`, row("rudder")+".looked"))
	apart(row("rudder"), row("elevator"))
	apart(row("port aileron"), row("elevator"))
	apart(row("port flap"), row("elevator"))
	apart(row("port flap"), row("port aileron"))
	apart("#motors", "#line")
	apart(".choices input:checked + .choice", ".choices input:not(:checked) + .choice")
	quiet()
	picture(t, ctx, "forced-colours", true)
	r, _ = atBench(t, "pellin-park")
	do(t, ctx, chromedp.EmulateViewport(390, 844), chromedp.Navigate("http://"+r.host+"/bench"))
	bigButton(t, ctx, "Begin a new walk-around")
	holds(t, ctx, `document.querySelector("#now button.bad:not(:disabled)")`)
	apart("#now button.first", "#now button.bad")
	quiet()
	picture(t, ctx, "forced-colours-bench", true)
}

// picture writes a screenshot, where that was asked for.
func picture(t *testing.T, ctx context.Context, name string, whole bool) {
	t.Helper()
	if *shots == "" {
		return
	}
	var shot []byte
	var err error
	if whole {
		shot, err = chromedp.Run(ctx, chromedp.FullScreenshot(100))
	} else {
		shot, err = chromedp.Run(ctx, chromedp.CaptureScreenshot())
	}
	if err != nil {
		t.Fatal(err)
	}
	if err := os.WriteFile(filepath.Join(*shots, name+".png"), shot, 0o600); err != nil {
		t.Fatal(err)
	}
}
