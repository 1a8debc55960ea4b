package laws_test

import (
	"context"
	"fmt"
	"os"
	"testing"
	"time"

	"example.com/hingeline/airframes"
	"example.com/hingeline/verify/laws"
)

func TestDev(t *testing.T) {
	for _, name := range airframes.Shipped() {
		if w := os.Getenv("MODEL"); w != "" && w != name {
			continue
		}
		text, _ := airframes.ReadShipped(name)
		m, _ := airframes.Load(name+".yaml", text)
		start := time.Now()
		r := laws.Prove(context.Background(), m, laws.Options{Boxes: 20000})
		c := r.Counts()
		fmt.Printf("=== %s %v %+v %s\n", name, time.Since(start), c, r.Verdict)
		for _, l := range r.Laws {
			fmt.Printf("-- %s [%s] none=%q\n   %s\n", l.Title, l.Code, l.None, l.Means)
			for _, p := range l.Claims {
				if os.Getenv("ALL") == "" && p.Answer == "proved" {
					continue
				}
				fmt.Printf("  %-9s %s | %s | st %d fo %d bx %d\n", p.Answer, p.Claim, p.Over, p.States, p.Forms, p.Boxes)
				if p.Margin != nil {
					fmt.Printf("      margin %+v\n", *p.Margin)
				}
				if p.Counter != nil {
					fmt.Printf("      COUNTER %q before %q moved %q\n        got %s\n        set %q\n", p.Counter.Pose, p.Counter.Before, p.Counter.Moved, p.Counter.Got, p.Counter.Set)
					for _, q := range p.LookAt {
						fmt.Printf("        look %d %s\n", q.Line, q.Note)
					}
				}
			}
		}
	}
}
