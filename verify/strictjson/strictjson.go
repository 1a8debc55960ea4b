// Package strictjson reads JSON that must hold what is known of it and nothing else, as
// records and messages must. It never guesses at a name: [Read] is all of it.
package strictjson

import (
	"bytes"
	"encoding/json"
	"errors"
	"io"
)

// Read reads one JSON value into what into points at. A field that into does not have is
// an error, and so is anything behind the value but white space.
func Read(text []byte, into any) error {
	d := json.NewDecoder(bytes.NewReader(text))
	d.DisallowUnknownFields()
	if err := d.Decode(into); err != nil {
		return err
	}
	if _, err := d.Token(); !errors.Is(err, io.EOF) {
		return errors.New("something follows its end")
	}
	return nil
}
