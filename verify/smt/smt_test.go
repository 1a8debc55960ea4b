package smt

import (
	"errors"
	"flag"
	"fmt"
	"go/ast"
	"go/parser"
	"go/token"
	"math"
	"math/big"
	"math/rand/v2"
	"path/filepath"
	"slices"
	"strings"
	"testing"

	"example.com/hingeline/airframes"
	"example.com/hingeline/airframes/airframestest"
	"example.com/hingeline/mixcore"
	"example.com/hingeline/mixcore/linkage"
	"example.com/hingeline/verify/laws"
	"example.com/hingeline/verify/prove"
	"example.com/hingeline/verify/prove/provetest"
	"example.com/hingeline/verify/verifytest"
	"pgregory.net/rapid"
)

var update = flag.Bool("update", false, "write the golden files anew")

// binary is what the Plan's rounding may come to, in degrees or percent.
const binary = 1e-7

// pinnedAt is what a script's constants are at a pose.
func (s *script) pinnedAt(pose *prove.Pose) (values map[string]*big.Rat, truths map[string]bool) {
	values, truths = map[string]*big.Rat{}, map[string]bool{}
	for _, c := range s.constants {
		at := pose.Now.Position[c.control]
		if c.other {
			at = pose.Other.Position[c.control]
		}
		if s.setup.Controls[c.control].Kind == mixcore.SwitchControl {
			truths[c.symbol] = int(at) == c.position
		} else {
			values[c.symbol] = ratOf(at)
		}
	}
	return values, truths
}

// What is written must fail exactly where the claim does by the Plan, and every part
// and channel in it must be where the Plan has them: on set-ups of all kinds.
func TestWriteSaysWhatThePlanDoes(t *testing.T) {
	written, refused := 0, map[string]int{}
	rapid.Check(t, func(t *rapid.T) {
		plan, faults := mixcore.Compile(provetest.Setup(t))
		if faults != nil {
			t.Fatal(faults)
		}
		p := prove.New(plan)
		for range 3 {
			claim := provetest.Claim(t, plan)
			s, failure, err := build(plan, claim, new(big.Rat))
			if err != nil {
				refused[err.Error()]++
				continue
			}
			written++
			text := string(s.assemble("drawn", failure))
			poses := provetest.Poses(plan, claim, rand.New(rand.NewPCG(rapid.Uint64().Draw(t, "random"), 0)))
			for range 8 {
				if pose, ok := poses.Draw(); ok {
					sameAsPlan(t, s, text, p, claim, pose)
				}
			}
		}
	})
	t.Logf("%d written, refused: %v", written, refused)
	if written == 0 {
		t.Error("nothing was written")
	}
}

func sameAsPlan(t rapid.TB, s *script, text string, p *prove.Prover, claim *prove.Claim, pose prove.Pose) {
	values, truths := s.pinnedAt(&pose)
	r, err := read(text, values, truths)
	if err != nil {
		t.Fatalf("%v; %T%+v of %+v", err, claim.Want, claim.Want, *claim)
	}
	off, _ := s.error.Float64()
	off += binary
	margin := p.Margin(claim, pose)
	if !r.asked || margin < -off && !r.fails || margin > off && r.fails {
		t.Fatalf("it fails: %v; margin %v by the Plan, bounds are off by %v, at %+v; %T%+v of %+v", r.fails, margin, off, pose, claim.Want, claim.Want, *claim)
	}
	out := s.plan.NewOutput()
	for _, v := range []*view{s.now, s.other} {
		in := &pose.Now
		if v.other {
			in = &pose.Other
		}
		if in.Position == nil {
			continue
		}
		s.plan.Eval(in, out)
		near := func(what string, index int, a number, want, off float64) {
			got, _ := r.number(mustParse(a.text)).Float64()
			if !(math.Abs(got-want) <= off+binary) {
				t.Fatalf("%s %d is %v, want %v by the Plan (other: %v) at %+v; %T%+v of %+v", what, index, got, want, v.other, pose, claim.Want, claim.Want, *claim)
			}
		}
		for i, a := range v.outputs {
			near("output", i, a, float64(out.Channels[i].Output), 0)
		}
		for i, a := range v.sums {
			near("sum", i, a, float64(out.Channels[i].Sum), 0)
		}
		for i, a := range v.places {
			off, _ := s.errorOf(i).Float64()
			near("part", i, a, float64(out.Parts[i].Angle)+float64(out.Parts[i].Amount), off)
		}
	}
}

func compiled(t *testing.T, s mixcore.Setup) *mixcore.Plan {
	t.Helper()
	plan, faults := mixcore.Compile(s)
	if faults != nil {
		t.Fatal(faults)
	}
	return plan
}

func mustParse(text string) expression {
	list, err := parse(text)
	if err != nil || len(list) != 1 {
		panic("not one expression: " + text)
	}
	return list[0]
}

