package svgout

import (
	"bytes"
	"fmt"
	"maps"
	"regexp"
	"runtime"
	"slices"
	"strconv"
	"strings"
	"testing"

	"eighthturn/internal/measure"
	"eighthturn/internal/quilt"
	"eighthturn/internal/quilttest/invent"
	"eighthturn/internal/quilttest/judges"
)

// TestPictures tries all laws of a picture on the picture of every top with every option.
func TestPictures(t *testing.T) {
	list := tops(t)
	for seed := range uint64(judges.Of(6, 12)) {
		list = append(list, named{fmt.Sprint("seed ", seed), lay(t, invent.Layout(seed))})
	}
	laws := map[string]func(p *sketched) error{
		"the two drawings show the same": sameByFabric, "numbers are plain": func(p *sketched) error { return lawNumbers(p.svg) }, "neighbors share their corners": sharedCorners,
		"ids": goodIDs, "names": func(p *sketched) error { return lawNames(p.svg) }, "size": ownSize, "borders are a layer": bordersApart,
	}
	for _, top := range list {
		for _, o := range allOptions() {
			p := &sketched{t, top.Top, o, drawn(t, top.Top, o)}
			for name, law := range laws {
				if err := law(p); err != nil {
					t.Errorf("%s, %+v: %s: %v", top.name, o, name, err)
				}
			}
		}
	}
}

// sketched is a picture that laws are tried on.
type sketched struct {
	t   *testing.T
	top *quilt.Top
	Options
	svg []byte
}

// broken says that a law must catch a picture in which something was replaced.
func broken(t *testing.T, law func(svg []byte) error, svg []byte, pattern, replacement string) {
	t.Helper()
	at := regexp.MustCompile(pattern).FindSubmatchIndex(svg)
	if at == nil {
		t.Fatalf("nothing in the picture is like %q", pattern)
	}
	bad := append(bytes.Clone(svg[:at[0]]), regexp.MustCompile(pattern).Expand(nil, []byte(replacement), svg, at)...)
	bad = append(bad, svg[at[1]:]...)
	if err := law(bad); err == nil {
		t.Errorf("%q in place of %q was not caught", replacement, pattern)
	} else {
		t.Logf("caught: %v", err)
	}
}

// lapTop is the top that laws are broken on.
func lapTop(t *testing.T) *quilt.Top { return lay(t, layouts()["lap"]) }

// lawSame says that two drawings show the same outlines in the same colours.
func lawSame(perPatch, byFabric []byte) error {
	one, err := byColour(perPatch)
	if err != nil {
		return err
	}
	other, err := byColour(byFabric)
	if err != nil {
		return err
	}
	if !maps.Equal(one, other) {
		for outline, n := range one {
			if other[outline] != n {
				return fmt.Errorf("%s stands %d times in one drawing, %d times in the other", outline, n, other[outline])
			}
		}
		return fmt.Errorf("one drawing has %d outlines, the other %d", len(one), len(other))
	}
	return nil
}

// byColour counts the outlines of the cloth, with their colours before them, or of the
// line view.
func byColour(svg []byte) (map[string]int, error) {
	root, err := parse(svg)
	if err != nil {
		return nil, err
	}
	count := map[string]int{}
	for _, layer := range root.children {
		if id := layer.attr("id"); !strings.HasPrefix(id, "fabric-") && id != "outlines" && id != "borders" {
			continue
		}
		fill := layer.attr("fill")
		for n := range layer.all() {
			if own := n.attr("fill"); own != "" { // of a fabric among the borders
				fill = own
			}
			for _, outline := range outlines(n.attr("d")) {
				if n.name == "path" {
					count[fill+" "+strings.TrimSuffix(outline, "Z")]++
				}
			}
		}
	}
	return count, nil
}

