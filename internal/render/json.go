package render

import (
	"bufio"
	"encoding"
	"encoding/json"
	"fmt"
	"io"
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
// written by that rule of measure. What is embedded without a tag is written in its place. It is written as it is gone through,
// so that a plan of any size takes no memory for its text.
// The error says which type cannot be written, or why out could not be written to.
func JSON(out io.Writer, plan any, head JSONHead) error {
	w := &jsonWriter{units: head.Units, out: bufio.NewWriterSize(out, 1<<16), types: map[reflect.Type]*jsonType{}, lengths: map[jsonLength]string{}}
	w.open('{')
	w.key("format")
	w.whole(int64(head.Format))
	if head.File != "" {
		w.key("file")
		w.text(head.File)
	}
	w.key("units")
	w.text(head.Units.String())
	w.fields(reflect.Indirect(reflect.ValueOf(plan)))
	w.close('}')
	w.out.WriteByte('\n')
	if w.err != nil {
		return w.err
	}
	return w.out.Flush()
}

// jsonWriter writes values in the order of their fields.
type jsonWriter struct {
	units   measure.System
	out     *bufio.Writer
	depth   int    // of the object or list that is open
	some    bool   // something was written in it
	rule    string // how the texts of lengths are written: atleast, atmost, shop, or as people read them
	types   map[reflect.Type]*jsonType
	lengths map[jsonLength]string // texts by length and rule
	err     error
}

// jsonLength is a length and the rule that its text is written by.
type jsonLength struct {
	nm   measure.NM
	rule string
}

// maxLengths is how many texts of lengths are kept.
const maxLengths = 1 << 14

// jsonType is what is known of a type: how it is written, and of a struct its fields.
type jsonType struct {
	length, text, named bool // a length; writes its own text; a small number with a name
	fields              []jsonField
}

// jsonField is a field that is written.
type jsonField struct {
	index           int
	name, rule      string
	embedded, omits bool // written in its place; not written where it holds nothing
}

// typeOf is what is known of a type.
func (w *jsonWriter) typeOf(t reflect.Type) *jsonType {
	known, ok := w.types[t]
	if !ok {
		known = &jsonType{
			length: t == reflect.TypeFor[measure.NM](), text: t.Implements(reflect.TypeFor[encoding.TextMarshaler]()),
			named: t.Kind() == reflect.Uint8 && t.Implements(reflect.TypeFor[fmt.Stringer]()),
		}
		if t.Kind() == reflect.Struct {
			known.fields = jsonFields(t)
		}
		w.types[t] = known
	}
	return known
}

// jsonFields is the fields of a struct that are written.
func jsonFields(t reflect.Type) []jsonField {
	var list []jsonField
	for i := range t.NumField() {
		f := t.Field(i)
		name, option, _ := strings.Cut(f.Tag.Get("json"), ",")
		embedded := f.Anonymous && name == ""
		if name != "-" && (f.IsExported() || f.Anonymous) && (embedded || name != "") {
			list = append(list, jsonField{i, name, f.Tag.Get("length"), embedded, option == "omitempty"})
		}
	}
	return list
}

func (w *jsonWriter) fail(v reflect.Value) {
	if w.err == nil {
		w.err = fmt.Errorf("a value of type %s cannot be written as JSON", v.Type())
	}
}

// open begins an object or a list, and close ends it.
func (w *jsonWriter) open(bracket byte) {
	w.out.WriteByte(bracket)
	w.depth, w.some = w.depth+1, false
}

func (w *jsonWriter) close(bracket byte) {
	if w.depth--; w.some {
		w.newLine()
	}
	w.out.WriteByte(bracket)
	w.some = true
}

func (w *jsonWriter) newLine() {
	w.out.WriteByte('\n')
	for range w.depth {
		w.out.WriteString("  ")
	}
}

// next begins something in an object or a list.
func (w *jsonWriter) next() {
	if w.some {
		w.out.WriteByte(',')
	}
	w.newLine()
	w.some = true
}

// key begins a field.
func (w *jsonWriter) key(name string) {
	w.next()
	w.text(name)
	w.out.WriteString(": ")
}

func (w *jsonWriter) whole(n int64) {
	w.out.Write(strconv.AppendInt(w.out.AvailableBuffer(), n, 10))
}

// text writes a string, one of letters that nothing need be done about as it is.
func (w *jsonWriter) text(s string) {
	for i := range len(s) {
		if c := s[i]; c < ' ' || c > '~' || c == '"' || c == '\\' || c == '<' || c == '>' || c == '&' {
			w.plain(s)
			return
		}
	}
	w.out.WriteByte('"')
	w.out.WriteString(s)
	w.out.WriteByte('"')
}

// plain writes what the standard library writes.
func (w *jsonWriter) plain(value any) {
	b, err := json.Marshal(value)
	if err != nil && w.err == nil {
		w.err = err
	}
	w.out.WriteString(Harmless(string(b)))
}

// fields writes the tagged fields of a struct.
func (w *jsonWriter) fields(v reflect.Value) {
	if v.Kind() != reflect.Struct {
		w.fail(v)
		return
	}
	for _, f := range w.typeOf(v.Type()).fields {
		at := v.Field(f.index)
		switch {
		case f.embedded:
			if inner := reflect.Indirect(at); inner.IsValid() {
				w.fields(inner)
			}
		case f.omits && at.IsZero():
		default:
			before := w.rule
			w.rule = f.rule
			w.key(f.name)
			w.value(at)
			w.rule = before
		}
	}
}

// length writes a length, its text by the rule.
func (w *jsonWriter) length(nm measure.NM) {
	key := jsonLength{nm, w.rule}
	text, ok := w.lengths[key]
	if !ok {
		text = w.lengthText(nm)
		if len(w.lengths) < maxLengths {
			w.lengths[key] = text
		}
	}
	w.open('{')
	w.key("nm")
	w.whole(int64(nm))
	w.key("text")
	w.text(text)
	w.close('}')
}

// lengthText is a length in words by the rule.
func (w *jsonWriter) lengthText(nm measure.NM) string {
	switch w.rule {
	case "atleast":
		return w.units.AtLeast(nm)
	case "atmost":
		return w.units.AtMost(nm)
	case "shop":
		return w.units.Shop(nm)
	}
	return w.units.JSON(nm).Text
}

func (w *jsonWriter) value(v reflect.Value) {
	switch known := w.typeOf(v.Type()); {
	case known.length:
		w.length(measure.NM(v.Int()))
	case known.text && v.CanInterface() && (v.Kind() != reflect.Pointer || !v.IsNil()):
		w.plain(v.Interface())
	case known.named && v.CanInterface():
		w.text(v.Interface().(fmt.Stringer).String())
	default:
		w.kind(v)
	}
}

// kind writes a value by its kind.
func (w *jsonWriter) kind(v reflect.Value) {
	switch v.Kind() {
	case reflect.Pointer, reflect.Interface:
		if v.IsNil() {
			w.out.WriteString("null")
			return
		}
		w.value(v.Elem())
	case reflect.Slice, reflect.Array:
		w.open('[')
		for i := range v.Len() {
			w.next()
			w.value(v.Index(i))
		}
		w.close(']')
	case reflect.Struct:
		w.open('{')
		w.fields(v)
		w.close('}')
	case reflect.Map:
		w.table(v)
	case reflect.Float64:
		w.plain(math.Round(v.Float()*decimals) / decimals)
	case reflect.String:
		w.text(v.String())
	case reflect.Bool:
		w.out.WriteString(strconv.FormatBool(v.Bool()))
	case reflect.Int, reflect.Int32, reflect.Int64:
		w.whole(v.Int())
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
	w.open('{')
	for _, key := range keys {
		w.key(key.String())
		w.value(v.MapIndex(key))
	}
	w.close('}')
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
