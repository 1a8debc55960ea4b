package findings

import (
	"fmt"
	"math"

	"example.com/hingeline/mixcore"
	"example.com/hingeline/mixcore/linkage"
	"example.com/hingeline/verify/chain/where"
	"example.com/hingeline/verify/wording"
)

// nearLock is how near the arm may come, in degrees of its swing, to where the
// linkage locks or runs over centre: there a little wear or a bent horn is
// enough, and the servo has hardly any hold of the surface. Common practice, no
// source.
const nearLock = 5

// lock looks at both ends of the arm's swing: low and high are what each
// servo of the part does at the two ends of its channel.
func (f *finder) lock(part int, low, high []mixcore.DriveTrace) {
	p := &f.s.Parts[part]
	for i := range p.Drives {
		if p.Drives[i].Linkage == nil {
			continue
		}
		solved, err := linkage.New(*p.Drives[i].Linkage)
		if err != nil {
			continue // Compile refuses it
		}
		fore, aft := solved.Range()
		for _, swing := range []mixcore.Degrees{min(low[i].Swing, high[i].Swing), max(low[i].Swing, high[i].Swing)} {
			end, way := aft, "aft"
			if swing < 0 {
				end, way = fore, "fore"
			}
			left := math.Abs(end.Swing) - math.Abs(float64(swing))
			if end.Kind == linkage.Free || left >= nearLock {
				continue
			}
			what := end.Kind.Does()
			f.warn(where.Drive(f.m, part, i, "linkage"), codeNearLock,
				fmt.Sprintf("the linkage of %s comes within %s of where it %s: the arm can swing %s %s, and it %s at %s",
					p.Name, wording.Angle(mixcore.Degrees(left)), what, wording.Angle(swing), way, what, wording.Angle(mixcore.Degrees(end.Swing))),
				"use a longer horn or a shorter arm, or hold the channel back with its limit or end points")
			break
		}
	}
}
