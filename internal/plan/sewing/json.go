package sewing

import (
	"encoding/json"
	"reflect"
)

// JSON is the plan for other programs, indented. Lengths are in nanometres and named so, or
// have a nearest mark beside them; lists that are empty are written as such. The same top
// gives the same bytes.
func (p *Plan) JSON() ([]byte, error) {
	return json.MarshalIndent(filled(reflect.ValueOf(p).Elem()).Interface(), "", "  ")
}

// filled is a copy of a value in which no list is nil. What is kept from other programs is
// left out.
func filled(v reflect.Value) reflect.Value {
	to := reflect.New(v.Type()).Elem()
	switch v.Kind() {
	case reflect.Struct:
		for i := range v.NumField() {
			if f := v.Type().Field(i); f.IsExported() {
				to.Field(i).Set(filled(v.Field(i)))
			}
		}
	case reflect.Slice:
		to.Set(reflect.MakeSlice(v.Type(), v.Len(), v.Len()))
		for i := range v.Len() {
			to.Index(i).Set(filled(v.Index(i)))
		}
	case reflect.Array:
		for i := range v.Len() {
			to.Index(i).Set(filled(v.Index(i)))
		}
	case reflect.Pointer:
		if !v.IsNil() {
			to.Set(reflect.New(v.Type().Elem()))
			to.Elem().Set(filled(v.Elem()))
		}
	default:
		to.Set(v)
	}
	return to
}
