package layout

import (
	"fmt"
	"maps"
	"reflect"
	"slices"
	"strings"
	"testing"

	"eighthturn/internal/blocks"
	"eighthturn/internal/measure"
	"eighthturn/internal/quilttest/golden"
	"eighthturn/palettes"
)

// retold is all that a design says, a line for each of its parts: lengths in the units of its layout, places as the words that stand
// there; what is nothing or none is left out.
type retold struct {
	text  string
	units measure.System
	rows  map[string]int // what lies in a grid of so many columns
	lines []string
}

// retell retells a design of a layout's text.
func retell(text string, d *Design) []string {
	r := retold{text: text, units: d.Units, rows: map[string]int{"Cells": d.Columns, "WebTable": d.Columns + 1, "WebCentres": 1 << 20, "StarCentres": 1 << 20}}
	r.lines = append(r.lines, "layout")
	r.part(0, "", reflect.ValueOf(*d))
	return slices.DeleteFunc(r.lines, func(line string) bool { return !strings.Contains(line, " ") })
}

// inRows retells what lies in a grid, a line for each of its rows.
func (r *retold) inRows(path string, columns int, v reflect.Value) {
	for i := range v.Len() {
		if i%columns == 0 {
			r.lines = append(r.lines, fmt.Sprint(path, " row ", i/columns))
		}
		word, is := r.word(v.Index(i))
		if f, isFill := v.Index(i).Interface().(Fill); !is && isFill {
			word = fmt.Sprintf("%d,%d,%d%q", f.Fabric, f.Set, f.Pool, r.text[f.Span.Start:f.Span.End])
		} else if !is {
			word = fmt.Sprint(v.Index(i).Interface())
		}
		r.lines[len(r.lines)-1] += " " + word
	}
}

// word is a value that is no part of its own; "" for one that says nothing.
func (r *retold) word(v reflect.Value) (word string, is bool) {
	if v.Kind() == reflect.Pointer && v.IsNil() {
		return "", true
	}
	switch one := reflect.Indirect(v).Interface().(type) {
	case measure.NM:
		if v.IsZero() {
			return "", true
		}
		return strings.ReplaceAll(measure.Of(one).Text(r.units), " ", "_"), true
	case Span:
		if one.Empty() {
			return "", true
		}
		return fmt.Sprintf("%q", r.text[one.Start:one.End]), true
	case palettes.Colour:
		return one.Hex(), true
	case blocks.Kind:
		return one.Name, true
	case palettes.PhotoSample:
		return fmt.Sprint(one.Width, "x", one.Height), true
	case QuiltSize:
		return one.Name, true
	case Cell:
		return fmt.Sprintf("%s:%d,%d,%d", r.text[one.Span.Start:one.Span.End], one.Block, one.Turns, one.Run), true
	case Fill:
		if !one.given() {
			return "none", true
		}
	}
	switch v.Kind() {
	case reflect.Pointer, reflect.Slice, reflect.Array, reflect.Struct:
		return "", false
	case reflect.Bool:
		return map[bool]string{true: "yes"}[v.Bool()], true
	}
	if v.IsZero() {
		return "", true
	}
	return fmt.Sprint(v.Interface()), true
}

