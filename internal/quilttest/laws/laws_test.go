package laws

import (
	"slices"
	"testing"

	"eighthturn/internal/blocks"
	"eighthturn/internal/measure"
	"eighthturn/internal/quilt"
	"eighthturn/layout"
)

const cloth = `
fabric  a  #123456
fabric  b  #ddeeff
fabric  c  #aa3322
`

// small is layouts that have between them all that the laws speak of.
func small() []string {
	return []string{
		"strip 4\nstrip-set s a 1 3/4 b 1 1/2 c 1 3/4" + cloth +
			"webs s / reversed s\nblock W web kites b\nblock F floating background b\ngrid\n F F F F\n F W W F\n F F F F\nborder 1 a\nborder 2 cut b\n",
		"side 7\nstrip-set s a 1 1/4 b rest c 1" + cloth +
			"block R ring wedges s a turned s b corners c\nblock W web wedges s b kites c\nblock P plain piece a\ngrid\n R W .\n P R P\n . W R\nborder 3 b\n",
		"side 5 1/4\n" + cloth + "block S star wedges a b kites c\nblock T floating-star kites c wedges a b background b\ngrid\n T T\n T S\n",
		"side 4\nscraps pool a b\nstrip-set s pool 1 a rest c 1" + cloth + "block R ring wedges pool s corners c\nblock C tumblers pieces a pool line 6\nblock H halves pieces a b\ngrid\n R C .\n . C H:se\nsash 1 c posts b around\nborder 2 a corners b\n",
		"side 4\nstrip-set s a rest b 1 c 0.9" + cloth + "block R ring wedges s corners c\nblock C tumblers pieces a b c about 3\nblock D like C about 2 1/2\nblock W web wedges s kites a\ngrid\n R C W C C\n C C W D .\n C R W D C\nborder 1 b\n",
	}
}

func lay(t *testing.T, text string) *quilt.Top {
	t.Helper()
	d, _, faults := layout.Read(text)
	if d == nil {
		t.Fatalf("%v in\n%s", faults, text)
	}
	return quilt.Lay(d)
}

// copied is a top that shares no outline with the first.
func copied(t *quilt.Top) *quilt.Top {
	c := *t
	c.Cells = slices.Clone(t.Cells)
	c.Patches = slices.Clone(t.Patches)
	c.Faces = slices.Clone(t.Faces)
	c.Seams = slices.Clone(t.Seams)
	c.StripSeams = slices.Clone(t.StripSeams)
	for i := range c.Patches {
		c.Patches[i].Outline = slices.Clone(c.Patches[i].Outline)
	}
	for i := range c.Faces {
		c.Faces[i].Outline = slices.Clone(c.Faces[i].Outline)
		if p := &c.Patches[c.Faces[i].Patch]; p.Count == 1 {
			c.Faces[i].Outline = p.Outline
		}
	}
	return &c
}

func TestLawsHold(t *testing.T) {
	for _, text := range small() {
		if err := Check(lay(t, text)); err != nil {
			t.Errorf("%v in\n%s", err, text)
		}
	}
}

// TestMovedCorner moves each corner of each patch by a nanometre each way: the cover notices
// every time, and where another patch touches the corner, the law of corners does.
func TestMovedCorner(t *testing.T) {
	for _, text := range small() {
		top := lay(t, text)
		for i := range top.Patches {
			for j := range top.Patches[i].Outline {
				for _, by := range []measure.Point{{X: 1}, {X: -1}, {Y: 1}, {Y: -1}} {
					broken := copied(top)
					at := &broken.Patches[i].Outline[j]
					touched := touchedByOther(top, i, *at)
					*at = at.Add(by)
					if CoverOnce(broken) == nil {
						t.Errorf("nobody noticed corner %d of patch %d moved by %v", j, i, by)
					}
					if touched && Corners(broken) == nil {
						t.Errorf("corner %d of patch %d, moved by %v, still meets its neighbours", j, i, by)
					}
				}
			}
		}
	}
}

// touchedByOther says whether a patch other than i has a corner at a point.
func touchedByOther(t *quilt.Top, i int, at measure.Point) bool {
	for j := range t.Patches {
		if j != i && slices.Contains(t.Patches[j].Outline, at) {
			return true
		}
	}
	return false
}

