//go:build browser

package serve

import (
	"context"
	"fmt"
	"net"
	"testing"
	"time"

	"github.com/chromedp/chromedp"
)

// bigButton presses a button of the bench page by its words, with a finger's click.
func bigButton(t *testing.T, ctx context.Context, words string) {
	t.Helper()
	find := fmt.Sprintf(`[...document.querySelectorAll("#now button")].find(b => b.textContent === %q && !b.disabled)`, words)
	holds(t, ctx, find+` && document.documentElement.dataset.fresh === undefined`)
	evaluate[bool](t, ctx, find+".click() || true")
}

// expected says that a step is as expected, and once more where that is asked.
func expected(t *testing.T, ctx context.Context) {
	t.Helper()
	turn := evaluate[string](t, ctx, "document.documentElement.dataset.turn")
	bigButton(t, ctx, "All as expected")
	holds(t, ctx, fmt.Sprintf("document.documentElement.dataset.turn !== %q", turn))
	if evaluate[string](t, ctx, "document.documentElement.dataset.phase") != "again" {
		return
	}
	turn = evaluate[string](t, ctx, "document.documentElement.dataset.turn")
	bigButton(t, ctx, evaluate[string](t, ctx, `document.querySelector("#now button.first").textContent`))
	holds(t, ctx, fmt.Sprintf("document.documentElement.dataset.turn !== %q", turn))
}

// untilMoving answers steps as expected until one in which something must move.
func untilMoving(t *testing.T, ctx context.Context) {
	t.Helper()
	for {
		holds(t, ctx, `[...document.querySelectorAll("#now button")].some(b => b.textContent === "All as expected" && !b.disabled)`)
		if evaluate[bool](t, ctx, `[...document.querySelectorAll("#now button")].some(b => b.textContent === "Not as expected …")`) {
			return
		}
		expected(t, ctx)
	}
}

// numbered says which part in a step has no number, is broken over two lines, or must move
// and is in the picture neither by its number nor by its name; and whether there is none.
const numbered = `(() => {
	const parts = [...document.querySelectorAll("#now .part")], drawn = [...document.querySelectorAll("#now svg text")].map(w => w.textContent);
	const line = parseFloat(getComputedStyle(document.querySelector("#now .must")).lineHeight);
	const wrong = p => {
		const called = p.textContent.match(/^(\d+) (.+)$/)?.slice(1);
		return !called || p.offsetHeight > 1.5 * line || p.closest(".must:not(.little)") && !called.some(word => drawn.includes(word));
	};
	return parts.filter(wrong).map(p => p.textContent).concat(parts.length ? [] : ["there is none"]);
})()`

