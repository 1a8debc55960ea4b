//go:build browser

package serve

import (
	"context"
	"fmt"
	"testing"

	slowness "github.com/chromedp/cdproto/network"
	"github.com/chromedp/chromedp"
)

// slowLine makes the line of a page slow from now on: 300 ms there and back, and few bytes
// a second, as by a weak network.
func slowLine(t *testing.T, ctx context.Context) {
	t.Helper()
	if _, err := chromedp.Call(ctx, slowness.Enable, slowness.EnableParams{}); err != nil {
		t.Fatal(err)
	}
	slow := slowness.EmulateNetworkConditionsByRuleParams{MatchedNetworkConditions: []*slowness.Conditions{{Latency: 300, DownloadThroughput: 150_000, UploadThroughput: 20_000}}}
	if _, err := chromedp.Call(ctx, slowness.EmulateNetworkConditionsByRule, slow); err != nil {
		t.Fatal(err)
	}
}

// watched notes of a page's line from now on how many messages went, how many of them
// before the one before was answered, and how often the picture was said to be older than
// the controls, and to be so no more while it was.
const watched = `(() => {
	const root = document.documentElement, pitch = document.getElementById("control-%d");
	window.line = {sent: 0, before: 0, old: 0, wrong: 0};
	const send = WebSocket.prototype.send;
	WebSocket.prototype.send = function (text) {
		line.sent++;
		if (root.dataset.line === "open" && Number(root.dataset.answered) !== JSON.parse(text).number - 1) line.before++;
		send.call(this, text);
	};
	new MutationObserver(() => {
		const behind = "behind" in root.dataset;
		if (behind && getComputedStyle(document.querySelector(".behind")).display !== "none") line.old++;
		if (!behind && !document.getElementById("pose").textContent.includes(pitch.getAttribute("aria-valuetext"))) line.wrong++;
	}).observe(root, {attributeFilter: ["data-behind"]});
	return true;
})()`

// held holds the up key down on a control: sixty keys without a pause.
const held = `(async () => {
	const pitch = document.getElementById("control-%d");
	for (let i = 0; i < 60; i++) {
		pitch.dispatchEvent(new KeyboardEvent("keydown", {key: "ArrowUp", repeat: i > 0, bubbles: true, cancelable: true}));
		if (i %% 10 === 0) await new Promise(done => setTimeout(done, 0));
	}
	return true;
})()`

// TestSlowLineQueuesNothingAndSaysWhatIsOld holds a key down on a slow line: one message is
// under way at a time, and until the picture has caught up it is said to be old.
func TestSlowLineQueuesNothingAndSaysWhatIsOld(t *testing.T) {
	now := shipping(t, "skerry")
	r := run(t, now)
	ctx := browser(t)
	visit(t, ctx, r)
	slowLine(t, ctx)
	stick := named(now.Model, "pitch stick")
	evaluate[bool](t, ctx, fmt.Sprintf(watched, stick))
	evaluate[bool](t, ctx, fmt.Sprintf(held, stick))
	holds(t, ctx, `line.old > 0`)
	holds(t, ctx, `!("behind" in document.documentElement.dataset) && document.querySelector("#pose").textContent.includes("pitch stick 60 % forward")`)
	if n := evaluate[int](t, ctx, `line.sent`); n >= 60 {
		t.Errorf("60 keys sent %d messages", n)
	}
	if n := evaluate[int](t, ctx, `line.before`); n > 0 {
		t.Errorf("%d messages were sent before the one before was answered", n)
	}
	if n := evaluate[int](t, ctx, `line.wrong`); n > 0 {
		t.Errorf("%d times the picture was said to be as the controls are, and was old", n)
	}
}

// TestAnswerTappedTwiceOnASlowLineCountsOnce taps before the next question is there.
func TestAnswerTappedTwiceOnASlowLineCountsOnce(t *testing.T) {
	r, k := atBench(t, "pellin-park")
	ctx := browser(t)
	do(t, ctx, chromedp.Navigate("http://"+r.host+"/bench"))
	bigButton(t, ctx, "Begin a new walk-around")
	holds(t, ctx, `document.querySelector("#now-head").textContent === "Before anything moves: 1 of 3" && document.documentElement.dataset.fresh === undefined`)
	slowLine(t, ctx)
	if !evaluate[bool](t, ctx, `(() => { const yes = document.querySelector("#now button.first"); yes.click(); const shut = yes.disabled; yes.disabled = false; yes.click(); yes.click(); return shut; })()`) {
		t.Error("a question that was answered can be answered again")
	}
	holds(t, ctx, `document.querySelector("#now-head").textContent === "Before anything moves: 2 of 3"`)
	bigButton(t, ctx, "Yes")
	holds(t, ctx, `document.querySelector("#now-head").textContent === "Before anything moves: 3 of 3"`)
	if n := len(k.record().Events); n != 2 {
		t.Errorf("%d answers were kept, wanted the two", n)
	}
}
