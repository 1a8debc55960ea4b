//go:build browser

package serve

import (
	"context"
	"flag"
	"fmt"
	"math"
	"net"
	"net/http"
	"os"
	"path/filepath"
	"slices"
	"strings"
	"testing"
	"time"

	"github.com/chromedp/cdproto/emulation"
	"github.com/chromedp/chromedp"
	"github.com/chromedp/chromedp/kb"

	"example.com/hingeline/airframes"
	"example.com/hingeline/features"
	"example.com/hingeline/mixcore"
	"example.com/hingeline/verify"
	"example.com/hingeline/verify/script"
)

var (
	axeFile  = flag.String("axe", "", "axe.min.js of the npm package axe-core")
	chromium = flag.String("chromium", "chromium", "the browser to run")
	shots    = flag.String("shots", "", "a directory to write screenshots to, to be looked at")
)

// browser starts a browser without a window, which asks nothing of any network.
func browser(t testing.TB) context.Context {
	t.Helper()
	return browserWith(t)
}

func browserWith(t testing.TB, more ...chromedp.ExecAllocatorOption) context.Context {
	t.Helper()
	options := append(slices.Concat(chromedp.DefaultExecAllocatorOptions[:], more),
		chromedp.ExecPath(*chromium), chromedp.NoSandbox, chromedp.UserDataDir(t.TempDir()),
		chromedp.Flag("disable-component-update", true), chromedp.Flag("no-pings", true))
	within, stop := context.WithTimeout(t.Context(), 10*time.Minute)
	alone, end := chromedp.NewExecAllocator(within, options...)
	ctx, cancel := chromedp.NewContext(alone)
	t.Cleanup(func() { cancel(); end(); stop() })
	do(t, ctx, chromedp.Navigate("about:blank"))
	return ctx
}

func do(t testing.TB, ctx context.Context, steps ...chromedp.Action[chromedp.Void]) {
	t.Helper()
	if err := chromedp.Do(ctx, steps...); err != nil {
		t.Fatal(err)
	}
}

func evaluate[T any](t testing.TB, ctx context.Context, script string) T {
	t.Helper()
	v, err := chromedp.Run(ctx, chromedp.Evaluate[T](script, chromedp.EvalAwaitPromise))
	if err != nil {
		t.Fatal(err)
	}
	return v
}

// holds waits until a condition of the page is true.
func holds(t testing.TB, ctx context.Context, condition string) {
	t.Helper()
	for range 400 {
		if evaluate[bool](t, ctx, "!!("+condition+")") {
			return
		}
		time.Sleep(25 * time.Millisecond)
	}
	t.Fatalf("it never held that %s; the page says: %.600s", condition, evaluate[string](t, ctx, "document.body.innerText"))
}

// visit opens the page and waits until it has its first answer.
func visit(t testing.TB, ctx context.Context, r *running) {
	t.Helper()
	do(t, ctx, chromedp.Navigate("http://"+r.host+"/"))
	holds(t, ctx, "document.documentElement.dataset.answered > 0 && document.querySelector('#box-curve svg')")
}

// stood asks whether a part is said to stand somewhere.
const stood = `(name, words) => [...document.querySelectorAll(".card")].find(c => c.querySelector(".name").textContent === name)?.querySelector(".says").textContent.includes(words)`

// angle reads from the drawing of a part how far its trailing edge is turned: the angle of
// the wedge from the hinge to the trailing edge, plus for down. The wedge is the last
// closed path of three points that is drawn with a line.
const angle = `(name => {
	const card = [...document.querySelectorAll(".card")].find(c => c.querySelector(".name").textContent === name);
	const wedges = [...card.querySelectorAll("svg path")].map(p => p.getAttribute("d")).filter(d => /^M[^MLA]*L[^MLA]*L[^MLA]*Z$/.test(d));
	const points = wedges.map(d => d.match(/-?[\d.]+ -?[\d.]+/g).map(p => p.split(" ").map(Number)));
	const long = p => Math.hypot(p[1][0] - (p[0][0] + p[2][0]) / 2, p[1][1] - (p[0][1] + p[2][1]) / 2);
	const [a, tip, b] = points.sort((p, q) => long(q) - long(p))[0];
	return Math.atan2(tip[1] - (a[1] + b[1]) / 2, tip[0] - (a[0] + b[0]) / 2) * 180 / Math.PI;
})`

