package main

import (
	"fmt"
	"os"
	"path"
	"path/filepath"
	"strings"

	"example.com/hingeline/airframes"
	"example.com/hingeline/airframes/diag"
	"example.com/hingeline/features"
	"example.com/hingeline/verify/script"
)

// defaultModel is the built-in model that is checked where none is named.
const defaultModel = "bracken-20"

// builtIn is what stands before the name of a built-in file in messages, so
// that it is not taken for a file on disk.
const builtIn = "built-in/"

// inputs are the files of one run and what is wrong with them.
type inputs struct {
	model    *airframes.Model
	shipped  bool // the model is built in
	scripts  []script.File
	sources  []*diag.Source
	problems []diag.Problem
	disk     []diskFile // files read, or looked for, on disk
}

// diskFile is a file as it was when it was read.
type diskFile struct {
	name  string
	stamp stamp
}

// gather reads the airframe file and, unless only the model is wanted, its
// scripts, and collects everything that is wrong with them.
func (s *session) gather(airframe string, scripts []string) *inputs {
	in := s.gatherModel(airframe)
	switch {
	case len(scripts) > 0:
		for _, name := range scripts {
			in.addScript(s, name)
		}
	case in.model != nil && len(in.model.Scripts) > 0:
		in.scriptsOfModel(s)
	case in.model != nil:
		in.scriptBeside(s)
	}
	return in
}

// gatherModel reads the airframe file, or finds the built-in model of that
// name.
func (s *session) gatherModel(airframe string) *inputs {
	in := &inputs{}
	name := airframe
	var text []byte
	if shipped, ok := shippedModel(airframe); ok {
		text, _ = airframes.ReadShipped(shipped)
		name, in.shipped = builtIn+shipped+airframeKind.suffix, true
	} else {
		if airframe == "-" {
			name = stdinName
		} else {
			in.disk = append(in.disk, stampOf(airframe))
		}
		var problem *diag.Problem
		if text, problem = s.readFile(airframe, airframeKind); problem != nil {
			in.problems = append(in.problems, *problem)
			return in
		}
	}
	in.loadModel(name, text)
	return in
}

// loadModel makes the model of an airframe file's text.
func (in *inputs) loadModel(name string, text []byte) {
	in.sources = append(in.sources, diag.NewSource(name, text))
	model, problems := airframes.Load(name, text)
	in.model = model
	in.problems = append(in.problems, problems...)
}

// shippedModel is the name of a built-in model that was named in place of a
// file. A file of that name goes before it.
func shippedModel(name string) (string, bool) {
	if _, err := os.Stat(name); err == nil {
		return "", false
	}
	for _, shipped := range airframes.Shipped() {
		if airframes.FoldName(shipped) == airframes.FoldName(name) {
			return shipped, true
		}
	}
	return "", false
}

func (in *inputs) addScript(s *session, name string) {
	if name != "-" {
		in.disk = append(in.disk, stampOf(name))
	}
	text, problem := s.readFile(name, scriptKind)
	if problem != nil {
		in.problems = append(in.problems, *problem)
		return
	}
	if name == "-" {
		name = stdinName
	}
	in.keepScript(name, text)
}

func (in *inputs) keepScript(name string, text []byte) {
	in.scripts = append(in.scripts, script.File{Name: name, Text: text})
	in.sources = append(in.sources, diag.NewSource(name, text))
}

// scriptsOfModel reads the scripts that the airframe file names.
func (in *inputs) scriptsOfModel(s *session) {
	for _, written := range in.model.Scripts {
		if in.shipped {
			name := path.Base(written)
			text, ok := features.Read(name)
			if !ok {
				panic("the built-in script " + name + " is missing")
			}
			in.keepScript(builtIn+name, text)
			continue
		}
		before := len(in.problems)
		in.addScript(s, in.besideModel(written))
		for i := before; i < len(in.problems); i++ {
			in.pointAtScriptKey(&in.problems[i])
		}
	}
}

// pointAtScriptKey makes a script that cannot be read a mistake at the place
// that names it.
func (in *inputs) pointAtScriptKey(p *diag.Problem) {
	place, ok := in.model.Places.Fields["script"]
	if !ok {
		return
	}
	p.Message = fmt.Sprintf("the script %s: %s", filepath.ToSlash(p.File), p.Message)
	p.Place = place
	if p.Code != "file-missing" {
		return
	}
	cures := "put the script there, or take this line out and name the script on the command line or put it beside this file under the same name, ending in " + scriptKind.suffix
	if p.Hint != "" {
		cures = p.Hint + " Or " + cures
	}
	p.Hint = cures
}

// besideModel is a path as written in the airframe file, seen from that file.
func (in *inputs) besideModel(written string) string {
	name := filepath.FromSlash(written)
	if filepath.IsAbs(name) || len(in.disk) == 0 {
		return name
	}
	return filepath.Join(filepath.Dir(in.disk[0].name), name)
}

// scriptBeside finds the script of a model that names none: the same name,
// beside the airframe file or in a directory called features next to its own.
func (in *inputs) scriptBeside(s *session) {
	p := diag.Problem{
		Place: diag.Place{File: in.sources[0].Name}, Code: "no-script",
		Message: "no script says what this model should do",
		Hint:    "name it behind the airframe file, or in it: script: my-model.feature; \"hingeline schema --example-script\" writes one to start from",
	}
	if len(in.disk) == 0 {
		in.problems = append(in.problems, p)
		return
	}
	airframe := in.disk[0].name
	base := strings.TrimSuffix(filepath.Base(airframe), filepath.Ext(airframe)) + scriptKind.suffix
	candidates := []string{
		filepath.Join(filepath.Dir(airframe), base),
		filepath.Join(filepath.Dir(airframe), "..", "features", base),
	}
	for _, name := range candidates {
		if _, err := os.Stat(name); err == nil {
			in.addScript(s, name)
			return
		}
		in.disk = append(in.disk, stampOf(name))
	}
	p.Message += fmt.Sprintf("; looked for %s and %s", filepath.ToSlash(candidates[0]), filepath.ToSlash(candidates[1]))
	in.problems = append(in.problems, p)
}