// TestSeamMissing takes each seam out in turn, and lengthens, doubles and turns it.
func TestSeamMissing(t *testing.T) {
	for _, text := range small() {
		top := lay(t, text)
		for i := range top.Seams {
			for name, change := range seamChanges() {
				broken := copied(top)
				change(&broken.Seams, i)
				if Seams(broken) == nil {
					t.Errorf("nobody noticed seam %d %s", i, name)
				}
			}
		}
		for i := range top.StripSeams {
			for name, change := range seamChanges() {
				broken := copied(top)
				change(&broken.StripSeams, i)
				if Seams(broken) == nil {
					t.Errorf("nobody noticed strip seam %d %s", i, name)
				}
			}
		}
	}
}

func seamChanges() map[string]func(list *[]quilt.Seam, i int) {
	type seams = *[]quilt.Seam
	return map[string]func(list seams, i int){
		"taken out": func(list seams, i int) { *list = slices.Delete(*list, i, i+1) },
		"doubled":   func(list seams, i int) { *list = append(*list, (*list)[i]) },
		"turned round": func(list seams, i int) {
			s := &(*list)[i]
			s.A, s.B = s.B, s.A
		},
		"begun elsewhere": func(list seams, i int) {
			s := &(*list)[i]
			s.From.X += 2 * Tolerance * measure.NM(sign(s.From.X-s.To.X)|1)
		},
		"lengthened": func(list seams, i int) {
			s := &(*list)[i]
			d := minus(s.To, s.From)
			s.To = s.To.Add(measure.Point{X: d.X / 100, Y: d.Y / 100})
		},
		"given to another face": func(list seams, i int) { (*list)[i].B = ((*list)[i].B + 1) % 3 * 7 },
		"of a face that is not": func(list seams, i int) { (*list)[i].A = 1 << 20 },
	}
}

// breakage is a top made wrong on purpose, and the law that must say so.
type breakage struct {
	name  string
	law   func(*quilt.Top) error
	spoil func(t *quilt.Top)
}