func sameByFabric(p *sketched) error {
	o := p.Options
	if o.ByFabric {
		return nil
	}
	o.ByFabric = true
	count, _ := byColour(p.svg)
	sum := 0
	for _, n := range count {
		sum += n
	}
	if sum != len(p.top.Faces) && o.View != Line {
		return fmt.Errorf("%d outlines, %d faces", sum, len(p.top.Faces))
	}
	return lawSame(p.svg, drawn(p.t, p.top, o))
}

func TestTheTwoDrawingsShowTheSame(t *testing.T) {
	one, other := drawn(t, lapTop(t), Options{}), drawn(t, lapTop(t), Options{ByFabric: true})
	law := func(bad []byte) error { return lawSame(one, bad) }
	broken(t, law, other, `(cloth-1" d="M[^.]*\.\d)\d`, "${1}")
	broken(t, law, other, `(cloth-1" d=")M[^Z]*Z`, "${1}")
	broken(t, law, other, `(cloth-1" d=")(M[^Z]*Z)`, "${1}${2}${2}")
	broken(t, law, other, `(cloth-2" d=")(M[^Z]*Z)((?s:.*)cloth-1" d=")`, "${1}${3}${2}")
	law = func(bad []byte) error { return lawSame(bad, other) }
	broken(t, law, one, `(fabric-2"[^>]*fill="#)b`, "${1}c")
}

// lawNumbers says that every number is written plainly, with four decimals at the most.
func lawNumbers(svg []byte) error {
	root, err := parse(svg)
	if err != nil {
		return err
	}
	plain, nought := regexp.MustCompile(`^-?(0|[1-9]\d*)(\.\d{1,4})?$`), regexp.MustCompile(`^-0(\.0*)?$`)
	for n := range root.all() {
		for _, name := range []string{"d", "x", "y", "width", "height", "viewBox", "font-size", "stroke-width", "stroke-opacity"} {
			for _, number := range numbersIn(n, name) {
				if !plain.MatchString(number) || nought.MatchString(number) {
					return fmt.Errorf("<%s %s=… %q", n.name, name, number)
				}
			}
		}
	}
	return nil
}

// numbersIn is what stands for numbers in an attribute.
func numbersIn(n *node, name string) []string {
	value := n.attr(name)
	switch {
	case value == "" && name != "viewBox":
		return nil
	case name == "d":
		return strings.FieldsFunc(value, func(r rune) bool { return strings.ContainsRune("MLZ ", r) })
	case name == "viewBox" && n.name == "svg":
		return append(strings.Split(value, " "), make([]string, max(0, 3-strings.Count(value, " ")))...)
	case n.name == "svg":
		return []string{strings.TrimSuffix(strings.TrimSuffix(value, "in"), "mm")}
	}
	return strings.Fields(value)
}

func TestNumbersArePlain(t *testing.T) {
	svg := drawn(t, lapTop(t), Options{Legend: true, SeamLines: SeamsDrawn})
	for _, bad := range []string{"NaN", "+Inf", "-0", "1e-07", "1,5", "+1", "0x1p2", "1.", ".5", "01", "1.23456", "1_000"} {
		broken(t, lawNumbers, svg, `(cloth|p1" d="M)[\d.]+`, "${1}"+bad)
		broken(t, lawNumbers, svg, `<text x="[\d.]+`, `<text x="`+bad)
	}
	broken(t, lawNumbers, svg, `viewBox="0 `, `viewBox="`)
	broken(t, lawNumbers, svg, `stroke-width="[\d.]+`, `stroke-width="1%`)
}

// lawCorners says that the ends of all seams are written as corners of outlines to the
// last digit, and that no two corners differ by less than twenty of the smallest steps.
func lawCorners(top *quilt.Top, svg []byte) error {
	count, err := byColour(svg)
	if err != nil {
		return err
	}
	corners := map[string]bool{}
	for outline := range count {
		_, data, _ := strings.Cut(outline, " M")
		for _, corner := range strings.Split(data, "L") {
			corners[corner] = true
		}
	}
	for _, s := range slices.Concat(top.Seams, top.StripSeams) {
		for _, end := range []measure.Point{s.From, s.To} {
			if text := string(appendPoint(nil, end)); !corners[text] {
				return fmt.Errorf("a seam ends at %s, where no outline has a corner", text)
			}
		}
	}
	return wellApart(corners)
}

