package palettes

import (
	"bytes"
	"encoding/binary"
	"errors"
	"fmt"
	"io"
	"math"
	"slices"
	"strings"
	"testing"
	"unicode/utf16"
	"unicode/utf8"
)

func sameFabrics(got, want []Swatch) error {
	if len(got) != len(want) {
		return fmt.Errorf("%d fabrics, expected %d", len(got), len(want))
	}
	for i := range got {
		if got[i] != want[i] {
			return fmt.Errorf("fabric %d is %v, expected %v", i+1, got[i], want[i])
		}
	}
	return nil
}

// readsBack writes the palette and reads it again.
func readsBack(f Format, p Palette) error {
	var b bytes.Buffer
	if err := f.Write(&b, p); err != nil {
		return err
	}
	got, err := f.Read(&b)
	if err != nil {
		return err
	}
	return sameFabrics(got.Fabrics, held(f, p))
}

// held are the fabrics that a format holds of a palette: bare digits have no names.
func held(f Format, p Palette) []Swatch {
	if f.Extensions[0] != ".hex" {
		return p.Fabrics
	}
	list := slices.Clone(p.Fabrics)
	for i := range list {
		list[i].Name = ""
	}
	return list
}

func TestFormatsReadBack(t *testing.T) {
	for _, f := range Formats() {
		if f.Write == nil {
			continue
		}
		for _, p := range All() {
			holds(t, readsBack(f, p))
		}
		swapped := f
		swapped.Write = func(w io.Writer, p Palette) error {
			for i, s := range p.Fabrics {
				p.Fabrics[i].Colour = Colour{s.Colour.B, s.Colour.G, s.Colour.R}
			}
			return f.Write(w, p)
		}
		p := tidewater()
		var b bytes.Buffer
		if err := swapped.Write(&b, p); err != nil {
			t.Fatal(err)
		}
		got, err := f.Read(&b)
		if err != nil {
			t.Fatal(err)
		}
		catches(t, "red and blue swapped in "+f.Name, sameFabrics(got.Fabrics, held(f, tidewater())))
	}
}

func TestFormatOf(t *testing.T) {
	for name, want := range map[string]string{
		"a.gpl": "GIMP palette", "my/B.ASE": "Adobe Swatch Exchange", "c.css": "CSS custom properties", "d.hex": "bare list of hex colors", "d.txt": "list of hex colors with names",
		"e.jpg": "", "gpl": "",
	} {
		if f, ok := FormatOf(name); f.Name != want || ok != (want != "") {
			t.Errorf("%s is a %q, expected %q", name, f.Name, want)
		}
	}
}

func TestReadGPL(t *testing.T) {
	p, err := readGPL(strings.NewReader("\uFEFFGIMP Palette\r\nName: Dock  side\r\nColumns: 4\r\n# note\r\n  31  51\t80\tnavy blue\r\n\r\n255 255 255\r\n"))
	if err != nil {
		t.Fatal(err)
	}
	if p.Name != "Dock side" {
		t.Errorf("the name is %q", p.Name)
	}
	holds(t, sameFabrics(p.Fabrics, []Swatch{{"navy blue", Colour{31, 51, 80}}, {"", Colour{255, 255, 255}}}))
}

func TestReadHexList(t *testing.T) {
	p, err := readHexList(strings.NewReader("// dock\n; by hand\n#1f3350 navy blue // best\n\n1F3350\n#abc\tgrey; blue ;end\n"))
	if err != nil {
		t.Fatal(err)
	}
	holds(t, sameFabrics(p.Fabrics, []Swatch{
		{"navy blue", Colour{0x1f, 0x33, 0x50}}, {"", Colour{0x1f, 0x33, 0x50}}, {"grey; blue", Colour{0xaa, 0xbb, 0xcc}},
	}))
}

