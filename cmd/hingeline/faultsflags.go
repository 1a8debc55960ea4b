package main

import (
	"fmt"
	"slices"
	"strconv"
	"strings"

	"github.com/spf13/cobra"

	"example.com/hingeline/airframes"
	"example.com/hingeline/mixcore"
	"example.com/hingeline/verify/faults/mistake"
	"example.com/hingeline/verify/faults/sight"
)

// mostVisible is the largest movement in degrees that --visible may call too small to be
// seen.
const mostVisible = 30

// check says what makes no sense among the flags, and reads the numbers. It puts the codes
// of --only as the catalogue has them.
func (f *faultsFlags) check(c *cobra.Command, args []string) (least int, look sight.Look, err error) {
	if message, hint := f.nonsense(c, args); message != "" {
		return 0, look, &usageError{message: message, hint: hint, usage: usageOf(c)}
	}
	wrong := func(message, hint string) (int, sight.Look, error) {
		return 0, look, &usageError{message: message, hint: hint, usage: usageOf(c)}
	}
	codes := kindCodes()
	var only []string
	for _, said := range f.only {
		i := slices.IndexFunc(codes, func(code string) bool { return airframes.FoldName(code) == airframes.FoldName(said) })
		if i < 0 {
			hint := didYouMean(strings.ToLower(said), codes)
			if hint == "" {
				hint = "they are: " + strings.Join(codes, ", ")
			}
			return wrong(fmt.Sprintf("no kind of mistake is called %q", said), hint)
		}
		if !slices.Contains(only, codes[i]) {
			only = append(only, codes[i])
		}
	}
	f.only = only
	look, problem := lookOf(f.ruler, f.visible)
	if problem != "" {
		return wrong(problem, "")
	}
	if f.least != "" {
		least, err = strconv.Atoi(strings.TrimSpace(strings.TrimSuffix(f.least, "%")))
		if err != nil || least < 1 || least > 100 {
			return wrong(fmt.Sprintf("--min is %q, wanted a whole percent from 1 to 100", f.least), "")
		}
	}
	return least, look, nil
}

// lookOf is how somebody looks by --ruler and --visible, or what is wrong with that.
func lookOf(ruler bool, visible string) (look sight.Look, problem string) {
	look = sight.Eye
	if ruler {
		look = sight.Measured
	}
	if visible == "" {
		return look, ""
	}
	degrees, err := strconv.ParseFloat(strings.TrimSuffix(visible, "°"), 64)
	if err != nil || !(degrees > 0 && degrees <= mostVisible) {
		return look, fmt.Sprintf("--visible is %q, wanted degrees from over 0 to %d, such as 3", visible, mostVisible)
	}
	look.Visible = mixcore.Degrees(degrees)
	return look, ""
}

// nonsense is what cannot be asked together.
func (f *faultsFlags) nonsense(c *cobra.Command, args []string) (message, hint string) {
	for _, name := range []string{"script", "seen", "mutations", "min", "visible"} {
		if flag := c.Flags().Lookup(name); flag.Changed && flag.Value.String() == "" {
			return "--" + name + " is there, but nothing behind it", ""
		}
	}
	questions := 0
	for _, on := range []bool{f.walk, f.seen != "", f.ask} {
		if on {
			questions++
		}
	}
	scoring := questions == 0
	switch {
	case len(args) == 0:
		return noAirframe()
	case questions > 1:
		return "--walk, --seen and --ask are three questions; ask one at a time", ""
	case !scoring && (f.write || f.least != "" || f.mutations != ""):
		return "--write, --min and --mutations are about the script, and do not go with --walk, --seen or --ask", ""
	case scoring && (f.ruler || f.visible != ""):
		return "--ruler and --visible are about what a person sees, and go with --walk, --seen or --ask", ""
	case f.script != "" && !f.walk:
		return "--script writes the walk-around, and goes with --walk", "the script to check is named behind the airframe file"
	case f.walk && len(args) > 1:
		return fmt.Sprintf("--walk needs no script, got %q", args[1]), "it is made from the airframe file alone"
	case f.walk && (len(f.only) > 0 || f.pairs):
		return "--only and --pairs do not go with --walk: it shows every single mistake", ""
	case f.yes && !f.write:
		return "--yes goes with --write", ""
	case f.write && f.json:
		return "--write and --json do not go together", "the sentences are in the JSON report"
	case f.ask && f.json:
		return "--ask and --json do not go together", "--seen FILE --json does"
	case f.ask && slices.Contains(append(slices.Clone(args), f.others...), "-"):
		return "--ask takes the answers from standard input, so no file can come from there", ""
	case f.brief && f.json:
		return "--brief and --json do not go together: the JSON report is always whole", ""
	}
	return "", ""
}

// kindCodes are the codes of all kinds of mistakes, in their order.
func kindCodes() (codes []string) {
	for _, k := range mistake.Kinds() {
		codes = append(codes, k.Code)
	}
	return codes
}
