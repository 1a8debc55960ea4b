package prove

import (
	"math"
	"reflect"

	"example.com/hingeline/mixcore"
)

// mostNumber is far more than any setting of a model: the bounds of rounding errors hold
// up to it.
const mostNumber = 1e6

// soundNumbers says whether every number of a set-up is a number of reasonable size.
// Stops and the most that a servo turns may be infinite: there is none.
func soundNumbers(s *mixcore.Setup) bool { return soundValue(reflect.ValueOf(s).Elem(), false) }

func soundValue(v reflect.Value, endless bool) bool {
	switch v.Kind() {
	case reflect.Float64:
		x := v.Float()
		return math.Abs(x) <= mostNumber || endless && math.IsInf(x, 1)
	case reflect.Pointer:
		return v.IsNil() || soundValue(v.Elem(), endless)
	case reflect.Slice, reflect.Array:
		for i := range v.Len() {
			if !soundValue(v.Index(i), endless) {
				return false
			}
		}
	case reflect.Struct:
		for i := range v.NumField() {
			field := v.Type().Field(i)
			none := v.Type() == reflect.TypeFor[mixcore.Stops]() || v.Type() == reflect.TypeFor[mixcore.Servo]() && field.Name == "Max"
			if !soundValue(v.Field(i), none) {
				return false
			}
		}
	}
	return true
}