func TestReadCSS(t *testing.T) {
	p, err := readCSS(strings.NewReader(`@import "x;--no: red;"; /* --no: red; */
:root, a:hover { color: red; --navy: #1F3350; --gap: 4px 2px; --rust : Rust; --gold:GOLD !important;
  --a: rgb(31, 51, 80); --b: rgb(31 51 80 / 100%); --c: RGBA(100%,0%,50%,1);
  --d: rgb(/* r */ 1.4 2.5 3); --shade: linear-gradient(red, blue); --other: var(--navy); --s: "a;b}";
  --set: { x: red; --no: blue }; --list: [ --no: red; ]; --f: (--no: red; --no: red); --été: teal}
--last: #fff`))
	if err != nil {
		t.Fatal(err)
	}
	holds(t, sameFabrics(p.Fabrics, []Swatch{
		{"navy", Colour{0x1f, 0x33, 0x50}}, {"gold", Colour{255, 215, 0}}, {"a", Colour{31, 51, 80}}, {"b", Colour{31, 51, 80}},
		{"c", Colour{255, 0, 128}}, {"d", Colour{1, 3, 3}}, {"été", Colour{0, 128, 128}}, {"last", Colour{255, 255, 255}},
	}))
}

func TestFaultsOfTextFiles(t *testing.T) {
	long := strings.Repeat("x", maxNameBytes+1)
	for _, row := range []struct {
		read func(io.Reader) (Palette, error)
		text string
		line int
		want string
	}{
		{readGPL, "", 1, `"", expected "GIMP Palette"`},
		{readGPL, "JASC-PAL\n", 1, `"JASC-PAL", expected`},
		{readGPL, "GIMP Palette\nName: x\n", 3, "ends without a color"},
		{readGPL, "GIMP Palette\nColumns: 256\n1 2 3\n", 2, "a number from 0 to 255"},
		{readGPL, "GIMP Palette\n#\n1 2 256 x\n", 3, "three numbers from 0 to 255"},
		{readGPL, "GIMP Palette\n1 2\n", 2, "three numbers"},
		{readGPL, "GIMP Palette\n1 2 -3 x\n", 2, "three numbers"},
		{readGPL, "GIMP Palette\n1 2 3 x\nName: y\n", 3, "three numbers"},
		{readGPL, "GIMP Palette\n1 2 3 " + long + "\n", 2, "a name of 201 bytes"},
		{readGPL, "GIMP Palette\nName: " + long + "\n", 2, "a palette name of 201 bytes"},
		{readGPL, "GIMP Palette\n1 2 3 \xff\n", 2, "not UTF-8"},
		{readGPL, "GIMP Palette\n1 2 3 \x00\n", 2, "a control character"},
		{readGPL, "GIMP Palette\n" + strings.Repeat("x", maxLineBytes+1), 2, "4097 bytes on one line"},
		{readGPL, "GIMP Palette\n" + strings.Repeat("1 2 3\n", maxFabrics+1), maxFabrics + 2, "more than 4096 colors"},
		{readHexList, "// x\nnavy\n", 2, `"navy", expected a color such as #1f3350`},
		{readHexList, "#fff\n#1234 x\n", 2, "not see-through"},
		{readHexList, "#ffg\n", 1, "only the digits"},
		{readHexList, "\n\n", 3, "ends without a color"},
		{readCSS, "a {\n--x: #12;\n}", 2, `--x: "#12" has 2 digits`},
		{readCSS, "a {\n--x: transparent }", 2, "not see-through"},
		{readCSS, "--x: rgb(1 2 3 / .5)", 1, "not see-through"},
		{readCSS, "--x: rgb(1 2 3 / 50%)", 1, "not see-through"},
		{readCSS, "--x: rgb(1 2 3 / y)", 1, "expected 1 or none"},
		{readCSS, "--x: rgb(1 2)", 1, "three channels"},
		{readCSS, "--x: rgb(1 2 3", 1, "three channels"},
		{readCSS, "--x: rgb(1 2 3 / / 1)", 1, "three channels"},
		{readCSS, "--x: rgb(1 / 2 / 3)", 1, `"/" in`},
		{readCSS, "--x: rgb(1 2 256)", 1, `"256" in`},
		{readCSS, "--x: rgb(1 2 nan)", 1, `"nan" in`},
		{readCSS, "\n--x: hsl(1 2% 3%)", 2, "is not read"},
		{readCSS, "--x\\ y: red;", 1, "a name of letters"},
		{readCSS, "a{}\n/* ", 2, "does not end, expected */"},
		{readCSS, "a{\n--x: 'red;\n'}", 2, "does not end on its line"},
		{readCSS, "a { color: red }", 1, "ends without a color"},
	} {
		_, err := row.read(strings.NewReader(row.text))
		var fault *fileError
		if !errors.As(err, &fault) || fault.Line != row.line || !strings.Contains(fault.Error(), row.want) {
			t.Errorf("%.40q gives %v, expected line %d: %s", row.text, err, row.line, row.want)
		}
	}
}

