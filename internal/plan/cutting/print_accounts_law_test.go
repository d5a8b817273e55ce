package cutting

import (
	"fmt"
	"slices"
	"strings"
	"testing"

	"eighthturn/internal/blocks"
	"eighthturn/internal/measure"
	"eighthturn/internal/quilt"
)

// Laws of what is said of pieces from places of a print: which they are, how many, how much cloth.

// misfussy says what a plan says of a fabric's prints that its top and its pieces do not.
func misfussy(top *quilt.Top, p *Plan, f *Fabric) error {
	cloth := top.Fabrics[f.Index].Cloth
	of := map[bool][]int{} // lines by whether their strips run along the selvages
	for _, n := range f.Lines {
		l := &p.Lines[n]
		c := top.CutOfPatch(l.Patches[0])
		fussy := cloth != nil && c != nil && (c.Motif != "" || c.Alike)
		if fussy != (l.Piece.Method == FussyCut) || fussy != (l.PrintPlace >= 0) {
			return fmt.Errorf("line %d, %+v: it is cut %v, its place is %d", n, c, l.Piece.Method, l.PrintPlace)
		}
		if !fussy {
			continue
		}
		if z := &l.Piece; z.AcrossCut != z.AcrossExact || z.AlongCut != z.AlongExact || z.TrimCut != 0 || z.StandsOut != 0 || l.Piece.Hand != p.HandOf[l.Patches[0]] {
			return fmt.Errorf("line %d: a template of %+v", n, *z)
		}
		for _, patch := range l.Patches {
			if int(top.CutOf[patch]) != l.PrintPlace || p.HandOf[patch] != l.Piece.Hand {
				return fmt.Errorf("line %d: patch %d is cut from place %d", n, patch, top.CutOf[patch])
			}
		}
		along := c.Motif == "" && !c.Crosswise
		of[along] = append(of[along], n)
	}
	places := boolInt(len(of[false]) > 0) + boolInt(len(of[true]) > 0)
	if len(f.FromPrint) != places {
		return fmt.Errorf("%d fittings of %v", len(f.FromPrint), of)
	}
	for i := range f.FromPrint {
		c := &f.FromPrint[i]
		if !slices.Equal(c.Lines, of[c.Lengthwise]) || i > 0 && !c.Lengthwise {
			return fmt.Errorf("fitting %d has lines %v", i, c.Lines)
		}
		across, along := cloth.Across, cloth.Down
		if cloth.Stripes != nil && cloth.Stripes.Crosswise {
			across = 0
		} else if cloth.Stripes != nil {
			along = 0
		}
		if c.AcrossCut != across || c.AlongCut != along {
			return fmt.Errorf("a repeat of %d by %d, said is %d by %d", across, along, c.AcrossCut, c.AlongCut)
		}
		end, stackable, all := measure.NM(0), !c.Lengthwise && along > 0, 0
		for _, s := range c.Strips {
			width := s.Max.Y - s.Min.Y
			if c.Lengthwise {
				width = s.Max.X - s.Min.X
			}
			if s.WidthCut != width {
				return fmt.Errorf("a strip of %d is said to be %d wide", width, s.WidthCut)
			}
			end = max(end, s.Max.Y-c.Strips[0].Min.Y)
			all += len(s.Pieces)
		}
		for more := 1; more < c.Times; more++ { // on whole repeats; where any place will do, one behind the other
			if along > 0 {
				end += (c.Strips[len(c.Strips)-1].Max.Y - c.Strips[0].Min.Y + along - 1) / along * along
			} else {
				end += c.Strips[len(c.Strips)-1].Max.Y - c.Strips[0].Min.Y
			}
		}
		if !c.Lengthwise && c.FittedCut != end {
			return fmt.Errorf("%d times over the strips come to %d, said are %d", c.Times, end, c.FittedCut)
		}
		counted := 0
		for _, n := range c.Lines {
			l := &p.Lines[n]
			counted += c.Count(n)
			if l.Units != c.Count(n)*c.Times || l.Spare != max(0, l.Units-(l.Pieces-l.OnHand)) {
				return fmt.Errorf("line %d: %d are cut and %d too many, said are %d and %d", n, c.Count(n)*c.Times, l.Units-l.Pieces+l.OnHand, l.Units, l.Spare)
			}
			stackable = stackable && (l.Pieces-l.OnHand)%8 == 0
		}
		if counted != all {
			return fmt.Errorf("of %d pieces on the cloth %d are of its lines", all, counted)
		}
		if c.StackStrips > 0 && (!stackable || c.StackStrips >= len(c.Strips)*c.Times || c.StackCut != 8*c.LayerCut+along || c.LayerCut <= 0 || c.LayerCut%along != 0) || c.StackStrips == 0 && (c.StackCut != 0 || c.LayerCut != 0) {
			return fmt.Errorf("a stack of %d strips, %d of each layer, %d in all", c.StackStrips, c.LayerCut, c.StackCut)
		}
	}
	return miscounted(p, f, cloth)
}

