package airframes

import (
	"slices"
	"strconv"

	"gopkg.in/yaml.v3"

	"example.com/hingeline/airframes/diag"
	"example.com/hingeline/mixcore"
)

// The pulses that a channel may put out, in microseconds, and the same as
// output percent.
const (
	lowestPulse  = 500
	highestPulse = 2500
	mostOutput   = 200
)

// channelEntry is a channel of the file with its number.
type channelEntry struct {
	entry
	number int
}

// readChannels reads the section channels, in ascending order of their numbers.
func (r *reader) readChannels(section *yaml.Node) {
	r.channels.absent = !readable(section) || section.Kind != yaml.MappingNode
	var all []channelEntry
	at := map[int]diag.Place{}
	for _, e := range r.entries(section, "channels", "channels", mixcore.MaxChannels) {
		number, ok := r.wholeNumber(e.at, e.name, "a channel", 1, mixcore.MaxChannels)
		if !ok {
			r.channels.absent = true
			continue
		}
		if before, twice := at[number]; twice {
			r.fail(e.at, codeDuplicateKey, "it is on line "+strconv.Itoa(before.Line)+" as well", "channel %d is given twice", number)
			continue
		}
		at[number] = e.at
		all = append(all, channelEntry{e, number})
	}
	slices.SortFunc(all, func(a, b channelEntry) int { return a.number - b.number })
	for i, e := range all {
		r.channelAt[e.number] = i
		r.setup.Channels = append(r.setup.Channels, mixcore.Channel{
			Number: e.number, Limit: 100, EndPoints: mixcore.Both(100),
			PulseMin: 1000, PulseMax: 2000, Failsafe: mixcore.Failsafe{Hold: true},
		})
		r.model.Places.Channels = append(r.model.Places.Channels, e.at)
		r.model.Places.Mix = append(r.model.Places.Mix, nil)
		r.readChannel(e, i)
	}
}

// wholeNumber reads a number without a fraction or unit.
func (r *reader) wholeNumber(at diag.Place, text, what string, low, high int) (int, bool) {
	value, ok := r.numberText(at, text, what, inNothing, float64(low), float64(high))
	if !ok {
		return 0, false
	}
	if leadingDigits(text) != text {
		r.fail(at, codeBadNumber, "write "+strconv.Itoa(int(value)), "%s is %s, want a whole number", what, quoted(text))
		return 0, false
	}
	return int(value), true
}

func (r *reader) readChannel(e channelEntry, index int) {
	if !readable(e.value) {
		return
	}
	what := "channel " + strconv.Itoa(e.number)
	if e.value.Kind == yaml.ScalarNode {
		r.record(e.path+".mix", e.value)
		r.readMix(e.value, e.path+".mix", what, index)
		return
	}
	f, ok := r.fields(e.value, e.at, e.path, what,
		"name", "mix", "limit", "reversed", "end_points", "sub_trim", "pulse_us", "slow", "failsafe")
	if !ok {
		return
	}
	channel := &r.setup.Channels[index]
	if n := f.get("name"); n != nil {
		if name, ok := r.plainName(n, "name of "+what); ok {
			channel.Name = name
			r.add(&r.channels, name, index, r.place(n))
		}
	}
	r.readMix(f.require("mix", "say what it is told, such as mix: roll"), f.pathOf("mix"), what, index)
	if limit, ok := r.number(f.get("limit"), "limit of "+what, inTravel, 1, 150); ok {
		channel.Limit = mixcore.Percent(limit)
	}
	if n := f.get("reversed"); n != nil {
		channel.Reversed, _ = r.yes(n, "reversed")
	}
	if ends, ok := r.sides(f.get("end_points"), f.pathOf("end_points"), "end_points of "+what, plusMinus, 0, 150); ok {
		channel.EndPoints = ends
	}
	if sub, ok := r.number(f.get("sub_trim"), "sub_trim of "+what, inPercent, -100, 100); ok {
		channel.SubTrim = mixcore.Percent(sub)
	}
	if slow, ok := r.number(f.get("slow"), "slow of "+what, inSeconds, 0, maxFade); ok {
		channel.Slow = mixcore.Seconds(slow)
	}
	r.readPulse(&f, what, channel)
	r.readFailsafe(&f, what, channel)
}