// focusOn moves the focus with the Tab key alone to an element.
func focusOn(t testing.TB, ctx context.Context, id string) {
	t.Helper()
	for range 120 {
		do(t, ctx, chromedp.KeyEvent("\t"))
		if evaluate[string](t, ctx, "document.activeElement.id") == id {
			if !evaluate[bool](t, ctx, `(() => { const s = getComputedStyle(document.activeElement); return s.outlineStyle !== "none" && s.outlineWidth !== "0px" || document.activeElement.type === "radio"; })()`) {
				t.Errorf("%s has the focus and does not show it", id)
			}
			return
		}
	}
	t.Fatalf("the Tab key never comes to %s", id)
}

func named(m *airframes.Model, name string) int {
	return slices.IndexFunc(m.Setup.Controls, func(c mixcore.Control) bool { return c.Name == name })
}

func TestKeyboardAloneMovesAStickAndTheSurfaceFollows(t *testing.T) {
	now := shipping(t, "bracken-20")
	r := run(t, now)
	ctx := browser(t)
	do(t, ctx, chromedp.EmulateViewport(1280, 900))
	visit(t, ctx, r)
	aileron := partCalled(now.Model, "port aileron")
	at := now.Model.Plan.Rest()
	out := now.Model.Plan.NewOutput()
	check := func(when string) {
		t.Helper()
		now.Model.Plan.Eval(&at, out)
		want := float64(out.Parts[aileron].Angle)
		for range 100 {
			if math.Abs(evaluate[float64](t, ctx, angle+`("port aileron")`)-want) < drawnTo {
				return
			}
			time.Sleep(20 * time.Millisecond)
		}
		t.Errorf("%s: the picture has the port aileron at %.2f° (plus is down), wanted %.2f°", when, evaluate[float64](t, ctx, angle+`("port aileron")`), want)
	}
	check("at rest")
	stick := named(now.Model, "roll stick")
	focusOn(t, ctx, fmt.Sprint("control-", stick))
	for range 30 {
		do(t, ctx, chromedp.KeyEvent(kb.ArrowRight))
	}
	at.Position[stick] = 30
	check("30 keys to the right")
	if got := evaluate[string](t, ctx, "document.activeElement.getAttribute('aria-valuetext')"); got != "30 % right" {
		t.Errorf("the stick says %q, wanted 30 %% right", got)
	}
	do(t, ctx, chromedp.KeyEvent(kb.End))
	at.Position[stick] = 100
	check("End")
	do(t, ctx, chromedp.KeyEvent(kb.Home))
	at.Position[stick] = -100
	check("Home")
	holds(t, ctx, `document.querySelector("#aloud").textContent.startsWith("port aileron: trailing edge UP ")`)
	rates := named(now.Model, "rate switch")
	focusOn(t, ctx, fmt.Sprintf("control-%d-0", rates))
	do(t, ctx, chromedp.KeyEvent(kb.ArrowRight))
	at.Position[rates] = 1
	check("the rate switch is high")
	focusOn(t, ctx, "signal-there")
	do(t, ctx, chromedp.KeyEvent(kb.ArrowRight))
	at.SignalLost = true
	check("the signal is lost")
	if !strings.Contains(evaluate[string](t, ctx, "document.querySelector('#pose').textContent"), "signal lost") {
		t.Error("the page does not say that the signal is lost")
	}
}

// drawnTo is how well an angle can be read from a drawing whose numbers have two decimals,
// in degrees.
const drawnTo = 0.1