// wellApart says that corners are the same or at least so many ten-thousandths apart, across or down.
func wellApart(corners map[string]bool) error {
	const apart = 20
	type square struct{ x, y int64 }
	held := map[square][][2]int64{}
	for corner := range corners {
		x, y, _ := strings.Cut(corner, " ")
		at := [2]int64{steps(x), steps(y)}
		s := square{at[0] / apart, at[1] / apart}
		for dx := int64(-1); dx <= 1; dx++ {
			for dy := int64(-1); dy <= 1; dy++ {
				for _, p := range held[square{s.x + dx, s.y + dy}] {
					if max(p[0]-at[0], at[0]-p[0]) < apart && max(p[1]-at[1], at[1]-p[1]) < apart {
						return fmt.Errorf("two corners at nearly the same place, %s and %v", corner, p)
					}
				}
			}
		}
		held[s] = append(held[s], at)
	}
	return nil
}

// steps is a number in ten-thousandths.
func steps(text string) int64 {
	whole, part, _ := strings.Cut(text, ".")
	n, _ := strconv.ParseInt(whole+(part + "0000")[:4], 10, 64)
	return n
}

func sharedCorners(p *sketched) error {
	if p.View == Line {
		return nil
	}
	return lawCorners(p.top, p.svg)
}

func TestNeighboursShareTheirCorners(t *testing.T) {
	top := lapTop(t)
	law := func(bad []byte) error { return lawCorners(top, bad) }
	svg := drawn(t, top, Options{ByFabric: true})
	broken(t, law, svg, `(cloth-1" d="M\d+\.\d+)\d`, "${1}")
	broken(t, law, svg, `(cloth-2" d="M\d+\.\d\d\d)\d`, "${1}")
}

// lawIDs says that no id stands twice in pictures on one page, and that all are good ids
// that begin as they should.
func lawIDs(prefixes []string, pictures ...[]byte) error {
	seen := map[string]bool{}
	good := regexp.MustCompile(`^[A-Za-z][A-Za-z0-9_-]*$`)
	for i, svg := range pictures {
		root, err := parse(svg)
		if err != nil {
			return err
		}
		for n := range root.all() {
			id := n.attr("id")
			switch {
			case id == "" && n.name != "g":
				continue
			case !good.MatchString(id):
				return fmt.Errorf("%q is no id", id)
			case !strings.HasPrefix(id, prefixes[i]):
				return fmt.Errorf("the id %q does not begin with %q", id, prefixes[i])
			case seen[id]:
				return fmt.Errorf("the id %q stands twice", id)
			}
			seen[id] = true
		}
	}
	return nil
}

func goodIDs(p *sketched) error {
	if p.View == Value { // its ids are those of the view of colors
		return lawIDs([]string{""}, p.svg)
	}
	other := p.Options
	other.Prefix = "a1_"
	return lawIDs([]string{"", "a1_"}, p.svg, drawn(p.t, p.top, other))
}

func TestIDs(t *testing.T) {
	for _, prefix := range []string{"a1_", "B-"} {
		if err := lawIDs([]string{prefix}, drawn(t, lapTop(t), Options{Prefix: prefix, Legend: true})); err != nil {
			t.Error(err)
		}
	}
	svg := drawn(t, lapTop(t), Options{Prefix: "q-"})
	law := func(bad []byte) error { return lawIDs([]string{"q-"}, bad) }
	broken(t, law, svg, `id="q-r1c1p2`, `id="q-r1c1p1`)
	broken(t, law, svg, `id="q-r1c1p2`, `id="r1c1p2`)
	broken(t, law, svg, `id="q-r1c1p2`, `id="1q-r1c1p2`)
	broken(t, law, svg, `id="q-fabric-1"`, ``)
	if err := lawIDs([]string{"q-", "q-"}, svg, svg); err == nil {
		t.Error("the same picture twice on a page was not caught")
	}
}

