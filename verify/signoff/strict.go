package signoff

import (
	"bytes"
	"encoding/json"
	"errors"
	"fmt"
	"io"
	"maps"
	"reflect"
	"slices"

	"example.com/hingeline/verify/strictjson"
)

// strictly reads one JSON value into what to points at. Every key must be there once,
// in its own spelling, and no other; nothing may stand behind the value.
func strictly(text []byte, to any) error {
	got, err := tree(text)
	if err != nil {
		return err
	}
	if err := strictjson.Read(text, to); err != nil {
		return fmt.Errorf("it cannot be read: %w", err)
	}
	again, err := json.Marshal(to)
	if err != nil {
		return err
	}
	want, err := tree(again)
	if err != nil {
		return err
	}
	if where := firstDifference("", want, got); where != nil {
		return fmt.Errorf("it has not the shape of a record at %s", where.path)
	}
	return nil
}

// tree is one JSON value as maps, lists, strings, numbers as they are written, truths
// and nil. A key that is there twice is an error, and so is anything behind the value.
func tree(text []byte) (any, error) {
	d := json.NewDecoder(bytes.NewReader(text))
	d.UseNumber()
	value, err := branch(d, 0)
	if err != nil {
		return nil, fmt.Errorf("it is no JSON: %w", err)
	}
	if _, err := d.Token(); err != io.EOF {
		return nil, errors.New("something stands behind it")
	}
	return value, nil
}

// maxDepth is how deep JSON that we read may nest: more than twice what we write.
const maxDepth = 40

func branch(d *json.Decoder, depth int) (any, error) {
	if depth > maxDepth {
		return nil, errors.New("it nests too deeply")
	}
	token, err := d.Token()
	if err != nil {
		if err == io.EOF {
			err = io.ErrUnexpectedEOF
		}
		return nil, err
	}
	switch token {
	case json.Delim('['):
		list := []any{}
		for d.More() {
			item, err := branch(d, depth+1)
			if err != nil {
				return nil, err
			}
			list = append(list, item)
		}
		_, err := d.Token()
		return list, err
	case json.Delim('{'):
		object := map[string]any{}
		for d.More() {
			key, err := d.Token()
			if err != nil {
				return nil, err
			}
			name := key.(string) // json.Decoder lets nothing else be a key
			if _, twice := object[name]; twice {
				return nil, fmt.Errorf("the key %q is there twice", name)
			}
			if object[name], err = branch(d, depth+1); err != nil {
				return nil, err
			}
		}
		_, err := d.Token()
		return object, err
	}
	return token, nil
}

// difference is a place at which two JSON values differ. A side that has nothing there
// is absent.
type difference struct {
	path string
	a, b any
}

// absent is the value of what is not there.
type absent struct{}

// firstDifference is the first place at which two trees differ, keys in the order of
// the alphabet; nil where they are the same.
func firstDifference(path string, a, b any) *difference {
	switch a := a.(type) {
	case map[string]any:
		other, ok := b.(map[string]any)
		if !ok {
			break
		}
		keys := map[string]bool{}
		for k := range a {
			keys[k] = true
		}
		for k := range other {
			keys[k] = true
		}
		for _, k := range slices.Sorted(maps.Keys(keys)) {
			if d := firstDifference(join(path, k), valueOf(a, k), valueOf(other, k)); d != nil {
				return d
			}
		}
		return nil
	case []any:
		other, ok := b.([]any)
		if !ok {
			break
		}
		for i := range max(len(a), len(other)) {
			if d := firstDifference(fmt.Sprintf("%s[%d]", path, i), itemOf(a, i), itemOf(other, i)); d != nil {
				return d
			}
		}
		return nil
	}
	if reflect.DeepEqual(a, b) {
		return nil
	}
	return &difference{path, a, b}
}

func join(path, key string) string {
	if path == "" {
		return key
	}
	return path + "." + key
}

func valueOf(object map[string]any, key string) any {
	if v, ok := object[key]; ok {
		return v
	}
	return absent{}
}

func itemOf(list []any, i int) any {
	if i < len(list) {
		return list[i]
	}
	return absent{}
}