// readPulse reads the pulse limits.
func (r *reader) readPulse(of *fields, what string, channel *mixcore.Channel) {
	n := of.get("pulse_us")
	if n == nil {
		return
	}
	f, ok := r.fields(n, of.placeOf("pulse_us"), of.pathOf("pulse_us"), "pulse_us of "+what, "min", "max")
	if !ok {
		return
	}
	if low, ok := r.number(f.get("min"), "min of pulse_us", inPulse, lowestPulse, highestPulse); ok {
		channel.PulseMin = mixcore.Microseconds(low)
	}
	if high, ok := r.number(f.get("max"), "max of pulse_us", inPulse, lowestPulse, highestPulse); ok {
		channel.PulseMax = mixcore.Microseconds(high)
	}
	if channel.PulseMin >= channel.PulseMax {
		r.fail(of.placeOf("pulse_us"), codeOutOfRange, "min is the shorter pulse, max the longer one", "pulse_us of %s goes from %s to %s, want min below max", what,
			inPulse.show(float64(channel.PulseMin)), inPulse.show(float64(channel.PulseMax)))
	}
}

// failsafeUnit is the hint for a failsafe without a unit: the one of the two that it can
// have. A bare 0 may be meant as a stopped motor, which it is not.
func failsafeUnit(value float64) string {
	switch {
	case value >= lowestPulse && value <= highestPulse:
		return "write " + plainNumber(value) + " µs"
	case value == 0:
		return "write 0% if you mean the middle of its travel; a motor is usually stopped at -100%"
	case max(value, -value) <= mostOutput:
		return "write " + plainNumber(value) + "%"
	}
	return ""
}

// readFailsafe reads what the channel puts out when the signal is lost: hold,
// a percent or a pulse, with its unit, since 100 could be either.
func (r *reader) readFailsafe(f *fields, what string, channel *mixcore.Channel) {
	n := f.get("failsafe")
	const want = "hold, a percent such as -100%, or a pulse such as 1000 µs"
	text, ok := r.text(n, "failsafe of "+what, want)
	if !ok || FoldName(text) == "hold" {
		return
	}
	value, suffix, wrong := splitNumber(text)
	u, high, low := inPercent, float64(mostOutput), -float64(mostOutput)
	switch {
	case wrong != nil && leadingDigits(trimSign(text)) == "":
		r.fail(r.place(n), codeUnknownWord, r.meantFailsafe(text), "failsafe of %s is %s, want %s", what, quoted(text), want)
		return
	case wrong == nil && suffix == "":
		r.fail(r.place(n), codeBadUnit, failsafeUnit(value), "failsafe of %s is %s without a unit, want %s", what, quoted(text), want)
		return
	case slices.Contains(inPulse.suffixes, suffix):
		u, low, high = inPulse, lowestPulse, highestPulse
	}
	value, ok = r.number(n, "failsafe of "+what, u, low, high)
	if !ok {
		return
	}
	output := value
	if u.shown == inPulse.shown {
		output = (value - 1500) / 5
	}
	pulse := mixcore.Microseconds(1500 + 5*output)
	if channel.PulseMin < channel.PulseMax && (pulse < channel.PulseMin || pulse > channel.PulseMax) {
		r.fail(r.place(n), codeOutOfRange, "set pulse_us wider, or the failsafe nearer", "failsafe of %s is %s, want one within its pulse limits, %s", what,
			inPulse.show(float64(pulse)), inPulse.between(float64(channel.PulseMin), float64(channel.PulseMax)))
		return
	}
	channel.Failsafe = mixcore.Failsafe{Output: mixcore.Percent(output)}
}

// meantFailsafe is the hint for a word other than hold.
func (r *reader) meantFailsafe(text string) string {
	switch FoldName(text) {
	case "off", "stop", "stopped", "cut", "idle", "closed", "min", "low":
		return "say the output that stops the motor, usually -100%"
	case "neutral", "centre", "center", "centred", "none":
		return "say the output, such as 0%"
	}
	return r.suggestion(text, []string{"hold"}, "")
}

func trimSign(text string) string {
	if text != "" && (text[0] == '+' || text[0] == '-') {
		return text[1:]
	}
	return text
}
