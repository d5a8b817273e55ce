package layout

import (
	"strings"
	"testing"

	"eighthturn/internal/measure"
)

// placed is a layout with motifs on stripes, whose lines are written in several ways.
const placed = "units inches\nstrip 4\nfabric awning stripes navy 3/4 white 1/2  \"deck\"\nfabric sand #e8d9b0\n" +
	"motif mill   awning  across 3/8   down 0 pointing 45 # by the pier\nmotif vane awning\tpointing\t30 down 1 across 2.5 cm\nmotif flag awning across 1 down 2\n" +
	"block R ring wedges mill vane corners sand\ngrid\n  R\n"

// TestMotifsAreMoved: a motif's statement is given another place, nothing else of the layout changes, and read again the motif lies there;
// one that is new stands behind the last of its fabric.
func TestMotifsAreMoved(t *testing.T) {
	inch := measure.Inch
	for _, c := range []struct {
		at          MotifAt
		line, newly string // what a line is, and becomes; a line that is new behind it where both are the same
	}{
		{MotifAt{"mill", "awning", inch / 2, 0, 45}, "motif mill   awning  across 3/8   down 0 pointing 45 # by the pier", "motif mill   awning  across 1/2   down 0 pointing 45 # by the pier"},
		{MotifAt{"MILL", "Awning", 3 * inch / 8, inch, 0}, "motif mill   awning  across 3/8   down 0 pointing 45 # by the pier", "motif mill   awning  across 3/8   down 1 # by the pier"},
		{MotifAt{"mill", "awning", 3 * inch / 8, 0, 359}, "motif mill   awning  across 3/8   down 0 pointing 45 # by the pier", "motif mill   awning  across 3/8   down 0 pointing 359 # by the pier"},
		{MotifAt{"vane", "awning", 3 * inch / 2, 2 * inch, 0}, "motif vane awning\tpointing\t30 down 1 across 2.5 cm", "motif vane awning down 2 across 1 1/2"},
		{MotifAt{"flag", "awning", inch, 2 * inch, 15}, "motif flag awning across 1 down 2", "motif flag awning across 1 down 2 pointing 15"},
		{MotifAt{"sail", "awning", inch / 16, 0, 0}, "motif flag awning across 1 down 2", "motif flag awning across 1 down 2\nmotif sail awning across 1/16 down 0"},
	} {
		for _, end := range []string{"\n", "\r\n"} {
			text := strings.ReplaceAll(placed, "\n", end)
			read := Inspect(text, nil)
			want := strings.Replace(text, c.line, strings.ReplaceAll(c.newly, "\n", end), 1)
			got := Apply(text, read.Moved(c.at))
			if got != want {
				t.Errorf("%v: the layout is\n%s", c.at, got)
			}
			if line := read.MotifLine(c.at); !strings.HasSuffix(c.newly, line) || strings.Contains(line, "\n") || line == "" {
				t.Errorf("%v: its line is %q", c.at, line)
			}
			again := Inspect(got, nil)
			if again.Design == nil {
				t.Fatalf("%v: %v", c.at, again.Faults)
			}
			for _, m := range again.Design.Motifs {
				if foldName(m.Name) == foldName(c.at.Name) && (m.Across != c.at.Across || m.Down != c.at.Down || m.Pointing != c.at.Pointing) {
					t.Errorf("%v lies at %d across, %d down, pointing %d", c.at, m.Across, m.Down, m.Pointing)
				}
			}
			if edits := again.Moved(c.at); edits == nil || len(edits) > 0 {
				t.Errorf("%v lies there, and is moved by %v", c.at, edits)
			}
		}
	}
	read := Inspect(placed, nil)
	for _, wrong := range []MotifAt{{Name: "sand", Fabric: "awning"}, {Name: "navy", Fabric: "nothing"}, {Name: "awning", Fabric: "awning"}, {Name: "mill", Fabric: "sand"}} {
		if edits := read.Moved(wrong); edits != nil {
			t.Errorf("%v is written by %v", wrong, edits)
		}
	}
	for _, at := range []MotifAt{{Name: "a", Across: -1}, {Name: "a", Down: MaxCloth + 1}, {Name: "a", Pointing: 360}, {Name: "a", Pointing: -1}, {Across: 1}} {
		if at.Sound() {
			t.Errorf("%v is no place", at)
		}
	}
	for _, at := range []MotifAt{{Name: "a"}, {Name: "a", Across: MaxCloth, Down: MaxCloth, Pointing: 359}} {
		if !at.Sound() {
			t.Errorf("%v is a place", at)
		}
	}
	for _, at := range []MotifAt{{Name: "a", Across: MaxCloth + 1}, {Name: "a", Down: -1}} {
		if at.Sound() {
			t.Errorf("%v is no place", at)
		}
	}
	for _, at := range []MotifAt{{Name: "sand", Fabric: "awning"}, {Name: "sail", Fabric: "nothing"}} {
		if line := read.MotifLine(at); line != "" {
			t.Errorf("%v has the line %q", at, line)
		}
	}
	if (&Precuts{}).Some() || !(&Precuts{Count: 1}).Some() {
		t.Error("precuts are there where there are none")
	}
	faulty := Inspect("nonsense\n"+placed, nil)
	if edits := faulty.Moved(MotifAt{Name: "sail", Fabric: "awning"}); edits != nil {
		t.Errorf("a layout with errors is written into: %v", edits)
	}
}

// TestMotifsAmongOtherBlanks: where blanks that do not break part the words of a motif, an option that goes takes no other with it.
func TestMotifsAmongOtherBlanks(t *testing.T) {
	for _, blank := range []string{"\u00a0", "\u3000", "\t", "\u2009"} {
		line := strings.ReplaceAll("motif vane awning across 1 down 2 pointing 30", " ", blank)
		text := strings.Replace(placed, "motif vane awning\tpointing\t30 down 1 across 2.5 cm", line, 1)
		read := Inspect(text, nil)
		if read.Design == nil {
			t.Fatalf("%q: %v", blank, read.Faults)
		}
		got := read.MotifLine(MotifAt{"vane", "awning", measure.Inch, 2 * measure.Inch, 0})
		if want := strings.ReplaceAll("motif vane awning across 1 down 2", " ", blank); got != want {
			t.Errorf("%q: %q", blank, got)
		}
	}
}
