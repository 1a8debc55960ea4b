package html

import (
	"bytes"
	"cmp"
	"fmt"
	"html/template"
	"runtime"
	"sync"
	"sync/atomic"

	"example.com/hingeline/verify/report/figure"
	"example.com/hingeline/verify/result"
)

// shot is a picture in the page, with the sentence that it shows.
type shot struct {
	SVG   template.HTML
	Class string
	Words string
	Told  string // what it shows
}

// drawer draws the pictures of a page, each under an id of its own: all at once when the
// page is laid out, since that is most of the work.
type drawer struct {
	paper *result.Paper
	shots []*shot
	draw  []func() figure.Drawing // of each shot
}

func newDrawer(r *result.Report) *drawer { return &drawer{paper: r.Paper} }

// shot is a picture that finish draws.
func (d *drawer) shot(class, words string, draw func() figure.Drawing) *shot {
	one := &shot{Class: class, Words: words}
	d.shots, d.draw = append(d.shots, one), append(d.draw, draw)
	return one
}

// finish draws all pictures. The error is that of the first that cannot be drawn.
func (d *drawer) finish() error {
	errs, bugs := make([]error, len(d.shots)), make(chan any, runtime.GOMAXPROCS(0))
	var next atomic.Int64
	var workers sync.WaitGroup
	for range cap(bugs) {
		workers.Go(func() {
			defer func() {
				if bug := recover(); bug != nil {
					bugs <- bug
				}
			}()
			for i := int(next.Add(1)) - 1; i < len(d.shots); i = int(next.Add(1)) - 1 {
				errs[i] = d.shots[i].fill(i+1, d.draw[i]())
			}
		})
	}
	workers.Wait()
	if len(bugs) > 0 {
		panic(<-bugs) // where whoever asked for the page can tell of it
	}
	return cmp.Or(errs...)
}

func (s *shot) fill(number int, shown figure.Drawing) error {
	var svg bytes.Buffer
	if err := figure.SVG(&svg, &shown, figure.SVGOptions{ID: fmt.Sprintf("f%d", number)}); err != nil {
		return err
	}
	s.SVG, s.Told = template.HTML(svg.String()), shown.Description
	return nil
}

// pictureOf is the picture of a check and the part that it is first about; nil where
// there is none.
func (d *drawer) pictureOf(i int) (*result.Picture, *result.Outline, *result.Stand) {
	if d.paper == nil || i >= len(d.paper.Pictures) {
		return nil, nil, nil
	}
	p := &d.paper.Pictures[i]
	if len(p.Of) == 0 {
		return nil, nil, nil
	}
	o, s := d.part(p, p.Of[0])
	if o == nil {
		return nil, nil, nil
	}
	return p, o, s
}

func (d *drawer) part(p *result.Picture, part int) (*result.Outline, *result.Stand) {
	if part < 0 || part >= len(d.paper.Shape.Parts) || part >= len(p.Stands) {
		return nil, nil
	}
	return &d.paper.Shape.Parts[part], &p.Stands[part]
}

// wantedGot is a failed check, where the part should be beside where it is; nil where the
// sentence names no place or way.
func (d *drawer) wantedGot(i int, sentence string) *shot {
	p, o, s := d.pictureOf(i)
	if p == nil || p.Want == nil {
		return nil
	}
	return d.shot("pair", "Wanted and got: "+sentence, func() figure.Drawing { return figure.WantedGot(o, s, p.Want, sentence) })
}

// views are the pictures of checks that are looked at together, from behind and in plan.
func (d *drawer) views(checks []int, words string) []*shot {
	if d.paper == nil {
		return nil
	}
	var all []*shot
	for _, v := range d.paper.Views(checks) {
		all = append(all,
			d.shot("view behind", "From behind, as the pilot stands: "+words, func() figure.Drawing { return figure.Behind(&d.paper.Shape, &v, words) }),
			d.shot("view", "From above, the nose at the top: "+words, func() figure.Drawing { return figure.Plan(&d.paper.Shape, &v, words) }))
	}
	return all
}

// section is one part at its hinge, and which of it it is: the same stand wanted alike is
// drawn once.
type section struct {
	part int
	at   result.Stand
	want result.Want
}

// sections are the parts that a check is about, each at its hinge, but for those that were
// drawn already.
func (d *drawer) sections(i int, sentence string, drawn map[section]bool) []*shot {
	if d.paper == nil || i >= len(d.paper.Pictures) {
		return nil
	}
	p := &d.paper.Pictures[i]
	var all []*shot
	for k, part := range p.Of {
		o, s := d.part(p, part)
		if o == nil {
			continue
		}
		key, want := section{part: part, at: *s}, (*result.Want)(nil)
		if k == 0 && p.Want != nil {
			key.want, want = *p.Want, p.Want
		}
		if drawn[key] {
			continue
		}
		drawn[key] = true
		all = append(all, d.shot("section", o.Name+": "+sentence, func() figure.Drawing { return figure.Section(o, s, want, sentence) }))
	}
	return all
}
