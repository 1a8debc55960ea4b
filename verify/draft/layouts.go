package draft

import (
	"bytes"
	"embed"
	"fmt"
	"regexp"
	"slices"
	"strings"
	"text/template"
	"unicode"

	"example.com/hingeline/airframes"
)

//go:embed layouts
var layoutFiles embed.FS

// Layout is a kind of model that a new airframe file can begin with.
type Layout struct {
	Name  string
	About string // one line

	HasMotor bool // with a motor unless the pilot says otherwise
	MayMotor bool // the pilot may say
	HasFlaps bool // with flaps unless the pilot says otherwise
	MayFlaps bool // the pilot may say
}

// Layouts are all of them, the plain ones first.
func Layouts() []Layout { return slices.Clone(layouts) }

var layouts = []Layout{
	{Name: "trainer", About: "ailerons on one channel, elevator, rudder with a tail wheel", HasMotor: true, MayMotor: true},
	{Name: "sport", About: "ailerons and flaps on four channels, elevator, rudder with a nose wheel", HasMotor: true, MayMotor: true, HasFlaps: true, MayFlaps: true},
	{Name: "glider", About: "ailerons, flaps and V-tail on six channels, crow brakes, flight phases", MayMotor: true, HasFlaps: true},
	{Name: "aerobatic", About: "four aileron servos, two elevator halves, each on its own channel", HasMotor: true, MayMotor: true},
	{Name: "twin", About: "two motors that may steer, ailerons, elevator, rudder with a nose wheel", HasMotor: true, MayFlaps: true},
	{Name: "delta", About: "elevons, rudder, airbrake", HasMotor: true, MayMotor: true},
	{Name: "flying-wing", About: "elevons, drag rudders at the tips, no fin", HasMotor: true, MayMotor: true},
	{Name: "canard", About: "pitch surface ahead of the wing, ailerons, two rudders", HasMotor: true, MayMotor: true},
	{Name: "spoiler", About: "spoilers instead of ailerons, elevator, rudder", MayMotor: true},
	{Name: "rudder-elevator", About: "rudder and elevator only", MayMotor: true},
}

// FindLayout finds a layout by its name; case, spaces and - do not matter.
func FindLayout(name string) (Layout, bool) {
	for _, l := range layouts {
		if airframes.FoldName(l.Name) == airframes.FoldName(name) {
			return l, true
		}
	}
	return Layout{}, false
}

// MostTrim is the largest trim of Choices, in percent.
const MostTrim = 30

// Choices are what a new airframe file can differ in.
type Choices struct {
	Name         string // of the model
	Script       string // what its script is called, in the same directory
	Motor, Flaps bool   // as far as the layout may
	Rates        bool   // a switch for low and high rates
	Trim         int    // percent, 0…MostTrim; 0 is no trim
}

// Usual are the choices for a layout that nobody said anything about.
func (l Layout) Usual() Choices {
	return Choices{Motor: l.HasMotor, Flaps: l.HasFlaps, Rates: true, Trim: 10}
}

// High and Low are the throws of the two rates: so much that throw and trim
// together stay within full travel, and enough to fly with.
func (c Choices) High() int { return 100 - c.Trim }

// plainName is a model's name that YAML takes as it stands.
var plainName = regexp.MustCompile(`^[A-Za-z][A-Za-z0-9]*( [A-Za-z0-9]+)+$`)

// Scalar is the name as YAML needs it: in quotes, unless it is plainly words.
func (c Choices) Scalar() string {
	if plainName.MatchString(c.Name) {
		return c.Name
	}
	return `"` + strings.NewReplacer(`\`, `\\`, `"`, `\"`).Replace(c.Name) + `"`
}

// Low is the throw at low rates.
func (c Choices) Low() int { return c.High() * 2 / 3 }

// Airframe is the text of a new airframe file. The error says what is wrong with
// the choices, in the words of an airframe file's own problems.
func (l Layout) Airframe(c Choices) ([]byte, error) {
	if c.Trim < 0 || c.Trim > MostTrim {
		return nil, fmt.Errorf("the trim is %d %%, want 0 to %d %%", c.Trim, MostTrim)
	}
	if strings.ContainsFunc(c.Name, unicode.IsControl) {
		return nil, fmt.Errorf("the name %q holds a character that cannot be seen", c.Name)
	}
	if !l.MayMotor {
		c.Motor = l.HasMotor
	}
	if !l.MayFlaps {
		c.Flaps = l.HasFlaps
	}
	t := template.Must(template.New(l.Name+".yaml").Delims("<<", ">>").
		ParseFS(layoutFiles, "layouts/common.tmpl", "layouts/"+l.Name+".yaml"))
	var text bytes.Buffer
	if err := t.Execute(&text, c); err != nil {
		panic("draft: the layout " + l.Name + " cannot be filled in: " + err.Error())
	}
	return append(bytes.TrimRight(text.Bytes(), "\n"), '\n'), nil
}
