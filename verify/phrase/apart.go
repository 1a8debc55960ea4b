package phrase

import "example.com/hingeline/verify/wording"

// Apart is the outcome for each of its parts or channels alone, in their order;
// of one that asks something of the model or of several parts together, itself.
func (o Outcome) Apart() []Outcome {
	if o.together() {
		return []Outcome{o}
	}
	var list []Outcome
	for _, i := range o.Subject.Parts {
		single := o
		single.Subject = Subject{Parts: []int{i}, Servos: o.Subject.Servos, At: o.Subject.At}
		list = append(list, single)
	}
	for _, i := range o.Subject.Channels {
		single := o
		single.Subject = Subject{Channels: []int{i}, At: o.Subject.At}
		list = append(list, single)
	}
	return list
}

// together is true for an outcome that is judged as a whole.
func (o *Outcome) together() bool { return o.Subject.Model || o.Verb == AddsToRoll }

// TheModel is the title of the model as a subject.
const TheModel = "the model"

// Title is what an outcome of one subject is about, as reports call it: a part,
// a channel, the model, or several parts together.
func (v *Vocabulary) Title(o *Outcome) string {
	switch s := &o.Subject; {
	case s.Model:
		return TheModel
	case len(s.Channels) > 0:
		return channelTitle(&v.setup.Channels[s.Channels[0]])
	case o.together():
		return v.named(s.Parts)
	default:
		return v.partTitle(s.Parts[0], o)
	}
}

// partTitle is one part of an outcome's subject, or its servo.
func (v *Vocabulary) partTitle(part int, o *Outcome) string {
	name := v.setup.Parts[part].Name
	switch {
	case o.Verb == ServosAgree:
		return name + " servos"
	case o.Subject.Servos:
		return name + " servo"
	}
	return name
}

// named lists parts for people: "port flap and starboard flap".
func (v *Vocabulary) named(parts []int) string {
	names := make([]string, len(parts))
	for i, part := range parts {
		names[i] = v.setup.Parts[part].Name
	}
	return wording.Listed(names)
}