// miscounted says what of wedges that come as they are cut from a print, eight and eight alike, is not as it is reckoned: so many strips
// of whole repeats in each of eight layers, and one to begin with.
func miscounted(p *Plan, f *Fabric, cloth *quilt.Cloth) error {
	var want []EightAlike
	for _, n := range f.Lines {
		l := &p.Lines[n]
		wanted := l.Pieces - l.OnHand
		if cloth == nil || cloth.Stripes != nil || !cloth.Repeats || l.Piece.Method != Nested || l.Piece.Shape != blocks.Wedge || wanted < 8 || l.Piece.WideCut > f.UsableWidth {
			continue
		}
		per := fitting(&l.Piece, f.UsableWidth)
		e := EightAlike{Line: n, Sets: (wanted + 7) / 8, PerStrip: per}
		e.Strips = (e.Sets + per - 1) / per
		for e.LayerCut = 0; e.LayerCut < measure.NM(e.Strips)*l.Piece.AcrossCut; e.Repeats++ {
			e.LayerCut += cloth.Down
		}
		e.LengthCut = 8*e.LayerCut + cloth.Down
		want = append(want, e)
	}
	if !slices.Equal(f.EightAlike, want) {
		return fmt.Errorf("eight alike: %+v, said is %+v", want, f.EightAlike)
	}
	return nil
}

func TestPrintAccounts(t *testing.T) {
	stacks, alike, spare, times := 0, 0, 0, 0
	list := slices.Clone(tops().prints)
	own := roses(t, "block R ring wedges garden corners navy\non-hand wedges garden 9\n", quilt.Cloth{Across: inch(8), Down: inch(12), Repeats: true})
	list = append(list, named{"some on hand", []Options{{}}, own})
	for _, c := range specialPlans() {
		if c.cloth != nil {
			list = append(list, named{c.name, []Options{c.options}, specialTop(t, c)})
		}
	}
	for _, n := range list {
		for k, o := range n.variants {
			p := planned(n.Top, o)
			for i := range p.Fabrics {
				f := &p.Fabrics[i]
				if err := misfussy(n.Top, p, f); err != nil {
					t.Fatalf("%s, variant %d, %s: %v", n.name, k, f.Name, err)
				}
				alike += len(f.EightAlike)
				for _, c := range f.FromPrint {
					stacks, times = stacks+boolInt(c.StackStrips > 0), times+boolInt(c.Times > 1)
				}
			}
			for _, l := range p.Lines {
				spare += boolInt(l.Piece.Method == FussyCut && l.Spare > 0)
			}
		}
	}
	if stacks < 3 || alike < 3 || spare < 1 || times < 1 {
		t.Errorf("%d stacks, %d sorts of eight alike, %d lines with some over, %d cut several times over", stacks, alike, spare, times)
	}
}

