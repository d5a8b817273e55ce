package summary

import (
	"fmt"
	"strings"
	"testing"

	"eighthturn/internal/measure"
	"eighthturn/internal/quilt"
	"eighthturn/layout"
)

const cloth = "fabric cream #f4ead7 \"crackle\"\nfabric navy #1f3350\nfabric rust #b5532a\n"

const blocksOf = `block W web wedges rust kites cream
block F floating wedges rust background cream
block S floating-star kites navy wedges rust background cream
block R ring wedges rust corners cream
block Q ring wedges navy corners cream
block P plain piece navy
`

// laid reads a layout made of a size, rows of a grid and what follows it; unused blocks only warn.
func laid(t *testing.T, size string, rows []string, rest ...string) (*layout.Design, *quilt.Top) {
	t.Helper()
	text := size + "\n" + cloth + blocksOf + "grid\n  " + strings.Join(rows, "\n  ") + "\n" + strings.Join(rest, "\n") + "\n"
	d, source, list := layout.Read(text)
	if d == nil {
		var b strings.Builder
		_ = layout.Report(&b, "test", source, list)
		t.Fatal(b.String())
	}
	return d, quilt.Lay(d)
}

func of(t *testing.T, size string, rows []string, rest ...string) *Summary {
	t.Helper()
	return Build(laid(t, size, rows, rest...))
}

// frame is a grid of W with a frame of another label.
func frame(label string, across, down int) []string {
	rows := make([]string, down)
	for y := range rows {
		cells := make([]string, across)
		for x := range cells {
			cells[x] = "W"
			if x == 0 || y == 0 || x == across-1 || y == down-1 {
				cells[x] = label
			}
		}
		rows[y] = strings.Join(cells, " ")
	}
	return rows
}

// board is a grid of two labels set like a draughtboard.
func board(a, b string, across, down int) []string {
	rows := make([]string, down)
	for y := range rows {
		cells := make([]string, across)
		for x := range cells {
			cells[x] = []string{a, b}[(x+y)%2]
		}
		rows[y] = strings.Join(cells, " ")
	}
	return rows
}

// amiss are the laws that a summary breaks.
func amiss(s *Summary, d *layout.Design, top *quilt.Top) []string {
	var list []string
	law := func(holds bool, name string) {
		if !holds {
			list = append(list, name)
		}
	}
	places := s.EmptyPlaces
	for _, b := range s.Blocks {
		places += b.Count
	}
	law(places == s.Across*s.Down, "blocks and empty places fill the grid")
	pieces := 0
	for _, p := range s.Pieces {
		pieces += p.Count
		law(p.FromSets >= 0 && p.FromSets <= p.Count, "pieces from strip sets are some of all")
	}
	law(pieces == len(top.Patches), "every patch is counted once")
	share := 0.0
	for i, f := range s.Fabrics {
		share += f.Share
		law(i == 0 || s.Fabrics[i-1].Lightness <= f.Lightness+1e-6, "fabrics go from dark to light")
	}
	law(share > 1-1e-9 && share < 1+1e-9, "shares come to one")
	law(len(s.Fabrics) == len(d.Fabrics), "every fabric is listed")
	borders := Size{}
	for _, b := range s.Borders {
		borders.Width += 2 * b.WidthFinished
		law(b.WidthCut == b.WidthFinished+2*s.SeamAllowance, "a border is cut two seams wider than it finishes")
	}
	law(s.TopFinished.Width == s.FieldFinished.Width+borders.Width && s.TopFinished.Height == s.FieldFinished.Height+borders.Width, "the top is the field and its borders")
	law(s.TopUnfinished.Width == s.TopFinished.Width+2*s.SeamAllowance && s.TopUnfinished.Height == s.TopFinished.Height+2*s.SeamAllowance, "unfinished is a seam more on each side")
	for _, c := range s.Strips {
		law(c.WidthCut == c.WidthFinished+2*s.SeamAllowance, "a strip is cut two seams wider than it finishes")
		law((c.Nearest == nil) == s.StripGiven, "the nearest mark is for strips that follow from a side")
		if n := c.Nearest; n != nil {
			off := n.WidthCut - c.WidthCut
			law(n.WidthCut%n.Mark == 0 && 2*off <= n.Mark && 2*off >= -n.Mark, "no mark is nearer")
			law((n.RowErrorFinished > 0) == (n.SideFinished > s.SideFinished), "a wider strip makes a longer row")
		}
	}
	for _, set := range s.StripSets {
		for _, use := range set.Uses {
			sum := measure.NM(0)
			for _, b := range use.Bands {
				sum += b.WidthFinished
				law(b.WidthCut == b.WidthFinished+2*s.SeamAllowance, "a band is cut two seams wider than it finishes")
			}
			law(strips(d)[0].WidthFinished == sum || len(s.Strips) > 1, "bands come to the strip")
			law(len(use.Kinds) > 0, "a set that is listed is used")
		}
	}
	return list
}

