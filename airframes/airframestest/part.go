package airframestest

import (
	"math"
	"strconv"
)

// hinge is in which words a part moves and stands.
type hinge struct{ plus, minus, horn, hornOff string }

func (g *generator) makeParts(sections map[string]tree) {
	surfaces := tree{keys: []string{}}
	for range g.between(1, 4) {
		name, n := g.surface()
		surfaces.put(g.quotes(name), n)
	}
	sections["surfaces"] = surfaces
	if g.maybe() {
		sections["wheels"] = g.wheels()
	}
	if g.maybe() {
		sections["motors"] = g.makeMotors()
	}
	if g.maybe() {
		sections["extras"] = g.extras()
	}
}

func (g *generator) surface() (string, tree) {
	kind := g.pick("aileron", "flap", "flaperon", "elevator", "elevon", "taileron", "rudder", "v-tail", "canard", "spoiler", "airbrake")
	n := tree{keys: []string{}}
	name := g.name(kind)
	if g.between(0, 3) == 0 {
		name = g.name("surface")
		n.put("kind", scalar(kind))
	}
	g.side(&name, &n)
	h := hinge{"down", "up", "above", "below"}
	if kind == "rudder" {
		h = hinge{"left", "right", "starboard", "port"}
	}
	g.drives(&n, h)
	if g.maybe() {
		chord, _ := g.number(10, 200, "mm")
		n.put("chord_mm", chord)
	}
	if g.maybe() {
		from, _ := g.number(0, 300, "mm")
		to, _ := g.number(301, 2000, "mm")
		n.put("span_mm", list(from, to))
	}
	g.stops(&n, h)
	g.placement(&n)
	if g.between(0, 3) == 0 {
		n.put("tilt_deg", scalar(g.written(float64(g.between(-90, 90)), "°", "deg")))
	}
	g.aka(&n)
	return name, n
}

// placement says where a part is from the balance point, or says nothing.
func (g *generator) placement(n *tree) {
	for _, key := range []string{"aft_mm", "up_mm"} {
		if g.between(0, 3) == 0 {
			n.put(key, scalar(g.written(float64(g.between(-10000, 10000)), "mm")))
		}
	}
}

// sidePlacement is side and placement of a part that may say how far out it is;
// then it must be on a side.
func (g *generator) sidePlacement(name *string, n *tree) {
	if g.maybe() {
		g.side(name, n)
		g.placement(n)
		return
	}
	*name = g.pick("port ", "starboard ", "left ", "Right ") + *name
	out, _ := g.number(0, 9999, "mm")
	n.put("out_mm", out)
	g.placement(n)
}

// side says the side in the name, under side, in both or nowhere.
func (g *generator) side(name *string, n *tree) {
	switch g.between(0, 4) {
	case 0:
		*name = g.pick("port ", "left ") + *name
	case 1:
		*name = g.pick("starboard ", "Right ") + *name
	case 2:
		n.put("side", scalar(g.pick("port", "starboard", "centre", "left", "right")))
	case 3:
		*name = "port " + *name
		n.put("side", scalar(g.pick("port", "left")))
	}
}

func (g *generator) stops(n *tree, h hinge) {
	if g.maybe() {
		return
	}
	stops := tree{keys: []string{}}
	words := []string{h.plus, h.minus}
	if g.between(0, 3) == 0 {
		words = words[:1]
	}
	for _, word := range words {
		stop, _ := g.number(0, 90, "°", "deg")
		stops.put(word, stop)
	}
	n.put("stops", stops)
}

// drives puts one servo, or a list of them.
func (g *generator) drives(n *tree, h hinge) {
	if g.between(0, 4) > 0 {
		g.drive(n, h)
		return
	}
	servos := list()
	for range g.between(1, 3) {
		one := tree{keys: []string{}}
		g.drive(&one, h)
		servos.list = append(servos.list, one)
	}
	n.put("servos", servos)
}

func (g *generator) drive(n *tree, h hinge) {
	c := g.channels[g.between(0, len(g.channels)-1)]
	n.put("channel", scalar(strconv.Itoa(c.number)))
	if g.maybe() {
		n.put("measured", g.measured(c, h))
		if g.between(0, 3) == 0 {
			n.put("servo", g.servo(c))
		}
		return
	}
	n.put("servo", g.servo(c))
	n.put("linkage", g.linkage(h))
}

func (g *generator) measured(c channel, h hinge) tree {
	n := tree{keys: []string{}}
	reach := math.Ceil(c.reach)
	if g.between(0, 2) == 0 {
		n.put(g.written(reach*float64(1-2*g.between(0, 1)), "%"), scalar(strconv.Itoa(g.between(1, 60))+g.pick("° ", " deg ", "")+" "+g.pick(h.plus, h.minus)))
		return n
	}
	steps := g.between(1, 16) * 2
	angle := -60.0
	direction := float64(1 - 2*g.between(0, 1))
	for i := range steps + 1 {
		angle += float64(g.between(10, 119000/(steps+1))) / 1000
		signed := math.Round(angle*direction*1000) / 1000
		word := h.plus
		if signed < 0 {
			word = h.minus
		}
		x := math.Round(reach*(2*float64(i)/float64(steps)-1)*1000) / 1000
		n.put(g.written(x, "%"), scalar(thousandths(math.Abs(signed))+g.pick("° ", "°", " deg ")+" "+word))
	}
	return n
}

