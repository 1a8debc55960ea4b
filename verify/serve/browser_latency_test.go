//go:build browser

package serve

import "testing"

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
