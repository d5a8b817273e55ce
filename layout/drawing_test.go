package layout_test

import (
	"reflect"

	"eighthturn/internal/measure"
	"eighthturn/internal/quilt"
	"eighthturn/layout"
)

// sameDrawing says whether two layouts lay out alike, their places in the source apart.
func sameDrawing(a, b string) bool {
	first, _, _ := layout.Read(a)
	second, _, _ := layout.Read(b)
	if first == nil || second == nil {
		return false
	}
	return reflect.DeepEqual(withoutPlaces(quilt.Lay(first)), withoutPlaces(quilt.Lay(second)))
}

// withoutPlaces is a top with every place in the source taken out.
func withoutPlaces(top *quilt.Top) *quilt.Top {
	clearPlaces(reflect.ValueOf(top).Elem())
	return top
}

func clearPlaces(v reflect.Value) {
	switch {
	case v.Type() == spanType || v.Type() == reflect.TypeFor[quilt.Place]():
		v.SetZero()
	case v.Kind() == reflect.Struct:
		for i := range v.NumField() {
			if v.Type().Field(i).IsExported() {
				clearPlaces(v.Field(i))
			}
		}
	case v.Kind() == reflect.Pointer && !v.IsNil():
		clearPlaces(v.Elem())
	case v.Kind() == reflect.Slice && mayHoldPlaces(v.Type().Elem()):
		for i := range v.Len() {
			clearPlaces(v.Index(i))
		}
	}
}

func mayHoldPlaces(t reflect.Type) bool {
	return t.Kind() == reflect.Struct && t != reflect.TypeFor[measure.Point]()
}
