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
	return reflect.DeepEqual(drawings(quilt.Lay(first)), drawings(quilt.Lay(second)))
}

// drawings are a top and those of its sizes, without places in the source.
func drawings(top *quilt.Top) []*quilt.Top {
	var list []*quilt.Top
	for i := range top.Sizes {
		list = append(list, withoutPlaces(top.Sizes[i].Top(nil)))
	}
	top.Sizes = nil
	return append(list, withoutPlaces(top))
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
