//go:build browser

package serve

import (
	"fmt"
	"strings"
	"sync"
	"testing"

	"example.com/hingeline/airframes"
	"example.com/hingeline/verify/verifytest"
)

func TestNoTravelOfAnotherPartStays(t *testing.T) {
	now := shipping(t, "garrow-twin")
	r := run(t, now)
	ctx := browser(t)
	visit(t, ctx, r)
	rudder, wheel := partCalled(now.Model, "port aileron"), partCalled(now.Model, "nose retract")
	click := func(part int) {
		evaluate[bool](t, ctx, fmt.Sprintf(`(() => { document.getElementById("name-%d").click(); return true; })()`, part))
	}
	click(rudder)
	holds(t, ctx, `document.querySelector("#box-curve title")?.textContent.includes("port aileron") && document.querySelector("#rows tr")`)
	click(wheel)
	holds(t, ctx, `document.querySelector("#why-head").textContent === "Why: nose retract"`)
	holds(t, ctx, `!document.querySelector("#box-curve svg") && !document.querySelector("#rows tr") && document.querySelector("#dead").textContent.startsWith("No stick")`)
	click(rudder)
	holds(t, ctx, `document.querySelector("#box-curve title")?.textContent.includes("port aileron")`)
}

// TestControlsAreOfferedByTheirNewNames renames a control in the file while its travel is
// looked at.
func TestControlsAreOfferedByTheirNewNames(t *testing.T) {
	now := shipping(t, "bracken-20")
	r := run(t, now)
	ctx := browser(t)
	visit(t, ctx, r)
	text, _ := airframes.ReadShipped("bracken-20")
	m := verifytest.Model(t, "bracken-20.yaml", strings.ReplaceAll(string(text), "roll stick", "bank stick"))
	holds(t, ctx, `[...document.querySelectorAll("#against option")].some(o => o.textContent === "roll stick")`)
	r.s.Show(Now{Model: m, Since: "12:00:01", Changed: []string{"bracken-20.yaml"}})
	holds(t, ctx, `[...document.querySelectorAll("#against option")].some(o => o.textContent === "bank stick")`)
}

// TestPageSaysThatNoAnswerComes holds the server up while a stick moves.
func TestPageSaysThatNoAnswerComes(t *testing.T) {
	now := shipping(t, "bracken-20")
	r := run(t, now)
	ctx := browser(t)
	visit(t, ctx, r)
	r.s.mu.Lock()
	release := sync.OnceFunc(r.s.mu.Unlock)
	t.Cleanup(release)
	evaluate[bool](t, ctx, fmt.Sprintf(`(() => { const c = document.getElementById("control-%d"); c.value = 100; c.dispatchEvent(new Event("input", {bubbles: true})); return true; })()`, named(now.Model, "roll stick")))
	holds(t, ctx, `document.querySelector("#line").textContent.includes("What you see is old")`)
	release()
	holds(t, ctx, `document.querySelector("#line").textContent.startsWith("Connected")`)
	holds(t, ctx, "("+stood+`)("port aileron", "DOWN")`)
}
