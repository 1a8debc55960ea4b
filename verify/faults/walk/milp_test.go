//go:build milp

package walk

import (
	"bytes"
	"context"
	"encoding/json"
	"math/rand/v2"
	"os/exec"
	"strconv"
	"strings"
	"testing"

	"example.com/hingeline/airframes"
	"example.com/hingeline/verify/faults/cover"
	"example.com/hingeline/verify/faults/mistake"
	"example.com/hingeline/verify/faults/sight"
	"example.com/hingeline/verify/faults/table"
	"example.com/hingeline/verify/verifytest"
)

// optimum is what HiGHS finds, through SciPy.
func optimum(t *testing.T, p cover.Problem) int {
	t.Helper()
	question := struct {
		Columns int     `json:"columns"`
		Rows    [][]int `json:"rows"`
	}{Columns: p.Columns, Rows: [][]int{}}
	for _, row := range p.Rows {
		var list []int
		row.Each(func(c int) bool { list = append(list, c); return true })
		question.Rows = append(question.Rows, list)
	}
	text, err := json.Marshal(question)
	if err != nil {
		t.Fatal(err)
	}
	ask := exec.Command("/usr/bin/python3", "-B", "../../../testdata/cover/milp.py")
	var said bytes.Buffer
	ask.Stdin, ask.Stdout, ask.Stderr = bytes.NewReader(text), &said, &said
	if err := ask.Run(); err != nil {
		t.Fatalf("%v: %s", err, said.String())
	}
	n, err := strconv.Atoi(strings.TrimSpace(said.String()))
	if err != nil {
		t.Fatalf("%q: %v", said.String(), err)
	}
	return n
}

// The number of steps of every shipped model's shortest walk-around is what an independent
// exact solver finds for the same table.
func TestMILPAgreesOnShippedWalks(t *testing.T) {
	for _, name := range airframes.Shipped() {
		m := verifytest.Shipped(t, name)
		tab := table.New(m, mistake.All(m, mistake.Options{}), table.Steps(m))
		for _, look := range []sight.Look{sight.Eye, sight.Measured} {
			p := cover.Problem{Columns: len(tab.Steps)}
			for _, row := range tab.Shows(look) {
				if bits := cover.Bits(row); bits.Count() > 0 {
					p.Rows = append(p.Rows, bits)
				}
			}
			found := After(context.Background(), tab, look, nil)
			want := optimum(t, p)
			t.Logf("%s, ruler %v: %d mistakes at %d steps, %d are enough", name, look.Ruler, len(p.Rows), p.Columns, want)
			if len(found.Order) != want || found.AtLeast != want {
				t.Errorf("%s, ruler %v: %d steps, at least %d; the solver finds %d", name, look.Ruler, len(found.Order), found.AtLeast, want)
			}
		}
	}
}

// So are covers of random tables.
func TestMILPAgreesOnRandomTables(t *testing.T) {
	r := rand.New(rand.NewPCG(11, 12))
	for i := range 33 {
		columns, rows, least, more := 5+r.IntN(50), 5+r.IntN(60), 1, 6
		if i >= 25 { // and hard ones
			columns, rows, least, more = 200, 60, 6, i-20
		}
		p := cover.Problem{Columns: columns}
		for range rows {
			row := cover.NewBits(p.Columns)
			for range least + r.IntN(more) {
				row.Add(r.IntN(p.Columns))
			}
			p.Rows = append(p.Rows, row)
		}
		a, err := cover.Fewest(context.Background(), p, cover.Options{})
		if err != nil {
			t.Fatal(err)
		}
		if want := optimum(t, p); len(a.Chosen) != want || a.AtLeast != want {
			t.Errorf("%d rows, %d columns: got %+v, the solver finds %d", len(p.Rows), p.Columns, a, want)
		}
	}
}
