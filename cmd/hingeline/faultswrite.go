package main

import (
	"bufio"
	"bytes"
	"context"
	"errors"
	"fmt"
	"io/fs"
	"os"
	"path/filepath"
	"slices"
	"strings"

	"example.com/hingeline/airframes/diag"
	"example.com/hingeline/verify"
	"example.com/hingeline/verify/faults"
	"example.com/hingeline/verify/faults/mistake"
	"example.com/hingeline/verify/report/jsonout"
	"example.com/hingeline/verify/result"
	"example.com/hingeline/verify/script"
)

// appendSentences adds to the last script what the scripts miss, after asking. The file
// keeps all that it had, and is written only if with the sentences every check passes and
// what they are there for is caught.
func (s *session) appendSentences(in *inputs, r *result.Faults, o mistake.Options, sure bool) error {
	if r.Verdict == result.AlreadyWrong {
		return nil
	}
	last := in.scripts[len(in.scripts)-1]
	behind := script.BehindOf(last)
	addition := faults.Additions(r, behind, func(name string) bool { return hasScenario(in.scripts, name) })
	if addition == "" {
		fmt.Fprintln(s.stderr, "hingeline: there is no sentence to add")
		return nil
	}
	if in.shipped && strings.HasPrefix(last.Name, builtIn) || last.Name == stdinName {
		return s.refuse(last.Name+" is no file that can be added to, so nothing was written",
			"save it first; \"hingeline schema --example-script\" shows how one looks")
	}
	text := extended(last.Text, addition, behind)
	files := append(slices.Clone(in.scripts[:len(in.scripts)-1]), script.File{Name: last.Name, Text: text})
	if wrong := doesNotHelp(in, r, files, o); wrong != "" {
		return s.refuse(wrong+", so nothing was written", "add the sentences of the report by hand")
	}
	fmt.Fprint(s.stderr, "\nto add to "+last.Name+":\n"+addition+"\n")
	if !sure {
		if terminalFile(s.stdin) == nil {
			return s.refuse("nobody is there to ask whether to write, so nothing was written", "--yes writes without asking")
		}
		q := &questions{answers: bufio.NewReader(s.stdin), ask: s.stderr}
		if q.yes("Append this?", &sure); q.err != nil || !sure {
			fmt.Fprintln(s.stderr, "nothing was written")
			return nil
		}
	}
	if now, err := os.ReadFile(last.Name); err != nil || !bytes.Equal(now, last.Text) {
		return s.refuse(last.Name+" has changed meanwhile, so nothing was written", "run faults again")
	}
	if err := replaceFile(last.Name, text); err != nil {
		return s.notWritten(err)
	}
	fmt.Fprintln(s.stderr, "written; run check and faults again")
	return nil
}

// hasScenario says whether a scenario of this name stands in a script, in whatever
// language.
func hasScenario(scripts []script.File, name string) bool {
	for _, f := range scripts {
		for line := range strings.Lines(string(f.Text)) {
			if strings.HasSuffix(strings.TrimSpace(line), ": "+name) {
				return true
			}
		}
	}
	return false
}

// ownRule is the title of the rule that sentences are added under where a script has
// rules: else they would belong to its last one, with its background and its tags.
const ownRule = "What faults found missing"

// extended is a script with sentences behind it, in the line ends that it has.
func extended(text []byte, addition string, behind script.Behind) []byte {
	if behind.LastRule != "" && behind.LastRule != ownRule {
		addition = "\n  " + behind.Rule + " " + ownRule + "\n" + addition
	}
	if !bytes.HasSuffix(text, []byte("\n")) {
		addition = "\n" + addition
	}
	if bytes.Contains(text, []byte("\r\n")) {
		addition = strings.ReplaceAll(addition, "\n", "\r\n")
	}
	return append(slices.Clone(text), addition...)
}

// doesNotHelp says what is wrong with scripts that sentences were added to; empty where
// every check passes and each mistake that has a sentence is caught.
func doesNotHelp(in *inputs, before *result.Faults, files []script.File, o mistake.Options) string {
	after, problems := verify.Faults(context.Background(), in.model, files, faults.Options{Options: o})
	if after == nil || diag.HasErrors(problems) || after.Verdict == result.AlreadyWrong {
		return "the script would not pass with what is added"
	}
	caught := map[string]bool{}
	for i := range after.Faults {
		if f := &after.Faults[i]; f.State == result.Caught {
			caught[f.Kind+f.Text] = true
		}
	}
	for i := range before.Faults {
		if f := &before.Faults[i]; f.State == result.Missed && f.Sentence != "" && !caught[f.Kind+f.Text] {
			return "in this script the sentences would not catch that " + f.Text
		}
	}
	return ""
}

// replaceFile gives a file, or the file that a link leads to, another text at once: nobody
// sees it half written.
func replaceFile(name string, text []byte) error {
	name, err := filepath.EvalSymlinks(name)
	if err != nil {
		return err
	}
	info, err := os.Stat(name)
	if err != nil {
		return err
	}
	if !info.Mode().IsRegular() { // a device or pipe would be gone
		return &fs.PathError{Op: "replace", Path: name, Err: fs.ErrInvalid}
	}
	writable, err := os.OpenFile(name, os.O_WRONLY, 0) // else a file that is kept from writing would be replaced
	if err != nil {
		return err
	}
	writable.Close()
	temporary, err := os.CreateTemp(filepath.Dir(name), ".hingeline-*")
	if err != nil {
		return err
	}
	defer os.Remove(temporary.Name())
	_, err = temporary.Write(text)
	err = errors.Join(err, temporary.Chmod(info.Mode().Perm()), temporary.Sync(), temporary.Close())
	if err != nil {
		return err
	}
	return os.Rename(temporary.Name(), name)
}

// writeMutations writes the score as a mutation-testing report, over an older one if
// there is one. Where nothing was tried there is none to write. It returns false with
// what to return where it could not be written.
func (s *session) writeMutations(in *inputs, r *result.Faults, name string) (bool, error) {
	if r.Verdict == result.AlreadyWrong || r.Verdict == result.NoMistakes {
		fmt.Fprintf(s.stderr, "hingeline: nothing was tried, so %s was not written\n", name)
		return true, nil
	}
	var b bytes.Buffer
	if err := jsonout.RenderMutations(&b, r, string(in.model.Source.Text)); err != nil {
		return false, written(err)
	}
	f := ownFile{name: name, what: "a mutation-testing report", ours: jsonout.IsMutations}
	if wrong := f.taken(); wrong != "" {
		return false, s.refuse(wrong+", so nothing was written", "choose another name, or move that file away")
	}
	if err := f.put(b.Bytes()); err != nil {
		return false, s.notWritten(err)
	}
	return true, nil
}