func TestPitchGoesForwardWithTheUpKey(t *testing.T) {
	now := shipping(t, "bracken-20")
	r := run(t, now)
	ctx := browser(t)
	visit(t, ctx, r)
	focusOn(t, ctx, fmt.Sprint("control-", named(now.Model, "pitch stick")))
	do(t, ctx, chromedp.KeyEvent(kb.ArrowUp))
	if got := evaluate[string](t, ctx, "document.activeElement.getAttribute('aria-valuetext')"); got != "1 % forward" {
		t.Errorf("the pitch stick says %q, wanted 1 %% forward", got)
	}
}

func TestTwoTabsHaveTheirOwnPose(t *testing.T) {
	now := shipping(t, "bracken-20")
	r := run(t, now)
	one := browser(t)
	two, end := chromedp.NewContext(one)
	defer end()
	visit(t, one, r)
	visit(t, two, r)
	set := func(ctx context.Context, at int) {
		evaluate[bool](t, ctx, fmt.Sprintf(`(() => { const c = document.getElementById("control-%d"); c.value = %d; c.dispatchEvent(new Event("input", {bubbles: true})); return true; })()`, named(now.Model, "roll stick"), at))
	}
	set(one, 100)
	set(two, -100)
	holds(t, one, "("+stood+`)("port aileron", "DOWN")`)
	holds(t, two, "("+stood+`)("port aileron", "UP")`)
	holds(t, one, "("+stood+`)("port aileron", "DOWN")`)
	do(t, one, chromedp.Reload()) // and keep it when the page is loaded again
	holds(t, one, "("+stood+`)("port aileron", "DOWN")`)
}

func TestPageComesBackAfterARestartWithItsPose(t *testing.T) {
	now := shipping(t, "bracken-20")
	listener, err := net.Listen("tcp", "127.0.0.1:0")
	if err != nil {
		t.Fatal(err)
	}
	host, port := listener.Addr().String(), listener.Addr().(*net.TCPAddr).Port
	start := func(l net.Listener) (*http.Server, *Server) {
		s := New(port, func(line string) { t.Log(line) })
		s.Show(now)
		web := &http.Server{Handler: s}
		go web.Serve(l)
		return web, s
	}
	web, s := start(listener)
	ctx := browser(t)
	visit(t, ctx, &running{t: t, s: s, host: host})
	stick := named(now.Model, "roll stick")
	focusOn(t, ctx, fmt.Sprint("control-", stick))
	do(t, ctx, chromedp.KeyEvent(kb.End))
	holds(t, ctx, "("+stood+`)("port aileron", "DOWN")`)
	s.Close()
	web.Close()
	holds(t, ctx, `document.querySelector("#line").textContent.includes("NOT CONNECTED")`)
	do(t, ctx, chromedp.KeyEvent(kb.Home)) // moved while nobody answers
	if listener, err = net.Listen("tcp", host); err != nil {
		t.Fatal(err)
	}
	web, s = start(listener)
	defer web.Close()
	defer s.Close()
	holds(t, ctx, `document.querySelector("#line").textContent.startsWith("Connected")`)
	holds(t, ctx, "("+stood+`)("port aileron", "UP")`)
	if got := evaluate[string](t, ctx, "document.activeElement.id"); got != fmt.Sprint("control-", stick) {
		t.Errorf("the focus is at %q, wanted still the stick", got)
	}
}

