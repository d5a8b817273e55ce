package preview

import (
	"reflect"

	"eighthturn/internal/quilt"
	"eighthturn/internal/stop"
	"eighthturn/layout"
)

// alike says whether two tops are the same but for the places of the layout that they were
// made of, and what is warned of there. Whatever else a top may come to hold counts: a plan
// made of the one is then not taken for a plan of the other.
func alike(a, b *quilt.Top) bool {
	return a == b || same(reflect.ValueOf(a), reflect.ValueOf(b))
}

// same compares two values of one type.
func same(a, b reflect.Value) bool {
	switch a.Kind() {
	case reflect.Pointer:
		if a.IsNil() || b.IsNil() {
			return a.IsNil() && b.IsNil()
		}
		return a.UnsafePointer() == b.UnsafePointer() || same(a.Elem(), b.Elem())
	case reflect.Slice:
		if a.Len() != b.Len() || a.IsNil() != b.IsNil() {
			return false
		}
		return a.UnsafePointer() == b.UnsafePointer() || sameItems(a, b)
	case reflect.Array:
		return sameItems(a, b)
	case reflect.Struct:
		return sameFields(a, b)
	case reflect.Interface:
		if a.IsNil() || b.IsNil() || a.Elem().Type() != b.Elem().Type() {
			return a.IsNil() && b.IsNil()
		}
		return same(a.Elem(), b.Elem())
	case reflect.Func, reflect.Map, reflect.Chan:
		return a.IsNil() && b.IsNil() // what cannot be compared counts as another
	}
	return a.Equal(b)
}

func sameItems(a, b reflect.Value) bool {
	for i := range a.Len() {
		if !same(a.Index(i), b.Index(i)) {
			return false
		}
	}
	return true
}

func sameFields(a, b reflect.Value) bool {
	switch a.Type() {
	case reflect.TypeFor[layout.Span](), reflect.TypeFor[quilt.Place](), reflect.TypeFor[layout.Fault](), reflect.TypeFor[stop.Once[*quilt.Top]](): // of a size, which is made of its design
		return true
	}
	for i := range a.NumField() {
		if !same(a.Field(i), b.Field(i)) {
			return false
		}
	}
	return true
}
