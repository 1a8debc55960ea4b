package airframestest

import (
	"fmt"
	"strconv"
	"strings"

	"pgregory.net/rapid"
)

// A generator draws one file. It remembers what it has named, so that what
// comes later can name it.
type generator struct {
	t        *rapid.T
	count    int // names given so far, which keeps them apart
	controls []control
	phases   []string
	demands  []demand
	channels []channel
}

type control struct {
	name      string
	axis      string // "", or roll, pitch, yaw
	trim      bool   // it is a trim
	trimmed   bool   // it is an axis with a trim
	detents   []string
	positions []string
}

type demand struct {
	name     string
	axis     string // of its control
	positive bool   // it stays within 0…100 %
}

type channel struct {
	number int
	reach  float64 // no output is further from 0, in percent
}

// Generate draws the text of a right airframe file.
func Generate(t *rapid.T) []byte {
	g := &generator{t: t}
	sections := map[string]tree{}
	g.head(sections)
	sections["controls"] = g.makeControls()
	if phases := g.makePhases(); len(phases.keys) > 0 {
		sections["phases"] = phases
	}
	sections["demands"] = g.makeDemands()
	sections["channels"] = g.makeChannels()
	g.makeParts(sections)

	file := tree{keys: []string{}}
	order := []string{"hingeline", "name", "about", "mass_kg", "still_deg", "airspeed_ms", "wing", "script",
		"controls", "phases", "demands", "channels", "surfaces", "wheels", "motors", "extras"}
	if g.maybe() {
		order = rapid.Permutation(order).Draw(t, "order")
	}
	for _, key := range order {
		if section, ok := sections[key]; ok {
			file.put(key, section)
		}
	}
	w := &writer{t: t}
	return w.file(file)
}

func (g *generator) maybe() bool { return rapid.Bool().Draw(g.t, "maybe") }

func (g *generator) between(low, high int) int {
	return rapid.IntRange(low, high).Draw(g.t, "between")
}

func (g *generator) pick(among ...string) string {
	return rapid.SampledFrom(among).Draw(g.t, "pick")
}

// name makes a name that no other thing has.
func (g *generator) name(nouns ...string) string {
	g.count++
	first := g.pick("Inner", "outer", "small", "Big", "grüner", "second", "tow", "spare", "x-tra")
	middle := strconv.Itoa(g.count)
	return fmt.Sprintf("%s%s%s %s", first, g.pick(" ", "-"), middle, g.pick(nouns...))
}

// said is a name as a file may write it where it is used: capitals, hyphens
// and quotes make no difference.
func (g *generator) said(name string) string {
	switch g.between(0, 7) {
	case 5:
		name = strings.ToUpper(name)
	case 6:
		name = strings.ReplaceAll(name, " ", "-")
	case 7:
		name = strings.ReplaceAll(name, "-", " ")
	}
	return name
}

// named is said as a scalar.
func (g *generator) named(name string) tree {
	return scalar(g.quotes(g.said(name)))
}

func (g *generator) quotes(text string) string {
	switch g.between(0, 9) {
	case 8:
		return `"` + text + `"`
	case 9:
		return "'" + text + "'"
	}
	return text
}

// aka sometimes gives further names.
func (g *generator) aka(n *tree) {
	switch g.between(0, 5) {
	case 0:
		n.put("aka", scalar(g.quotes(g.name("thing"))))
	case 1:
		n.put("aka", list(scalar(g.name("thing")), scalar(g.quotes(g.name("gadget")))))
	}
}

// number is a number of thousandths from low to high, written in one of the
// forms that the unit allows.
func (g *generator) number(low, high float64, units ...string) (tree, float64) {
	value := float64(g.between(int(low), int(high)))
	if rapid.IntRange(0, 3).Draw(g.t, "fraction") == 0 && value < high && value >= 0 {
		value = (value*1000 + float64(g.between(0, 999))) / 1000
	}
	return scalar(g.written(value, units...)), value
}

// thousandths is a number with at most three places.
func thousandths(value float64) string {
	return strings.TrimSuffix(strings.TrimRight(strconv.FormatFloat(value, 'f', 3, 64), "0"), ".")
}

func (g *generator) written(value float64, units ...string) string {
	text := thousandths(value)
	if value > 0 && g.between(0, 9) == 9 {
		text = "+" + text
	}
	if len(units) > 0 && g.between(0, 3) > 0 {
		text += g.pick("", " ") + g.pick(units...)
	}
	if g.between(0, 19) == 19 {
		return `"` + text + `"`
	}
	return text
}

// yes is true or false, in any of the ways to write them.
func (g *generator) yes() tree {
	return scalar(g.quotes(g.pick("true", "false", "yes", "no", "True", "NO")))
}

func (g *generator) percent(low, high float64) tree {
	n, _ := g.number(low, high, "%")
	return n
}

// travel is a percent of which less than 2 must carry its sign.
func (g *generator) travel(low, high float64) (tree, float64) {
	n, value := g.number(low, high, "%")
	if value > -2 && value < 2 && value != 0 {
		n = scalar(thousandths(value) + g.pick("%", " %"))
	}
	return n, value
}

// sides is one percent, or two with the words for the directions.
func (g *generator) sides(axis string, low, high float64) tree {
	if g.between(0, 2) > 0 {
		n, _ := g.travel(low, high)
		return n
	}
	words := []string{"plus", "minus"}
	switch axis {
	case "roll", "yaw":
		words = []string{"right", "left"}
	case "pitch":
		words = []string{"forward", "back"}
	}
	n := tree{keys: []string{}}
	for _, word := range words {
		value, _ := g.travel(low, high)
		n.put(word, value)
	}
	return n
}