func TestBenchPageLeadsThroughTheWalk(t *testing.T) {
	r, k := atBench(t, "pellin-park")
	ctx := browser(t)
	do(t, ctx, chromedp.EmulateViewport(360, 740), chromedp.Navigate("http://"+r.host+"/bench"))
	bigButton(t, ctx, "Begin a new walk-around")
	for n := 1; n <= 3; n++ {
		holds(t, ctx, fmt.Sprintf(`document.querySelector("#now-head").textContent === "Before anything moves: %d of 3"`, n))
		bigButton(t, ctx, "Yes")
	}
	holds(t, ctx, `document.querySelector("#now-head").textContent.startsWith("Step 1 of ") && document.querySelector("#now svg")`)
	if got := evaluate[string](t, ctx, "document.activeElement.id"); got != "now-head" {
		t.Errorf("the focus is at %q, wanted the new step", got)
	}
	untilMoving(t, ctx)
	for _, wrong := range evaluate[[]string](t, ctx, numbered) {
		t.Errorf("a part in a step: %s", wrong)
	}
	// By keyboard alone: one part the other way, then the rest as expected.
	press := func(words string) {
		t.Helper()
		holds(t, ctx, "document.documentElement.dataset.fresh === undefined")
		for range 60 {
			do(t, ctx, chromedp.KeyEvent("\t"))
			if evaluate[string](t, ctx, "document.activeElement.textContent") == words {
				do(t, ctx, chromedp.KeyEvent("\r"))
				return
			}
		}
		t.Fatalf("the Tab key never comes to %q", words)
	}
	press("Not as expected …")
	if evaluate[bool](t, ctx, `document.querySelector("#now-head").textContent.startsWith("Which")`) {
		press(evaluate[string](t, ctx, `document.querySelector("#now button").textContent`))
	}
	press("The other way")
	holds(t, ctx, `document.querySelector(".noted .bad")`)
	next := evaluate[string](t, ctx, `"Step " + (Number(document.querySelector("#now-head").textContent.split(" ")[1]) + 1) + " of "`)
	press("The rest is as expected")
	holds(t, ctx, fmt.Sprintf(`document.querySelector("#now-head").textContent.startsWith(%q)`, next))
	bigButton(t, ctx, "Skip …")
	do(t, ctx, chromedp.SendKeys("#reason", "wind"))
	bigButton(t, ctx, "Skip this step")
	holds(t, ctx, fmt.Sprintf(`!document.querySelector("#now-head").textContent.startsWith("Skip") && !document.querySelector("#now-head").textContent.startsWith(%q)`, next))
	here := evaluate[string](t, ctx, `document.querySelector("#now-head").textContent`)
	do(t, ctx, chromedp.Reload()) // the walk is where the program is
	holds(t, ctx, fmt.Sprintf(`document.querySelector("#now-head").textContent === %q`, here))
	for {
		holds(t, ctx, `document.documentElement.dataset.phase !== "working"`)
		if evaluate[string](t, ctx, "document.documentElement.dataset.phase") != "step" {
			break
		}
		expected(t, ctx)
	}
	bigButton(t, ctx, "Finish")
	holds(t, ctx, `document.querySelector(".report")?.textContent.startsWith("differs")`)
	if got := evaluate[string](t, ctx, `document.querySelector("#now > p").textContent`); got != "✗ DO NOT FLY" {
		t.Errorf("the report begins with %q, wanted the verdict", got)
	}
	if out := evaluate[[]string](t, ctx, wider); len(out) > 0 {
		t.Errorf("the report is wider than the window: %q", out)
	}
	for _, v := range axe(t, ctx) {
		t.Errorf("the report: %s", v)
	}
	picture(t, ctx, "bench-report", true)
	if n := len(k.record().Events); n < 8 {
		t.Errorf("%d events kept", n)
	}
	r.s.Show(shipping(t, "bracken-20")) // whoever puts the file right has the report beside it
	holds(t, ctx, `document.querySelector("#now").textContent.includes("changed since") && document.querySelector(".report")?.textContent.startsWith("differs")`)
}

func TestTapsTooSoonPassNothingOnThePage(t *testing.T) {
	r, k := atBench(t, "pellin-park")
	r.s.bench.mu.Lock()
	r.s.bench.look = time.Hour
	r.s.bench.mu.Unlock()
	ctx := browser(t)
	do(t, ctx, chromedp.EmulateViewport(390, 740), chromedp.Navigate("http://"+r.host+"/bench"))
	holds(t, ctx, `document.querySelector("#now button:not(:disabled)")`)
	evaluate[bool](t, ctx, `document.querySelector("#now button").click() || true`)
	holds(t, ctx, `document.querySelector("#now-head").textContent === "Before anything moves: 1 of 3" && document.querySelector("#now button:not(:disabled)")`)
	evaluate[bool](t, ctx, `(() => { for (let i = 0; i < 20; i++) document.querySelector("#now button").click(); return true; })()`)
	holds(t, ctx, `document.querySelector("#said").textContent.includes("Too soon")`)
	if got := evaluate[string](t, ctx, `document.querySelector("#now-head").textContent`); got != "Before anything moves: 1 of 3" {
		t.Errorf("20 taps led to %q", got)
	}
	if kept := k.record(); kept != nil && len(kept.Events) > 0 {
		t.Errorf("kept: %+v", kept.Events)
	}
}