// Every claim of the laws about every shipped airframe is written, and can be read.
func TestWriteShippedAirframes(t *testing.T) {
	for _, m := range verifytest.EveryShipped(t) {
		name := m.Source.Name
		for _, c := range laws.Claims(m) {
			s, failure, err := build(m.Plan, &c.Claim, new(big.Rat))
			if err != nil {
				t.Errorf("%s: %s: %v", name, c.Name, err)
				continue
			}
			rest := m.Plan.Rest()
			values, truths := s.pinnedAt(&prove.Pose{Now: rest, Other: rest})
			if _, err := read(string(s.assemble(c.Sentence, failure)), values, truths); err != nil {
				t.Errorf("%s: %s: %v", name, c.Name, err)
			}
		}
	}
}

// A linkage stays within its error of the pieces, and between its slopes.
func TestPiecesFollowTheLinkage(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		plan, faults := mixcore.Compile(provetest.Setup(t))
		if faults != nil {
			t.Fatal(faults)
		}
		s := &script{plan: plan, setup: plan.Setup()}
		for i := range s.setup.Parts {
			for k := range s.setup.Parts[i].Drives {
				if d := &s.setup.Parts[i].Drives[k]; d.Linkage != nil {
					followed(t, s, d)
				}
			}
		}
	})
}

func followed(t *rapid.T, s *script, d *mixcore.Drive) {
	var bar *fourBar
	func() {
		defer func() {
			if _, refused := recover().(ErrNotWritten); refused {
				bar = nil
			}
		}()
		bar = s.barOf(d)
	}()
	if bar == nil {
		return
	}
	l, err := linkage.New(*d.Linkage)
	if err != nil {
		t.Fatal(err)
	}
	off, _ := bar.off.Float64()
	least, _ := bar.slopes[0].Float64()
	most, _ := bar.slopes[1].Float64()
	first, last := bar.knots[0], bar.knots[len(bar.knots)-1]
	before := first
	for i := range 400 {
		arm := first.arm + (last.arm-first.arm)*float64(i)/399
		horn := l.Swing(arm)
		n := 1
		for n < len(bar.knots)-1 && arm >= bar.knots[n].arm {
			n++
		}
		piece := first.horn
		if len(bar.knots) > 1 {
			a, b := bar.knots[n-1], bar.knots[n]
			piece = a.horn + (b.horn-a.horn)/(b.arm-a.arm)*(arm-a.arm)
		}
		if math.Abs(horn-piece) > off {
			t.Fatalf("%+v: the horn is at %v for arm %v, the pieces at %v, want within %v", *d.Linkage, horn, arm, piece, off)
		}
		by, rise := arm-before.arm, horn-before.horn
		if rise < least*by-1e-8 || rise > most*by+1e-8 {
			t.Fatalf("%+v: from arm %v to %v the horn goes from %v to %v, want a slope between %v and %v", *d.Linkage, before.arm, arm, before.horn, horn, least, most)
		}
		before = knot{arm, horn}
	}
}

// The exact slopes of a smooth curve against those that the Plan has.
func TestCurveGoesWhereThePlansDoes(t *testing.T) {
	points := []mixcore.Point{{X: -100, Y: -80}, {X: -37.5, Y: -60}, {X: 0, Y: 5}, {X: 20, Y: 5}, {X: 66.6, Y: 4}, {X: 100, Y: 100}}
	setup := mixcore.Setup{
		Controls: []mixcore.Control{{Name: "stick", Kind: mixcore.AxisControl, Axis: mixcore.Roll}},
		Demands: []mixcore.Demand{{Name: "d", Rates: []mixcore.Rate{{Throw: mixcore.Both(100)}}, Trim: mixcore.NoTrim,
			Curve: &mixcore.Curve{Points: points, Smooth: true}}},
	}
	plan, faults := mixcore.Compile(setup)
	if faults != nil {
		t.Fatal(faults)
	}
	s := &script{}
	for x := -100.0; x <= 100; x += 0.25 {
		got, _ := s.curve(setup.Demands[0].Curve, setting(x), -100, 100).exact.Float64()
		if want := float64(plan.ShapedAt(0, 0, x)); math.Abs(got-want) > 1e-9 {
			t.Errorf("at %v the curve is %v, want %v", x, got, want)
		}
	}
}

// wants are one of every kind that package prove has.
var wants = []prove.Want{
	prove.Place{}, prove.Output{}, prove.Travel{}, prove.Differ{Sign: 1}, prove.Pair{StillA: 1, StillB: 1},
	prove.Far{}, prove.Rising{Sign: 1}, prove.Turn{Axis: mixcore.Roll},
}

