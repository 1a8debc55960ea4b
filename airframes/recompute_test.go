//go:build recompute

package airframes_test

import (
	"bufio"
	"bytes"
	"encoding/json"
	"fmt"
	"maps"
	"math"
	"os"
	"os/exec"
	"path/filepath"
	"regexp"
	"slices"
	"strings"
	"testing"

	"example.com/hingeline/airframes"
	"example.com/hingeline/mixcore"
)

// The second computation: a script that shares nothing with the Go code but
// airframes/reference.md and the package comment of mixcore.
const (
	recomputeDir    = "../testdata/recompute"
	recomputeScript = recomputeDir + "/recompute.py"
	recomputePython = "/usr/bin/python3"
)

// How far apart the two computations may be. Both work in double precision, so
// these are far above rounding and far below anything that a servo can do.
const (
	percentAgreement mixcore.Percent      = 1e-9
	pulseAgreement   mixcore.Microseconds = 5e-9 // percentAgreement as a pulse
	angleAgreement   mixcore.Degrees      = 1e-6
	travelAgreement  mixcore.Millimetres  = 1e-6
)

const (
	posesPerAirframe = 10_000
	posesPerFault    = 2_000
)

// recomputed is one line that the script writes.
type recomputed struct {
	Demands  map[string]float64 `json:"demands"`
	Channels map[string]struct {
		Sum, Output, Pulse *float64
	} `json:"channels"`
	Parts map[string]struct {
		Angle, Travel, Amount *float64
	} `json:"parts"`
}

// airframeTexts are all airframes to compare: those that ship and those made to
// use what no shipped one does.
func airframeTexts(t *testing.T) map[string][]byte {
	t.Helper()
	texts := map[string][]byte{}
	for _, name := range airframes.Shipped() {
		text, ok := airframes.ReadShipped(name)
		if !ok {
			t.Fatalf("shipped airframe %q cannot be read", name)
		}
		texts[name] = text
	}
	if len(texts) == 0 {
		t.Fatal("no airframe ships: there is nothing to compare")
	}
	odd, err := filepath.Glob(recomputeDir + "/*.yaml")
	if err != nil || len(odd) == 0 {
		t.Fatalf("no airframes in %s: %v", recomputeDir, err)
	}
	for _, path := range odd {
		text, err := os.ReadFile(path)
		if err != nil {
			t.Fatal(err)
		}
		texts[strings.TrimSuffix(filepath.Base(path), ".yaml")] = text
	}
	return texts
}

func loadForRecompute(t *testing.T, name string, text []byte) *airframes.Model {
	t.Helper()
	model, problems := airframes.Load(name+".yaml", text)
	if model == nil {
		for _, p := range problems {
			t.Errorf("%+v", p)
		}
		t.Fatalf("%s does not load", name)
	}
	return model
}

// recompute runs the script on an airframe's text.
func recompute(t *testing.T, text []byte, poses []pose) []recomputed {
	t.Helper()
	file := filepath.Join(t.TempDir(), "airframe.yaml")
	if err := os.WriteFile(file, text, 0o600); err != nil {
		t.Fatal(err)
	}
	var input, output, complaint bytes.Buffer
	encoder := json.NewEncoder(&input)
	for _, p := range poses {
		if err := encoder.Encode(p); err != nil {
			t.Fatal(err)
		}
	}
	command := exec.Command(recomputePython, "-B", recomputeScript, file)
	command.Stdin, command.Stdout, command.Stderr = &input, &output, &complaint
	if err := command.Run(); err != nil {
		t.Fatalf("the second computation did not run (it needs python3 and its yaml module): %v\n%s",
			err, complaint.String())
	}
	var results []recomputed
	lines := bufio.NewScanner(&output)
	lines.Buffer(nil, 1<<20)
	for lines.Scan() {
		var r recomputed
		decoder := json.NewDecoder(bytes.NewReader(lines.Bytes()))
		decoder.DisallowUnknownFields()
		if err := decoder.Decode(&r); err != nil {
			t.Fatalf("%v in %s", err, lines.Text())
		}
		results = append(results, r)
	}
	if err := lines.Err(); err != nil {
		t.Fatal(err)
	}
	if len(results) != len(poses) {
		t.Fatalf("got %d results, wanted %d", len(results), len(poses))
	}
	return results
}