func breakages() []breakage {
	return []breakage{
		{"a patch taken out", CoverOnce, func(t *quilt.Top) { t.Patches = slices.Delete(t.Patches, 3, 4) }},
		{"a patch doubled", CoverOnce, func(t *quilt.Top) { t.Patches = append(t.Patches, t.Patches[2]) }},
		{"a patch in place of another of the same area", CoverOnce, func(t *quilt.Top) { t.Patches[1].Outline = t.Patches[0].Outline }},
		{"a patch outside", CoverOnce, func(t *quilt.Top) { shift(t.Patches[0].Outline, t.Outer.Max) }},
		{"a patch that crosses itself", CoverOnce, func(t *quilt.Top) {
			o := t.Patches[len(t.Patches)-1].Outline
			o[1], o[2] = o[2], o[1]
		}},
		{"an empty cell less", CoverOnce, func(t *quilt.Top) { t.Field.Max.X++; t.Outer.Max.X++ }},
		{"a face taken out", Indices, func(t *quilt.Top) { t.Faces = slices.Delete(t.Faces, 3, 4) }},
		{"a face doubled", Indices, func(t *quilt.Top) { t.Faces = append(t.Faces, t.Faces[2]) }},
		{"a face of another patch", Indices, func(t *quilt.Top) { t.Faces[4].Patch++ }},
		{"a fabric that is not", Indices, func(t *quilt.Top) { t.Faces[4].Fabric = int32(len(t.Fabrics)) }},
		{"a role that is not", Indices, func(t *quilt.Top) { t.Patches[4].Role = -1 }},
		{"two roles of one letter", Letters, func(t *quilt.Top) { t.Roles[1].Letter = t.Roles[0].Letter }},
		{"a patch in a border and a block", Indices, func(t *quilt.Top) { t.Patches[4].Border = 0 }},
		{"a cell too many", Indices, func(t *quilt.Top) { t.Rows++ }},
		{"a cell without its first patch", Pieces, func(t *quilt.Top) { t.Cells[0].First++ }},
		{"a cell with a patch less", Pieces, func(t *quilt.Top) { t.Cells[0].Count-- }},
		{"a cell of another kind", Pieces, func(t *quilt.Top) { t.Cells[0].Kind = "plain" }},
		{"a patch of another cell", Pieces, func(t *quilt.Top) { t.Patches[0].Cell = 1 }},
		{"a patch of another shape", Pieces, func(t *quilt.Top) { t.Patches[0].Shape = blocks.Square }},
		{"a strip less", Pieces, func(t *quilt.Top) { t.Patches = append(t.Patches, quilt.Patch{Cell: -1}) }},
		{"a patch with another number", Pieces, func(t *quilt.Top) { t.Patches[1].Number++ }},
		{"a border with another number", Pieces, func(t *quilt.Top) { t.Patches[len(t.Patches)-1].Border++ }},
		{"a border's strips out of order", Pieces, func(t *quilt.Top) {
			n := len(t.Patches)
			t.Patches[n-1].Number, t.Patches[n-2].Number = t.Patches[n-2].Number, t.Patches[n-1].Number
		}},
		{"a patch in no cell", Pieces, func(t *quilt.Top) { t.Patches[0].Cell = -1 }},
		{"a column without its end", Pieces, func(t *quilt.Top) { recast(t, blocks.HalfTumbler, blocks.Tumbler) }},
		{"a column with an end in its middle", Pieces, func(t *quilt.Top) { recast(t, blocks.Tumbler, blocks.HalfTumbler) }},
		{"a whole piece called an end piece", Angles, func(t *quilt.Top) { recast(t, blocks.Tumbler, blocks.HalfTumbler) }},
		{"a square that is none", Angles, func(t *quilt.Top) { recast(t, blocks.Strip, blocks.Square) }},
		{"a seam called alike that is not", Indices, func(t *quilt.Top) { t.Alike = append(t.Alike, unlike(t)) }},
		{"a seam called alike that is not there", Indices, func(t *quilt.Top) { t.Alike = append(t.Alike, len(t.Seams)) }},
		{"an outline turned round", Outlines, func(t *quilt.Top) { slices.Reverse(t.Patches[0].Outline) }},
		{"a corner twice", Outlines, func(t *quilt.Top) {
			t.Patches[0].Outline = append(t.Patches[0].Outline, t.Patches[0].Outline[0])
		}},
		{"two corners", Outlines, func(t *quilt.Top) { t.Faces[0].Outline = t.Faces[0].Outline[:2] }},
		{"an outline that turns back", Outlines, func(t *quilt.Top) {
			o := t.Patches[0].Outline
			mid := measure.Point{X: o[0].X + (o[1].X-o[0].X)/2, Y: o[0].Y + (o[1].Y-o[0].Y)/2}
			t.Patches[0].Outline = slices.Insert(o, 1, o[1], mid)[:len(o)+1]
		}},
		{"an outline that crosses itself", Outlines, func(t *quilt.Top) {
			t.Patches[0].Outline = Outline{{X: 0, Y: 0}, {X: 100, Y: 0}, {X: 0, Y: 90}, {X: 100, Y: 100}, {X: 50, Y: -50}}
		}},
		{"an outline that touches itself", Outlines, func(t *quilt.Top) {
			t.Patches[0].Outline = Outline{{X: 0, Y: 0}, {X: 100, Y: 0}, {X: 100, Y: 100}, {X: 50, Y: 0}, {X: 0, Y: 100}}
		}},
		{"a wedge called a kite", Angles, func(t *quilt.Top) { t.Patches[0].Shape = blocks.Kite }},
		{"a wedge with a corner moved by a thousandth of its height", Angles, func(t *quilt.Top) {
			t.Patches[0].Outline[2].X += t.SideFinished / 1000
		}},
		{"a wedge that points with another corner", Angles, func(t *quilt.Top) {
			o := t.Patches[0].Outline
			t.Patches[0].Outline = Outline{o[1], o[2], o[0]}
		}},
		{"a face moved", FacesCoverPatches, func(t *quilt.Top) { shift(banded(t)[0].Outline, measure.Point{X: 5}) }},
		{"a face doubled in its patch", FacesCoverPatches, func(t *quilt.Top) { banded(t)[0].Outline = banded(t)[1].Outline }},
		{"a face that leaves a gap", FacesCoverPatches, func(t *quilt.Top) {
			o := banded(t)[1].Outline
			for _, p := range []*measure.Point{&o[0], &o[3]} {
				p.X, p.Y = (o[1].X+o[2].X)/2+(p.X-(o[1].X+o[2].X)/2)/2, (o[1].Y+o[2].Y)/2+(p.Y-(o[1].Y+o[2].Y)/2)/2
			}
		}},
		{"an only face that is not its patch", FacesCoverPatches, func(t *quilt.Top) {
			p := t.Patches[len(t.Patches)-1]
			t.Faces[p.First].Outline = slices.Clone(p.Outline[1:])
		}},
		{"a patch without its faces", Shares, func(t *quilt.Top) { t.Faces = t.Faces[1:] }},
		{"a face larger than its patch", Shares, func(t *quilt.Top) { t.Faces[0].Outline[0].X -= 5000 }},
		{"a centre with a wedge that points away", CentresClose, func(t *quilt.Top) { pointAway(t, blocks.Wedge) }},
		{"a centre with a kite that points away", CentresClose, func(t *quilt.Top) { pointAway(t, blocks.Kite) }},
		{"a centre with a patch too many", CentresClose, func(t *quilt.Top) {
			at := CellRect(t, t.Columns+1).Min
			t.Patches[1].Outline = Outline{at, {X: at.X, Y: at.Y - 1000}, {X: at.X + 1000, Y: at.Y - 1000}}
		}},
		{"a centre of blocks turned another way", CentresClose, func(t *quilt.Top) { t.Cells[0].Turns++ }},
	}
}

