package contrast

import (
	"encoding/json"
	"math"
	"reflect"
)

// JSON is the report for other programs, indented. Numbers that are not whole are rounded
// to four decimals, so that the same top gives the same bytes on every machine.
func (r *Report) JSON() ([]byte, error) {
	return json.MarshalIndent(rounded(reflect.ValueOf(*r)).Interface(), "", "  ")
}

// rounded is a copy of a value with every float in it rounded. Maps and what a report keeps
// from other programs hold none and are shared.
func rounded(v reflect.Value) reflect.Value {
	to := reflect.New(v.Type()).Elem()
	to.Set(v)
	switch v.Kind() {
	case reflect.Float64:
		to.SetFloat(math.Round(v.Float()*1e4) / 1e4)
	case reflect.Struct:
		for i := range v.NumField() {
			if v.Type().Field(i).Tag.Get("json") != "-" {
				to.Field(i).Set(rounded(v.Field(i)))
			}
		}
	case reflect.Slice:
		to.Set(reflect.MakeSlice(v.Type(), v.Len(), v.Len()))
		for i := range v.Len() {
			to.Index(i).Set(rounded(v.Index(i)))
		}
	case reflect.Pointer:
		if !v.IsNil() {
			to.Set(reflect.New(v.Type().Elem()))
			to.Elem().Set(rounded(v.Elem()))
		}
	}
	return to
}
