package render

import (
	"bytes"
	"encoding"
	"encoding/json"
	"fmt"
	"math"
	"reflect"
	"slices"
	"strconv"
	"strings"
	"unicode/utf16"

	"eighthturn/internal/measure"
	"eighthturn/layout"
)

// JSONHead is what stands first in the JSON of a plan.
type JSONHead struct {
	Format int    // changes when what a name means does
	File   string // "" for a plan of no layout
	Units  measure.System
}

// JSON writes a plan as JSON for other programs: its exported fields under the names of their tags, lengths as
// {"nm": ..., "text": ...}, lists that hold nothing as [], what has a name by it, behind the head's format, file and units. A field without a tag is
// not written, nor one that is tagged omitempty and holds nothing; the text of a length that is tagged atleast, atmost or shop is
// written by that rule of measure. What is embedded without a tag is written in its place.
// The error says which type cannot be written.
func JSON(plan any, head JSONHead) (string, error) {
	w := &jsonWriter{units: head.Units}
	w.out.WriteByte('{')
	for _, f := range []struct {
		name  string
		value any
	}{{"format", head.Format}, {"file", head.File}, {"units", head.Units.String()}} {
		if f.value != "" {
			w.field(f.name, reflect.ValueOf(f.value))
		}
	}
	w.fields(reflect.Indirect(reflect.ValueOf(plan)))
	w.out.WriteByte('}')
	if w.err != nil {
		return "", w.err
	}
	var b bytes.Buffer
	if err := json.Indent(&b, w.out.Bytes(), "", "  "); err != nil {
		return "", err
	}
	return Harmless(b.String()) + "\n", nil
}

// jsonWriter writes values in the order of their fields.
type jsonWriter struct {
	units measure.System
	out   bytes.Buffer
	some  bool   // a field was written in the object that is open
	rule  string // how the texts of lengths are written: atleast, atmost, shop, or as people read them
	err   error
}

func (w *jsonWriter) fail(v reflect.Value) {
	if w.err == nil {
		w.err = fmt.Errorf("a value of type %s cannot be written as JSON", v.Type())
	}
}

// plain writes what the standard library writes.
func (w *jsonWriter) plain(value any) {
	b, err := json.Marshal(value)
	if err != nil && w.err == nil {
		w.err = err
	}
	w.out.Write(b)
}

func (w *jsonWriter) field(name string, v reflect.Value) {
	if w.some {
		w.out.WriteByte(',')
	}
	w.plain(name)
	w.out.WriteByte(':')
	w.value(v)
	w.some = true
}

// fields writes the tagged fields of a struct.
func (w *jsonWriter) fields(v reflect.Value) {
	if v.Kind() != reflect.Struct {
		w.fail(v)
		return
	}
	for i := range v.NumField() {
		f := v.Type().Field(i)
		name, option, _ := strings.Cut(f.Tag.Get("json"), ",")
		switch {
		case name == "-", !f.IsExported() && !f.Anonymous:
		case f.Anonymous && name == "":
			if inner := reflect.Indirect(v.Field(i)); inner.IsValid() {
				w.fields(inner)
			}
		case name == "", option == "omitempty" && v.Field(i).IsZero():
		default:
			before := w.rule
			w.rule = f.Tag.Get("length")
			w.field(name, v.Field(i))
			w.rule = before
		}
	}
}

// length is a length as JSON has it, its text by the rule.
func (w *jsonWriter) length(nm measure.NM) measure.JSONLength {
	l := w.units.JSON(nm)
	switch w.rule {
	case "atleast":
		l.Text = w.units.AtLeast(nm)
	case "atmost":
		l.Text = w.units.AtMost(nm)
	case "shop":
		l.Text = w.units.Shop(nm)
	}
	return l
}

func (w *jsonWriter) value(v reflect.Value) {
	if v.CanInterface() {
		switch known := v.Interface().(type) {
		case measure.NM:
			w.plain(w.length(known))
			return
		case encoding.TextMarshaler:
			if v.Kind() != reflect.Pointer || !v.IsNil() {
				w.plain(known)
				return
			}
		}
	}
	switch v.Kind() {
	case reflect.Uint8:
		if named, ok := v.Interface().(fmt.Stringer); ok {
			w.plain(named.String())
			return
		}
		w.fail(v)
	case reflect.Pointer, reflect.Interface:
		if v.IsNil() {
			w.out.WriteString("null")
			return
		}
		w.value(v.Elem())
	case reflect.Slice, reflect.Array:
		w.list(v)
	case reflect.Struct:
		before := w.some
		w.some = false
		w.out.WriteByte('{')
		w.fields(v)
		w.out.WriteByte('}')
		w.some = before
	case reflect.Map:
		w.table(v)
	case reflect.Float64:
		w.plain(math.Round(v.Float()*decimals) / decimals)
	case reflect.Bool, reflect.String:
		w.plain(v.Interface())
	case reflect.Int, reflect.Int32, reflect.Int64:
		w.out.WriteString(strconv.FormatInt(v.Int(), 10))
	default:
		w.fail(v)
	}
}

// decimals is what numbers that are not whole are rounded to, so that the same plan gives the same bytes on every machine.
const decimals = 1e4

// table writes a map whose keys are strings, in their order.
func (w *jsonWriter) table(v reflect.Value) {
	if v.Type().Key().Kind() != reflect.String {
		w.fail(v)
		return
	}
	keys := v.MapKeys()
	slices.SortFunc(keys, func(a, b reflect.Value) int { return strings.Compare(a.String(), b.String()) })
	w.out.WriteByte('{')
	for i, key := range keys {
		if i > 0 {
			w.out.WriteByte(',')
		}
		w.plain(key.String())
		w.out.WriteByte(':')
		w.value(v.MapIndex(key))
	}
	w.out.WriteByte('}')
}

func (w *jsonWriter) list(v reflect.Value) {
	w.out.WriteByte('[')
	for i := range v.Len() {
		if i > 0 {
			w.out.WriteByte(',')
		}
		w.value(v.Index(i))
	}
	w.out.WriteByte(']')
}

// Harmless is JSON that steers no terminal: what would is escaped within its strings.
func Harmless(text string) string {
	var b strings.Builder
	for _, r := range text {
		if r == '\n' || layout.Visible(string(r)) == string(r) {
			b.WriteRune(r)
			continue
		}
		for _, u := range utf16.Encode([]rune{r}) {
			fmt.Fprintf(&b, `\u%04x`, u)
		}
	}
	return b.String()
}