func TestOptionsThatNameNothingAreRefused(t *testing.T) {
	for _, o := range []Options{{View: Tritan + 1}, {Prefix: `a"`}, {Prefix: "1a"}, {Prefix: "-"}, {Prefix: "é"}, {Prefix: "a b"}, {Prefix: "\xff"}} {
		var b bytes.Buffer
		if err := Draw(&b, lapTop(t), o); err == nil || b.Len() > 0 || o.View > Tritan && err.Error() != "view number 8, expected 0 to 7" {
			t.Errorf("%+v: %v and %d bytes, expected a refusal and none", o, err, b.Len())
		}
	}
}

// TestPrefixesOfIDs: a prefix is letters, digits, - and _ of ASCII, and a letter first.
func TestPrefixesOfIDs(t *testing.T) {
	const letters, more = "abcdefghijklmnopqrstuvwxyzABCDEFGHIJKLMNOPQRSTUVWXYZ", "0123456789-_"
	for r := range rune(0x100) {
		for prefix, want := range map[string]bool{string(r): strings.ContainsRune(letters, r), "q" + string(r): strings.ContainsRune(letters+more, r)} {
			if err := (&Options{Prefix: prefix}).check(); (err == nil) != want {
				t.Errorf("%q: %v", prefix, err)
			}
		}
	}
}

// lawNames says that no element and no attribute is there but those that a picture needs.
func lawNames(svg []byte) error {
	root, err := parse(svg)
	if err != nil {
		return err
	}
	allowed := map[string]string{
		"svg":   "width height viewBox xmlns xmlns:xlink xmlns:inkscape xmlns:sodipodi",
		"title": "", "desc": "",
		"metadata": "", "rdf:RDF": "xmlns:rdf", "rdf:Description": "rdf:about xmlns:dc xmlns:xmp",
		"dc:title": "", "dc:creator": "", "dc:rights": "", "rdf:Alt": "", "rdf:Seq": "", "rdf:li": "xml:lang", "xmp:CreatorTool": "",
		"defs": "", "linearGradient": "id inkscape:swatch inkscape:label", "stop": "offset stop-color",
		"g": "id inkscape:groupmode inkscape:label sodipodi:insensitive fill stroke stroke-width stroke-opacity stroke-linecap stroke-linejoin " +
			"font-family text-anchor",
		"path": "id d fill stroke stroke-width",
		"rect": "x y width height fill stroke stroke-width stroke-opacity",
		"text": "x y font-size font-weight text-anchor",
	}
	for n := range root.all() {
		attributes, known := allowed[n.name]
		if !known {
			return fmt.Errorf("<%s>", n.name)
		}
		seen := map[string]bool{}
		for _, a := range n.attrs {
			name := qualified(a.Name)
			if !slices.Contains(strings.Fields(attributes), name) || seen[name] {
				return fmt.Errorf("<%s %s=%q>", n.name, name, a.Value)
			}
			seen[name] = true
		}
	}
	return nil
}

func TestNames(t *testing.T) {
	svg := drawn(t, lapTop(t), Options{Legend: true, OnePaint: true})
	if err := lawNames(svg); err != nil {
		t.Error(err)
	}
	for _, bad := range []string{"<script/>", "<style/>", "<image/>", "<foreignObject/>", "<use/>", "<a/>"} {
		broken(t, lawNames, svg, `</title>`, `</title>`+bad)
	}
	for _, bad := range []string{`onload="x"`, `style="fill:red"`, `class="a"`, `href="x"`, `xlink:href="x"`, `transform="scale(2)"`, `d=""`} {
		broken(t, lawNames, svg, `<path `, `<path `+bad+` `)
	}
}