// endless is a file that never ends.
type endless struct{}

func (endless) Read(p []byte) (int, error) {
	for i := range p {
		p[i] = '\n'
	}
	return len(p), nil
}

func TestFilesTooLarge(t *testing.T) {
	for _, f := range Formats() {
		if _, err := f.Read(endless{}); err == nil || !strings.Contains(err.Error(), "over 1048576 bytes") {
			t.Errorf("an endless %s gives %v", f.Name, err)
		}
	}
}

// TestLargestFile: a file of just as many bytes as are read is read.
func TestLargestFile(t *testing.T) {
	p, err := readHexList(strings.NewReader("#102030\n" + strings.Repeat(strings.Repeat(" ", 1023)+"\n", 1023) + strings.Repeat(" ", 1016)))
	if err != nil || len(p.Fabrics) != 1 {
		t.Errorf("%d fabrics, %v", len(p.Fabrics), err)
	}
}

// failing cannot be read or written.
type failing struct{}

func (failing) Read([]byte) (int, error)  { return 0, io.ErrUnexpectedEOF }
func (failing) Write([]byte) (int, error) { return 0, io.ErrShortWrite }

func TestFilesThatFail(t *testing.T) {
	for _, f := range Formats() {
		if _, err := f.Read(failing{}); !errors.Is(err, io.ErrUnexpectedEOF) {
			t.Errorf("%s: %v", f.Name, err)
		}
		if f.Write == nil {
			continue
		}
		if err := f.Write(failing{}, tidewater()); !errors.Is(err, io.ErrShortWrite) {
			t.Errorf("%s: %v", f.Name, err)
		}
	}
}

func aseFile(announced int, blocks ...[]byte) []byte {
	out := []byte("ASEF\x00\x01\x00\x00")
	out = binary.BigEndian.AppendUint32(out, uint32(announced))
	return append(out, bytes.Join(blocks, nil)...)
}

func aseBlock(kind uint16, body []byte) []byte {
	out := binary.BigEndian.AppendUint16(nil, kind)
	out = binary.BigEndian.AppendUint32(out, uint32(len(body)))
	return append(out, body...)
}

func aseBody(name, model string, numbers ...float32) []byte {
	text := append(utf16.Encode([]rune(name)), 0)
	out := binary.BigEndian.AppendUint16(nil, uint16(len(text)))
	for _, u := range text {
		out = binary.BigEndian.AppendUint16(out, u)
	}
	out = append(out, model...)
	for _, v := range numbers {
		out = binary.BigEndian.AppendUint32(out, math.Float32bits(v))
	}
	if model != "" {
		out = append(out, 0, 2)
	}
	return out
}

func TestReadASE(t *testing.T) {
	data := aseFile(3,
		aseBlock(aseGroupStart, aseBody("Dock side", "")),
		aseBlock(aseColour, aseBody("navy", "RGB ", 31.0/255, 51.0/255, 80.0/255)),
		aseBlock(aseColour, aseBody("far", "LAB ", 0.5, 120, -120)),
		aseBlock(aseGroupEnd, nil))
	p, err := readASE(bytes.NewReader(data))
	if err != nil {
		t.Fatal(err)
	}
	if p.Name != "Dock side" || len(p.Fabrics) != 2 || p.Fabrics[0] != (Swatch{"navy", Colour{31, 51, 80}}) {
		t.Errorf("read as %v", p)
	}
	// Outside sRGB: value and hue are kept, so the colour stays a violet of about L* 50.
	far := p.Fabrics[1].Colour
	if far.Lightness() < 40 || far.Lightness() > 55 || far.OKLCh().Hue < 280 || far.OKLCh().Hue > 330 {
		t.Errorf("a far violet is read as %s", far.Hex())
	}
}

