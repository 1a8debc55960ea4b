//go:build browser

package serve

import (
	"context"
	"flag"
	"fmt"
	"math"
	"net"
	"net/http"
	"slices"
	"strings"
	"testing"
	"time"

	"github.com/chromedp/chromedp"
	"github.com/chromedp/chromedp/kb"

	"example.com/hingeline/airframes"
	"example.com/hingeline/mixcore"
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

// TestStickThatMovesForeAndAftStandsUpright pushes it with the keys and with the mouse:
// forward is up on the screen, and says so.
func TestStickThatMovesForeAndAftStandsUpright(t *testing.T) {
	now := shipping(t, "bracken-20")
	r := run(t, now)
	ctx := browser(t)
	visit(t, ctx, r)
	says := func(when, want string) {
		t.Helper()
		if got := evaluate[string](t, ctx, "document.activeElement.getAttribute('aria-valuetext')"); got != want {
			t.Errorf("%s: it says %q, wanted %q", when, got, want)
		}
	}
	for _, c := range []struct {
		control            string
		up, down, top, end string
	}{
		{"pitch stick", "1 % forward", "centred", "full forward", "full back"},
		{"throttle", "1 %", "0 %", "100 %", "0 %"},
	} {
		id := fmt.Sprint("control-", named(now.Model, c.control))
		focusOn(t, ctx, id)
		if got := evaluate[string](t, ctx, "document.activeElement.getAttribute('aria-orientation')"); got != "vertical" {
			t.Errorf("the %s is %q, wanted vertical", c.control, got)
		}
		for _, key := range []struct{ key, want string }{
			{kb.ArrowUp, c.up}, {kb.ArrowDown, c.down}, {kb.ArrowRight, c.up}, {kb.ArrowLeft, c.down}, {kb.End, c.top}, {kb.Home, c.end},
		} {
			do(t, ctx, chromedp.KeyEvent(key.key))
			says(fmt.Sprintf("the %s after %q", c.control, key.key), key.want)
		}
		box := evaluate[[]float64](t, ctx, fmt.Sprintf(`(() => { const c = document.getElementById(%q); c.scrollIntoView({block: "center"}); const b = c.getBoundingClientRect(); return [b.left + b.width / 2, b.top, b.height]; })()`, id))
		if box[2] < 120 {
			t.Errorf("the %s is %g pixels high", c.control, box[2])
		}
		do(t, ctx, chromedp.MouseClickXY(box[0], box[1]+2))
		says(fmt.Sprintf("the %s pushed to the top", c.control), c.top)
		do(t, ctx, chromedp.MouseClickXY(box[0], box[1]+box[2]-2))
		says(fmt.Sprintf("the %s pulled to the bottom", c.control), c.end)
	}
	if list := evaluate[[]string](t, ctx, `[...document.querySelectorAll("input[type=range]:not([aria-orientation])")].map(c => document.querySelector("label[for=" + c.id + "]").textContent)`); !slices.Equal(list, []string{"roll stick", "yaw stick", "flap lever", "roll trim", "yaw trim"}) {
		t.Errorf("lying are %q", list)
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
