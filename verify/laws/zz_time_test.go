package laws_test

import (
	"context"
	"fmt"
	"testing"
	"time"

	"example.com/hingeline/verify/laws"
	"example.com/hingeline/verify/prove"
)

func TestZZTime(t *testing.T) {
	m := loadTwelve(t)
	p := prove.New(m.Plan)
	sum := map[string]time.Duration{}
	for _, c := range laws.Claims(m) {
		start := time.Now()
		d := p.Decide(context.Background(), &c.Claim, prove.Options{Margins: true})
		el := time.Since(start)
		sum[c.Law] += el
		if el > 300*time.Millisecond {
			fmt.Println(el, c.Name, d.Answer, d.Boxes, d.Forms)
		}
	}
	fmt.Println(sum)
}