// servo draws a servo whose arm swings no more than 50 degrees.
func (g *generator) servo(c channel) tree {
	if g.between(0, 2) == 0 && c.reach <= 110 {
		return scalar(g.pick("aft", "fore"))
	}
	n := tree{keys: []string{}}
	n.put("plus_swings", scalar(g.pick("aft", "fore")))
	swing, _ := g.number(1, math.Floor(4900/math.Max(c.reach, 55)), "°", "deg")
	n.put("swing_deg", swing)
	if g.maybe() {
		most, _ := g.number(1, 180, "°", "deg")
		n.put("max_deg", most)
	}
	if g.maybe() {
		speed, _ := g.number(0, 4, "s")
		n.put("seconds_per_60deg", speed)
	}
	if g.maybe() {
		torque, _ := g.number(0, 300)
		n.put("torque_ncm", torque)
	}
	return n
}

// linkage draws a linkage that neither locks nor runs over centre within 50
// degrees of arm swing: a short arm, a longer horn, a long pushrod.
func (g *generator) linkage(h hinge) tree {
	n := tree{keys: []string{}}
	arm, armValue := g.number(5, 12, "mm")
	horn, hornValue := g.number(20, 40, "mm")
	pivots, pivotsValue := g.number(300, 900, "mm")
	n.put("arm_mm", arm)
	n.put("horn_mm", horn)
	n.put("pivots_mm", pivots)
	offsetValue, armDeg, hornDeg, crossed := 0.0, 90.0, 90.0, false
	var value tree
	if g.maybe() {
		value, offsetValue = g.number(-15, 15, "mm")
		n.put("offset_mm", value)
	}
	if g.maybe() {
		value, armDeg = g.number(80, 100, "°", "deg")
		n.put("arm_deg", value)
	}
	if g.maybe() {
		value, hornDeg = g.number(80, 100, "°", "deg")
		n.put("horn_deg", value)
	}
	side := g.pick(h.horn, h.hornOff)
	n.put("horn", scalar(g.otherWord(side)))
	if g.maybe() {
		arm := g.pick(h.horn, h.hornOff)
		crossed = arm != side
		n.put("arm", scalar(g.otherWord(arm)))
	}
	if side == h.hornOff {
		offsetValue = -offsetValue
	}
	if g.between(0, 2) == 0 {
		n.put("pushrod_mm", scalar(g.written(pushrod(armValue, hornValue, pivotsValue, offsetValue, armDeg, hornDeg, crossed), "mm")))
	}
	return n
}

// otherWord is left or right for port or starboard, sometimes.
func (g *generator) otherWord(side string) string {
	other := map[string]string{"port": "left", "starboard": "right"}[side]
	if other != "" && g.between(0, 3) == 0 {
		return other
	}
	return side
}

// pushrod is how long the angles at neutral need the pushrod to be.
func pushrod(arm, horn, pivots, offset, armDeg, hornDeg float64, crossed bool) float64 {
	armSin, armCos := math.Sincos(armDeg * math.Pi / 180)
	hornSin, hornCos := math.Sincos(hornDeg * math.Pi / 180)
	if crossed {
		armSin = -armSin
	}
	length := math.Hypot(pivots+horn*hornCos-arm*armCos, offset+horn*hornSin-arm*armSin)
	return math.Round(length*1000) / 1000
}

func (g *generator) wheels() tree {
	n, wheel := tree{keys: []string{}}, tree{keys: []string{}}
	name := g.name("wheel")
	switch g.between(0, 2) {
	case 0:
		name = g.pick("nose ", "tail ") + name
	case 1:
		wheel.put("place", scalar(g.pick("nose", "tail")))
	}
	h := hinge{"left", "right", "starboard", "port"}
	g.drives(&wheel, h)
	g.stops(&wheel, h)
	g.side(&name, &wheel)
	g.aka(&wheel)
	n.put(name, wheel)
	return n
}

func (g *generator) makeMotors() tree {
	n := tree{keys: []string{}}
	for range g.between(1, 2) {
		motor := tree{keys: []string{}}
		name := g.name("motor")
		motor.put("channel", scalar(strconv.Itoa(g.channels[g.between(0, len(g.channels)-1)].number)))
		g.sidePlacement(&name, &motor)
		if g.maybe() {
			idle, _ := g.number(900, 1200, "µs", "us")
			full, _ := g.number(1800, 2100, "µs", "us")
			motor.put("idle_us", idle)
			motor.put("full_us", full)
		}
		if g.maybe() {
			motor.put("stopped_below", g.percent(0, 10))
		}
		if g.maybe() {
			motor.put("stopped_when", scalar(g.condition(1)))
		}
		g.aka(&motor)
		n.put(name, motor)
	}
	return n
}

func (g *generator) extras() tree {
	n := tree{keys: []string{}}
	for range g.between(1, 3) {
		extra := tree{keys: []string{}}
		kind := g.pick("retract", "hook", "door", "brake", "release", "drag rudder", "other")
		name := g.name(kind)
		if g.maybe() {
			name = g.name("thing")
			extra.put("kind", scalar(kind))
		}
		extra.put("channel", scalar(strconv.Itoa(g.channels[g.between(0, len(g.channels)-1)].number)))
		if g.maybe() {
			extra.put("plus_moves", scalar(g.pick("out", "in")))
		}
		g.sidePlacement(&name, &extra)
		g.aka(&extra)
		n.put(name, extra)
	}
	return n
}
