package strictjson_test

import (
	"strings"
	"testing"

	"example.com/hingeline/verify/strictjson"
)

func TestReadTakesWhatIsKnownAndNothingElse(t *testing.T) {
	for _, c := range []struct{ text, problem string }{
		{`{"at":3}`, ""},
		{" {\"at\":3}\n\t", ""},
		{``, "EOF"},
		{`{"at":3`, "unexpected EOF"},
		{`{"at":"three"}`, "cannot unmarshal"},
		{`{"at":3,"by":1}`, `unknown field "by"`},
		{`{"at":3}{}`, "something follows its end"},
		{`{"at":3} }`, "something follows its end"},
		{`{"at":3}, "by"`, "something follows its end"},
	} {
		var got struct {
			At int `json:"at"`
		}
		err := strictjson.Read([]byte(c.text), &got)
		switch {
		case c.problem == "" && (err != nil || got.At != 3):
			t.Errorf("%q: %+v, %v", c.text, got, err)
		case c.problem != "" && (err == nil || !strings.Contains(err.Error(), c.problem)):
			t.Errorf("%q: %v, wanted %q", c.text, err, c.problem)
		}
	}
}
