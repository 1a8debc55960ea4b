package airframes

import (
	"fmt"
	"strings"

	"gopkg.in/yaml.v3"

	"example.com/hingeline/airframes/diag"
	"example.com/hingeline/mixcore"
)

// readDemands reads the section demands.
func (r *reader) readDemands(section *yaml.Node) {
	r.demands.absent = !readable(section) || section.Kind != yaml.MappingNode
	for i, e := range r.namedEntries(section, "demands", "demands", maxDemands) {
		full := mixcore.Rate{Throw: mixcore.Both(100)}
		r.setup.Demands = append(r.setup.Demands, mixcore.Demand{Name: e.name, From: unresolved, Rates: []mixcore.Rate{full}, Trim: mixcore.NoTrim})
		r.model.Places.Demands = append(r.model.Places.Demands, e.at)
		r.model.Places.Rates = append(r.model.Places.Rates, []diag.Place{e.at})
		r.add(&r.demands, e.name, i, e.at)
		r.readDemand(e, i)
	}
}

// unresolved stands for an index of something that could not be found.
const unresolved = -1

func (r *reader) readDemand(e entry, index int) {
	if !readable(e.value) {
		return
	}
	what := "demand " + quoted(e.name)
	if e.value.Kind == yaml.ScalarNode {
		control, _ := r.demandFrom(e.value, what, index)
		if control.Kind == mixcore.SwitchControl {
			r.fail(e.at, codeMissingKey, "write {from: "+control.Name+", values: "+exampleValues(control)+"}", `%s comes from a switch and has no "values"`, what)
		}
		return
	}
	f, ok := r.fields(e.value, e.at, e.path, what, "from", "throw", "expo", "rates", "curve", "smooth", "trim", "values")
	if !ok {
		return
	}
	control, _ := r.demandFrom(f.require("from", "say which control it comes from, such as from: roll stick"), what, index)
	f.apart("rates", "throw")
	f.apart("rates", "expo")
	if f.given("rates") {
		r.readRates(&f, what, control, index)
	} else {
		r.setup.Demands[index].Rates[0] = r.readRate(&f, control)
		if f.given("throw") {
			r.model.Places.Rates[index][0] = f.placeOf("throw")
		}
	}
	r.readCurve(&f, what, control, index)
	r.readValues(&f, what, control, index)
	r.leaveTrimOut(&f, what, control, index)
}

// demandFrom resolves the control that a demand comes from; its kind is 0 if
// there is none.
func (r *reader) demandFrom(n *yaml.Node, what string, index int) (mixcore.Control, bool) {
	if n != nil && n.Kind != yaml.ScalarNode {
		r.wrongKind(n, "from of "+what, "a control")
		return mixcore.Control{}, false
	}
	name, ok := r.plainName(n, "from of "+what)
	if !ok {
		return mixcore.Control{}, false
	}
	i, ok := r.lookUp(&r.controls, name, what+" comes from", r.place(n))
	if !ok {
		return mixcore.Control{}, false
	}
	control := r.setup.Controls[i]
	if control.Kind == mixcore.TrimControl {
		r.fail(r.place(n), codeNotTogether, "name the stick; its trim is added by itself", "%s comes from a trim, want another control", what)
		return mixcore.Control{}, false
	}
	demand := &r.setup.Demands[index]
	demand.From = i
	if trim, ok := r.trims[i]; ok {
		demand.Trim, demand.TrimRange = trim.control, trim.share
	}
	return control, true
}

// readRate reads the throw and expo of a demand or of one of its rates.
func (r *reader) readRate(f *fields, control mixcore.Control) mixcore.Rate {
	rate := mixcore.Rate{Throw: mixcore.Both(100)}
	if n := f.get("throw"); n != nil {
		words := sidesOf(control)
		if control.Kind == 0 {
			words = plusMinus
		}
		if control.Kind != 0 || n.Kind == yaml.ScalarNode {
			if throw, ok := r.sides(n, f.pathOf("throw"), "throw", words, 0, 100); ok {
				rate.Throw = throw
			}
		}
	}
	if n := f.get("expo"); n != nil {
		if control.Kind == mixcore.SwitchControl {
			r.fail(f.placeOf("expo"), codeNotTogether, "say the value of each position instead", "%s has expo, which a demand from a switch cannot have", f.what)
		} else if expo, ok := r.number(n, "expo", inPercent, -100, 100); ok {
			rate.Expo = mixcore.Percent(expo)
		}
	}
	return rate
}

func (r *reader) readRates(f *fields, what string, control mixcore.Control, index int) {
	items := r.items(f.get("rates"), "rates of "+what, "a list of rates such as {throw: 80%, expo: 20%}", maxRates)
	if len(items) == 0 {
		return
	}
	demand := &r.setup.Demands[index]
	demand.Rates, r.model.Places.Rates[index] = nil, nil
	for i, item := range items {
		path := fmt.Sprintf("%s.%d", f.pathOf("rates"), i)
		r.record(path, item)
		at := r.place(item)
		rate := mixcore.Rate{Throw: mixcore.Both(100)}
		if g, ok := r.fields(item, at, path, "a rate of "+what, "when", "throw", "expo"); ok {
			rate = r.readRate(&g, control)
			rate.When = r.when(&g)
			r.checkRateOrder(&g, what, i, len(items))
		}
		demand.Rates = append(demand.Rates, rate)
		r.model.Places.Rates[index] = append(r.model.Places.Rates[index], at)
	}
}

// checkRateOrder wants a condition for every rate but the last.
func (r *reader) checkRateOrder(g *fields, what string, i, count int) {
	last := i == count-1
	switch {
	case last && g.given("when"):
		r.fail(g.placeOf("when"), "rates-order", "take it away, or add a last rate for all other times", `the last rate of %s has a "when", so that at other times there is none`, what)
	case !last && !g.given("when"):
		r.fail(g.at, "rates-order", `give it a "when", or move it to the end`, `rate %d of %s has no "when", so that those after it never count`, i+1, what)
	}
}

// leaveTrimOut reads trim: no.
func (r *reader) leaveTrimOut(f *fields, what string, control mixcore.Control, index int) {
	n := f.get("trim")
	if n == nil {
		return
	}
	text, ok := r.text(n, "trim of "+what, "no")
	switch {
	case !ok:
	case !strings.EqualFold(text, "no") && !strings.EqualFold(text, "false"):
		r.fail(r.place(n), codeUnknownWord, "the size of the trim is said where the axis is", "trim of %s is %s, want no", what, quoted(text))
	case control.Kind != 0 && control.Kind != mixcore.AxisControl:
		r.fail(f.placeOf("trim"), codeNotTogether, "take it away", "%s leaves a trim out, but only an axis has one", what)
	default:
		r.setup.Demands[index].Trim, r.setup.Demands[index].TrimRange = mixcore.NoTrim, 0
	}
}
