package html

import (
	"fmt"
	"strings"

	"example.com/hingeline/verify/report/figure"
	"example.com/hingeline/verify/result"
	"example.com/hingeline/verify/result/said"
)

// throw is a row of the table of throws.
type throw struct {
	Part, Control, When string
	Partner             *remark

	Ends []end
}

type end struct {
	Way, At, Degrees, Millimetres string
}

// travel is a row of the table of travel.
type travel struct {
	Channel, Used, Worst, NotSure string
	Spare                         remark
	From, Wide                    float64 // of the stretch that is used, percent of what may be
	Shown                         bool
}

type linkage struct {
	Part, Channel string
	Words         []string
	Stands        []result.LinkageAt
	Picture       *shot
}

type signal struct {
	Channel, Does string
	Parts         []string
	Motor         *remark
	Mend          string // what to do where it must not be flown so; else empty
}

type motor struct {
	Name, Channel string
	Sights        []remark
	Mend          string
}

// bench is what is measured and looked at on the bench.
func (p *page) bench(paper *result.Paper, d *drawer) {
	p.Throws = throwsOf(paper.Throws)
	for i := range paper.Travel {
		p.Travel = append(p.Travel, travelOf(&paper.Travel[i], paper))
	}
	for i := range paper.Linkages {
		l := &paper.Linkages[i]
		words := fmt.Sprintf("%s, %s, %s", l.Part, l.Channel, l.Seen)
		p.Linkages = append(p.Linkages, linkage{l.Part, l.Channel,
			append(append([]string{l.Seen}, l.Lengths...), l.Horn), l.Stands,
			d.shot("view", "To scale, at neutral and at both ends of its travel: "+words, func() figure.Drawing { return figure.Linkage(l, words) })})
	}
	for i := range paper.Signal {
		s := &paper.Signal[i]
		one := signal{Channel: s.Channel, Does: s.Does, Parts: s.Parts}
		if tone, words := said.LostMotor(s); words != "" {
			m := remarkOf(tone, words)
			one.Motor = &m
			one.Mend = mendOf(tone)
		}
		p.Signal = append(p.Signal, one)
	}
	for i := range paper.Motors {
		m := &paper.Motors[i]
		one := motor{Name: m.Name, Channel: m.Channel}
		for _, r := range said.MotorSights(m) {
			one.Sights = append(one.Sights, remarkOf(r.Tone, r.Text))
			if mend := mendOf(r.Tone); mend != "" {
				one.Mend = mend
			}
		}
		p.Motors = append(p.Motors, one)
	}
}

func throwsOf(all []result.Throw) []throw {
	var rows []throw
	for i := range all {
		t := &all[i]
		one := throw{Part: t.Part, Control: t.Control, When: strings.Join(t.When, "; or ")}
		if t.Partner != "" {
			differs := remarkOf(said.Apart(t), t.Partner)
			one.Partner = &differs
		}
		for k := range t.Ends {
			e := &t.Ends[k]
			one.Ends = append(one.Ends, end{Way: e.Way, At: e.At, Degrees: said.Degrees(e), Millimetres: said.Millimetres(e)})
		}
		rows = append(rows, one)
	}
	return rows
}

func travelOf(t *result.Travel, p *result.Paper) travel {
	row := travel{Channel: t.Channel, Used: said.Used(t), Worst: strings.Join(t.Worst, ", ")}
	tone, words := said.Spare(t, p)
	row.Spare = remarkOf(tone, words)
	if !t.Sure {
		row.NotSure = said.NotSure
	}
	if wide := t.Max - t.Min; wide > 0 && t.High >= t.Low {
		at := func(us float64) float64 { return min(max((us-t.Min)/wide*100, 0), 100) }
		row.Shown, row.From, row.Wide = true, at(t.Low), at(t.High)-at(t.Low)
	}
	return row
}

// mendOf is what stands in place of a box to tick; empty where there is one.
func mendOf(t said.Tone) string {
	if t == said.Bad {
		return said.MendFirst
	}
	return ""
}

// LostSteps are how the loss of signal is tried, SignalBack what comes after it.
func (p *page) LostSteps() []string { return said.LostSteps(p.Report.Paper) }

func (p *page) SignalBack() string { return said.SignalBack(p.Report.Paper) }

// ThrowsNote is how throws are measured.
func (p *page) ThrowsNote() string { return said.ThrowsNote }

// PropellerOff comes before whatever may run a motor.
func (p *page) PropellerOff() string { return said.PropellerOff }
