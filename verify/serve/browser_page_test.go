//go:build browser

package serve

import (
	"fmt"
	"testing"
	"time"

	"github.com/chromedp/chromedp"
)

// setTo moves a slider of the page, by its name.
func setTo(t *testing.T, now Now, name string, at float64) string {
	t.Helper()
	return fmt.Sprintf(`(() => { const c = document.getElementById("control-%d"); c.value = %g; c.dispatchEvent(new Event("input", {bubbles: true})); return true; })()`, named(now.Model, name), at)
}

// inSight is whether an element is within the window, whole.
const inSight = `(id => { const b = document.getElementById(id).getBoundingClientRect(); return b.height > 0 && b.top >= 0 && b.bottom <= innerHeight && b.left >= 0 && b.right <= innerWidth + 1; })`

func TestVerdictAndMotorStayInSightOnAPhone(t *testing.T) {
	now := unreversed(t)
	r := run(t, now)
	ctx := browser(t)
	do(t, ctx, chromedp.EmulateViewport(390, 844))
	visit(t, ctx, r)
	height := evaluate[float64](t, ctx, `document.querySelector("#picture").offsetHeight`)
	if height > 844/2 {
		t.Errorf("the picture takes %g of 844 pixels, wanted at most half", height)
	}
	evaluate[bool](t, ctx, fmt.Sprintf(`(document.getElementById("control-%d-1").click(), true)`, named(now.Model, "motor switch")))
	evaluate[bool](t, ctx, setTo(t, now, "throttle", 100))
	evaluate[bool](t, ctx, setTo(t, now, "roll stick", 100))
	evaluate[bool](t, ctx, setTo(t, now, "flap lever", 100))
	holds(t, ctx, `document.querySelector("#motors").textContent === "⚠ MOTOR RUNS at 100 %"`)
	if got := evaluate[float64](t, ctx, `document.querySelector("#picture").offsetHeight`); got != height {
		t.Errorf("the picture is %g pixels high after it moved, and was %g", got, height)
	}
	for _, far := range []int{0, 900, 2500} {
		evaluate[bool](t, ctx, fmt.Sprintf("(scrollTo(0, %d), true)", far))
		time.Sleep(50 * time.Millisecond)
		if !evaluate[bool](t, ctx, inSight+`("short") && `+inSight+`("motors") && document.querySelector("#short").textContent.includes("DO NOT FLY")`) {
			t.Errorf("%d pixels down the verdict or the motor cannot be seen", far)
		}
	}
	lost := `document.querySelector("#lost").textContent.startsWith("⚠ SIGNAL LOST: what holds stays where it was")`
	evaluate[bool](t, ctx, `(document.querySelector("#signal-lost").click(), true)`)
	holds(t, ctx, inSight+`("lost") && `+lost+` && `+inSight+`("motors")`)
	if got := evaluate[float64](t, ctx, `document.querySelector("#picture").offsetHeight`); got > 844/2 {
		t.Errorf("the picture takes %g of 844 pixels while the signal is lost, wanted at most half", got)
	}
	if said := evaluate[string](t, ctx, `document.querySelector("#picture .unheard").innerText`); said != "⚠ SIGNAL LOST" {
		t.Errorf("in the picture it says %q while the signal is lost", said)
	}
	holds(t, ctx, `!("moving" in document.documentElement.dataset)`)
	evaluate[bool](t, ctx, "(scrollTo(0, 0), true)")
	for _, v := range axe(t, ctx) {
		t.Errorf("while the signal is lost: %s", v)
	}
	evaluate[bool](t, ctx, `(document.querySelector("#signal-there").click(), true)`)
	holds(t, ctx, `document.querySelector("#lost").hidden && document.querySelector("#picture .unheard").hidden`)
	if got := evaluate[string](t, ctx, fmt.Sprintf(`document.querySelector("#row-%d").textContent`, partCalled(now.Model, "port aileron"))); got != "1▲UP 9.9°port aileron✗ FAILS" {
		t.Errorf("of the port aileron it is said %q", got)
	}
	for _, id := range []string{"why", "travel", "parts"} {
		evaluate[bool](t, ctx, "(document.getElementById('"+id+"').scrollIntoView(), true)")
		time.Sleep(50 * time.Millisecond)
		if !evaluate[bool](t, ctx, fmt.Sprintf(`document.getElementById("%s-head").getBoundingClientRect().top >= document.getElementById("picture").getBoundingClientRect().bottom - 1`, id)) {
			t.Errorf("the heading of %s is hidden below the picture that is stuck to the top", id)
		}
	}
}

func TestPictureOfABrokenFileIsMarkedOld(t *testing.T) {
	now := shipping(t, "bracken-20")
	r := run(t, now)
	ctx := browser(t)
	visit(t, ctx, r)
	stamped := `[...document.querySelectorAll(".stamp")].filter(p => p.offsetHeight > 0 && p.textContent.includes("As it was at 12:00:00")).length`
	if n := evaluate[float64](t, ctx, stamped); n != 0 {
		t.Errorf("%g sections are marked old, and nothing is", n)
	}
	broken := now
	broken.Old, broken.Report, broken.Since = true, nil, "12:30:00"
	r.s.Show(broken)
	holds(t, ctx, stamped+` >= 6 && document.querySelector("#old").textContent.includes("OLD PICTURE: as it was at 12:00:00") && document.querySelector("#short").textContent.includes("DO NOT FLY")`)
	if line := evaluate[string](t, ctx, `document.querySelector("#line").textContent`); line != "Connected; what you see is old." {
		t.Errorf("the line says %q", line)
	}
	evaluate[bool](t, ctx, setTo(t, now, "roll stick", 100))
	holds(t, ctx, "("+stood+`)("port aileron", "DOWN")`)
	r.s.Show(now)
	holds(t, ctx, stamped+` === 0 && document.querySelector("#old").hidden && document.querySelector("#line").textContent.startsWith("Connected: ")`)
}

// TestOldVerdictIsMarkedWhileItIsCheckedAgain holds the words at the top of the page.
func TestOldVerdictIsMarkedWhileItIsCheckedAgain(t *testing.T) {
	now := unreversed(t)
	r := run(t, now)
	ctx := browser(t)
	visit(t, ctx, r)
	r.s.Checking()
	holds(t, ctx, `document.querySelector("#short").textContent.startsWith("checking … Before: ✗ DO NOT FLY")`)
	holds(t, ctx, `document.querySelector("#verdict").textContent.startsWith("checking … Before: ") && document.querySelector("#since").textContent === "A file changed: checking …"`)
	r.s.Show(shipping(t, "bracken-20"))
	holds(t, ctx, `!document.querySelector("#bar").textContent.includes("checking") && !document.querySelector("#checked").textContent.includes("checking …")`)
}