// quilts are layouts for the laws.
func quilts(t *testing.T) map[string]func() (*layout.Design, *quilt.Top) {
	return map[string]func() (*layout.Design, *quilt.Top){
		"webs": func() (*layout.Design, *quilt.Top) {
			return laid(t, "strip 4", frame("F", 5, 4), "border 2 navy", "border 3 cut cream", "binding 2 1/2 navy")
		},
		"rings and webs by side": func() (*layout.Design, *quilt.Top) {
			return laid(t, "side 7", []string{"R R R", "W W .", "P W W"}, "border 1/8 navy")
		},
		"centimetres": func() (*layout.Design, *quilt.Top) {
			return laid(t, "units cm\nside 17,3", frame("S", 4, 4), "border 5 navy")
		},
		"strip sets": func() (*layout.Design, *quilt.Top) {
			return laid(t, "side 8\nstrip-set s navy rest cream 1 1/4 rust 1 1/8\nblock A web wedges s turned s kites cream\nblock B ring wedges s corners navy",
				[]string{"A A B", "A A B"})
		},
	}
}

func TestLaws(t *testing.T) {
	for name, quilt := range quilts(t) {
		d, top := quilt()
		for _, law := range amiss(Build(d, top), d, top) {
			t.Errorf("%s: not so: %s", name, law)
		}
	}
}

// Each law catches a summary that breaks it.
func TestLawsCatch(t *testing.T) {
	for name, spoil := range map[string]func(*Summary){
		"a block more":            func(s *Summary) { s.Blocks[0].Count++ },
		"a piece less":            func(s *Summary) { s.Pieces[0].Count-- },
		"more from sets than all": func(s *Summary) { s.Pieces[0].FromSets = s.Pieces[0].Count + 1 },
		"shares of more than all": func(s *Summary) { s.Fabrics[0].Share += 0.01 },
		"light before dark":       func(s *Summary) { s.Fabrics[0], s.Fabrics[2] = s.Fabrics[2], s.Fabrics[0] },
		"a fabric left out":       func(s *Summary) { s.Fabrics = s.Fabrics[:2] },
		"a border of one seam":    func(s *Summary) { s.Borders[0].WidthCut -= s.SeamAllowance },
		"a border not counted":    func(s *Summary) { s.TopFinished.Width-- },
		"unfinished by one seam":  func(s *Summary) { s.TopUnfinished.Height -= s.SeamAllowance },
		"a strip of one seam":     func(s *Summary) { s.Strips[0].WidthCut++ },
		"the next mark":           func(s *Summary) { s.Strips[0].Nearest.WidthCut += s.Strips[0].Nearest.Mark },
		"an error turned round": func(s *Summary) {
			s.Strips[1].Nearest.RowErrorFinished, s.Strips[0].Nearest.RowErrorFinished = -1, -s.Strips[0].Nearest.RowErrorFinished
		},
		"a strip as given": func(s *Summary) { s.Strips[0].Nearest = nil },
	} {
		d, top := quilts(t)["rings and webs by side"]()
		s := Build(d, top)
		spoil(s)
		if len(amiss(s, d, top)) == 0 {
			t.Errorf("%s: nothing is found amiss", name)
		}
	}
	d, top := quilts(t)["strip sets"]()
	s := Build(d, top)
	s.StripSets[0].Uses[0].Bands[0].WidthCut++
	if len(amiss(s, d, top)) == 0 {
		t.Error("a band too wide: nothing is found amiss")
	}
}

// TestKnownQuilt is counted by hand on squared paper.
func TestKnownQuilt(t *testing.T) {
	s := of(t, "strip 4", frame("F", 4, 4), "border 1 1/2 rust", "border 4 cream", "binding 2 1/2 navy")
	got := fmt.Sprintf("%v %v %v, stars %d %d, %v", s.Blocks, s.Pieces, s.Webs, s.Stars.Closed, len(s.Stars.Open), s.Hints)
	want := "[{W web 4} {F floating 12}] [{wedge 40 0} {kite 8 0} {background piece 24 0} {strip 8 0}] {8 5 []}, stars 0 4, []"
	if got != want {
		t.Errorf("got\n%s\nwant\n%s", got, want)
	}
}
