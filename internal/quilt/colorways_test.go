package quilt_test

import (
	"fmt"
	"math/rand/v2"
	"reflect"
	"regexp"
	"slices"
	"strings"
	"testing"

	"eighthturn/internal/quilt"
	"eighthturn/internal/quilttest/invent"
	"eighthturn/internal/quilttest/judges"
	"eighthturn/layout"
	"eighthturn/samples"
)

// written is where a fabric is defined: its name, and what stands behind it.
type written struct {
	name       string
	at, behind layout.Span
}

// fabricsWritten are the fabrics that a layout has lines for.
func fabricsWritten(text string) (list []written) {
	source := layout.NewSource(text)
	tree, _ := layout.Parse(source)
	for _, m := range tree.Mentions() {
		if m.Defines != "fabric" {
			continue
		}
		if strings.Contains(text[m.Span.End:m.Span.End+strings.IndexByte(text[m.Span.End:]+"\n", '\n')], "stripes") {
			continue // pieces are cut from places of it, which no other fabric has
		}
		end := m.Span.End + strings.IndexAny(text[m.Span.End:]+"\n", "\r\n")
		list = append(list, written{m.Name(), m.Span, layout.Span{Start: m.Span.End, End: end}})
	}
	return list
}

// writtenOut is a layout in other fabrics, without a colorway: two have changed places, one has another color. Lines and their
// order stay, so that scraps are dealt alike.
func writtenOut(text string, a, b, c written, colour string) string {
	tree, _ := layout.Parse(layout.NewSource(text))
	edits := []layout.Edit{{Span: a.behind, Text: text[b.behind.Start:b.behind.End]}, {Span: b.behind, Text: text[a.behind.Start:a.behind.End]}, {Span: c.behind, Text: " " + colour}}
	for _, m := range tree.Mentions() {
		switch {
		case m.Scope != layout.Cloths:
		case m.Key() == layout.FoldName(a.name):
			edits = append(edits, layout.Edit{Span: m.Span, Text: b.name})
		case m.Key() == layout.FoldName(b.name):
			edits = append(edits, layout.Edit{Span: m.Span, Text: a.name})
		}
	}
	slices.SortFunc(edits, func(x, y layout.Edit) int { return x.Span.Start - y.Span.Start })
	return layout.Apply(text, edits)
}

// bare is a top without places in the text, colorways, sizes and what is warned of.
func bare(t *quilt.Top) *quilt.Top {
	top := *t
	top.Warnings, top.Colorways, top.Sizes, top.Title, top.Colorway, top.Size = nil, nil, nil, "", "", ""
	top.Cells, top.Patches, top.Fabrics = slices.Clone(t.Cells), slices.Clone(t.Patches), slices.Clone(t.Fabrics)
	for i := range top.Cells {
		top.Cells[i].Place = layout.Span{}
	}
	for i := range top.Patches {
		top.Patches[i].Place = quilt.Place{}
	}
	for i := range top.Fabrics {
		top.Fabrics[i].Place = layout.Span{}
	}
	top.Credits.Pools = slices.Clone(t.Credits.Pools)
	for i := range top.Credits.Pools {
		top.Credits.Pools[i].Span = layout.Span{}
	}
	f := &top.CutFacts
	f.Sash, f.Binding, f.Borders = placeless(f.Sash), placeless(f.Binding), slices.Clone(f.Borders)
	for i := range f.Borders {
		f.Borders[i] = *placeless(&f.Borders[i])
	}
	f.OnHand = slices.Clone(f.OnHand)
	for i := range f.OnHand {
		f.OnHand[i].Place = layout.Span{}
	}
	return &top
}

func placeless(e *layout.Edging) *layout.Edging {
	if e == nil {
		return nil
	}
	other := *e
	other.Span = layout.Span{}
	return &other
}

// sameIn is what differs between a colorway of a top and the top of the layout written out in it, "" for nothing.
func sameIn(colorway, written *quilt.Top) string {
	a, b := reflect.ValueOf(*bare(colorway)), reflect.ValueOf(*bare(written))
	for i := range a.NumField() {
		if !reflect.DeepEqual(a.Field(i).Interface(), b.Field(i).Interface()) {
			return a.Type().Field(i).Name
		}
	}
	return ""
}

// TestInNamed: names are compared as the language compares them, accents in one piece or apart.
func TestInNamed(t *testing.T) {
	top := lay(t, "side 6\nfabric navy #123\nblock P plain piece navy\ngrid\n  P P\ncolorway \u00c9t\u00e9 navy #456\n")
	for name, has := range map[string]bool{"\u00e9t\u00e9": true, "E\u0301te\u0301": true, "ete": false, "": false} {
		in, err := top.InNamed(name)
		if (err == nil) != has || has && in.Fabrics[0].Colour.Hex() != "#445566" {
			t.Errorf("%q: %v", name, err)
		}
	}
}

// widthWritten is a width of fabric in a layout's text.
var widthWritten = regexp.MustCompile(`(?i)usable-width\s+\d\S*(?:\s+(?:cm|mm|m|in|inch|inches|yd)\b)?`)

// TestColorwayIsTheLayoutWrittenOut: a colorway's top is that of the layout whose fabrics are written as the colorway has them.
func TestColorwayIsTheLayoutWrittenOut(t *testing.T) {
	var texts []string
	for _, s := range samples.All() {
		texts = append(texts, s.Text)
	}
	for seed := range uint64(judges.Of(40, 200)) {
		texts = append(texts, invent.Layout(seed))
	}
	tried, noticed := 0, 0
	for i, text := range texts {
		rng := rand.New(rand.NewPCG(uint64(i), 19))
		fresh := "usable-width 50"
		if len(lay(t, text).Dealt) > 0 { // a colorway keeps the layout's deal, which goes by how many wedges a strip gives
			text, fresh = widthWritten.ReplaceAllString(text, ""), ""
		}
		list := fabricsWritten(text)
		if len(list) < 3 || len(text) > 20_000 {
			continue
		}
		rng.Shuffle(len(list), func(i, j int) { list[i], list[j] = list[j], list[i] })
		a, b, c := list[0], list[1], list[2]
		const colour = "#3a5f66"
		base := strings.TrimRight(text, "\r\n") + "\n"
		back := b.name + " " + a.name
		if i%2 == 1 { // a fabric that the quilt does not use takes the place, and none has to go back
			base, back = base+"fabric freshly-bought #5a2a4f \"Plum\" on-hand 2 yd "+fresh+"\n", ""
			b = fabricsWritten(base)[len(list)]
		}
		top := lay(t, base+fmt.Sprintf("colorway dusk %s %s %s %s %s\n", a.name, b.name, c.name, colour, back))
		want := lay(t, writtenOut(base, a, b, c, colour))
		in := top.In(len(top.Colorways) - 1)
		in.CutFacts.OnHand, want.CutFacts.OnHand = nil, nil // pieces keep their cloth: see TestPiecesOnHandKeepTheirCloth
		if part := sameIn(in, want); part != "" {
			t.Errorf("layout %d: %s differs where %s and %s change places and %s has another color", i, part, a.name, b.name, c.name)
		}
		tried++
		if sameIn(top, want) == "Fabrics" {
			noticed++
		}
	}
	if tried < 20 || noticed < tried*9/10 {
		t.Errorf("%d layouts were tried, of %d another colorway is noticed", tried, noticed)
	}
}
