package phrase

// Apart is the outcome for each of its parts or channels alone, in their order.
func (o Outcome) Apart() []Outcome {
	var list []Outcome
	for _, i := range o.Subject.Parts {
		single := o
		single.Subject = Subject{Parts: []int{i}, At: o.Subject.At}
		list = append(list, single)
	}
	for _, i := range o.Subject.Channels {
		single := o
		single.Subject = Subject{Channels: []int{i}, At: o.Subject.At}
		list = append(list, single)
	}
	return list
}

// Title is the name of the outcome's first part or channel, as reports call
// it.
func (v *Vocabulary) Title(o *Outcome) string {
	if len(o.Subject.Channels) > 0 {
		return channelTitle(&v.setup.Channels[o.Subject.Channels[0]])
	}
	return v.setup.Parts[o.Subject.Parts[0]].Name
}
