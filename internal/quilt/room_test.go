package quilt

import (
	"strings"
	"testing"

	"eighthturn/internal/quilttest/invent"
	"eighthturn/internal/stop"
	"eighthturn/layout"
)

// TestRoomIsMadeOnce: what is laid block by block fills the room that was made for it, no more and no less: growing lists would copy a
// large top, and room that nothing fills is memory for nothing. Strips of borders have theirs; sashes, columns and corner squares grow it.
func TestRoomIsMadeOnce(t *testing.T) {
	tried, banded := 0, 0
	for seed := range uint64(120) {
		d, _, _ := layout.Read(invent.Layout(seed))
		if d == nil || d.Sash != nil || len(d.Runs) > 0 {
			continue
		}
		cornered := false
		for _, b := range d.Borders {
			cornered = cornered || b.Corners >= 0
		}
		if cornered {
			continue
		}
		tried++
		l := newBuilder(nil, d)
		l.lay()
		banded += len(l.StripSeams)
		for _, list := range []struct {
			name      string
			has, room int
		}{
			{"patches", len(l.Patches), cap(l.Patches)}, {"faces", len(l.Faces), cap(l.Faces)}, {"corners", len(l.points), cap(l.points)},
			{"strip seams", len(l.StripSeams), cap(l.StripSeams)}, {"cells", len(l.Cells), cap(l.Cells)}, {"placed cells", len(l.cells), cap(l.cells)},
		} {
			if list.has != list.room {
				t.Errorf("seed %d: %d %s in room for %d", seed, list.has, list.name, list.room)
			}
		}
	}
	if tried < 15 || banded < 50 {
		t.Errorf("only %d layouts were tried, with %d strip seams", tried, banded)
	}
}

// TestLayingLooksUp: laying a top counts twenty steps a cell, and one for each stretch that a border is sewn to, so that it ends soon
// after it need go on no more.
func TestLayingLooksUp(t *testing.T) {
	const text = "side 6\nfabric a #123\nfabric b #dde\nblock P plain piece a\ngrid\n"
	for _, c := range []struct {
		rows, borders, want int
	}{{1, 0, 80}, {3, 0, 240}, {3, 1, 240 + 14}, {3, 2, 240 + 14 + 1 + 3 + 1 + 3}} {
		text := text + strings.Repeat(" P P P P\n", c.rows) + strings.Repeat("border 1 b\n", c.borders)
		d, _, faults := layout.Read(text)
		if d == nil {
			t.Fatal(faults)
		}
		if got := stop.Count(func(s *stop.Sign) { LayUntil(s, d) }); got != c.want {
			t.Errorf("%d rows of four blocks in %d borders take %d steps, not %d", c.rows, c.borders, got, c.want)
		}
	}
}
