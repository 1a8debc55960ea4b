//go:build browser

package serve

import (
	"fmt"
	"testing"

	"github.com/chromedp/cdproto/input"
	"github.com/chromedp/chromedp"
	"github.com/chromedp/chromedp/kb"
)

// middle is where to point in the window to point at a part in a picture.
const middle = `((id, part) => {
	const box = document.getElementById(id);
	box.scrollIntoView({block: "center"});
	const b = box.querySelector("[data-part='" + part + "'] path").getBoundingClientRect();
	return [b.left + b.width / 2, b.top + b.height / 2];
})`

func TestPointingInThePictureShowsWhy(t *testing.T) {
	now := shipping(t, "bracken-20")
	r := run(t, now)
	ctx := browser(t)
	do(t, ctx, chromedp.EmulateViewport(1280, 900))
	visit(t, ctx, r)
	for _, c := range []struct{ box, part string }{{"box-behind", "rudder"}, {"box-above", "elevator"}, {"box-behind", "starboard flap"}} {
		at := evaluate[[]float64](t, ctx, fmt.Sprintf("%s(%q, %d)", middle, c.box, partCalled(now.Model, c.part)))
		if c.part == "rudder" { // by resting the pointer, the others by a click
			do(t, ctx, chromedp.MouseEvent(input.DispatchMouseEventTypeMouseMoved, at[0], at[1]))
		} else {
			do(t, ctx, chromedp.MouseClickXY(at[0], at[1]))
		}
		holds(t, ctx, fmt.Sprintf(`document.querySelector("#why-head").textContent === "Why: %s" && document.querySelector("#pointed-part").textContent === %q`, c.part, c.part))
		holds(t, ctx, fmt.Sprintf(`document.querySelector("#%s [data-part='%d']").classList.contains("looked")`, c.box, partCalled(now.Model, c.part)))
	}
	focusOn(t, ctx, "part") // the same by keyboard
	do(t, ctx, chromedp.KeyEvent(kb.Home))
	holds(t, ctx, fmt.Sprintf(`document.querySelector("#why-head").textContent === "Why: %s" && document.querySelector("#steps").childElementCount > 2`, now.Model.Setup.Parts[0].Name))
}

// TestFingerMovesAStick drags a stick by touch on a window as small as a phone's.
func TestFingerMovesAStick(t *testing.T) {
	now := shipping(t, "bracken-20")
	r := run(t, now)
	ctx := browser(t)
	do(t, ctx, chromedp.EmulateViewport(360, 740, chromedp.EmulateTouch, chromedp.EmulateMobile))
	visit(t, ctx, r)
	stick := named(now.Model, "roll stick")
	boxOf := func(control int) []float64 {
		return evaluate[[]float64](t, ctx, fmt.Sprintf(`(() => { const c = document.getElementById("control-%d"); c.scrollIntoView({block: "end"}); const b = c.getBoundingClientRect(); return [b.left, b.top, b.width, b.height]; })()`, control))
	}
	touch := func(kind input.DispatchTouchEventType, x, y float64) {
		t.Helper()
		p := input.DispatchTouchEventParams{Type: kind, TouchPoints: []*input.TouchPoint{}}
		if kind != input.DispatchTouchEventTypeTouchEnd {
			p.TouchPoints = append(p.TouchPoints, &input.TouchPoint{X: x, Y: y})
		}
		if _, err := chromedp.Call(ctx, input.DispatchTouchEvent, p); err != nil {
			t.Fatal(err)
		}
	}
	at := boxOf(stick)
	touch(input.DispatchTouchEventTypeTouchStart, at[0]+at[2]/2, at[1]+at[3]/2)
	for _, share := range []float64{0.6, 0.7, 0.85, 1} {
		touch(input.DispatchTouchEventTypeTouchMove, at[0]+at[2]*share, at[1]+at[3]/2)
	}
	touch(input.DispatchTouchEventTypeTouchEnd, 0, 0)
	holds(t, ctx, fmt.Sprintf(`document.getElementById("control-%d").value === "100"`, stick))
	in := now.Model.Plan.Rest()
	in.Position[stick] = 100
	out := now.Model.Plan.NewOutput()
	now.Model.Plan.Eval(&in, out)
	holds(t, ctx, fmt.Sprintf(`Math.abs(%s("port aileron") - %g) < %g`, angle, float64(out.Parts[partCalled(now.Model, "port aileron")].Angle), drawnTo))
	at = boxOf(named(now.Model, "pitch stick")) // one that stands upright moves, and not the page
	far := evaluate[float64](t, ctx, "scrollY")
	touch(input.DispatchTouchEventTypeTouchStart, at[0]+at[2]/2, at[1]+at[3]/2)
	for _, share := range []float64{0.6, 0.75, 0.9, 1} {
		touch(input.DispatchTouchEventTypeTouchMove, at[0]+at[2]/2, at[1]+at[3]*share)
	}
	touch(input.DispatchTouchEventTypeTouchEnd, 0, 0)
	holds(t, ctx, fmt.Sprintf(`document.getElementById("control-%d").getAttribute("aria-valuetext") === "full back"`, named(now.Model, "pitch stick")))
	holds(t, ctx, "("+stood+`)("elevator", "UP")`)
	if got := evaluate[float64](t, ctx, "scrollY"); got != far {
		t.Errorf("the page moved by %g pixels with the stick", got-far)
	}
}

// TestHeldKeyQueuesNothing holds an arrow key down, as a keyboard repeats it: the picture
// has caught up soon after it is let go, with fewer messages than keys.
func TestHeldKeyQueuesNothing(t *testing.T) {
	now := shipping(t, "skerry")
	r := run(t, now)
	ctx := browser(t)
	visit(t, ctx, r)
	took := evaluate[[]float64](t, ctx, keys)
	if took[3] >= 500 {
		t.Errorf("500 keys sent %.0f messages", took[3])
	}
	if took[2] > 100*took[0] { // a queue of 500 would take far longer, however busy the machine is
		t.Errorf("the picture was there %.0f ms after the last key, one key takes %.0f ms", took[2], took[0])
	}
}
