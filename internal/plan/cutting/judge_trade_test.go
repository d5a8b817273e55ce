package cutting

import (
	"eighthturn/internal/quilttest/lay"
	"fmt"
	"strings"
	"testing"

	"eighthturn/internal/blocks"
	"eighthturn/internal/measure"
	"eighthturn/internal/quilt"
	"eighthturn/layout"
)

// readPlan plans a layout; the error is its first fault or the plan's.
func readPlan(text string) (*Plan, error) {
	d, _, faults := layout.Read(text)
	if errors, _ := layout.Count(faults); errors > 0 || d == nil {
		return nil, fmt.Errorf("%v", faults)
	}
	p := Build(nil, quilt.Lay(d), Options{})
	if len(p.Faults) > 0 {
		return p, fmt.Errorf("%s; %s", p.Faults[0].Message, p.Faults[0].Hint)
	}
	return p, nil
}

// Facts of the trade for wedges: squares for kites and background pieces by custom (common practice, no source); the exact sizes
// and the wedges of a strip were worked out from outlines grown with mitred corners.
func TestTradeFacts(t *testing.T) {
	for _, row := range []struct {
		shape      blocks.Shape
		strip      string
		exact, cut float64
	}{
		{blocks.Kite, "4", 3.3907, 3.5}, {blocks.Kite, "5 1/2", 4.5388, 4.75}, {blocks.Background, "4", 6.2111, 7},
	} {
		_, line := single(t, row.shape, "strip "+row.strip, Options{})
		near(t, row.shape.String()+" "+row.strip+", exact", inches(line.Piece.AlongExact), row.exact, 4)
		near(t, row.shape.String()+" "+row.strip+", cut", inches(line.Piece.AlongCut), row.cut, 4)
		near(t, row.shape.String()+" "+row.strip+", trim", inches(line.Piece.TrimCut), row.cut-row.exact, 3)
	}
	_, corner := single(t, blocks.RingCorner, "strip 5 1/2", Options{CornersByCustom: true})
	near(t, "a corner by custom", inches(corner.Piece.AlongCut), 4.75, 4)
	near(t, "a corner's need", inches(corner.Piece.AlongExact), 3.7825, 4)
	_, stop := single(t, blocks.Background, "strip 4", Options{})
	if stop.Left != 1 || stop.Right != 1 || stop.Units != 1 || stop.Spare != 0 {
		t.Errorf("one block has %d left and %d right background pieces from %d squares", stop.Left, stop.Right, stop.Units)
	}
	for strip, want := range map[string]int{"2": 33, "3": 24, "4": 19, "5": 15, "6": 13, "8": 10} {
		p, _ := single(t, blocks.Kite, "strip "+strip, Options{})
		if p.Wedges[0].PerStrip != want {
			t.Errorf("strip %s: %d wedges, want %d", strip, p.Wedges[0].PerStrip, want)
		}
	}
	p, _ := single(t, blocks.Kite, "strip 4", Options{})
	near(t, "base", inches(p.Wedges[0].BaseCut), 3.6478, 4)
	near(t, "tip", inches(p.Wedges[0].TipCut), 0.3341, 4)
	near(t, "pitch", inches(p.Wedges[0].PitchCut), 1.9909, 4)
}

// A square of twice the kite's leaves background pieces 2 (k / sin 22.5 - k) seams beyond what the kite's own steps leave: from 0.69
// to 1.20 for strips of 1 1/2 to 10 (derived).
func TestStopSpare(t *testing.T) {
	for strip := 1.5; strip <= 10; strip += 0.125 {
		_, line := single(t, blocks.Background, fmt.Sprintf("strip %g", strip), Options{})
		if spare := inches(line.Piece.TrimCut); spare < 0.69 || spare > 1.20 {
			t.Errorf("strip %g: %.3f to spare", strip, spare)
		}
	}
}

// A strip set 4 wide gives 10 and 9 of 19 wedges.
func TestTwoKindsOfASet(t *testing.T) {
	name, _ := kindWith(t, blocks.RingCorner, false)
	p, err := readPlan("strip 4\nfabric a #111\nfabric b #888\nstrip-set s a 2 1/4 b rest\nblock A " + name + " wedges s turned s corners b\ngrid\n A A A A\n")
	if err != nil {
		t.Fatal(err)
	}
	s := p.Sets[0]
	if s.PerSet != 19 || s.FirstOfSet != 10 || s.SecondOfSet != 9 || s.Wanted != [2]int{16, 16} || len(s.Runs) != 2 || s.Runs[1].Wedges != 13 {
		t.Errorf("%+v", s)
	}
}

// Line 10 on a strip of 7 1/2: cut 8.6184 and 2.4052, mean 4.9706 (derived from the outline).
func TestTumblerFacts(t *testing.T) {
	var name, role string
	for _, k := range blocks.Kinds() {
		if k.Column {
			name, role = k.Name, k.Roles[0].Name
		}
	}
	text := "strip 7 1/2\nfabric a #111\nblock A " + name + " " + role + " a line 10\ngrid\n A\n A\n A\n"
	p, err := readPlan(text)
	if err != nil {
		t.Fatal(err)
	}
	near(t, "line", inches(p.Tumblers[0].LineCut), 10, 6)
	near(t, "wide", inches(p.Tumblers[0].WideCut), 8.6184, 4)
	near(t, "narrow", inches(p.Tumblers[0].NarrowCut), 2.4052, 4)
	for _, line := range p.Lines {
		if line.Piece.Shape == blocks.Tumbler {
			near(t, "mean", inches(line.Piece.LengthFinished), 4.9706, 4)
		}
	}
}

