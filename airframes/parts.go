package airframes

import (
	"fmt"
	"math"
	"slices"
	"strings"

	"gopkg.in/yaml.v3"

	"example.com/hingeline/airframes/diag"
	"example.com/hingeline/mixcore"
)

// readParts reads the sections of what moves on the model, always in the same
// order: surfaces, wheels, motors, extras.
func (r *reader) readParts(f *fields) {
	for _, section := range []struct {
		key  string
		read func(e entry, index int)
	}{
		{"surfaces", r.readSurface}, {"wheels", r.readWheel}, {"motors", r.readMotor}, {"extras", r.readExtra},
	} {
		for _, e := range r.namedEntries(f.get(section.key), section.key, section.key, maxParts) {
			before := r.count()
			index := r.addPart(e)
			section.read(e, index)
			if r.count() > before {
				r.broken[index] = true
			}
		}
	}
	if n := len(r.setup.Parts); n > maxParts {
		r.fail(r.model.Places.Parts[maxParts], codeTooMany, "", "the model has %d parts, want at most %d", n, maxParts)
		r.sound = false
	}
}

// addPart makes room for a part.
func (r *reader) addPart(e entry) int {
	index := len(r.setup.Parts)
	stops := mixcore.Stops{Plus: mixcore.Degrees(math.Inf(1)), Minus: mixcore.Degrees(math.Inf(1))}
	r.setup.Parts = append(r.setup.Parts, mixcore.Part{Name: e.name, Stops: stops})
	r.model.PartAka = append(r.model.PartAka, nil)
	r.model.Places.Parts = append(r.model.Places.Parts, e.at)
	r.drivePaths = append(r.drivePaths, nil)
	r.add(&r.parts, e.name, index, e.at)
	return index
}

// setKind gives a part its kind and the motion that goes with it.
func (r *reader) setKind(index int, kind mixcore.Kind) {
	part := &r.setup.Parts[index]
	info, ok := kind.Info()
	if !ok {
		return
	}
	part.Kind, part.Motion = info.Kind, info.Motion
}

// readKind reads a part's kind, or takes it from the last words of its name.
func (r *reader) readKind(f *fields, e entry, index int, kinds []string) {
	if f.given("kind") {
		if kind, ok := r.word(f.get("kind"), "kind of "+f.what, kinds...); ok {
			r.setKind(index, mixcore.Kind(kind))
		}
		return
	}
	name := " " + FoldName(e.name)
	for _, kind := range kinds {
		if strings.HasSuffix(name, " "+FoldName(kind)) {
			r.setKind(index, mixcore.Kind(kind))
			return
		}
	}
	last := name[strings.LastIndex(name, " ")+1:]
	hint := "say kind: " + listed(kinds, "or")
	if best, ok := r.closest(last, kinds); ok {
		hint = "say kind: " + best
	}
	f.missing("kind", hint)
}

// kindsOf are the kinds with one of the motions, wheels left out.
func kindsOf(motions ...mixcore.Motion) []string {
	var kinds []string
	for _, info := range mixcore.Kinds {
		if slices.Contains(motions, info.Motion) && !strings.HasSuffix(string(info.Kind), "wheel") {
			kinds = append(kinds, string(info.Kind))
		}
	}
	return kinds
}

// readSide reads a part's side, or takes it from its name. It is false if the
// side is not known.
func (r *reader) readSide(f *fields, e entry, index int) bool {
	inName, twice := sideInName(e.name)
	part := &r.setup.Parts[index]
	if !f.given("side") {
		if twice {
			r.fail(e.at, codeMissingKey, "say side: port, starboard or centre", "the name %s holds both sides", quoted(e.name))
			return false
		}
		part.Side = inName
		r.checkSideInAka(f.what, index)
		return true
	}
	word, ok := r.word(f.get("side"), "side of "+f.what, "port", "starboard", "centre", "left", "right")
	if !ok {
		return false
	}
	part.Side = sideWords[word]
	if !twice && inName != mixcore.Centre && inName != part.Side {
		r.fail(f.placeOf("side"), codeAgainstName, "change the name or the side", "%s is on the side %q, but its name says otherwise", f.what, word)
		return true
	}
	r.checkSideInAka(f.what, index)
	return true
}

// sideInName is the side that a name says; twice if it says both.
func sideInName(name string) (side mixcore.Side, twice bool) {
	for _, word := range strings.Fields(FoldName(name)) {
		if said := sideWords[word]; said != mixcore.Centre {
			twice = twice || side != mixcore.Centre && side != said
			side = said
		}
	}
	if twice {
		side = mixcore.Centre
	}
	return side, twice
}

// channelOf resolves the channel that a servo, motor or extra is on.
func (r *reader) channelOf(f *fields) int {
	n := f.require("channel", "say which channel moves it, such as channel: 3")
	if n == nil {
		return unresolved
	}
	text, ok := r.text(n, "channel of "+f.what, "a channel number")
	if !ok {
		return unresolved
	}
	for _, c := range r.setup.Channels {
		if c.Name != "" && FoldName(c.Name) == FoldName(text) {
			r.fail(r.place(n), codeBadNumber, fmt.Sprintf("write %d, the channel of that name", c.Number), "channel of %s is %s, want its number", f.what, quoted(text))
			return unresolved
		}
	}
	number, ok := r.wholeNumber(r.place(n), text, "channel of "+f.what, 1, mixcore.MaxChannels)
	if !ok {
		return unresolved
	}
	index, ok := r.channelAt[number]
	if !ok {
		if !r.channels.absent {
			r.fail(r.place(n), codeUnknownName, "there is "+listed(r.channelNumbers(), "and"), "%s is on channel %d, which the file does not have", f.what, number)
		}
		return unresolved
	}
	return index
}

func (r *reader) channelNumbers() []string {
	numbers := make([]string, len(r.setup.Channels))
	for i, c := range r.setup.Channels {
		numbers[i] = "channel " + plainNumber(float64(c.Number))
	}
	return numbers
}

// partFields reads the settings of a part, with its further names.
func (r *reader) partFields(e entry, index int, sort string, allowed ...string) (fields, bool) {
	if readable(e.value) && e.value.Kind == yaml.ScalarNode {
		r.fail(r.place(e.value), codeWrongKind, "write {channel: 3, …}", "%s %s is %s, want settings in brackets or below it", sort, quoted(e.name), quoted(e.value.Value))
		return fields{}, false
	}
	f, ok := r.fields(e.value, e.at, e.path, sort+" "+quoted(e.name), allowed...)
	if ok {
		r.model.PartAka[index], r.akaAt[index] = r.aka(&f, &r.parts, index)
	}
	return f, ok
}

// plainDrive is the drive of a part that has no linkage and no table.
func (r *reader) plainDrive(f *fields, index int) {
	drive := mixcore.Drive{Channel: r.channelOf(f), Servo: plainServo()}
	r.setup.Parts[index].Drives = []mixcore.Drive{drive}
	r.drivePaths[index] = []string{f.path}
}

// drivePlace is the place of the first of some keys that a part's drive has, or
// of the part.
func (r *reader) drivePlace(part, drive int, keys ...string) diag.Place {
	if part < 0 || part >= len(r.drivePaths) || drive < 0 || drive >= len(r.drivePaths[part]) {
		return r.source.Whole()
	}
	for _, key := range keys {
		if at, ok := r.model.Places.Fields[r.drivePaths[part][drive]+"."+key]; ok {
			return at
		}
	}
	return r.model.Places.Parts[part]
}
