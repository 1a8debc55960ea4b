package airframes

import (
	"fmt"

	"gopkg.in/yaml.v3"

	"example.com/hingeline/mixcore"
)

// mostShare is the largest share or fixed percent of a mix line, either way.
const mostShare = 200

// readMix reads a channel's mix: the name of a demand, or a list of lines.
func (r *reader) readMix(n *yaml.Node, path, what string, index int) {
	if !readable(n) {
		return
	}
	items := []*yaml.Node{n}
	if n.Kind != yaml.ScalarNode {
		items = r.items(n, "mix of "+what, "a demand or a list of lines such as {add: roll, share: 100%}", maxMixLines)
	} else if leadingDigits(trimSign(n.Value)) != "" {
		r.fail(r.place(n), codeWrongKind, "a fixed percent is a line of a list: mix: ["+n.Value+"]", "mix of %s is %s, want a demand or a list of lines", what, quoted(n.Value))
		return
	}
	for i, item := range items {
		if i > 0 && r.torn(items[i-1], item) {
			r.tornNumber(items[i-1], item)
			continue
		}
		linePath := fmt.Sprintf("%s.%d", path, i)
		r.record(linePath, item)
		r.model.Places.Mix[index] = append(r.model.Places.Mix[index], r.place(item))
		r.setup.Channels[index].Mix = append(r.setup.Channels[index].Mix, r.readLine(item, linePath, what))
	}
}

// readLine reads one line of a mix; what could not be read is a line that adds
// nothing.
func (r *reader) readLine(n *yaml.Node, path, what string) mixcore.MixLine {
	nothing := mixcore.MixLine{Op: mixcore.Fixed}
	if !readable(n) {
		return nothing
	}
	if n.Kind == yaml.ScalarNode {
		return r.shortLine(n, what)
	}
	if r.demandAsKey(n, what) {
		return nothing
	}
	f, ok := r.fields(n, r.place(n), path, "a mix line of "+what, "add", "share", "fixed", "scale_by", "replace_with", "when")
	if !ok {
		return nothing
	}
	line := nothing
	op := f.apart("add", "fixed", "scale_by", "replace_with")
	switch op {
	case "add":
		line.Op, line.Share = mixcore.Add, mixcore.Both(100)
		line.Demand = r.lineDemand(f.get("add"), "mix adds")
		r.readShare(&f, &line)
	case "scale_by":
		line.Op, line.Demand = mixcore.ScaleBy, r.lineDemand(f.get("scale_by"), "mix is scaled by")
	case "fixed", "replace_with":
		if op == "replace_with" {
			line.Op = mixcore.ReplaceWith
		}
		if value, ok := r.number(f.get(op), op, inPercent, -mostShare, mostShare); ok {
			line.Value = mixcore.Percent(value)
		}
	default:
		r.fail(f.at, codeMissingKey, "say add, fixed, scale_by or replace_with", "a mix line of %s does not say what it does", what)
	}
	if f.given("share") && op != "add" && op != "" {
		r.fail(f.placeOf("share"), codeNotTogether, "", `a mix line of %s has "share" without "add"`, what)
	}
	line.When = r.when(&f)
	return line
}

// demandAsKey reports a line whose key is a demand, such as {roll: 50%}: what it means is
// plain, and there is a way to say it.
func (r *reader) demandAsKey(n *yaml.Node, what string) bool {
	if n.Kind != yaml.MappingNode || len(n.Content) == 0 || n.Content[0].Kind != yaml.ScalarNode {
		return false
	}
	key, value := n.Content[0], n.Content[1]
	if _, ok := r.demands.find(key.Value); !ok {
		return false
	}
	share := "100%"
	if value.Kind == yaml.ScalarNode && value.Value != "" {
		share = value.Value
	}
	r.fail(r.place(key), codeUnknownKey, fmt.Sprintf("write {add: %s, share: %s}", tidy(key.Value), share), "a mix line of %s has no setting %s", what, quoted(key.Value))
	return true
}

// shortLine reads a demand, added whole, or a fixed percent.
func (r *reader) shortLine(n *yaml.Node, what string) mixcore.MixLine {
	if leadingDigits(trimSign(n.Value)) != "" {
		value, _ := r.number(n, "a mix line of "+what, inPercent, -mostShare, mostShare)
		return mixcore.MixLine{Op: mixcore.Fixed, Value: mixcore.Percent(value)}
	}
	return mixcore.MixLine{Op: mixcore.Add, Share: mixcore.Both(100), Demand: r.lineDemand(n, "mix adds")}
}

// lineDemand resolves the demand of a line.
func (r *reader) lineDemand(n *yaml.Node, subject string) int {
	name, ok := r.plainName(n, subject)
	if !ok {
		return unresolved
	}
	index, ok := r.lookUp(&r.demands, name, subject, r.place(n))
	if !ok {
		return unresolved
	}
	return index
}

// readShare reads the share of a demand; it may differ for the two directions
// of an axis.
func (r *reader) readShare(f *fields, line *mixcore.MixLine) {
	n := f.get("share")
	if n == nil {
		return
	}
	words := plusMinus
	if n.Kind != yaml.ScalarNode {
		if line.Demand == unresolved {
			return
		}
		demand := r.setup.Demands[line.Demand]
		if demand.From == unresolved || r.setup.Controls[demand.From].Kind == 0 {
			return
		}
		control := r.setup.Controls[demand.From]
		if control.Kind != mixcore.AxisControl {
			r.fail(r.place(n), codeNotTogether, "say one percent for both", "share of %s differs for two directions, but it does not come from an axis", quoted(demand.Name))
			return
		}
		words = sidesOf(control)
	}
	if share, ok := r.sides(n, f.pathOf("share"), "share", words, -mostShare, mostShare); ok {
		line.Share = share
	}
}
