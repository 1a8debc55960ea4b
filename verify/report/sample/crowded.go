package sample

import (
	"fmt"

	"example.com/hingeline/verify/result"
)

// Crowded is a passed check of a model with more parts, longer names and more
// checks than most, in more than one script of letters; its paper is filled in.
func Crowded() *result.Report {
	parts := crowdedParts()
	r := Passing()
	r.Model = result.Model{Name: "Верхний Скат – 高性能グライダー – the very long name", File: "models/crowded.yaml"}
	r.Checks = nil
	paper := paper()
	paper.MassKg = 21
	paper.Shape = result.Shape{Semispan: 1900, Chords: [2]float64{260, 150}, Measured: true, Parts: parts}
	poses := crowdedPoses()
	for n := range 40 {
		i := n % len(parts)
		p := pictureOf(parts, poses[n%len(poses)])
		p.Of, p.Moves = []int{i}, true
		stand := p.Stands[i]
		r.Checks = append(r.Checks, result.Check{
			Stage: parts[i].Stage, Feature: "Crowded", Scenario: fmt.Sprintf("Position %d", n%len(poses)+1),
			Sentence: fmt.Sprintf("with brakes out and full left roll the %s is where it should be", parts[i].Name),
			Place:    at(10+n, 5),
			Pose:     []string{"brake lever 100 %", "roll stick full left", fmt.Sprintf("phase lever %d %%", n)},
			Rests:    true, Subject: parts[i].Name, Wanted: stand.Says, Got: stand.Says, Passed: true,
		})
		p.Want = &result.Want{Low: stand.At - 1, High: stand.At + 1, Says: stand.Says}
		paper.Pictures = append(paper.Pictures, p)
	}
	inWalkingOrder(r.Checks, paper.Pictures)
	r.Paper = paper
	return r
}

// inWalkingOrder sorts checks by stage, each with its picture.
func inWalkingOrder(checks []result.Check, pictures []result.Picture) {
	var sortedChecks []result.Check
	var sortedPictures []result.Picture
	for _, stage := range result.Stages {
		for i := range checks {
			if checks[i].Stage == stage {
				sortedChecks = append(sortedChecks, checks[i])
				sortedPictures = append(sortedPictures, pictures[i])
			}
		}
	}
	copy(checks, sortedChecks)
	copy(pictures, sortedPictures)
}

func crowdedParts() []result.Outline {
	var parts []result.Outline
	for _, side := range []struct {
		name  string
		sign  float64
		stage result.Stage
	}{{"port", -1, result.PortWing}, {"starboard", 1, result.StarboardWing}} {
		wing := func(name, kind string, from, to, aft, chord, most float64) {
			parts = append(parts, surface(name, kind, side.name, side.stage,
				point(side.sign*from, aft, 30), point(side.sign*to, aft-to*0.02, 30+to*0.03), chord, most))
		}
		wing(side.name+" flap", "flap", 90, 560, 145, 62, 80)
		wing(side.name+" middle flap of the wing panel, №2", "flap", 580, 1100, 138, 50, 30)
		if side.name == "port" {
			wing("левый элерон дальний внешний длинный №31", "aileron", 1120, 1860, 130, 38, 25)
		} else {
			wing("右補助翼外側長翼端動作確認用第三号機用右補助翼外側長翼端動作確認用第三号機", "aileron", 1120, 1860, 130, 38, 25)
		}
		wing(side.name+" spoiler", "spoiler", 300, 700, 20, 34, 60)
		wing(side.name+" airbrake", "airbrake", 720, 1000, 20, 30, 85)
	}
	for _, side := range []struct {
		name string
		sign float64
	}{{"port", -1}, {"starboard", 1}} {
		o := surface(side.name+" v-tail", "v-tail", side.name, result.Tail,
			point(side.sign*20, 1050, 50), point(side.sign*320, 1070, 284), 60, 25)
		o.Tilt = 38
		parts = append(parts, o)
	}
	parts = append(parts, wheel("tail wheel", "tail wheel", point(0, 1000, -60)))
	parts = append(parts,
		motor("port motor", "port", point(-420, -150, 10)),
		motor("starboard motor", "starboard", point(420, -150, 10)),
		extra("retracts", "retract", "centre", result.MotorAndSignal, point(0, -40, -90)),
		extra("port drag rudder", "drag rudder", "port", result.PortWing, point(-1880, 90, 85)),
		extra("starboard drag rudder", "drag rudder", "starboard", result.StarboardWing, point(1880, 90, 85)),
		extra("tow hook", "hook", "centre", result.MotorAndSignal, point(0, -120, -40)),
	)
	return parts
}

func crowdedPoses() []pose {
	return []pose{
		{},
		{0: {0, 62}, 1: {0, 18}, 2: {0, -12}, 3: {0, -55}, 4: {0, -80}, 5: {0, 62}, 6: {0, 18}, 7: {0, 8}, 8: {0, -55},
			9: {0, -80}, 10: {0, -18}, 11: {0, 12}, 12: {0, 20}, 13: {0, 40}, 14: {0, 100}, 15: {0, 100}, 16: {0, 80}, 18: {0, 100}},
		{2: {0, 20}, 7: {0, -20}, 10: {0, 22}, 11: {0, -22}},
	}
}
