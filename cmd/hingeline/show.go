package main

import (
	"errors"
	"fmt"
	"strconv"
	"strings"

	"github.com/spf13/cobra"

	"example.com/hingeline/airframes"
	"example.com/hingeline/airframes/diag"
	"example.com/hingeline/mixcore"
	"example.com/hingeline/verify"
	"example.com/hingeline/verify/phrase"
	"example.com/hingeline/verify/report/jsonout"
	"example.com/hingeline/verify/report/terminal"
)

// showFlags are the flags of show.
type showFlags struct {
	set, from           []string
	after, speed        string
	lost, brief, asJSON bool
}

func (s *session) showCommand() *cobra.Command {
	var flags showFlags
	c := &cobra.Command{
		Use:   "show AIRFRAME [PART...]",
		Short: "one position of the controls: where every part stands, and why",
		Long: `Show puts the controls where you say, lets everything else rest, and tells where
every part of the model then stands and how that came about, from the control to
the surface; and which way that turns the model. With an airspeed, from --speed or
the airframe file, it estimates the roll rate and what the servos must hold. A
built-in model goes by its name: show bracken-20.

A setting is CONTROL=PLACE, in the words of a script; plus is right, or back.`,
		Example: `  hingeline show bracken-20 --set "rate switch=high" --set "roll stick=full right"
  hingeline show my-model.yaml "port flap" --set "flap lever=landing" --set "roll stick=-30%"
  hingeline show my-model.yaml --from "throttle=100%" --signal-lost --after 1s
  hingeline show bracken-20 --set "roll stick=full right" --speed 16 --brief`,
		ValidArgsFunction: func(*cobra.Command, []string, string) ([]string, cobra.ShellCompDirective) {
			return airframes.Shipped(), cobra.ShellCompDirectiveDefault
		},
		RunE: func(c *cobra.Command, args []string) error { return s.show(c, args, flags) },
	}
	f := c.Flags()
	f.StringArrayVar(&flags.set, "set", nil, "put a control somewhere: `CONTROL=PLACE`; may be given again")
	f.BoolVar(&flags.lost, "signal-lost", false, "with the signal lost")
	f.StringVar(&flags.after, "after", "", "this `TIME` after the controls moved (2s), before everything has come to rest")
	f.StringArrayVar(&flags.from, "from", nil, "with --after: where a control stood before, `CONTROL=PLACE`; may be given again")
	f.StringVar(&flags.speed, "speed", "", "airspeed in `METRES` a second for roll rate and servo loads; else airspeed_ms of the airframe file")
	f.BoolVar(&flags.brief, "brief", false, "positions and limits, without the reasons")
	f.BoolVar(&flags.asJSON, "json", false, "write it as JSON (hingeline schema --position)")
	return c
}

func (s *session) show(c *cobra.Command, args []string, flags showFlags) error {
	if len(args) == 0 {
		return withoutAirframe(c)
	}
	if len(flags.from) > 0 && flags.after == "" {
		return &usageError{
			message: "--from says where the controls came from, which only matters with --after",
			hint:    "add --after 1s, or use --set",
			usage:   usageOf(c),
		}
	}
	if flags.after != "" && flags.lost && len(flags.set) > 0 {
		return &usageError{
			message: "with --after, --set and --signal-lost do not go together: which came first?",
			hint:    "say with --from what was set before the signal went",
			usage:   usageOf(c),
		}
	}
	if flags.brief && flags.asJSON {
		return &usageError{message: "--brief and --json do not go together", usage: usageOf(c)}
	}
	after, err := timeOf(c, flags.after)
	if err != nil {
		return err
	}
	speed, err := speedOf(c, flags.speed)
	if err != nil {
		return err
	}
	if speed > 0 && len(args) > 1 {
		return &usageError{
			message: "--speed is for what the model as a whole does, so it does not go with single parts",
			hint:    "leave out " + strings.Join(args[1:], " and "),
			usage:   usageOf(c),
		}
	}
	s.asJSON = flags.asJSON
	in := s.gatherModel(args[0])
	if in.model == nil || diag.HasErrors(in.problems) {
		return &inputError{in.problems, in.sources}
	}
	diag.WriteWithin(s.stderr, s.messageColumns(), in.problems, in.sources...)
	view, err := viewOf(c, in.model, flags, after)
	if err != nil {
		return err
	}
	view.Speed = speed
	if view.Parts, err = partsCalled(c, in.model, args[1:]); err != nil {
		return err
	}
	shown := verify.Show(in.model, view)
	if flags.asJSON {
		return written(jsonout.RenderShown(s.results(), shown))
	}
	return written(terminal.RenderShown(s.results(), shown, s.layout(flags.brief)))
}