// Bad input: faults say what would fit, and have a place in the layout.
func TestWhatCannotBeCut(t *testing.T) {
	web, webRoles := kindWith(t, blocks.Kite, true)
	plain, plainRole := kindWith(t, blocks.Square, true)
	for _, c := range []struct{ name, text, message, hint, place string }{
		{"a wedge longer than the cloth", "strip 48\nfabric a #111\nfabric b #888 usable-width 60\nblock A " + web + " " + webRoles + "\ngrid\n A\n", "takes about 40 1/8 in", "write strip", "a"},
		{"a square wider than the cloth", "side 40\nfabric a #111\nblock A " + plain + " " + plainRole + "\ngrid\n A\n", "40 1/2 in long", "a block's side of 39 1/2 in", "a"},
		{"a lengthwise border wider than the cloth", "side 6\nfabric a #111\nblock A " + plain + " " + plainRole + "\ngrid\n A\nborder 41 a lengthwise\n", "cut 41 1/2 in", "39 1/2 in", "border 41 a lengthwise"},
	} {
		top := lay.Top(t, c.text)
		p := Build(nil, top, Options{})
		if len(p.Faults) == 0 {
			t.Errorf("%s: no fault", c.name)
			continue
		}
		f := p.Faults[0]
		if !strings.Contains(f.Message, c.message) || !strings.Contains(f.Hint, c.hint) || !strings.Contains(c.text[f.Place.Start:f.Place.End], c.place) {
			t.Errorf("%s: %q, %q at %q", c.name, f.Message, f.Hint, c.text[f.Place.Start:f.Place.End])
		}
	}
	// a border longer than the cloth is pieced, and no fault
	p, err := readPlan("side 6\nfabric a #111\nblock A " + plain + " " + plainRole + "\ngrid\n A\nrepeat across 12 down 12\nborder 3 a\n")
	if err != nil || p.Lines[1].Piece.Method != Joined {
		t.Errorf("a long border: %v", err)
	}
	// a strip set that does not come to its strip, which no layout gives
	ring, _ := kindWith(t, blocks.RingCorner, false)
	top := lay.Top(t, "strip 4\nfabric a #111\nfabric b #888\nstrip-set s a 2 b rest\nblock A "+ring+" wedges s corners b\ngrid\n A\n")
	top.CutFacts.Sets[0].BandsCut[0] -= measure.Inch / 8
	if p := Build(nil, top, Options{}); len(p.Faults) != 1 || !strings.Contains(p.Faults[0].Message, "3 7/8 in") {
		t.Errorf("a strip set that is too narrow: %v", p.Faults)
	}
}

// TestWhatFitsFits: the sizes that hints name can be cut.
func TestWhatFitsFits(t *testing.T) {
	plain, plainRole := kindWith(t, blocks.Square, true)
	web, webRoles := kindWith(t, blocks.Kite, true)
	for _, c := range [][2]string{
		{"side %s\nfabric a #111\nblock A " + plain + " " + plainRole + "\ngrid\n A\n", "a block's side of "},
		{"strip %s\nfabric a #111\nfabric b #888\nblock A " + web + " " + webRoles + "\ngrid\n A\n", "write strip "},
	} {
		p := Build(nil, lay.Top(t, fmt.Sprintf(c[0], "60")), Options{})
		if len(p.Faults) == 0 {
			t.Fatal("60 is not too large")
		}
		for _, f := range p.Faults {
			rest, ok := strings.CutPrefix(f.Hint, c[1])
			if !ok {
				t.Fatalf("hint %q", f.Hint)
			}
			rest, _, _ = strings.Cut(rest, ",")
			rest, _, _ = strings.Cut(rest, " would")
			r, err := measure.Read(rest)
			if err != nil {
				t.Fatal(err)
			}
			fits := r.In(measure.Inches).NM()
			for more, want := range map[measure.NM]bool{0: true, measure.Inch / 8: false} {
				q := Build(nil, lay.Top(t, fmt.Sprintf(c[0], measure.Number(fits+more, measure.Inches))), Options{})
				ok := true
				for _, g := range q.Faults {
					ok = ok && strings.Fields(g.Message)[1] != strings.Fields(f.Message)[1]
				}
				if ok != want {
					t.Errorf("%s with %s: %v", f.Message, measure.Text(fits+more, measure.Inches), q.Faults)
				}
			}
		}
	}
}

// TestSlimTumblers: tumblers whose narrow edge finishes at less than two seam allowances are warned of, and the line that
// the hint names is enough.
func TestSlimTumblers(t *testing.T) {
	var name, role string
	for _, k := range blocks.Kinds() {
		if k.Column {
			name, role = k.Name, k.Roles[0].Name
		}
	}
	plan := func(line string) *Plan {
		return Build(nil, lay.Top(t, "strip 5\nfabric a #111\nblock A "+name+" "+role+" a line "+line+"\ngrid\n A\n A\n A\n"), Options{})
	}
	p := plan("5 1/4")
	if len(p.Warnings) != 1 || !p.Tumblers[0].Slim || !strings.Contains(p.Warnings[0].Message, "about 3/16 in") || !strings.Contains(p.Warnings[0].Hint, "line 5 5/8") {
		t.Fatalf("%v", p.Warnings)
	}
	if p := plan("5 5/8"); len(p.Warnings) != 0 {
		t.Errorf("line 5 5/8: %v", p.Warnings)
	}
	if p := plan("5 1/2"); len(p.Warnings) != 1 {
		t.Errorf("line 5 1/2: %v", p.Warnings)
	}
}