// part adds what a part says to the line given, and lines for the parts that it has.
func (r *retold) part(line int, path string, v reflect.Value) {
	switch v.Kind() {
	case reflect.Pointer:
		r.part(line, path, v.Elem())
	case reflect.Slice, reflect.Array:
		if rows := r.rows[path]; rows > 0 && v.Len() > 0 {
			r.inRows(path, rows, v)
			return
		}
		for i := range v.Len() {
			name := fmt.Sprint(path, "[", i, "]")
			if word, is := r.word(v.Index(i)); is {
				if word != "" {
					r.lines[line] += fmt.Sprint(" ", path[strings.LastIndex(path, ".")+1:], "[", i, "]=", word)
				}
				continue
			}
			if v.Index(i).Kind() != reflect.Struct {
				r.part(line, name, v.Index(i))
				continue
			}
			r.lines = append(r.lines, name)
			r.part(len(r.lines)-1, name, v.Index(i))
		}
	case reflect.Struct:
		for i := range v.NumField() {
			field := v.Type().Field(i)
			word, is := "", false
			if field.IsExported() {
				word, is = r.word(v.Field(i))
			}
			switch {
			case is && word != "":
				r.lines[line] += " " + field.Name + "=" + word
			case is:
			case field.Anonymous:
				r.part(line, path, v.Field(i))
			case field.IsExported() && reflect.Indirect(v.Field(i)).Kind() == reflect.Struct:
				name := strings.TrimPrefix(path+"."+field.Name, ".")
				r.lines = append(r.lines, name)
				r.part(len(r.lines)-1, name, v.Field(i))
			case field.IsExported():
				r.part(line, strings.TrimPrefix(path+"."+field.Name, "."), v.Field(i))
			}
		}
	}
}

// besides is what one list has beside another, in its order.
func besides(list, other []string) (own []string) {
	left := slices.Clone(other)
	for _, line := range list {
		if i := slices.Index(left, line); i >= 0 {
			left = slices.Delete(left, i, i+1)
		} else {
			own = append(own, line)
		}
	}
	return own
}

// worksOut retells all that a layout comes to: its messages, its design, its names and its colors.
func worksOut(text string) (list []string, design *Design) {
	r := Inspect(text, workedPhoto)
	for _, f := range r.Faults {
		line, column := r.Source.Position(f.Span.Start)
		list = append(list, fmt.Sprintf("%d:%d: %v: %s (%s)", line, column, f.Severity, f.Message, f.Hint))
		for _, n := range f.Notes {
			line, column := r.Source.Position(n.Span.Start)
			list = append(list, fmt.Sprintf("    %d:%d: %s", line, column, n.Message))
		}
		if f.Edits != nil {
			for _, line := range besides(strings.Split(Apply(text, f.Edits), "\n"), strings.Split(text, "\n")) {
				list = append(list, "    typed: "+line)
			}
		}
	}
	list = append(list, namesOf(text, r.Tree)...)
	for _, c := range r.Tree.Colors() {
		list = append(list, "color "+text[c.At.Start:c.At.End]+" "+c.Colour.Hex())
	}
	if r.Design == nil {
		return list, nil
	}
	for _, f := range r.Design.Fabrics {
		if f.Stripes != nil {
			list = append(list, fmt.Sprintf("mirrored %s %v", f.Name, f.Stripes.MirrorLines()))
		}
	}
	return append(list, retell(text, r.Design)...), r.Design
}

// namesOf retells where names are written, a line for each sort of statement: those that it defines with an exclamation mark, labels in
// brackets.
func namesOf(text string, tree *Tree) []string {
	in := map[string]string{}
	for _, m := range tree.Mentions() {
		name := text[m.Span.Start:m.Span.End]
		if m.Scope == Labels {
			name = "[" + name + "]"
		}
		if m.Defines != "" {
			name += "!"
		}
		if of := strings.TrimSpace(m.Block + " " + m.Role); of != "" {
			name += "(" + of + ")"
		}
		in[m.In] += " " + name
	}
	var list []string
	for _, word := range slices.Sorted(maps.Keys(in)) {
		list = append(list, "names in "+word+":"+in[word])
	}
	return list
}

// workedPhoto stands for every photo.
func workedPhoto(string) (palettes.PhotoSample, error) {
	c := palettes.Colour{R: 1, G: 2, B: 3}
	return palettes.PhotoSample{Width: 300, Height: 200, Colour: c, Colours: []palettes.Part{{Colour: c, Share: 1}}}, nil
}

// TestWorked: what a small layout comes to, whole, and what changes where one of its statements does and where one is added. Each line was
// worked out by hand or looked at: lengths follow from the ones written as the reference says (a web block's side is the strip less its
// seams times the square root of two, and so on), and nothing else may change with them.
func TestWorked(t *testing.T) {
	var b strings.Builder
	worksOutChanged(t, &b, worked, workedCases())
	golden.Text(t, "testdata/worked.txt", []byte(b.String()))
}

