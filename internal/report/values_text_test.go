package report

import (
	"testing"

	"eighthturn/internal/measure"
	"eighthturn/internal/plan/contrast"
)

func TestCellsInWords(t *testing.T) {
	at := func(row, column int) contrast.Place { return contrast.Place{Row: row, Column: column} }
	for _, c := range []struct {
		cells []contrast.Place
		want  string
	}{
		{nil, ""},
		{[]contrast.Place{at(1, 1)}, "row 1: column 1"},
		{[]contrast.Place{at(1, 1), at(1, 2), at(2, 1), at(2, 2), at(4, 1), at(4, 2)}, "rows 1-2: columns 1-2; row 4: columns 1-2"},
		{[]contrast.Place{at(1, 1), at(1, 3), at(2, 1), {Border: 1}}, "row 1: columns 1, 3; row 2: column 1; border 1"},
		{[]contrast.Place{{}, at(1, 1)}, "row 1: column 1; the sashes"},
	} {
		if got := (valuesText{}).cells(c.cells); got != c.want {
			t.Errorf("%v is %q, expected %q", c.cells, got, c.want)
		}
	}
}

func TestAwayInWords(t *testing.T) {
	for want, got := range map[string]string{
		"10 ft": Away(120*measure.Inch, measure.Inches), "3.05 m": Away(120*measure.Inch, measure.Centimetres), "6.5 ft": Away(78*measure.Inch, measure.Inches),
	} {
		if got != want {
			t.Errorf("said %q, wanted %q", got, want)
		}
	}
}

// TestRingsOfOnePool: rings whose wedges all come from one pool are not said to alternate with themselves.
func TestRingsOfOnePool(t *testing.T) {
	w := valuesText{Report: &contrast.Report{}}
	f := &contrast.Figure{Sort: contrast.Alternation, Count: 2, Of: []string{"oat", "pine"}, Against: []string{"pine", "oat"}}
	if got, want := w.figure(f), "2 rings of oat and pine, each wedge against the next"; got != want {
		t.Errorf("%q, want %q", got, want)
	}
	f.Against = []string{"plum"}
	if got, want := w.figure(f), "2 rings, oat and pine alternating with plum"; got != want {
		t.Errorf("%q, want %q", got, want)
	}
}