// recast gives the first patch of one shape another.
func recast(t *quilt.Top, from, to blocks.Shape) {
	for i := range t.Patches {
		if t.Patches[i].Shape == from {
			t.Patches[i].Shape = to
			return
		}
	}
}

// unlike is a seam between faces of two fabrics.
func unlike(t *quilt.Top) int {
	return slices.IndexFunc(t.Seams, func(s quilt.Seam) bool { return t.Faces[s.A].Fabric != t.Faces[s.B].Fabric })
}

// banded is the faces of the first patch that has several.
func banded(t *quilt.Top) []quilt.Face {
	for _, p := range t.Patches {
		if p.Count > 1 {
			return t.Faces[p.First : p.First+p.Count]
		}
	}
	return nil
}

func shift(o Outline, by measure.Point) {
	for i := range o {
		o[i] = o[i].Add(by)
	}
}

// pointAway turns the outline of a patch that points at an inner corner to the next corner.
func pointAway(t *quilt.Top, s blocks.Shape) {
	for i := range t.Patches {
		p := &t.Patches[i]
		if p.Shape == s && inside(t.Field, p.Outline[0]) {
			p.Outline = append(slices.Clone(p.Outline[1:]), p.Outline[0])
			return
		}
	}
}

// TestBroken sees that each law catches what is made for it to catch, in a top where it
// can be.
func TestBroken(t *testing.T) {
	for _, b := range breakages() {
		caught := 0
		for _, text := range small() {
			broken := copied(lay(t, text))
			if banded(broken) == nil {
				continue
			}
			b.spoil(broken)
			if b.law(broken) != nil {
				caught++
			}
		}
		if caught == 0 {
			t.Errorf("nobody noticed %s", b.name)
		}
	}
}

// TestEveryShapeHasAngles: a new shape needs its angles, so that the law can hold it.
func TestEveryShapeHasAngles(t *testing.T) {
	for s := blocks.Wedge; s <= blocks.Strip; s++ {
		if ShapeAngles(s) == nil {
			t.Errorf("no angles are known of the %s", s)
		}
	}
}

// TestConvexParts cuts outlines with corners that turn in, and refuses crossed ones.
func TestConvexParts(t *testing.T) {
	notched := Outline{{X: 0, Y: 0}, {X: 40, Y: 0}, {X: 40, Y: 40}, {X: 20, Y: 10}, {X: 0, Y: 40}}
	parts := convexParts(notched)
	sum := int64(0)
	for _, p := range parts {
		if !convex(p) {
			t.Errorf("%v is not convex", p)
		}
		sum += doubleArea(p).Int64()
	}
	if want := doubleArea(notched).Int64(); sum != want {
		t.Errorf("the parts of %v cover %d, it covers %d", notched, sum, want)
	}
	inNotch := Outline{{X: 18, Y: 20}, {X: 22, Y: 20}, {X: 20, Y: 30}}
	if overlap(parts, convexParts(inNotch)) {
		t.Error("a triangle in the notch overlaps the notched outline")
	}
	if shift(inNotch, measure.Point{Y: -13}); !overlap(parts, convexParts(inNotch)) {
		t.Error("a triangle at the notch's bottom does not overlap the notched outline")
	}
	slices.Reverse(notched)
	if convexParts(notched) != nil {
		t.Error("an outline that goes the wrong way has parts")
	}
}

// TestExactBeyond64Bits: hands are told apart by a nanometre a thousand miles away.
func TestExactBeyond64Bits(t *testing.T) {
	far := measure.Point{X: 1 << 50, Y: 1<<50 - 1}
	end := measure.Point{X: 1 << 51, Y: 1<<51 - 2}
	if hand(measure.Point{}, end, far) != 0 {
		t.Error("half way is not on the line")
	}
	for _, dy := range []measure.NM{1, -1} {
		if got := hand(measure.Point{}, end, measure.Point{X: far.X, Y: far.Y + dy}); got != int(dy) {
			t.Errorf("moved by %d the point lies at hand %d", dy, got)
		}
	}
}
