// Package airframes is the airframe file: YAML text in, a model out. It holds
// the loader, the JSON schema, and the models that come with Hingeline.
//
// Start at [Load]. It walks the tree that the YAML library makes (tree.go says
// what no file may hold), section by section, each in a file of its own:
// controls, phases with condition, demands with curves, channels with mix, and
// the parts with drives, linkages and measured. What a file may say is
// reference.md, which [Reference] returns; what it means is package mixcore.
//
// Units are those of the file: percent of full travel, degrees, millimetres,
// microseconds, seconds. Directions are words there; here they take the sign
// that mixcore gives them.
//
// The loader collects every mistake that it can find in one run, each with its
// place. It never guesses: a value that is missing, unknown, out of range or
// written in an unusual form is a problem, not a default. It never decodes into
// Go values by reflection, which would take 1.5 for 1, drop nulls and pass over
// misspelt keys. It reads no other file, and it neither panics nor takes
// unbounded time or memory on any text.
package airframes
