package main

import (
	"bytes"
	"context"
	"errors"
	"fmt"
	"os"
	"os/exec"
	"path"
	"path/filepath"
	"strings"
	"time"

	"example.com/hingeline/airframes/diag"
)

// revision is a commit that git knows, seen from a directory.
type revision struct {
	name   string // as it was given: "HEAD~1"
	dir    string // in which git runs, and which paths are seen from
	commit string // its hash
}

// gitPatience is how long git may take to read one file.
const gitPatience = 20 * time.Second

// git runs the git program: no shell, no pager, no hook, no question, nothing fetched. It
// gives back at most a little more than a file may hold.
func (r *revision) git(args ...string) ([]byte, error) {
	ctx, cancel := context.WithTimeout(context.Background(), gitPatience)
	defer cancel()
	quiet := []string{"--no-pager", "--no-optional-locks", "-c", "core.hooksPath=" + os.DevNull, "-c", "core.fsmonitor=false"}
	c := exec.CommandContext(ctx, "git", append(quiet, args...)...)
	c.Dir = r.dir
	c.Env = append(os.Environ(), "GIT_TERMINAL_PROMPT=0", "GIT_NO_LAZY_FETCH=1", "GIT_PAGER=cat", "LC_ALL=C")
	out, complaint := &limited{most: maxFileBytes + 1}, &limited{most: 1000}
	c.Stdout, c.Stderr = out, complaint
	err := c.Run()
	if err == nil {
		return out.kept.Bytes(), nil
	}
	first, _, _ := strings.Cut(strings.TrimSpace(complaint.kept.String()), "\n")
	if first = strings.TrimPrefix(first, "fatal: "); first != "" && !errors.Is(err, exec.ErrNotFound) {
		return nil, errors.New(first)
	}
	return nil, err
}

// limited keeps the beginning of what is written to it.
type limited struct {
	kept bytes.Buffer
	most int
}

func (l *limited) Write(p []byte) (int, error) {
	l.kept.Write(p[:min(len(p), l.most-l.kept.Len())])
	return len(p), nil
}

// openRevision finds a commit as it is seen from the directory of a file.
func openRevision(name, file string) (*revision, *diag.Problem) {
	problem := func(code, message, hint string) *diag.Problem {
		return &diag.Problem{Place: diag.Place{File: name}, Code: code, Message: message, Hint: hint}
	}
	r := &revision{name: name, dir: filepath.Dir(file)}
	if info, err := os.Stat(r.dir); err != nil || !info.IsDir() { // it may have been there at that revision
		r.dir = "."
	}
	const hint = "a revision is HEAD~1, a tag, a branch or a hash; a file stands behind it: HEAD~1:my-model.yaml"
	if strings.HasPrefix(name, "-") {
		return nil, problem("revision-missing", "no revision begins with -", hint)
	}
	out, err := r.git("rev-parse", "--verify", "--quiet", "--end-of-options", name+"^{commit}")
	switch {
	case errors.Is(err, exec.ErrNotFound):
		return nil, problem("git-missing", "the git program is not there, and this is no file and no built-in model", "install git, or write the older file out by hand")
	case err != nil && strings.Contains(err.Error(), "not a git repository"):
		return nil, problem("revision-missing", "is no file, no built-in model, and no revision: "+file+" is in no git repository", hint)
	case err != nil && strings.Contains(err.Error(), "exit status"):
		return nil, problem("revision-missing", "is no file, no built-in model and no revision that git knows here", hint)
	case err != nil:
		return nil, problem("revision-missing", "git cannot find this revision: "+err.Error(), hint)
	}
	r.commit = strings.TrimSpace(string(out))
	return r, nil
}

// seen is a path as git sees it from the revision's directory.
func (r *revision) seen(name string) string {
	name = path.Clean(filepath.ToSlash(name))
	if strings.HasPrefix(name, "../") {
		return name
	}
	return "./" + name
}

// read is a file as it was.
func (r *revision) read(name string, kind fileKind) ([]byte, *diag.Problem) {
	place := diag.Place{File: r.name + ":" + filepath.ToSlash(name)}
	text, err := r.git("cat-file", "blob", r.commit+":"+r.seen(name))
	switch {
	case err != nil:
		return nil, &diag.Problem{Place: place, Code: "file-missing", Message: fmt.Sprintf("at this revision there is no such file (git: %v); wanted %s", err, kind.noun)}
	case len(text) > maxFileBytes:
		_, problem := readAtMost(bytes.NewReader(text), place.File, kind)
		return nil, problem
	}
	return text, nil
}

// gatherRevision reads an airframe file as it was, with its scripts if they are wanted.
func (s *session) gatherRevision(name, file string, scripts bool) *inputs {
	in := &inputs{}
	r, problem := openRevision(name, file)
	if problem != nil {
		in.problems = append(in.problems, *problem)
		return in
	}
	base := file // seen from r.dir
	if r.dir == filepath.Dir(file) {
		base = filepath.Base(file)
	}
	text, problem := r.read(base, airframeKind)
	if problem != nil {
		in.problems = append(in.problems, *problem)
		return in
	}
	in.loadModel(name+":"+filepath.ToSlash(file), text)
	if in.model == nil || !scripts {
		return in
	}
	keep := func(script string) *diag.Problem {
		text, problem := r.read(script, scriptKind)
		if problem == nil {
			in.keepScript(name+":"+path.Join(path.Dir(filepath.ToSlash(file)), filepath.ToSlash(relative(base, script))), text)
		}
		return problem
	}
	dir := path.Dir(filepath.ToSlash(base))
	for _, written := range in.model.Scripts {
		if problem := keep(path.Join(dir, written)); problem != nil {
			in.pointAtScriptKey(problem)
			in.problems = append(in.problems, *problem)
		}
	}
	if len(in.model.Scripts) > 0 {
		return in
	}
	beside := strings.TrimSuffix(path.Base(filepath.ToSlash(base)), filepath.Ext(base)) + scriptKind.suffix
	for _, candidate := range []string{path.Join(dir, beside), path.Join(dir, "../features", beside)} {
		if keep(candidate) == nil {
			break
		}
	}
	return in
}

// relative is a path beside another one, as seen from the directory of that one.
func relative(of, name string) string {
	rel, err := filepath.Rel(filepath.Dir(of), filepath.FromSlash(name))
	if err != nil {
		return name
	}
	return rel
}