// plainName is a name as names are compared.
func plainName(name string) string {
	return strings.ToLower(strings.Join(strings.Fields(name), " "))
}

func byPlainName[V any](values map[string]V) map[string]V {
	plain := make(map[string]V, len(values))
	for name, value := range values {
		plain[plainName(name)] = value
	}
	return plain
}

// comparison collects where the two computations disagree.
type comparison struct {
	differences []string
	count       int
	compared    int
	worst       map[string]float64
}

func (c *comparison) differ(format string, args ...any) {
	c.count++
	if len(c.differences) < 10 {
		c.differences = append(c.differences, fmt.Sprintf(format, args...))
	}
}

// value compares one figure; wanted is nil where the script has none.
func (c *comparison) value(what, name string, got float64, wanted *float64, tolerance float64, p pose) {
	c.compared++
	if wanted == nil {
		c.differ("%s of %q: got %v, the second computation has none", what, name, got)
		return
	}
	difference := math.Abs(got - *wanted)
	c.worst[what] = max(c.worst[what], difference)
	if !(difference <= tolerance) {
		where, _ := json.Marshal(p)
		c.differ("%s of %q: got %v, recomputed %v, at %s", what, name, got, *wanted, where)
	}
}

func (c *comparison) output(setup *mixcore.Setup, got *mixcore.Output, wanted recomputed, p pose) {
	demands, parts := byPlainName(wanted.Demands), byPlainName(wanted.Parts)
	if len(demands) != len(setup.Demands) || len(wanted.Channels) != len(setup.Channels) ||
		len(parts) != len(setup.Parts) {
		c.differ("got %d demands, %d channels, %d parts; recomputed %d, %d, %d",
			len(setup.Demands), len(setup.Channels), len(setup.Parts),
			len(demands), len(wanted.Channels), len(parts))
	}
	for i, demand := range setup.Demands {
		var value *float64
		if v, ok := demands[plainName(demand.Name)]; ok {
			value = &v
		}
		c.value("demand", demand.Name, float64(got.Demands[i]), value, float64(percentAgreement), p)
	}
	for i, channel := range setup.Channels {
		number := fmt.Sprint(channel.Number)
		value, out := wanted.Channels[number], got.Channels[i]
		c.value("sum", number, float64(out.Sum), value.Sum, float64(percentAgreement), p)
		c.value("output", number, float64(out.Output), value.Output, float64(percentAgreement), p)
		c.value("pulse", number, float64(out.Pulse), value.Pulse, float64(pulseAgreement), p)
	}
	for i, part := range setup.Parts {
		value, out := parts[plainName(part.Name)], got.Parts[i]
		switch part.Motion {
		case mixcore.UpDown, mixcore.LeftRight:
			c.value("angle", part.Name, float64(out.Angle), value.Angle, float64(angleAgreement), p)
			c.value("travel", part.Name, float64(out.Travel), value.Travel, float64(travelAgreement), p)
		default:
			c.value("amount", part.Name, float64(out.Amount), value.Amount, float64(percentAgreement), p)
		}
	}
}

// compare evaluates the model at random poses and the second computation from
// the text that it is given, which need not be the model's.
func compare(t *testing.T, model *airframes.Model, text []byte, count int) *comparison {
	t.Helper()
	draw := newPoseDraw(&model.Setup)
	inputs, poses := make([]mixcore.Input, count), make([]pose, count)
	for i := range inputs {
		inputs[i], poses[i] = draw.next()
	}
	results := recompute(t, text, poses)
	c := &comparison{worst: map[string]float64{}}
	out := model.Plan.NewOutput()
	for i := range inputs {
		if err := model.Plan.CheckInput(&inputs[i]); err != nil {
			t.Fatalf("pose %v: %v", poses[i], err)
		}
		model.Plan.Eval(&inputs[i], out)
		c.output(&model.Setup, out, results[i], poses[i])
	}
	return c
}

func TestRecomputeAgrees(t *testing.T) {
	for name, text := range airframeTexts(t) {
		t.Run(name, func(t *testing.T) {
			model := loadForRecompute(t, name, text)
			c := compare(t, model, text, posesPerAirframe)
			for _, difference := range c.differences {
				t.Error(difference)
			}
			if c.count > 0 {
				t.Errorf("%d of %d figures differ", c.count, c.compared)
			}
			if c.compared < posesPerAirframe*len(model.Setup.Channels) {
				t.Errorf("only %d figures were compared", c.compared)
			}
			t.Logf("%d figures; furthest apart: %v", c.compared, c.worst)
		})
	}
}

