package phrase

import (
	"fmt"

	"example.com/hingeline/mixcore"
	"example.com/hingeline/verify/wording"
)

// subjects reads one or more subjects joined by commas and "and".
func (r *reader) subjects() (Subject, bool) {
	start := r.at
	s, ok := r.subject()
	if !ok {
		return s, false
	}
	for {
		var more Subject
		joined := r.try(func() bool {
			var ok bool
			if !r.joint() {
				return false
			}
			more, ok = r.subject()
			return ok
		})
		if !joined {
			break
		}
		if s.Model || more.Model {
			return s, r.fail(&Problem{Column: more.At.Column, Width: more.At.Width, Code: CodeWrongMotion,
				Message: "the model cannot share a verb with anything else", Hint: "write a sentence for each"})
		}
		if (len(s.Channels) > 0) != (len(more.Channels) > 0) {
			return s, r.fail(&Problem{Column: more.At.Column, Width: more.At.Width, Code: CodeWrongMotion,
				Message: "a part and a channel cannot share one verb", Hint: "write a sentence for each"})
		}
		s.Parts = appendNew(s.Parts, more.Parts)
		s.Channels = appendNew(s.Channels, more.Channels)
	}
	s.At = r.span(start)
	return s, r.problem == nil
}

func appendNew(list, more []int) []int {
	for _, index := range more {
		known := false
		for _, old := range list {
			known = known || old == index
		}
		if !known {
			list = append(list, index)
		}
	}
	return list
}

// subject reads one part, group or channel, or the model.
func (r *reader) subject() (Subject, bool) {
	start := r.at
	s, ok := r.quantified()
	if !ok && r.problem == nil {
		r.at = start
		r.words("the")
		s, ok = r.plain()
	}
	if !ok && r.problem == nil {
		r.at = start
		r.words("the")
		s.Model = r.any("model", "aeroplane", "airplane")
		ok = s.Model
	}
	if !ok || r.problem != nil {
		r.at = start
		return Subject{}, false
	}
	s.At = r.span(start)
	return s, true
}

// quantified reads "both flaps", "all surfaces", "every surface".
func (r *reader) quantified() (Subject, bool) {
	both := r.words("both")
	if !both && !r.any("all", "every", "each") {
		return Subject{}, false
	}
	start := r.at
	r.words("the")
	if r.any("surface", "surfaces") {
		return Subject{Parts: r.surfaces()}, r.countBoth(both, start, len(r.surfaces()))
	}
	if r.any("channel", "channels") {
		all := make([]int, len(r.setup.Channels))
		for i := range all {
			all[i] = i
		}
		return Subject{Channels: all}, r.countBoth(both, start, len(all))
	}
	found, words := r.groups.find(r.tokens[r.at:])
	if single, more := r.parts.find(r.tokens[r.at:]); more > words {
		found, words = single, more
	}
	if words == 0 {
		return Subject{}, false
	}
	r.at += words
	return Subject{Parts: found.indices}, r.countBoth(both, start, len(found.indices))
}

// countBoth holds "both" to its word.
func (r *reader) countBoth(both bool, from, count int) bool {
	if count == 0 {
		return r.fail(across(r.tokens[from], r.last(), CodeUnknownName, "the model has none of these", ""))
	}
	if both && count != 2 {
		return r.fail(across(r.tokens[from], r.last(), CodeUnclearName,
			fmt.Sprintf("both, but there are %d", count), "write \"all\" or name the two"))
	}
	return true
}

// surfaces are all hinged surfaces.
func (r *reader) surfaces() []int {
	var list []int
	for i := range r.setup.Parts {
		p := &r.setup.Parts[i]
		if p.Motion == mixcore.UpDown || p.Motion == mixcore.LeftRight && !isWheel(p) {
			list = append(list, i)
		}
	}
	return list
}

func isWheel(p *mixcore.Part) bool { return len(kindWords(p)) == 2 }

// plain reads the name of a part or group, or a channel, without an article.
func (r *reader) plain() (Subject, bool) {
	rest := r.tokens[r.at:]
	channel, channelWords := r.channelName()
	single, words := r.parts.find(rest)
	group, groupWords := r.groups.find(rest)
	switch {
	case channelWords > words && channelWords > groupWords:
		r.at += channelWords
		return Subject{Channels: channel}, len(channel) > 0
	case words > 0 && (words > groupWords || words == groupWords && single.sure):
		r.at += words
		if len(single.indices) > 1 && !single.sure {
			return Subject{}, r.fail(across(rest[0], r.last(), CodeUnclearName,
				fmt.Sprintf("%q could be %s", joinText(rest[:words]), wording.OneOf(r.partNames(single.indices))),
				fmt.Sprintf("write the whole name, or \"the %s\" for all of them", plural(joinText(rest[:words])))))
		}
		return Subject{Parts: single.indices}, true
	case groupWords > 0:
		r.at += groupWords
		return Subject{Parts: group.indices}, true
	}
	if r.words("surfaces") {
		return Subject{Parts: r.surfaces()}, r.countBoth(false, r.at-1, len(r.surfaces()))
	}
	return Subject{}, false
}

// channelName looks for "channel 3" or "starboard flap channel" and says how
// many tokens it takes.
func (r *reader) channelName() (indices []int, words int) {
	rest := r.tokens[r.at:]
	if rest[0].text == "channel" && len(rest) > 1 && rest[1].kind == numberToken {
		for i := range r.setup.Channels {
			if float64(r.setup.Channels[i].Number) == rest[1].number {
				return []int{i}, 2
			}
		}
		r.fail(across(rest[0], rest[1], CodeUnknownName, "the model has no channel "+rest[1].text, r.channelHint()))
		return nil, 2
	}
	found, n := r.channels.find(rest)
	if n == 0 || rest[n].text != "channel" {
		return nil, 0
	}
	if len(found.indices) > 1 {
		r.fail(across(rest[0], rest[n], CodeUnclearName, "several channels have this name", "write the channel's number"))
	}
	return found.indices, n + 1
}

func (r *reader) channelHint() string {
	if len(r.setup.Channels) == 0 {
		return ""
	}
	list := make([]string, len(r.setup.Channels))
	for i := range r.setup.Channels {
		list[i] = fmt.Sprint(r.setup.Channels[i].Number)
	}
	return "it has channel " + wording.OneOf(list)
}