func TestWriteKnowsEveryKindOfClaim(t *testing.T) {
	kinds := map[string]bool{}
	files, err := filepath.Glob(filepath.Join("..", "prove", "*.go"))
	if err != nil || len(files) == 0 {
		t.Fatal(files, err)
	}
	for _, name := range files {
		file, err := parser.ParseFile(token.NewFileSet(), name, nil, 0)
		if err != nil {
			t.Fatal(err)
		}
		ast.Inspect(file, func(n ast.Node) bool {
			if f, ok := n.(*ast.FuncDecl); ok && f.Name.Name == "margin" && f.Recv != nil {
				kinds[f.Recv.List[0].Type.(*ast.Ident).Name] = true
			}
			return true
		})
	}
	m := golden(t)
	for _, want := range wants {
		c := prove.Claim{Now: prove.Everywhere(&m.Setup), Other: prove.Beside(&m.Setup), Want: want}
		delete(kinds, kindOf(&c))
		if err := Write(new(strings.Builder), m.Plan, &c, ""); err != nil {
			t.Errorf("%T: %v", want, err)
		}
	}
	for kind := range kinds {
		t.Errorf("package prove has %s, which is not tried here", kind)
	}
}

func TestWriteRefusesWhatItCannotSay(t *testing.T) {
	m := golden(t)
	mirrored := prove.Beside(&m.Setup)
	for i := range mirrored {
		mirrored[i].Kind = prove.Mirrored
	}
	everywhere := prove.Everywhere(&m.Setup)
	for _, c := range []struct {
		why   string
		claim prove.Claim
	}{
		{"a mirrored switch", prove.Claim{Now: everywhere, Other: mirrored, Want: prove.Change(0, -1, 1)}},
		{"one position only", prove.Claim{Now: everywhere, Want: prove.Pair{}}},
		{"a bound that is no number", prove.Claim{Now: everywhere, Want: prove.Place{Low: math.NaN(), High: 1}}},
		{"a bound that is infinite the wrong way", prove.Claim{Now: everywhere, Want: prove.Output{Low: math.Inf(1), High: math.Inf(1)}}},
	} {
		var b strings.Builder
		err := Write(&b, m.Plan, &c.claim, "")
		if why := (ErrNotWritten{}); !errors.As(err, &why) || why.Why == "" || b.Len() > 0 {
			t.Errorf("%s: got %v and %d bytes, want it refused with a reason", c.why, err, b.Len())
		}
	}
}

// golden is the small airframe of the golden files.
func golden(t *testing.T) *airframes.Model {
	t.Helper()
	m, problems := airframes.Load("golden.yaml", []byte(goldenAirframe))
	if m == nil {
		t.Fatal(problems)
	}
	return m
}

// named is the index of a control.
func named(s *mixcore.Setup, name string) int {
	return slices.IndexFunc(s.Controls, func(c mixcore.Control) bool { return c.Name == name })
}

func kindOf(c *prove.Claim) string {
	_, kind, _ := strings.Cut(fmt.Sprintf("%T", c.Want), ".")
	return kind
}

func TestWriteGolden(t *testing.T) {
	m := golden(t)
	everywhere := prove.Everywhere(&m.Setup)
	part := func(name string) int {
		for i := range m.Setup.Parts {
			if m.Setup.Parts[i].Name == name {
				return i
			}
		}
		t.Fatalf("no part %q", name)
		return -1
	}
	mirrored := prove.Beside(&m.Setup)
	for i := range mirrored {
		if k := m.Setup.Controls[i].Kind; k == mixcore.AxisControl || k == mixcore.TrimControl {
			mirrored[i].Kind = prove.Mirrored
		}
	}
	for _, c := range []struct {
		name, title string
		claim       prove.Claim
	}{
		{"travel", "channel 1 (port aileron) never runs out of travel", prove.Claim{Now: everywhere, Want: prove.Travel{Channel: 0}}},
		{"place", "the port aileron never drops more than 20 degrees", prove.Claim{Now: everywhere, Want: prove.Place{Part: part("port aileron"), Low: math.Inf(-1), High: 20}}},
		{"rising", "the port aileron never rises as the roll stick moves right", prove.Claim{Now: everywhere, Want: prove.Rising{Part: part("port aileron"), Control: named(&m.Setup, "roll stick"), Sign: 1}}},
		{"mirror", "the port aileron and the starboard aileron mirror each other", prove.Claim{Now: everywhere, Other: mirrored,
			Want: prove.Differ{A: part("port aileron"), B: part("starboard aileron"), Sign: 1, Low: -0.5, High: 0.5}}},
		{"lost", "with the signal lost, the motor is stopped", prove.Claim{Now: everywhere, Lost: true, Want: prove.Place{Part: part("motor"), Low: math.Inf(-1), High: 0}}},
		{"throttle", "the motor runs at more than 10 % whenever the throttle is above 20 %", prove.Claim{Now: everywhere,
			When: &mixcore.Condition{Op: mixcore.Above, Control: named(&m.Setup, "throttle"), Low: 20}, Want: prove.Place{Part: part("motor"), Low: 10, High: 100}}},
	} {
		var b strings.Builder
		if err := Write(&b, m.Plan, &c.claim, c.title); err != nil {
			t.Errorf("%s: %v", c.name, err)
			continue
		}
		airframestest.Golden(t, filepath.Join("testdata", c.name+".smt2"), []byte(b.String()), *update)
	}
}