// A fault planted in the text that only the script reads must be reported.
func TestRecomputeReportsPlantedFaults(t *testing.T) {
	faults := []struct{ what, find, replace string }{
		{"a share's sign", `share: (\d)`, `share: -${1}`},
		{"a one-sided share's sign", `share: \{right: (\d)`, `share: {right: -${1}`},
		{"a reversed channel", `(?m)^    reversed: true\n`, ``},
		{"a horn on the other side", `horn: below`, `horn: above`},
		{"a servo that swings the other way", `plus_swings: fore`, `plus_swings: aft`},
		{"a longer arm", `arm_mm: (\d+)`, `arm_mm: ${1}.001`},
		{"a sub-trim a little off", `sub_trim: (\d+)%`, `sub_trim: ${1}.001%`},
		{"a measured angle the other way", `100%: ([\d.]+)° up`, `100%: ${1}° down`},
		{"expo a little off", `expo: (\d+)%`, `expo: ${1}.001%`},
		{"a smooth curve made straight", `, smooth: true`, ``},
		{"a threshold a little off", `above 10%`, `above 10.001%`},
		{"another failsafe", `failsafe: 0%`, `failsafe: hold`},
		{"a demand without its trim", `, trim: no`, ``},
		{"a trim reversed", `name: wing trim, reversed: true`, `name: wing trim`},
		{"a detent a little off", `takeoff: 33.3,`, `takeoff: 33.301,`},
		{"at least for above", `knob is at least 75%`, `knob is above 75%`},
		{"not left out", `is not glide or cruise`, `is glide or cruise`},
		{"or for and", `yes rate switch and not careful`, `yes rate switch or not careful`},
		{"another position without is", `yes rate switch and`, `no rate switch and`},
		{"a detent left out", `flap lever landing or takeoff`, `flap lever landing`},
		{"a travel limit a little off", `limit: 80%`, `limit: 80.001%`},
		{"an end point a little off", `minus: 95%`, `minus: 95.001%`},
		{"a pulse limit a little off", `min: 850`, `min: 850.001`},
		{"a motor's idle a little off", `idle_us: 1100`, `idle_us: 1100.001`},
		{"an extra that moves the other way", `plus_moves: in`, `plus_moves: out`},
		{"an arm on the other side", `arm: above`, `arm: below`},
		{"a pushrod a little long", `pushrod_mm: 73`, `pushrod_mm: 73.001`},
		{"an offset on the other side", `offset_mm: 12`, `offset_mm: -12`},
		{"a servo's maximum a little off", `max_deg: 40`, `max_deg: 40.001`},
		{"a stop a little off", `up: 24.5`, `up: 24.501`},
		{"a tail wheel for a nose wheel", `place: tail`, `place: nose`},
		{"a servo of several left out", `(?m)^      - \{channel: 3, measured.*\n`, ``},
	}
	texts := airframeTexts(t)
	names := slices.Sorted(maps.Keys(texts))
	for _, fault := range faults {
		t.Run(fault.what, func(t *testing.T) {
			pattern := regexp.MustCompile(fault.find)
			for _, name := range names {
				text := texts[name]
				at := pattern.FindIndex(text)
				if at == nil {
					continue
				}
				planted := pattern.ReplaceAll(text[at[0]:at[1]], []byte(fault.replace))
				faulty := slices.Concat(text[:at[0]], planted, text[at[1]:])
				c := compare(t, loadForRecompute(t, name, text), faulty, posesPerFault)
				if c.count == 0 {
					t.Errorf("%s: planted at byte %d and not reported", name, at[0])
				}
				return
			}
			t.Error("no airframe has a place for this fault")
		})
	}
}

// The script itself against published and independently computed figures, and
// its smooth curve against SciPy's PchipInterpolator.
func TestRecomputeSelftest(t *testing.T) {
	said, err := exec.Command(recomputePython, "-B", recomputeScript, "--selftest").CombinedOutput()
	if err != nil {
		t.Fatalf("%v\n%s", err, said)
	}
	if !bytes.Contains(said, []byte("compared with SciPy")) || bytes.Contains(said, []byte("not compared")) {
		t.Errorf("the smooth curve was not compared with SciPy: install python3-scipy\n%s", said)
	}
}