// TestOtherModelsAreOmitted: a color of another model is left out, with its name and why, and no other goes with it.
func TestOtherModelsAreOmitted(t *testing.T) {
	navy, gray := aseBlock(aseColour, aseBody("navy", "RGB ", 0, 0, 0.5)), aseBlock(aseColour, aseBody("gray", "Gray", 0.5))
	for _, model := range []string{"CMYK", "HSB ", "NULL"} {
		p, err := readASE(bytes.NewReader(aseFile(3, navy, aseBlock(aseColour, aseBody("press", model, 0, 1, 1, 0)), gray)))
		if err != nil || len(p.Fabrics) != 2 || p.Fabrics[0].Name != "navy" || p.Fabrics[1].Name != "gray" {
			t.Errorf("%s: %v, %v", model, p, err)
		}
		if len(p.Omitted) != 1 || !strings.HasPrefix(p.Omitted[0], `"press": `) || !strings.Contains(p.Omitted[0], strings.TrimSpace(model)) {
			t.Errorf("%s: left out %q", model, p.Omitted)
		}
	}
}

// TestHexFileIsBare: six digits a line and nothing else.
func TestHexFileIsBare(t *testing.T) {
	var b bytes.Buffer
	f, _ := FormatOf("x.hex")
	if err := f.Write(&b, Palette{Name: "Dock", Fabrics: []Swatch{{"navy blue", Colour{31, 51, 80}}, {"", Colour{255, 255, 255}}}}); err != nil || b.String() != "1f3350\nffffff\n" {
		t.Errorf("%q, %v", b.String(), err)
	}
}

func TestFaultsOfASE(t *testing.T) {
	colour := aseBlock(aseColour, aseBody("navy", "RGB ", 0, 0, 0.5))
	for _, row := range []struct {
		data  []byte
		block int
		want  string
	}{
		{[]byte("ASE"), 0, "expected ASEF"},
		{[]byte("GIMP Palette\n1 2 3"), 0, "expected ASEF"},
		{aseFile(0), 0, "no color in it"},
		{aseFile(math.MaxUint32, colour), 0, "has room for"},
		{aseFile(3, colour), 0, "ends after 1"},
		{aseFile(1, colour, []byte{0, 1}), 2, "2 bytes are left"},
		{aseFile(1, []byte{0, 1, 255, 255, 255, 255, 0, 0}), 1, "only 2 are left"},
		{aseFile(1, aseBlock(7, nil)), 1, "its kind is 0x0007"},
		{aseFile(1, aseBlock(aseColour, nil)), 1, "ends before its name"},
		{aseFile(1, aseBlock(aseColour, []byte{255, 255})), 1, "a name of 65535 characters"},
		{aseFile(1, aseBlock(aseColour, []byte{0, 9, 0, 65})), 1, "has room for 1"},
		{aseFile(1, aseBlock(aseColour, aseBody("x", ""))), 1, "ends before its model"},
		{aseFile(1, aseBlock(aseColour, bytes.TrimSuffix(aseBody("x", "RGB "), []byte{0, 2}))), 1, "0 bytes of numbers, expected 12"},
		{aseFile(1, aseBlock(aseColour, aseBody("x", "LAB ", 1.1, 0, 0))), 1, "expected 0 to 1"},
		{aseFile(1, aseBlock(aseColour, aseBody("x", "LAB ", 0.5, 128.1, 0))), 1, "-128 to 128 twice"},
		{aseFile(1, aseBlock(aseColour, aseBody("x", "LAB ", 0.5, 0, -128.1))), 1, "-128 to 128 twice"},
		{aseFile(1, aseBlock(aseColour, aseBody("x", "RGB ", 0, 1.01, 0))), 1, "expected 0 to 1"},
		{aseFile(1, aseBlock(aseColour, aseBody("x", "RGB ", 0, 0, 1.01))), 1, "expected 0 to 1"},
		{aseFile(1, aseBlock(aseColour, aseBody("x", "HSB ", 1))), 0, `its model is "HSB "`},
		{aseFile(1, aseBlock(aseColour, aseBody("x", "RGB ", 1))), 1, "6 bytes of numbers, expected 12"},
		{aseFile(1, aseBlock(aseColour, aseBody("x", "RGB ", 1, 2, 0))), 1, "expected 0 to 1"},
		{aseFile(1, aseBlock(aseColour, aseBody("x", "Gray", float32(math.NaN())))), 1, "expected 0 to 1"},
		{aseFile(1, aseBlock(aseColour, aseBody("x", "LAB ", 50, 0, 0))), 1, "expected 0 to 1"},
		{aseFile(1, aseBlock(aseColour, aseBody("press", "CMYK", 0, 1, 1, 0))), 0, `no color that can be shown; "press": CMYK`},
		{aseFile(1, aseBlock(aseColour, aseBody(strings.Repeat("赤", 150), "Gray", 1))), 1, "a name of 450 bytes"},
	} {
		_, err := readASE(bytes.NewReader(row.data))
		var fault *fileError
		if !errors.As(err, &fault) || fault.Block != row.block || !strings.Contains(fault.Error(), row.want) {
			t.Errorf("%.60q gives %v, expected block %d: %s", row.data, err, row.block, row.want)
		}
	}
}

