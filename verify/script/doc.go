// Package script runs a script, written in Gherkin, against a model, and
// records what every sentence asked and got.
//
// Start at [Run]. A file is first read and checked by our own rules (files.go,
// read.go, syntax.go, structure.go, placeholders.go, description.go, lost.go):
// whatever Gherkin would pass over in silence, such as an empty file or a misspelt
// keyword, is a problem with its place. Then every scenario is compiled to checks
// (compile.go, step.go, scene.go, outline.go), where every step becomes a setting,
// a check or a problem, and only if nothing is wrong godog runs them (run.go). The
// verdict comes from our own record; where godog's status disagrees, or a step is
// lost on the way, Hingeline itself is wrong and Run panics with a [Bug].
//
// It is the only package that knows Gherkin. It never reads a file from disk,
// never prints, and never lets a sentence pass that was not held against the
// model.
package script