// worksOutChanged retells what a layout comes to, and what changes with each of its changes.
func worksOutChanged(t *testing.T, b *strings.Builder, text string, cases [][]string) {
	base, design := worksOut(text)
	if design == nil {
		t.Fatal(base)
	}
	changes := func(indent string, before, after []string) {
		for _, line := range besides(before, after) {
			fmt.Fprintln(b, indent+"-", line)
		}
		for _, line := range besides(after, before) {
			fmt.Fprintln(b, indent+"+", line)
		}
	}
	fmt.Fprintf(b, "%s\n%s\n", text, strings.Join(base, "\n"))
	for _, c := range cases {
		text := text
		fmt.Fprintln(b)
		for i := 0; i < len(c); i += 2 {
			if strings.Count(text, c[i]) != 1 {
				t.Fatalf("%q does not stand there once", c[i])
			}
			text = strings.Replace(text, c[i], c[i+1], 1)
			fmt.Fprintf(b, "= %s\n", strings.ReplaceAll(c[i+1], "\n", "\n= "))
		}
		after, design := worksOut(text)
		if design == nil {
			fmt.Fprintln(b, "+", strings.Join(after, "\n+ "))
			continue
		}
		changes("", base, after)
		own := retell(text, design)
		for i := range design.Colorways {
			fmt.Fprintf(b, "in %s\n", design.Colorways[i].Name)
			changes("  ", own, retell(text, design.In(&design.Colorways[i])))
		}
		for _, s := range design.Sizes {
			fmt.Fprintf(b, "size %s, %q, as it is written: %v\n", s.Name, text[s.Span.Start:s.Span.End], s.Own)
			changes("  ", own, retell(text, s.Design))
		}
	}
}