func TestAxeFindsNothingAtTheBench(t *testing.T) {
	ctx := browser(t)
	for _, as := range looks {
		t.Run(as.name, func(t *testing.T) {
			r, _ := atBench(t, "bracken-20")
			r.s.bench.mu.Lock()
			r.s.bench.look = 0 // how long one must look is held elsewhere
			r.s.bench.mu.Unlock()
			lookedAs(t, ctx, "prefers-color-scheme", as.scheme)
			n := 0
			look := func(where string) {
				t.Helper()
				n++
				for _, v := range axe(t, ctx) {
					t.Errorf("%s: %s", where, v)
				}
				if out := evaluate[[]string](t, ctx, wider); len(out) > 0 {
					t.Errorf("%s: wider than the window: %q", where, out)
				}
				picture(t, ctx, fmt.Sprintf("bench-%s-%d", as.name, n), true)
			}
			do(t, ctx, chromedp.EmulateViewport(as.width, as.height), chromedp.Navigate("http://"+r.host+"/bench"))
			holds(t, ctx, `document.querySelector("#now button:not(:disabled)")`)
			look("the start")
			bigButton(t, ctx, "Begin a new walk-around")
			for q := 1; q <= 3; q++ {
				holds(t, ctx, fmt.Sprintf(`document.querySelector("#now-head").textContent === "Before anything moves: %d of 3"`, q))
				if q == 1 {
					look("a question")
				}
				bigButton(t, ctx, "Yes")
			}
			holds(t, ctx, `document.querySelector("#now svg") && document.querySelector("#now button:not(:disabled)")`)
			untilMoving(t, ctx)
			look("a step")
			bigButton(t, ctx, "Not as expected …")
			if evaluate[bool](t, ctx, `document.querySelector("#now-head").textContent.startsWith("Which")`) {
				evaluate[bool](t, ctx, `document.querySelector("#now button").click() || true`)
			}
			look("what it did")
			bigButton(t, ctx, "The other way")
			holds(t, ctx, `document.querySelector(".noted .bad") && document.querySelector("#now button:not(:disabled)")`)
			look("an answer noted")
			bigButton(t, ctx, "Skip …")
			look("a reason")
			bigButton(t, ctx, "Back to the step")
			bigButton(t, ctx, "Something else moved as well …")
			look("which part")
			bigButton(t, ctx, "Back to the step")
			for evaluate[string](t, ctx, "document.documentElement.dataset.phase") != "again" {
				turn := evaluate[string](t, ctx, "document.documentElement.dataset.turn")
				holds(t, ctx, `document.querySelector("#now button.first:not(:disabled)") && document.documentElement.dataset.fresh === undefined`)
				evaluate[bool](t, ctx, `document.querySelector("#now button.first").click() || true`)
				holds(t, ctx, fmt.Sprintf("document.documentElement.dataset.turn !== %q", turn))
			}
			holds(t, ctx, `document.querySelector("#now-head").textContent.endsWith(": seen?")`)
			look("seen again")
			bigButton(t, ctx, "Back to the step")
			bigButton(t, ctx, "Pause")
			holds(t, ctx, `document.querySelector("#now button.first:not(:disabled)")?.textContent === "Go on with record 1"`)
			if evaluate[bool](t, ctx, `[...document.querySelectorAll("#now button")].some(b => b.textContent.startsWith("Begin") && b.checkVisibility({ contentVisibilityAuto: true, visibilityProperty: true }))`) {
				t.Error("a new walk is offered beside one to go on with")
			}
			look("something to go on with")
		})
	}
}

// TestDeviceEntersTheCode opens the door from the machine's own address on the network, as
// a device does.
func TestDeviceEntersTheCode(t *testing.T) {
	r := run(t, shipping(t, "pellin-park"))
	_, port, _ := net.SplitHostPort(r.host)
	lan := "localhost.localdomain:" + port // a name of this machine that is not one of loopback's own
	r.s.OpenTo([]string{lan}, func(Door) {})
	ctx := browserWith(t, chromedp.Flag("host-resolver-rules", "MAP localhost.localdomain 127.0.0.1"))
	do(t, ctx, chromedp.EmulateViewport(360, 740), chromedp.Navigate("http://"+lan+"/bench"))
	holds(t, ctx, `document.querySelector("#code")`)
	for _, v := range axe(t, ctx) {
		t.Error(v)
	}
	picture(t, ctx, "enter-phone", true)
	do(t, ctx, chromedp.SendKeys("#code", "123"), chromedp.SendKeys("#code", "\r"))
	holds(t, ctx, `document.querySelector("#said")?.textContent.startsWith("That is not the code")`)
	r.s.door.mu.Lock()
	r.s.door.next = time.Time{}
	r.s.door.mu.Unlock()
	now, _ := r.s.door.say()
	do(t, ctx, chromedp.SendKeys("#code", now.Code), chromedp.SendKeys("#code", "\r"))
	holds(t, ctx, "document.documentElement?.dataset.answered > 0")
	holds(t, ctx, `!document.querySelector("#door").hidden && document.querySelector("#door-said").textContent.includes("one of them")`)
	if now, _ := r.s.door.say(); evaluate[bool](t, ctx, fmt.Sprintf("document.body.innerText.includes(%q)", now.Code)) {
		t.Error("a device is told the code of the next one")
	}
}
