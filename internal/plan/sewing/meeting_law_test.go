package sewing_test

import (
	"fmt"
	"maps"
	"slices"
	"testing"

	"eighthturn/internal/blocks"
	"eighthturn/internal/measure"
	"eighthturn/internal/plan/sewing"
	"eighthturn/internal/quilt"
	"eighthturn/internal/quilttest/invent"
	"eighthturn/internal/quilttest/judges"
	"eighthturn/layout"
	"eighthturn/samples"
)

// byPieces is how many points of a plan there are by the number of pieces that meet there.
func byPieces(p *sewing.Plan) map[int]int {
	counts := map[int]int{}
	for _, m := range p.Bulk.Meeting {
		counts[m.Pieces] += m.Count
	}
	return counts
}

// checkMeeting is the law of points: wherever three pieces or more meet with cloth all round, the plan counts them, and as
// many as there are. Counted from the seams of the top: each ends where others do.
func checkMeeting(top *quilt.Top, p *sewing.Plan) error {
	pieces, seams := map[measure.Point]map[int]bool{}, map[measure.Point]int{}
	for _, s := range top.Seams {
		for _, at := range [2]measure.Point{s.From, s.To} {
			if pieces[at] == nil {
				pieces[at] = map[int]bool{}
			}
			pieces[at][int(top.Faces[s.A].Patch)] = true
			pieces[at][int(top.Faces[s.B].Patch)] = true
			seams[at]++
		}
	}
	want := map[int]int{}
	for at, list := range pieces {
		if len(list) > 2 && seams[at] == len(list) {
			want[len(list)]++
		}
	}
	if got := byPieces(p); !maps.Equal(got, want) {
		return fmt.Errorf("points by number of pieces: %v are counted, %v are there", got, want)
	}
	for _, t := range p.Bulk.Thick {
		sum := 0
		for _, m := range t.Sorts {
			sum += m.Count
			all := slices.IndexFunc(p.Bulk.Meeting, func(n sewing.MeetingPoints) bool { return n.Sort == m.Sort && n.Pieces == m.Pieces })
			if m.Pieces != t.Pieces || (m.Sort == sewing.InBlocks) != t.Inside || all < 0 || m.Count > p.Bulk.Meeting[all].Count {
				return fmt.Errorf("%+v is no sort of point of %d pieces", m, t.Pieces)
			}
		}
		if sum != t.Count {
			return fmt.Errorf("%d points are thick, listed by sort %d", t.Count, sum)
		}
	}
	return nil
}

func TestMeetingPoints(t *testing.T) {
	for _, n := range everyPlan() {
		if err := checkMeeting(n.Top, n.plan); err != nil {
			t.Errorf("%s: %v", n.name, err)
		}
	}
}

// mirrored is a design as a mirror shows it, its left on the right. Turned is one after a quarter turn clockwise.
func mirrored(d *layout.Design) *layout.Design {
	return moved(d, d.Columns, d.Rows, func(x, y int) (int, int) { return d.Columns - 1 - x, y },
		func(p blocks.Point) blocks.Point { return blocks.Point{X: blocks.Full - p.X, Y: p.Y} })
}

func quarterTurned(d *layout.Design) *layout.Design {
	return moved(d, d.Rows, d.Columns, func(x, y int) (int, int) { return d.Rows - 1 - y, x }, func(p blocks.Point) blocks.Point { return p.Turned(1) })
}

func moved(d *layout.Design, columns, rows int, to func(x, y int) (int, int), way func(blocks.Point) blocks.Point) *layout.Design {
	out := *d
	out.Columns, out.Rows = columns, rows
	out.Cells = make([]layout.Cell, len(d.Cells))
	if d.WebTable != nil { // which fabric a web has is no matter
		out.WebTable, out.Webs = nil, oneWeb(d)
	}
	for i, c := range d.Cells {
		x, y := to(i%d.Columns, i/d.Columns)
		if c.Block >= 0 {
			kind := d.Blocks[c.Block].Kind
			want := corners(kind, int(c.Turns), way)
			for turns := range 4 {
				if slices.Equal(corners(kind, turns, func(p blocks.Point) blocks.Point { return p }), want) {
					c.Turns = uint8(turns)
					break
				}
			}
		}
		out.Cells[y*columns+x] = c
	}
	return &out
}