// viewOf is the position of the controls that the flags ask for. What --from
// sets stays set unless --set moves it.
func viewOf(c *cobra.Command, m *airframes.Model, flags showFlags, after mixcore.Seconds) (verify.View, error) {
	start, err := verify.MoveTo(m, phrase.RestPose(&m.Setup), flags.from)
	if err != nil {
		return verify.View{}, poseError(c, "--from", err)
	}
	to, err := verify.MoveTo(m, start, flags.set)
	if err != nil {
		return verify.View{}, poseError(c, "--set", err)
	}
	if flags.lost {
		to = to.Take(&m.Setup, &phrase.Group{Signal: phrase.SignalLost})
	}
	view := verify.View{To: to}
	if flags.after != "" {
		view.From, view.After = &start, after
	}
	return view, nil
}

func poseError(c *cobra.Command, flag string, err error) error {
	var pose *verify.PoseError
	if !errors.As(err, &pose) {
		return err
	}
	return &usageError{
		message: fmt.Sprintf("%s %q: %s", flag, pose.Setting, pose.Message),
		hint:    pose.Hint,
		usage:   usageOf(c),
	}
}

// maxAfter is the longest time that --after takes, in seconds: longer than any
// channel or phase takes to come to rest.
const maxAfter = 600

func timeOf(c *cobra.Command, text string) (mixcore.Seconds, error) {
	if text == "" {
		return 0, nil
	}
	digits := strings.TrimSpace(strings.TrimSuffix(text, "s"))
	seconds, err := strconv.ParseFloat(digits, 64)
	if err != nil || strings.Trim(digits, ".0123456789") != "" || seconds > maxAfter {
		return 0, &usageError{
			message: fmt.Sprintf("--after is %q, wanted seconds from 0 to %d, such as 1.5s", text, maxAfter),
			usage:   usageOf(c),
		}
	}
	return mixcore.Seconds(seconds), nil
}

// speedOf reads --speed: 0 if it is not given, else metres a second within what
// a script may say.
func speedOf(c *cobra.Command, text string) (float64, error) {
	if text == "" {
		return 0, nil
	}
	digits := strings.TrimSpace(strings.TrimSuffix(text, "m/s"))
	speed, err := strconv.ParseFloat(digits, 64)
	if err != nil || strings.Trim(digits, ".0123456789") != "" || speed < phrase.SlowestSpeed || speed > phrase.FastestSpeed {
		return 0, &usageError{
			message: fmt.Sprintf("--speed is %q, wanted metres a second from %g to %g, such as 16", text, phrase.SlowestSpeed, phrase.FastestSpeed),
			usage:   usageOf(c),
		}
	}
	return speed, nil
}

// partsCalled are the parts of those names, nil for none named.
func partsCalled(c *cobra.Command, m *airframes.Model, names []string) ([]int, error) {
	var parts []int
	for _, name := range names {
		found := partCalled(m, name)
		if found < 0 {
			var all []string
			for i := range m.Setup.Parts {
				all = append(all, m.Setup.Parts[i].Name)
			}
			hint := didYouMean(name, all)
			if hint == "" {
				hint = "there are: " + strings.Join(all, ", ")
			}
			return nil, &usageError{
				message: fmt.Sprintf("%s has no part called %q", m.Name, name),
				hint:    hint,
				usage:   usageOf(c),
			}
		}
		parts = append(parts, found)
	}
	return parts, nil
}

func partCalled(m *airframes.Model, name string) int {
	for i := range m.Setup.Parts {
		called := []string{m.Setup.Parts[i].Name}
		if i < len(m.PartAka) {
			called = append(called, m.PartAka[i]...)
		}
		for _, n := range called {
			if airframes.FoldName(n) == airframes.FoldName(name) {
				return i
			}
		}
	}
	return -1
}
