package html

import (
	"bytes"
	"io"
	"testing"

	"example.com/hingeline/verify/report/figure"
	"example.com/hingeline/verify/report/sample"
)

// BenchmarkRender lays out the page of 40 checks of a crowded model;
// BenchmarkRenderBaseline draws as many pictures of it and writes as many bytes.
func BenchmarkRender(b *testing.B) {
	r := sample.Crowded()
	b.ReportAllocs()
	for b.Loop() {
		if err := Render(io.Discard, r); err != nil {
			b.Fatal(err)
		}
	}
}

func BenchmarkRenderBaseline(b *testing.B) {
	r := sample.Crowded()
	b.ReportAllocs()
	for b.Loop() {
		for i := range r.Paper.Pictures {
			p := &r.Paper.Pictures[i]
			for _, d := range []figure.Drawing{
				figure.Behind(&r.Paper.Shape, p, "a"), figure.Plan(&r.Paper.Shape, p, "a"),
				figure.Section(&r.Paper.Shape.Parts[p.Of[0]], &p.Stands[p.Of[0]], p.Want, "a"),
			} {
				var svg bytes.Buffer
				if err := figure.SVG(&svg, &d, figure.SVGOptions{ID: "f1"}); err != nil {
					b.Fatal(err)
				}
				if _, err := svg.WriteTo(io.Discard); err != nil {
					b.Fatal(err)
				}
			}
		}
	}
}
