package dxf

import (
	"bytes"
	"fmt"
	"strconv"
	"strings"
	"testing"

	"eighthturn/internal/measure"
)

// pairs reads a drawing as its pairs: a group code, and a value of the sort that the code stands for (Autodesk's DXF reference, group codes).
func pairs(drawing string) (list [][2]string, err error) {
	lines := strings.Split(strings.TrimSuffix(drawing, "\r\n"), "\r\n")
	if len(lines)%2 > 0 {
		return nil, fmt.Errorf("%d lines", len(lines))
	}
	for i := 0; i < len(lines); i += 2 {
		code, err := strconv.Atoi(lines[i])
		if err != nil {
			return nil, fmt.Errorf("line %d: %w", i+1, err)
		}
		value := lines[i+1]
		switch {
		case code >= 10 && code < 60:
			_, err = strconv.ParseFloat(value, 64)
		case code >= 60 && code < 80:
			_, err = strconv.Atoi(value)
		}
		if err != nil || strings.ContainsFunc(value, func(r rune) bool { return r < ' ' || r > '~' }) {
			return nil, fmt.Errorf("line %d: %q for the code %d", i+2, value, code)
		}
		list = append(list, [2]string{lines[i], value})
	}
	return list, nil
}

// unescaped are the letters of a text in a drawing.
func unescaped(value string) string {
	var b strings.Builder
	for rest := value; rest != ""; {
		if after, found := strings.CutPrefix(rest, `\U+`); found && len(after) >= 4 {
			if n, err := strconv.ParseUint(after[:4], 16, 32); err == nil {
				b.WriteRune(rune(n))
				rest = after[4:]
				continue
			}
		}
		b.WriteByte(rest[0])
		rest = rest[1:]
	}
	return b.String()
}

// FuzzDrawing draws anything anywhere with any words: the drawing has as many things as were drawn, its words read back, and nothing
// reaches beyond what its header says.
func FuzzDrawing(f *testing.F) {
	f.Add("cut 4\r\n0\r\nEOF", int64(0), int64(measure.Inch), int64(measure.Inch/4), false)
	f.Add("é赤🌙\x00\x7f\xff", int64(-1), int64(1)<<40, int64(-5), true)
	f.Fuzz(func(t *testing.T, words string, x, y, size int64, metric bool) {
		const most = int64(1000 * measure.Inch)
		if max(x, y, size) > most || min(x, y) < -most || size < 0 || strings.Contains(words, `\U+`) {
			return // farther than any quilt reaches
		}
		d := &Drawing{Comment: "a drawing", Layers: []Layer{{"CUT", 7}}}
		if metric {
			d.Units = measure.Centimetres
		}
		a, b := measure.Point{X: measure.NM(x), Y: measure.NM(y)}, measure.Point{X: measure.NM(y), Y: measure.NM(size)}
		d.Outline("CUT", []measure.Point{a, b, {}})
		d.Line("CUT", a, b)
		d.Circle("CUT", b, measure.NM(size))
		d.Text("CUT", a, measure.NM(size), words)
		var out bytes.Buffer
		if err := d.Write(&out); err != nil {
			t.Fatal(err)
		}
		list, err := pairs(out.String())
		if err != nil {
			t.Fatal(err)
		}
		if err := wrongPairs(list, words); err != nil {
			t.Errorf("%v\n%s", err, out.String())
		}
	})
}

// wrongPairs says what a drawing of one thing of each kind lacks.
func wrongPairs(list [][2]string, words string) error {
	count := map[string]int{}
	var reach []float64 // of $EXTMIN and $EXTMAX, across and down
	kind, reads := "", false
	for i, p := range list {
		number, _ := strconv.ParseFloat(p[1], 64)
		switch {
		case p[0] == "0":
			kind = p[1]
			count[kind]++
		case p[0] == "9" && strings.HasPrefix(p[1], "$EXT"):
			for _, at := range list[i+1 : i+3] {
				v, _ := strconv.ParseFloat(at[1], 64)
				reach = append(reach, v)
			}
		case p[0] == "1" && kind == "TEXT":
			reads = unescaped(p[1]) == shown(words)
		case kind == "VERTEX" || kind == "LINE" || kind == "CIRCLE" || kind == "TEXT":
			side := map[string]int{"10": 0, "11": 0, "20": 1, "21": 1}
			if at, is := side[p[0]]; is && (number < reach[at]-1e-6 || number > reach[at+2]+1e-6) {
				return fmt.Errorf("a %s reaches to %g, beyond %v", kind, number, reach)
			}
		}
	}
	if count["POLYLINE"] != 1 || count["VERTEX"] != 3 || count["LINE"] != 1 || count["CIRCLE"] != 1 || count["TEXT"] != 1 || count["EOF"] != 1 || !reads {
		return fmt.Errorf("%v are drawn, the words read back: %v", count, reads)
	}
	return nil
}

// shown are words as a drawing can show them: what ends a line or has no number of four digits is replaced.
func shown(words string) string {
	return strings.Map(func(r rune) rune {
		switch {
		case r < ' ' || r == 0x7f:
			return ' '
		case r > 0xffff:
			return '?'
		}
		return r
	}, words)
}

// TestWrongPairsAreNoticed: words that end their line, things that are lost, and a header that says less than is drawn.
func TestWrongPairsAreNoticed(t *testing.T) {
	for _, broken := range []string{"0\r\nEOF", "0\r\nEOF\r\nx\r\n1\r\n", "10\r\nNaN?\r\n", "1\r\ntab\t\r\n", "1\r\ntwo\nlines\r\n"} {
		if list, err := pairs(broken); err == nil && wrongPairs(list, "") == nil {
			t.Errorf("%q goes through", broken)
		}
	}
	d := &Drawing{}
	d.Outline("CUT", []measure.Point{{}, {X: measure.Inch}, {Y: measure.Inch}})
	d.Line("CUT", measure.Point{}, measure.Point{X: measure.Inch})
	d.Circle("CUT", measure.Point{}, 1)
	d.Text("CUT", measure.Point{}, 1, "ab")
	d.high.X /= 2
	var out bytes.Buffer
	if err := d.Write(&out); err != nil {
		t.Fatal(err)
	}
	if list, err := pairs(out.String()); err != nil || wrongPairs(list, "ab") == nil {
		t.Errorf("a header that says too little goes through, %v", err)
	}
}
