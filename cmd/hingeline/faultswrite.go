package main

import (
	"bufio"
	"bytes"
	"errors"
	"fmt"
	"os"
	"path/filepath"
	"slices"
	"strings"

	"example.com/hingeline/airframes/diag"
	"example.com/hingeline/verify/faults"
	"example.com/hingeline/verify/report/jsonout"
	"example.com/hingeline/verify/result"
	"example.com/hingeline/verify/script"
)

// appendSentences adds to the script what it misses, after asking. The file keeps all
// that it had; it is written whole under another name first.
func (s *session) appendSentences(in *inputs, r *result.Faults, sure bool) error {
	addition := faults.Additions(r, func(name string) bool {
		return slices.ContainsFunc(in.scripts, func(f script.File) bool { return bytes.Contains(f.Text, []byte("Scenario: "+name+"\n")) })
	})
	if addition == "" {
		fmt.Fprintln(s.stderr, "hingeline: there is no sentence to add")
		return nil
	}
	last := in.scripts[len(in.scripts)-1]
	if in.shipped || strings.HasPrefix(last.Name, builtIn) || last.Name == stdinName {
		return s.refuse(last.Name+" is no file that can be added to, so nothing was written",
			"save it first; \"hingeline schema --example-script\" shows how one looks")
	}
	text := append(bytes.TrimRight(slices.Clone(last.Text), "\n"), '\n')
	text = append(text, addition...)
	files := append(slices.Clone(in.scripts[:len(in.scripts)-1]), script.File{Name: last.Name, Text: text})
	trial, problems := script.NewTrial(in.model, files)
	if trial == nil || diag.HasErrors(problems) || len(trial.Failing(in.model, 1)) > 0 {
		return s.refuse("the script would not pass with what is added, so nothing was written",
			"add the sentences of the report by hand")
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

// replaceFile gives a file another text at once: nobody sees it half written.
func replaceFile(name string, text []byte) error {
	info, err := os.Stat(name)
	if err != nil {
		return err
	}
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
// there is one.
func (s *session) writeMutations(in *inputs, r *result.Faults, name string) error {
	var b bytes.Buffer
	if err := jsonout.RenderMutations(&b, r, string(in.model.Source.Text)); err != nil {
		return written(err)
	}
	var err error
	if _, there := os.Stat(name); there == nil {
		err = replaceFile(name, b.Bytes())
	} else {
		err = writeNew([]newFile{{name, b.Bytes()}})
	}
	if err != nil {
		return written(err)
	}
	return nil
}