// lawBytes says that a picture comes out the same every time, on one core and on two.
func lawBytes(draw func() []byte) error {
	first := draw()
	for cores := 1; cores <= 2; cores++ {
		before := runtime.GOMAXPROCS(cores)
		for n := range 50 {
			if !bytes.Equal(draw(), first) {
				runtime.GOMAXPROCS(before)
				return fmt.Errorf("other bytes on %d cores, time %d", cores, n+1)
			}
		}
		runtime.GOMAXPROCS(before)
	}
	return nil
}

func TestTheSameBytesEveryTime(t *testing.T) {
	for _, text := range layouts() {
		for _, o := range []Options{{Legend: true, SeamLines: SeamsDrawn}, {View: Line, Legend: true}, {View: Value, ByFabric: true}} {
			if err := lawBytes(func() []byte { return drawn(t, lay(t, text), o) }); err != nil {
				t.Error(err)
			}
		}
	}
	turn := 0
	err := lawBytes(func() []byte {
		turn++
		return drawn(t, lapTop(t), Options{ByFabric: turn == 77})
	})
	if err == nil {
		t.Error("a picture that differs the 77th time was not caught")
	}
}

// lawSize says that the physical size and the view box of a picture have one shape, 96
// units an inch, and that it shows the whole top.
func lawSize(top *quilt.Top, svg []byte) error {
	root, err := parse(svg)
	if err != nil {
		return err
	}
	box := strings.Fields(root.attr("viewBox"))
	if len(box) != 4 || box[0] != "0" || box[1] != "0" {
		return fmt.Errorf("view box %q", box)
	}
	unit, perInch := "in", 1.0
	if top.Units == measure.Centimetres {
		unit, perInch = "mm", 25.4
	}
	for i, name := range []string{"width", "height"} {
		text, cut := strings.CutSuffix(root.attr(name), unit)
		size, err := strconv.ParseFloat(text, 64)
		units, err2 := strconv.ParseFloat(box[2+i], 64)
		if !cut || err != nil || err2 != nil {
			return fmt.Errorf("%s %q and view box %q", name, root.attr(name), box)
		}
		if off := size/perInch*96 - units; max(off, -off) > 0.5e-4*96/perInch+0.51e-4 {
			return fmt.Errorf("%s %q is not %s units of a 96th of an inch", name, root.attr(name), box[2+i])
		}
		of := [2]measure.NM{top.Outer.Width(), top.Outer.Height()}[i]
		if units < userUnits(of)-0.51e-4 {
			return fmt.Errorf("%s %q is less than the top's %v", name, root.attr(name), userUnits(of))
		}
	}
	return nil
}

func ownSize(p *sketched) error {
	if !p.Legend && !bytes.Contains(p.svg, fmt.Appendf(nil, `viewBox="0 0 %s %s"`, appendNumber(nil, p.top.Outer.Width()), appendNumber(nil, p.top.Outer.Height()))) {
		return fmt.Errorf("the view box is not the top's own")
	}
	return lawSize(p.top, p.svg)
}

func TestSize(t *testing.T) {
	top := lapTop(t)
	law := func(bad []byte) error { return lawSize(top, bad) }
	svg := drawn(t, top, Options{})
	broken(t, law, svg, `(width="\d+)`, "${1}1")
	broken(t, law, svg, `(width="[\d.]+)in`, "${1}mm")
	broken(t, law, svg, `(width="[\d.]+)in`, "${1}")
	broken(t, law, svg, `(viewBox="0 0 \d+)`, "${1}1")
	broken(t, law, svg, `viewBox="0 0`, `viewBox="-1 0`)
	broken(t, law, svg, `viewBox="[^"]*"`, ``)
}