func TestInWords(t *testing.T) {
	in := Palette{Name: "Dock Side 2!", Fabrics: []Swatch{
		{Name: "Navy  Blue"}, {Name: "navy-blue"}, {Name: ""}, {Name: "10% grey"}, {Name: "été_1"}, {Name: "Navy blue "}, {Name: "- 7 -"},
	}}
	out := in.inWords()
	got := out.Name + " " + strings.Join(fabricNames(out), " ")
	want := "dock-side-2 navy-blue navy-blue-2 colour-3 grey été_1 navy-blue-3 colour-7"
	if got != want {
		t.Errorf("the words are %q, expected %q", got, want)
	}
}

// TestNamesOfProperties: a custom property has letters, digits, hyphens and underscores in its name, and what is no ASCII.
func TestNamesOfProperties(t *testing.T) {
	for r := rune(0x21); r < 0x180; r++ {
		good := r >= 'a' && r <= 'z' || r >= 'A' && r <= 'Z' || r >= '0' && r <= '9' || r == '-' || r == '_' || r >= 0x80
		if got := isCSSName("x" + string(r)); got != good {
			t.Errorf("--x%c is taken for a name: %v", r, got)
		}
	}
	if isCSSName("") {
		t.Error("nothing is taken for a name")
	}
}

// TestNamesInASE: what is written has no blanks but single ones between words.
func TestNamesInASE(t *testing.T) {
	var files [2]bytes.Buffer
	for i, name := range []string{"sea  glass\t", "sea glass"} {
		if err := writeASE(&files[i], Palette{Name: name, Fabrics: []Swatch{{name, Colour{1, 2, 3}}}}); err != nil {
			t.Fatal(err)
		}
	}
	if !bytes.Equal(files[0].Bytes(), files[1].Bytes()) {
		t.Errorf("%q, expected %q", files[0].Bytes(), files[1].Bytes())
	}
}

// TestLongNamesInASE: a name that is too long is cut, between letters and without a blank at its end, to the longest that is read back.
func TestLongNamesInASE(t *testing.T) {
	for _, name := range []string{strings.Repeat("é", 150), strings.Repeat("a", maxNameBytes), strings.Repeat("a", maxNameBytes+1), strings.Repeat("a ", 120), strings.Repeat("👩", 60), strings.Repeat("a", 199) + " b"} {
		var file bytes.Buffer
		if err := writeASE(&file, Palette{Fabrics: []Swatch{{name, Colour{}}}}); err != nil {
			t.Fatal(err)
		}
		// A name lies behind the file's head, its block's kind and length and its own count of letters of two bytes, and ends with a nought.
		written := file.Bytes()[12+6:]
		letters := written[2 : 2+2*binary.BigEndian.Uint16(written)]
		if binary.BigEndian.Uint16(letters[len(letters)-2:]) != 0 {
			t.Errorf("%.9q is written as % x", name, letters)
		}
		p, err := readASE(&file)
		if err != nil {
			t.Fatalf("%.9q: %v", name, err)
		}
		got := p.Fabrics[0].Name
		rest := strings.TrimPrefix(name, got)
		if _, next := utf8.DecodeRuneInString(strings.TrimLeft(rest, " ")); !strings.HasPrefix(name, got) || strings.HasSuffix(got, " ") || len(got) > maxNameBytes ||
			rest != "" && len(got)+next+len(rest)-len(strings.TrimLeft(rest, " ")) <= maxNameBytes-1 {
			t.Errorf("%.9q of %d bytes comes back as %d bytes", name, len(name), len(got))
		}
	}
}

// TestPlacesOfFaultsInFiles: a fault is told with its line, or its block, or neither.
func TestPlacesOfFaultsInFiles(t *testing.T) {
	for want, e := range map[string]fileError{"line 1: x": {Line: 1, Message: "x"}, "block 1: x": {Block: 1, Message: "x"}, "x": {Message: "x"}} {
		if e.Error() != want {
			t.Errorf("%q, expected %q", e.Error(), want)
		}
	}
}
