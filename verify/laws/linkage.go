package laws

import (
	"fmt"
	"math"

	"example.com/hingeline/mixcore"
	"example.com/hingeline/mixcore/linkage"
	"example.com/hingeline/verify/chain"
	"example.com/hingeline/verify/prove"
	"example.com/hingeline/verify/wording"
)

// nearLock is how near the arm may come, in degrees of its swing, to where the linkage
// locks or runs over centre: there a little wear or a bent horn is enough, and the
// servo has hardly any hold of the surface. Common practice, no source.
const nearLock = 5

var linkages = law{Info{"linkage", "Linkages",
	fmt.Sprintf("No servo arm comes within %d° of where its linkage locks or runs over centre, wherever the controls stand and when the signal is lost.", nearLock)},
	func(mk *maker) {
		for part := range mk.s.Parts {
			for i := range mk.s.Parts[part].Drives {
				mk.staysClear(part, i)
			}
		}
		if len(mk.claims) == 0 {
			mk.none = "no linkage that locks is drawn in the airframe file: tables that were measured say nothing about it"
		}
	}}

// staysClear claims that one linkage stays away from its ends.
func (mk *maker) staysClear(part, drive int) {
	d := &mk.s.Parts[part].Drives[drive]
	if d.Linkage == nil {
		return
	}
	solved, err := linkage.New(*d.Linkage)
	if err != nil {
		return // Compile refuses it
	}
	want := mk.clearOfEnds(d, solved)
	if isFree(want.Low, want.High) {
		return
	}
	perPercent := float64(d.Servo.Swing) / 100 // degrees of arm for a percent of output
	c := claim{
		sentence: "the linkage of " + mk.driveName(part, drive) + " stays clear of where it locks or runs over centre",
		needs:    []prove.Claim{{Now: mk.everywhere(), Want: want}},
		spare: func(_ int, margin float64) (spare, bool) {
			left := margin*perPercent + nearLock
			return spare{left, "°", wording.Angle(mixcore.Degrees(left)) + " of the arm's swing left"}, true
		},
		seen: func(v *view) sight { return mk.nearsEnd(v, part, drive, solved) },
	}
	if !mk.s.Channels[d.Channel].Failsafe.Hold {
		c.needs = append(c.needs, prove.Claim{Now: mk.everywhere(), Lost: true, Want: want})
	}
	mk.add(c)
}

// clearOfEnds is between which outputs the arm stays clear of the linkage's ends.
func (mk *maker) clearOfEnds(d *mixcore.Drive, solved *linkage.Linkage) prove.Output {
	fore, aft := solved.Range()
	low, high := -math.MaxFloat64, math.MaxFloat64 // arm swings
	if fore.Kind != linkage.Free && fore.Swing+nearLock > -float64(d.Servo.Max) {
		low = fore.Swing + nearLock
	}
	if aft.Kind != linkage.Free && aft.Swing-nearLock < float64(d.Servo.Max) {
		high = aft.Swing - nearLock
	}
	if !d.Servo.PlusAft {
		low, high = -high, -low
	}
	perPercent := float64(d.Servo.Swing) / 100
	return prove.Output{Channel: d.Channel, Low: unlessBeyond(low / perPercent), High: unlessBeyond(high / perPercent)}
}

func (mk *maker) driveName(part, drive int) string {
	if len(mk.s.Parts[part].Drives) > 1 {
		return fmt.Sprintf("servo %d of the %s", drive+1, mk.s.Parts[part].Name)
	}
	return "the " + mk.s.Parts[part].Name
}

// nearsEnd says how near a linkage comes to an end, and to which.
func (mk *maker) nearsEnd(v *view, part, drive int, solved *linkage.Linkage) sight {
	swing := float64(v.now.Parts[part].Drives[drive].Swing)
	fore, aft := solved.Range()
	end, way := aft, "aft"
	if swing < 0 {
		end, way = fore, "fore"
	}
	left := math.Abs(end.Swing) - math.Abs(swing)
	return sight{
		got: fmt.Sprintf("the arm of %s swings %s %s, within %s of where it %s at %s", mk.driveName(part, drive),
			wording.Angle(mixcore.Degrees(swing)), way, wording.AngleBeside(mixcore.Degrees(left), nearLock), end.Kind.Does(), wording.Angle(mixcore.Degrees(end.Swing))),
		shows: []shown{showPart(part, chain.Amount)},
	}
}