// TestPrintSentences: every sentence on pieces from a print, whole; a piece that is just as large as the repeat is no word worth.
func TestPrintSentences(t *testing.T) {
	const rings, floating = "block R ring wedges rose corners navy\n", "block R floating wedges navy background rose\n"
	said := func(more string, cloth *quilt.Cloth) []string {
		top := roses(t, more, *cloth)
		text := "side 6\nfabric navy #1f3350\nfabric cream #f4ead5\nfabric garden stripes navy 1 cream 1\nmotif rose garden across 5 down 5\n" + more + "grid\n R R\n R R\n"
		p := Build(nil, top, Options{})
		return append(saidOf(text, p.Faults), saidOf(text, p.Warnings)...)
	}
	repeat := func(across, down measure.NM) *quilt.Cloth {
		return &quilt.Cloth{Across: across, Down: down, Repeats: true}
	}
	wide := Build(nil, roses(t, rings, *repeat(inch(20), inch(20))), Options{})
	line := wide.Lines[slices.IndexFunc(wide.Lines, func(l Line) bool { return l.Piece.Method == FussyCut })]
	cut := wide.Fabrics[line.Fabric].FromPrint[0].Outline(line.Number)
	var size measure.Point
	for _, a := range cut {
		for _, b := range cut {
			size = measure.Point{X: max(size.X, a.X-b.X), Y: max(size.Y, a.Y-b.Y)}
		}
	}
	over := func(by, of string) []string {
		return []string{"rose | a rose wedge takes " + by + " in of the print, more than a repeat of garden, " + of + " in: it shows more than one motif, and not every repeat gives a piece | "}
	}
	for _, c := range []struct {
		name, more string
		cloth      *quilt.Cloth
		want       []string
	}{
		{"just as large as the repeat", rings, repeat(size.X, size.Y), nil},
		{"a hair wider", rings, repeat(size.X-1, inch(20)), over("about 3 1/4 by 3 1/2", "about 3 1/4 by 20")},
		{"a hair higher", rings, repeat(inch(20), size.Y-1), over("about 3 1/4 by 3 1/2", "20 by 3 1/2")},
		{"no repeat", rings, &quilt.Cloth{Across: inch(20), Down: inch(20)}, []string{"fabric garden stripes navy 1 cream 1 | 32 pieces are cut from places of garden, which has no repeat: its photo is taken for one whole repeat | measure after how much fabric the print comes again, and write it behind the photo, for example repeat across 24 down 12"}},
		{"both hands", floating, repeat(inch(20), inch(20)), []string{"rose | left and right rose background pieces are cut from one place of garden, and the print is not mirrored in them | cut both right side up, each with its own template: turned over they would show the wrong side"}},
	} {
		if got := said(c.more, c.cloth); !slices.Equal(got, c.want) {
			t.Errorf("%s:\n%s\nwant\n%s", c.name, strings.Join(got, "\n"), strings.Join(c.want, "\n"))
		}
	}
	stripes := printedTop(t, 6).Fabrics[2].Cloth // which have a mirror line
	if got, want := said(floating, stripes), []string{"rose | left and right rose background pieces are cut from one place of garden, and the print is not mirrored in them | " +
		"write mirrored behind the motif: the print has a mirror line, at which the right ones are then cut; turned over they would show the wrong side"}; !slices.Equal(got, want) {
		t.Errorf("stripes: %v, want %v", got, want)
	}
	narrow := roses(t, rings, *repeat(inch(30), inch(10)))
	for i := range narrow.CutFacts.Fabrics {
		narrow.CutFacts.Fabrics[i].UsableWidth = inch(6)
	}
	if p := Build(nil, narrow, Options{}); len(p.Faults) != 1 || p.Faults[0].Message != "a wedge that is cut from its place on garden leaves the fabric, which is 6 in between its selvages" || p.Faults[0].Hint != "make the blocks smaller, or use wider fabric" {
		t.Errorf("%+v", p.Faults)
	}
}
