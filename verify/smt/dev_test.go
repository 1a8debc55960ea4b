package smt

import (
	"fmt"
	"os"
	"testing"

	"example.com/hingeline/airframes"
	"example.com/hingeline/verify/laws"
)

func TestDev(t *testing.T) {
	dir := os.Getenv("DEV")
	for _, name := range airframes.Shipped() {
		text, _ := airframes.ReadShipped(name)
		m, _ := airframes.Load(name, text)
		kinds := map[string]int{}
		for _, c := range laws.Claims(m) {
			f, err := os.Create(dir + "/" + m.Name[:4] + "-" + c.Name + ".smt2")
			if err != nil {
				t.Fatal(err)
			}
			kinds[fmt.Sprintf("%T", c.Claim.Want)]++
			if err := Write(f, m.Plan, &c.Claim, c.Sentence); err != nil {
				fmt.Println(name, c.Name, err)
			}
			f.Close()
		}
		fmt.Println(name, kinds)
	}
}
