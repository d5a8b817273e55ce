package report

import (
	"encoding/json"
	"fmt"
	"regexp"
	"strings"
	"testing"

	"eighthturn/internal/document"
	"eighthturn/internal/measure"
	"eighthturn/internal/plan/cutting"
	"eighthturn/internal/quilt"
	"eighthturn/internal/quilttest/lay"
	"eighthturn/internal/quilttest/spelled"
	"eighthturn/internal/templates"
)

// gridsSpelled are layouts whose blocks lie in all sorts of ways.
func gridsSpelled() []string {
	return []string{
		"strip 4\n" + sixFabrics + "block W web wedges navy rust kites cream\nblock F floating wedges teal background cream\nblock P plain piece plum\ngrid\n W F W\n F W P\n . P P\nborder 2 plum\n",
		"side 6\n" + sixFabrics + "block R ring wedges navy corners cream\nblock P plain piece plum\ngrid\n R P\n P R\nsash 1 moss posts rust around\nborder 1 navy\nborder 1 rust\n",
		"units cm\nside 13\n" + sixFabrics + "block W web wedges navy kites cream\nblock T tumblers pieces teal rust line 15\ngrid\n T W W\n T W T\n",
		"strip 4\n" + sixFabrics + "block T tumblers pieces navy rust teal line 6\nblock U tumblers pieces plum cream line 6\ngrid\n T U\n T U\n T U\n",
		"strip 4\n" + sixFabrics + "block T tumblers pieces navy line 6\ngrid\n T\n",
	}
}

// TestSpelledGrids: how blocks lie, in words, and the parts of their pictures.
func TestSpelledGrids(t *testing.T) {
	b := spelled.New()
	b.Drawn = regexp.MustCompile(": row")
	for i, text := range append(gridsSpelled(), grown(22, 4, ""), "strip 2\nfabric a #111\nfabric b #eee\nblock W web wedges a kites b\ngrid\n W W\nrepeat across 30 down 70\n") {
		p := &Plans{Top: lay.Top(t, text)}
		g := Grid{p.Top, p.Steps()}
		b.Line("## grid %d", i)
		for _, parts := range [][]string{nil, {"Figure 2"}, {"Figure 2", "Figure 3", "Figure 4"}} {
			b.Line("%s", g.LayoutShown("Figure 1", parts))
		}
		whole, step := g.RowsSize()
		b.Line("%s %s %s %v %s\n%s\n%v %v", g.Noun(), g.Line(), g.Across(), g.Labeled(), g.LayoutCaption(), g.LayoutInWords(), whole, step)
		b.Line("%s %s %s", InSize("lap", p.Top), SizeShown("lap", p.Top), PartLines("ring", p.Top))
		if i >= len(gridsSpelled()) {
			continue
		}
		for n := range g.Plan.Blocks {
			k := &g.Plan.Blocks[n]
			b.Line("%s %s %s %v %v", BlockShown(k, ""), BlockShown(k, "Figure 1"), BlockInWords(k), HasArrow(k), HasNumber(k))
		}
		parts := []Window{{0, 1, 0, 1}, {0, p.Top.Rows, p.Top.Columns - 1, p.Top.Columns}, {p.Top.Rows - 1, p.Top.Rows, 0, p.Top.Columns}}
		for n, f := range RowsInParts(p, parts) {
			b.Line("%s", PartCaption(n+1, parts[n]))
			b.Figure("", f)
		}
		for _, picture := range SewingPictures(p) {
			b.Line("%s: %s", picture.Name, picture.Figure.Title)
		}
	}
	for _, n := range []int{1, 60, 61, 120, 121, 300, 301, 600, 601, 6000, 6001} {
		b.Line("%d: every %s", n, every(n))
	}
	keep(t, b, "grids")
}

// TestSpelledSheets: cutting plans for spreadsheets, workbooks and other programs, and cutting maps to be printed.
func TestSpelledSheets(t *testing.T) {
	b := spelled.New()
	for _, c := range []spelledOut{
		{text: sizesLayout, with: func(p *Plans) { p.Cutting.Copies = 2 }},
		{text: gridsSpelled()[2] + "backing cream\nbinding 6 navy\nborder 5 plum lengthwise\n"},
		{text: "strip 4\n" + sixFabrics + "block W web wedges plum kites cream\ngrid\n W W W W\n W W W W\n W W W W\nborder 5 plum lengthwise\n"},
		{text: printedLayout, with: func(p *Plans) { p.Top = photographed(t, printedLayout) }},
		{text: shores + "backing navy\nbatting\nborder 11 teal\n", with: func(p *Plans) {
			p.Cutting = cutting.Options{LeastCloth: true, CornersByCustom: true, LongEdgesStraight: true}
		}},
		{text: "side 5\n" + sixFabrics + "block H halves pieces navy rust\nblock P plain piece teal\ngrid\n H P H P H P H P H P\nrepeat down 9\nborder 3 teal\nborder 5 rust\nbinding 2 1/2 teal\n", with: func(p *Plans) {
			p.Cutting = cutting.Options{LeastCloth: true, LongEdgesStraight: true, DiagonalBorders: true}
		}},
	} {
		p := c.laidOut(lay.Top(t, c.text))
		b.Document(CuttingTable(p))
		for i, s := range CuttingSheets(p).Sections {
			b.Line("sheet %d: %s of %d columns", i, s.Title, len(s.Blocks[0].(document.Table).Columns))
		}
		b.Drawn = regexp.MustCompile("^Cutting map, (rust|teal|garden|plum)")
		b.Document(CuttingMapBook(p))
		b.Drawn = nil
		b.Document(Cutting(p).Down(document.Detail))
		made := CutsForPrograms(p)
		for _, size := range made.Sizes {
			b.Line("%s %v %d", size.Name, size.AsWritten, len(size.Plan.Lines))
		}
		finished, cut := PieceSizes(p.Cuts(), &p.Cuts().Lines[0])
		listing, err := json.Marshal(ListingData(p, 3))
		if err != nil {
			t.Fatal(err)
		}
		b.Line("%s, %s; %s", finished, cut, listing)
	}
	keep(t, b, "sheets")
}

