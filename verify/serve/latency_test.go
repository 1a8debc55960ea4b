package serve

import (
	"context"
	"fmt"
	"slices"
	"testing"
	"time"
)

// BenchmarkKey is from a key that moves a stick to the picture in the page's hands, over a
// socket on loopback; median and worst of a hundred in milliseconds.
func BenchmarkKey(b *testing.B) {
	for _, name := range []string{"bracken-20", "skerry"} {
		b.Run(name, func(b *testing.B) {
			now := shipping(b, name)
			r := run(b, now)
			c := r.open()
			l := until(b, c, "layout")
			var took []time.Duration
			ctx := context.Background()
			for b.Loop() {
				n := len(took) + 1
				text := handOf(n, l.revision, positions(now.Model, map[string]float64{now.Model.Setup.Controls[0].Name: float64(n%201 - 100)}), "")
				began := time.Now()
				send(b, c, text)
				for {
					_, answer, err := c.Read(ctx)
					if err != nil {
						b.Fatal(err)
					}
					if string(answer[:17]) == `{"kind":"answer",` {
						break
					}
				}
				took = append(took, time.Since(began))
			}
			slices.Sort(took)
			b.ReportMetric(float64(took[len(took)/2].Microseconds())/1000, "median-ms")
			b.ReportMetric(float64(took[len(took)-1-len(took)/100].Microseconds())/1000, "worst-of-100-ms")
		})
	}
}

// BenchmarkAnswer is what one answer takes without the socket, and its curve alone.
func BenchmarkAnswer(b *testing.B) {
	now := shipping(b, "bracken-20")
	s := newSubject(now, 1)
	p := &page{}
	for _, against := range []int{-1, 0} {
		b.Run(fmt.Sprint("against", against), func(b *testing.B) {
			n := 0
			for b.Loop() {
				n++
				at := now.Model.Plan.Rest().Position
				at[0] = float64(n%201 - 100)
				h := hand{At: at, Part: 0, Against: against}
				pose, _ := s.pose(&h)
				p.answerTo(s, &h, pose)
			}
		})
	}
}