func TestSentenceIsWrittenAndPointingShowsWhy(t *testing.T) {
	now := shipping(t, "bracken-20")
	r := run(t, now)
	ctx := browser(t)
	visit(t, ctx, r)
	rudder := partCalled(now.Model, "rudder")
	focusOn(t, ctx, fmt.Sprint("name-", rudder))
	holds(t, ctx, `document.querySelector("#why-head").textContent === "Why: rudder" && document.querySelector("#steps").textContent.includes("bracken-20.yaml:")`)
	holds(t, ctx, `document.querySelector("#box-curve title").textContent.includes("rudder against the yaw stick")`)
	focusOn(t, ctx, "write")
	do(t, ctx, chromedp.KeyEvent("\r"))
	holds(t, ctx, `document.querySelector("#scenario").value.includes("Then the port aileron is at neutral")`)
}

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
	failing := planted(t)
	for name, now := range map[string]Now{"bracken-20": shipping(t, "bracken-20"), "skerry": shipping(t, "skerry"), "failing": failing} {
		r := run(t, now)
		for i, as := range looks {
			if name == "skerry" && i%3 != 0 { // the largest model: wide and narrow
				continue
			}
			t.Run(name+", "+as.name, func(t *testing.T) {
				media := emulation.SetEmulatedMediaParams{Features: []*emulation.MediaFeature{{Name: "prefers-color-scheme", Value: as.scheme}}}
				if _, err := chromedp.Call(ctx, emulation.SetEmulatedMedia, media); err != nil {
					t.Fatal(err)
				}
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

// planted is bracken-20 with its port aileron's channel no longer reversed, so that checks
// fail.
func planted(t testing.TB) Now {
	t.Helper()
	text, _ := airframes.ReadShipped("bracken-20")
	wrong := strings.Replace(string(text), "    reversed: true\n", "", 1)
	m, problems := airframes.Load("bracken-20.yaml", []byte(wrong))
	if m == nil || wrong == string(text) {
		t.Fatal(problems)
	}
	asked, _ := features.Read("bracken-20.feature")
	report, wrongs := verify.Check(m, []script.File{{Name: "bracken-20.feature", Text: asked}}, script.Selection{})
	if report == nil {
		t.Fatal(wrongs)
	}
	return Now{Model: m, Report: report, Since: "12:00:00", Changed: []string{"bracken-20.yaml"}}
}

// BenchmarkKeyToPicture is from a key to the picture in a browser, and how long after many
// keys without a pause the picture has caught up.
func BenchmarkKeyToPicture(b *testing.B) {
	for _, name := range []string{"bracken-20", "skerry"} {
		b.Run(name, func(b *testing.B) {
			r := run(b, shipping(b, name))
			ctx := browser(b)
			visit(b, ctx, r)
			var took []float64
			for b.Loop() {
				took = evaluate[[]float64](b, ctx, keys)
			}
			b.ReportMetric(took[0], "median-ms")
			b.ReportMetric(took[1], "worst-of-20-ms")
			b.ReportMetric(took[2], "after-500-keys-ms")
			b.ReportMetric(took[3], "messages-of-500-keys")
		})
	}
}

// keys moves the first slider by a key's worth two hundred times, each time until the
// picture has followed, and then five hundred times without a pause.
const keys = `(async () => {
	const slider = document.querySelector("input[type=range]"), root = document.documentElement;
	const answered = () => new Promise(done => { const o = new MutationObserver(() => { o.disconnect(); done(); }); o.observe(root, {attributeFilter: ["data-answered"]}); });
	const move = n => { slider.value = n; slider.dispatchEvent(new Event("input", {bubbles: true})); };
	const took = [];
	for (let i = 0; i < 200; i++) {
		const began = performance.now();
		const drawn = answered();
		move(i - 100);
		await drawn;
		took.push(performance.now() - began);
		await new Promise(done => setTimeout(done, 5));
	}
	took.sort((a, b) => a - b);
	const before = Number(root.dataset.answered);
	let last = 0;
	for (let i = 0; i < 500; i++) { move(i % 201 - 100); last = i % 201 - 100; if (i % 10 === 0) await new Promise(done => setTimeout(done, 0)); }
	const began = performance.now();
	while (performance.now() - began < 5000) {
		await answered();
		if (document.querySelector("#pose").textContent.includes(last === 0 ? "rests" : " " + Math.abs(last) + " % ")) break;
	}
	return [took[100], took[190], performance.now() - began, Number(root.dataset.answered) - before];
})()`