// TestSpelledSentences: sentences that stand by themselves.
func TestSpelledSentences(t *testing.T) {
	b := spelled.New()
	text := "title \"Six ways\"\ndesigner \" Ada Quill \"\n" + sizesLayout + "size big across 8 down 9 strip-less\n"
	text = strings.Replace(text, "size big across 8 down 9 strip-less\n", "colorway night navy #3a2040\n", 1)
	top := lay.Top(t, text)
	for _, v := range []*quilt.Top{top, top.In(0), top.Sizes[1].Top(nil)} {
		p := &Plans{Top: v, Name: "six"}
		lettered(p)
		b.Line("%s; %q; %q", p.named("what"), PictureLines(v), ToFillIn(p))
		for _, said := range []string{"", "Cut 3 in and 2 cm of a wedge; nest the posts, 4 ft, L* 20, WOF, 3 yd, 5 mm, 2 m", "A wedge ruler, kites, unfinished 3 in"} {
			terms, short := Terms(said), Abbreviations(p, said)
			b.Section("", &terms)
			b.Section("", &short)
		}
		b.Line("%s %s %s", CutSizes(p), CutAlike(p, []int{0, 1}), FabricCut(p, []int{0}, "Figure 3"))
		b.Line("%s %s", FabricCut(p, []int{0, 1}, "Figure 3"), AlikeMap(p, []int{0, 1, 1, 0, 1, 0, 0, 1}))
		b.Line("%s", AlikeMap(p, []int{0, 1, 1, 0, 1, 0, 0, 1, 1}))
		p.Letters = p.Letters[:2]
		few := Abbreviations(p, "")
		b.Section("", &few)
	}
	p := &Plans{Top: top}
	b.Blocks("", SizesInPattern(p))
	b.Line("%s\n%s %s", HowSizesRead(p.SizeNames()), HowSizesRead([]string{"as written", "twin"}), OnlyInSizes("Batting", []string{"lap", "twin"}))
	b.Line("%s; %s; %s; %s; %s; %s", See([]string{"Figure 1", "Figure 2"}), SewnLike("W"), PressedLike("W"), RowsDivided([]string{"Figure 1", "Figure 2", "Figure 3"}, "row"), RowsDivided([]string{"Figure 1", "Figure 2"}, "row"), ArrangedAs("Figure 2"))
	b.Line("%s %s %s", AmountsFor(1), AmountsFor(3), ColoringUse("Figure 9"))
	b.Line("%s %s %s %s %s", InColorway("dusk"), ColorwayShown("dusk"), ColorwayTitle("dusk"), Designed(""), ShownTogether([]string{"One.", "Two."}))
	b.Line("%q %q", CutterCautions(), PatternCautions())
	caption, description := PlateText("Templates T1 and T2.")
	b.Line("%s %s", caption, description)
	for n := range 3 {
		b.Blocks("", TooLarge("template", []templates.Large{{Name: "T1"}, {Name: "T2"}}[:n]))
	}
	b.Line("%s; %s; %s", PlatesLimit("T1", 60, 60, 1000), PlatesLimit("T1", 61, 60, 1000), fewFabrics(strings.Split("a b c d e f g h i", " ")))
	b.Line("%s; %s", fewFabrics(strings.Split("a b c d e f g h", " ")), cellPlaces(everyThird(60), 3))
	b.Line("%s", cellPlaces(everyThird(90), 2))
	for _, list := range [][]int{{1, 3, 5, 7, 9}, {1, 3, 5, 7, 9, 11}, {2, 4, 6, 8, 10, 12}, {1, 3, 5, 7, 9, 12}} {
		b.Line("%s", everyOther("row", list))
	}
	for _, m := range []measure.NM{0, measure.Inch / 100, measure.Inch / 2} {
		b.Line("%s %s", atMost(measure.Inches.Nearest(m)), fmt.Sprint((&chart{}).off(m), (&chart{}).off(-m)))
	}
	strips := lay.Top(t, "side 6\nfabric a #111\nblock P plain piece a\ngrid\n P\nborder 1 a\n")
	b.Blocks("", TemplateBook{Top: strips}.Strips())
	all := Sewing(&Plans{Top: top}).Index()
	fabrics, _ := all.Section(SewingBlock(0, "fabrics"))
	without := WithoutPlaces(fabrics)
	b.Section("", &without)
	keep(t, b, "sentences")
}

// everyThird is places of a grid with no two like rows.
func everyThird(n int) (list []int) {
	for i := range n {
		list = append(list, i*(i+1)/2)
	}
	return list
}