// workedCases are changes of the worked layout: each a stretch that stands there once, and what takes its place.
func workedCases() [][]string {
	return [][]string{
		{"strip 4", "units cm\nstrip 10"},
		{"strip 4", "seam 3/8\nstrip 4"},
		{"strip 4", "side 7 1/2"},
		{"strip 4", "side 7 1/2 cut"},
		{"strip 4", "side 7 1/2 finished"},
		{"strip 4", "usable-width 42\nstrip 4", "fabric navy #1f3350", "fabric navy navy \"night\" usable-width 108 on-hand 2 yd"},
		{"#f4ead7", "swatch \"a/b.PNG\" across 6 repeat down 2 across 3 \"roses\" one-way"},
		{"#f4ead7", "swatch \"a/b.PNG\" across 6 repeat down 2 across 3", "fabric navy", "motif bud cream across 1 down 1 1/2 pointing 30\nfabric navy", "kites cream", "kites bud"},
		{"#f4ead7", "stripes navy 3/4 white 1/2 #010203 1/4", "kites cream", "kites cream crosswise"},
		{"#f4ead7", "stripes navy 3/4 white 1/2 one-way crosswise", "kites cream", "kites cream lengthwise from 1/4"},
		{"#f4ead7", "stripes navy 3/4 white 1/2", "kites cream", "kites cream from 1/4"},
		{"#f4ead7", "stripes navy 3/4 white 1/2", "fabric navy", "motif knob cream down 1 across 1/8 mirrored\nfabric navy", "kites cream", "kites knob"},
		{"#f4ead7", "stripes navy 3/4 white 1/2 rust 1 white 1/2 crosswise", "fabric navy", "motif knob cream down 1 across 1/8 mirrored\nmotif other cream across 0 down 5/8 pointing 359\nfabric navy", "kites cream", "kites knob", "piece rust", "piece other"},
		{"#f4ead7", "#f4ead7 from 3 fat-quarters", "#1f3350", "#1f3350 from 1 square 10", "#b5532a", "#b5532a from 12 strips 2 1/2"},
		{"block W", "strip-set glow navy 2 cream equal rust equal\nblock W", "wedges navy", "wedges glow"},
		{"grid", "strip-set glow navy 2 cream rest\nwebs\n  glow\ngrid"},
		{"block W", "strip-set glow navy rest\nblock W", "wedges navy", "wedges glow"},
		{"grid", "strip-set glow navy 2 cream 3\nwebs\n  glow\ngrid"},
		{"block W", "strip-set glow navy 2 cream equal rust equal navy equal\nblock W", "wedges navy", "wedges glow"},
		{"block W", "strip-set glow navy 2 cream 1 1/4 rust rest\nblock W", "wedges navy", "wedges reversed glow"},
		{"block W", "strip-set glow navy 2 cream 1 1/4 rust 2\nblock W", "wedges navy", "wedges reversed glow"},
		{"strip 4", "side 7", "block W", "strip-set glow navy 2 cream rest\nblock R ring wedges glow corners cream\nblock W", "wedges navy", "wedges glow", "W W P", "W W R"},
		{"block W", "scraps darks navy rust by web deal 3 from 10 to 60\nscraps darks cream to 100\nblock W", "wedges navy", "wedges darks"},
		{"block W", "scraps darks navy rust by set\nstrip-set glow darks 2 cream 1 1/2 darks rest sets 1\nblock W", "wedges navy", "wedges glow"},
		{"block W", "webs navy / rust\nblock W", "wedges navy ", ""},
		{"block W", "webs\n  rust\nblock W"},
		{"W W P\n  W W W", "W:se W P\n  W W:SE W", "grid", "top-left star\ngrid"},
		{"W W P\n  W W W", "W . P", "grid", "repeat across 3 down 2\ngrid"},
		{"W W P\n  W W W", "W . P\n  W W P", "grid", "border 2 navy\ngrid"},
		{"strip 4", "side 6", "block P plain piece rust", "block T tumblers pieces rust navy about 3\nblock P plain piece rust", "W W P\n  W W W", "T W P\n  T W P\n  P T P"},
		{"strip 4", "side 6", "block P plain piece rust", "block T tumblers pieces rust navy line 6\nblock P plain piece rust", "W W P\n  W W W", "T W P\n  T W P\n  P T P", "grid", "sash 1 cream\ngrid"},
		{"strip 4", "strip 3 1/2", "block P plain piece rust", "block T tumblers pieces rust navy about 3 1/2 cut\nblock P plain piece rust", "W W P\n  W W W", "T P\n  P T\n  T T", "block W web wedges navy kites cream\n", ""},
		{"grid", "sash 1 1/2 navy posts rust around\nborder 2 navy\nborder 3 cut cream corners rust lengthwise\nbinding 2 1/4 navy\ngrid"},
		{"grid", "sash 1 1/2 cut navy\nborder 2 finished rust\nbinding 2 1/4 cut navy\ngrid"},
		{"grid", "backing navy\nbatting\nsquare-up 1\nspare none\ngrid"},
		{"grid", "square-up none\nspare 4 1/2\ngrid"},
		{"grid", "on-hand wedges navy 12\non-hand kites cream 3\non-hand wedges rust 5 strip 4\non-hand wedges rust 7 strip 3\non-hand corners cream 2\non-hand wedges rust 5 strip 4\ngrid"},
		{"strip 4", "side 7", "block W", "block R ring wedges navy corners cream\nblock W", "W W P", "W W R", "grid", "on-hand wedges navy 9 strip 4\non-hand wedges navy 8 strip 5 1/16\ngrid"},
		{"grid", "contrast 7 31\ngrid"},
		{"grid", "colorway dusk cream #d9c7b0 rust navy navy rust\ncolorway dawn rust white\ngrid"},
		{"fabric rust #b5532a", "fabric rust #b5532a\nfabric teal #2f7d83", "grid", "colorway dusk rust teal\ngrid"},
		{"grid", "scraps all navy rust cream\nswap row 1 column 2 with row 2 column 1\ngrid", "wedges navy", "wedges all"},
		{"strip 4", "title \"T\"\ndesigner \"D\"\nlevel \"L\"\ncopyright \"C\"\npattern-number \"N\"\npattern-version \"V\"\npattern-date \"A\"\nnote \"any\"\nnote w \"of W\"\nnote cutting \"of cutting\"\nstrip 4"},
		{"grid", "palette tidewater\ngrid"},
		{"grid", "block V like W kites rust\ngrid", "W W P", "W W V"},
		{"block W web wedges navy kites cream", "block W web wedges navy rust kites cream rust cream rust", "W W W", "W:nw W W"},
		{"block P", "block V web wedges rust kites cream\nblock P", "W W P\n  W W W", "W V P\n  W V W\n  W V W\n  V W W"},
		{"block P", "block V web wedges rust cream kites cream\nblock P", "W W P\n  W W W", "W V P\n  W V W"},
		{"block P", "block V web wedges rust cream kites cream\nblock P", "W W P\n  W W W", "W V W P\n  W V V W\n  W W W W"},
		{"block P", "block V web wedges rust kites cream\nblock U web wedges cream kites navy\nblock P", "W W P\n  W W W", "W V P\n  V U P"},
		{"block P", "block V web wedges navy kites rust\nblock P", "W W P\n  W W W", "W V P\n  V W P"},
		{"W W P\n  W W W", "P P . P\n  P P P P"},
		{"block P", "block V web wedges rust kites cream\nblock P", "W W P\n  W W W", "W V V W P\n  W V V W P"},
		{"grid", "border 2 navy\nborder 3 rust\nsize lap\nsize queen across 5 down 4\nsize big strip 6 border 4 5\nsize bare border none\nsize metric strip 12 units cm border 5\ngrid"},
		{"strip 4", "units cm\nside 20", "grid", "sash 3 rust\nborder 5 navy\nbinding 6 navy\non-hand kites cream 4\nsize small side 10\nsize lap\nsize yank side 8 units inches across 6\ngrid"},
		{"grid", "strip-set glow navy 1 5/8 cream 1 3/8 rust 2\nseam 1/4\nsquare-up 2\nspare none\nusable-width 42\nsize metric strip 12 units cm\nsize wide strip 5\ngrid", "wedges navy", "wedges glow", "#1f3350", "#1f3350 usable-width 60 on-hand 2 yd"},
		{"strip 4", "side 6\nseam 3/8", "#f4ead7", "swatch \"b.png\" across 6 repeat across 3 down 2 from 2 squares 10", "#1f3350", "stripes red 3/4 white 1/2", "block P plain piece rust", "motif knob cream across 2 down 1\nblock T tumblers pieces knob navy line 7 1/2\nblock P plain piece rust", "W W P\n  W W W", "T P P\n  T P P", "block W web wedges navy kites cream\n", "", "grid", "spare 4 1/2\nbinding 2 1/2 rust\nsash 1 rust\nsize metric units cm side 12\ngrid"},
		{"strip 4", "side 6", "block P plain piece rust", "block T tumblers pieces rust navy about 3\nblock P plain piece rust", "W W P\n  W W W", "T P P\n  T P P", "block W web wedges navy kites cream\n", "", "grid", "size big side 9\nsize tiny side 2 across 5\ngrid"},
		{"block W", "webs\n  rust .\n  navy\nblock W", "W W P\n  W W W", "W W W W\n  W W W W\n  W W W W", "grid", "size wide across 8\nsize tall down 7\nsize small across 2\ngrid"},
		{"W W P\n  W W W", "P W W W P\n  W W W W W\n  P W W W P", "grid", "size wide across 7\nsize tall down 5\nsize odd across 6 down 9\ngrid"},
		{"#f4ead7", "stripes navy 3/4 white 1/2", "kites cream", "kites cream crosswise", "grid", "colorway dusk navy #010203 rust white\ncolorway dawn navy rust\ngrid"},
		{"#f4ead7", "stripes navy 3/4 white 1/2 rust 1/2", "kites cream", "kites cream crosswise", "grid", "colorway dusk navy #010203\ncolorway dawn rust #fff\ngrid"},
		{"W W P\n  W W W", "W W W W\n  W P W W\n  W W W W", "block W", "webs\n  rust navy\n  .\nblock W", "grid", "size long down 5\nsize wide across 6 down 7\ngrid"},
		{"fabric rust #b5532a", "fabric rust #b5532a\nfabric teal #2f7d83\nfabric plum #4a2a5a", "grid", "colorway dusk rust teal navy plum\ncolorway dawn rust plum cream teal navy cream\ngrid"},
		{"grid", "webs navy reversed\ngrid"},
		{"grid", "webs navy / rust turned\ngrid"},
		{"grid", "webs navy navy\ngrid"},
		{"strip 4", "block-size 60 x 80"},
		{"strip 4", "blocksize 60 by 80"},
		{"#f4ead7", "stripes cut 3/4 white 1/2"},
		{"#f4ead7", "stripes navy 3/4 darks 1/2", "grid", "scraps darks navy rust\ngrid"},
		{"#f4ead7", "stripes navy 3/4 white 1/2", "kites cream", "kites darks lengthwise", "grid", "scraps darks navy rust\ngrid"},
		{"#f4ead7", "stripes navy 3/4 white 1/2", "kites cream", "kites cream from x"},
		{"grid", "colorway dusk \"rust\" #123456\ngrid"},
		{"grid", "colorway dusk rust cut\ngrid"},
		{"grid", "colorway dusk rust\ngrid"},
		{"grid", "scraps darks navy rust from x\nsize wide across x\nmotif bud navy across\nborder 2 navy corners\ngrid"},
		{"grid", "size lap\nsize lap across 6\nsize lap across 9\ncolorway dusk rust white\ncolorway dusk rust red\ncolorway Dusk rust blue\ngrid"},
		{"grid", "border 2 nvy\nsize lap strip 500\ngrid"},
		{"grid", "strip 5\nsize lap strip 500\ngrid"},
		{"grid", "size lap strip 500\nsize other strip 1/2\nsize third side 6\ngrid"},
		{"block W", "strip-set glow navy equal cream equal\nblock W", "wedges navy", "wedges glow", "grid", "size big strip 4 1/8\nsize huge strip 6\ngrid"},
		{"grid", "strip-set glow navy 1 5/8 cream 1 3/8 rust rest\nsize wide strip 5\nsize narrow strip 3\ngrid", "wedges navy", "wedges glow"},
		{"grid", "strip-set glow navy 1 5/8 cream 1 1/2 rust 1 7/8\nsize wide strip 5\nsize narrow strip 3\ngrid", "wedges navy", "wedges glow"},
		{"W W P\n  W W W", "W W W", "grid", "size long across 5\nsize even across 4 down 2\ngrid"},
		{"strip 4", "side 120", "W W P\n  W W W", "P" + strings.Repeat(" W", 58) + " P", "grid", "binding 1/4 navy\nsize long across 61\nsize short across 59\ngrid"},
		{"block P plain piece rust", "block T tumblers pieces rust navy about 3\nblock P plain piece rust", "W W P", "T W P"},
		{"strip 4", "units cm\nstrip 10", "block P plain piece rust", "block T tumblers pieces rust navy about 3\nblock P plain piece rust", "W W P", "T W P"},
		{"grid", "strip-set glow navy 3 cream 2 rust rest\ngrid", "wedges navy", "wedges glow"},
		{"grid", "strip-set glow navy 3 1/8 cream 2 rust rest\ngrid", "wedges navy", "wedges glow"},
		{"grid", "strip-set glow navy 2 1/2 cream 2 rust rest\ngrid", "wedges navy", "wedges glow"},
		{"grid", "strip-set glow navy 1 1/2 cream 1 1/2 rust 1 7/8\ngrid", "wedges navy", "wedges glow"},
		{"#f4ead7", "stripes navy 3/4 white 1/2", "kites cream", "kites cream from 1/4", "grid", "size metric strip 10 units cm\ngrid"},
		{"grid\n  W W P\n  W W W\n", "  W W P\n  W W W\n"},
		{"grid\n", "grid\nborder 2 navy\n"},
		{"strip 4", "strip 4 1/8", "grid", "size odd side 6\nsize metric side 12 units cm\ngrid"},
		{"strip 4", "side 5 3/8", "grid", "size odd strip 4\nsize metric strip 10 units cm\nsize none units cm\nsize same units inches side 6\ngrid"},
		{"strip 4", "seam 0\nstrip 1/2"},
		{"strip 4", "seam 3\nstrip 1/2", "grid", "border 1/4 cut navy\ngrid"},
		{"strip 4", "units feet\nstrip 1/2"},
		{"strip 4", "strip 1/2", "grid", "strip-set glow navy 2 cream rest\nsize big strip 5\ngrid", "wedges navy", "wedges glow"},
		{"grid", "// the grid\ngrid"},
		{"grid", "-- the grid\ngrid"},
		{"grid", ";;the grid\ngrid"},
		{"strip 4", "strip 4 //wide"},
		{"strip 4", "strip 4 #wide"},
		{"strip 4", "strip 4 /* wide"},
		{"strip 4", "strp: 4"},
		{"strip 4", "strp=4"},
		{"strip 4", "strip: 4", "grid", "border = 2 navy;\ngrid"},
		{"grid", "\"quoted\"\ngrid"},
		{"grid", "block X plain piece\nblock Y plain\nblock Z\nblock\ngrid"},
		{"grid", "block X web wedgs navy kites cream\nblock Y web navy cream\nblock V web wedges navy kites cream corners rust\ngrid"},
		{"grid", "block web X wedges navy kites cream\nblock like W\nblock Y like\nblock W plain piece navy\ngrid"},
		{"W W P\n  W W W", "WWP\n  W W W"},
		{"W W P\n  W W W", "W W:n P:nw\n  W . .:se"},
		{"W W P\n  W W W", "W W P\n  W W\n  W W W"},
		{"W W P\n  W W W", "W W Q\n  Q W w"},
		{"grid\n  W W P", "grid W W P"},
		{"grid\n  W W P", "grid 3 x 2\n  W W P"},
		{"grid", "scraps p navy by blok\nscraps q navy rust from 80 to 20\nscraps r cut\nscraps t navy deal\ngrid"},
		{"grid", "strip-set a\nstrip-set b 2 navy\nstrip-set d navy rest cream rest\nstrip-set e navy rest cream equal\nstrip-set f navy 2 finished cream rest\ngrid"},
		{"grid", "motif a navy across 1 down 2\nmotif b\nmotif d cream across 1\nmotif e cream pointing 400 across 1 down 1\ngrid"},
		{"grid", "swap\nswap row 1\nswap row 1 column 1 row 1 column 2\nrepeat\nrepeat across 0\ngrid"},
		{"grid", "border navy 2\nborder 2\nborder 2 navy left\nsash 1 navy posts\nbinding 2 finished navy\ngrid"},
		{"grid", "note nowhere \"x\"\nnote\ntitle T\ntitle \"T\nlevel \"a\"\nlevel \"b\"\ngrid"},
		{"grid", "colorway dusk navy navy\ncolorway dawn navy rust cream rust\ncolorway day nvy rust\ncolorway x navy foam\ncolorway y navy white navy red\ngrid"},
		{"grid", "on-hand pieces navy 3\non-hand wedges navy 0\non-hand wedges nvy 3\non-hand wedges navy\ngrid"},
		{"grid", "palette tidewatr\npalette\ncontrast 20 10\ncontrast 5\ngrid"},
		{"#1f3350", "#1f335", "#b5532a", "rst", "#f4ead7", "dark green"},
		{"#1f3350", "#1f3350 \"night", "#b5532a", "b5532a", "#f4ead7", "cream #f4ead7"},
		{"#f4ead7", "swatch \"a.gif\"", "#1f3350", "swatch \"/a.png\"", "#b5532a", "swatch \"a\\b.png\""},
		{"grid", "fabrik teal #123\nborder 4 nvy\nblock X like Q\nsize\ngrid"},
	}
}

const worked = `strip 4
fabric cream #f4ead7
fabric navy #1f3350
fabric rust #b5532a
block W web wedges navy kites cream
block P plain piece rust
grid
  W W P
  W W W
`