// oneWeb is what some web of a design is cut from.
func oneWeb(d *layout.Design) []layout.Fill {
	for cell, c := range d.Cells {
		if c.Block < 0 {
			continue
		}
		for _, piece := range d.Blocks[c.Block].Kind.Turned(int(c.Turns)) {
			if fill := d.Web(cell, &piece); fill != nil {
				return []layout.Fill{*fill}
			}
		}
	}
	return nil
}

// corners are those of all pieces of a kind that is turned and then moved, whatever their order.
func corners(kind *blocks.Kind, turns int, way func(blocks.Point) blocks.Point) []string {
	var list []string
	for _, piece := range kind.Turned(turns) {
		var outline []string
		for _, p := range piece.Outline {
			outline = append(outline, fmt.Sprint(way(p)))
		}
		slices.Sort(outline)
		list = append(list, fmt.Sprint(outline))
	}
	slices.Sort(list)
	return list
}

// symmetric is what of a layout is the same seen in a mirror and after a quarter turn: columns of tumblers are sewn otherwise,
// and sashes without posts run across.
func symmetric(d *layout.Design) bool {
	return len(d.Runs) == 0 && (d.Sash == nil || d.Sash.Corners >= 0)
}

// TestMirroredPoints: a top and its mirror image, and a top and its quarter turn, have as many points at which so many pieces
// meet, on seams between blocks, of borders and in blocks alike.
func TestMirroredPoints(t *testing.T) {
	tried := 0
	for _, text := range symmetricTexts() {
		d, _, faults := layout.Read(text)
		if errors, _ := layout.Count(faults); errors > 0 || !symmetric(d) || len(d.Cells) > 400 {
			continue
		}
		tried++
		p := planOf(quilt.Lay(d), sewing.Options{})
		for name, other := range map[string]*layout.Design{"mirror image": mirrored(d), "quarter turn": quarterTurned(d)} {
			if q := planOf(quilt.Lay(other), sewing.Options{}); !slices.Equal(p.Bulk.Meeting, q.Bulk.Meeting) {
				t.Errorf("%s: points %v, of its %s %v", d.Title, p.Bulk.Meeting, name, q.Bulk.Meeting)
			}
		}
	}
	if tried < 25 {
		t.Errorf("only %d layouts were tried", tried)
	}
}

func symmetricTexts() (list []string) {
	for _, s := range samples.All() {
		list = append(list, s.Text)
	}
	for seed := range uint64(judges.Of(30, 150)) {
		list = append(list, invent.Layout(seed))
	}
	return list
}

func TestMeetingPointsCatch(t *testing.T) {
	d, _, _ := layout.Read(samples.All()[0].Text)
	top := quilt.Lay(d)
	for name, broken := range map[string]func(b *sewing.Bulk){
		"a side that is left out":  func(b *sewing.Bulk) { b.Meeting[len(b.Meeting)-1].Count -= 4 },
		"pieces that are left out": func(b *sewing.Bulk) { b.Meeting[0].Pieces-- },
		"a sum that is wrong":      func(b *sewing.Bulk) { b.Thick[0].Count++ },
	} {
		p := planOf(top, sewing.Options{})
		if err := checkMeeting(top, p); err != nil {
			t.Fatal(err)
		}
		broken(&p.Bulk)
		if checkMeeting(top, p) == nil {
			t.Errorf("%s is not caught", name)
		}
	}
	turned := mirrored(d)
	turned.Cells[0].Block = -1
	if p, q := planOf(top, sewing.Options{}), planOf(quilt.Lay(turned), sewing.Options{}); slices.Equal(p.Bulk.Meeting, q.Bulk.Meeting) {
		t.Error("a mirror image with a block left out has as many points")
	}
}
