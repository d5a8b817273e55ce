package blocks

// Sides is a set of the sides of a block, or of the quilt.
type Sides uint8

// The sides.
const (
	TopSide Sides = 1 << iota
	BottomSide
	LeftSide
	RightSide
)

// edge is the role of pieces that face the outside of the quilt; those of one side have it in front of the side.
const edge = "edge"

// Shown is what pictures and plans call a role: what faces one side of the quilt as what faces any.
func (r *Role) Shown() string {
	if r.Sides != 0 {
		return edge
	}
	return r.Name
}

// RoleNames are the names of a kind's roles; of one that may be given side by side the one for all sides alone.
func (k *Kind) RoleNames() []string {
	var names []string
	for i := range k.Roles {
		if k.Roles[i].Sides == 0 {
			names = append(names, k.Roles[i].Name)
		}
	}
	return names
}

// edges are the roles whose fabric takes the place of that of other roles, by index, in the pieces that face the outside of
// the quilt: all round, and on each of some sides alone.
func edges(pieces string, banded bool, sides Sides, of ...int) []Role {
	role := Role{
		Name: edge, Letter: "E", Summary: "the " + pieces + " that face the outside of the quilt, so that a border may begin in them",
		Counts: []int{1}, Banded: banded, Outer: true, OuterOf: of,
	}
	list := []Role{role}
	for _, side := range []struct {
		of   Sides
		word string
	}{{TopSide, "top"}, {BottomSide, "bottom"}, {LeftSide, "left"}, {RightSide, "right"}} {
		if sides&side.of != 0 {
			role.Name, role.Summary, role.Sides = edge+"-"+side.word, "the same on the "+side.word+" side of the quilt alone", side.of
			list = append(list, role)
		}
	}
	return list
}

// allSides are the four sides.
const allSides = TopSide | BottomSide | LeftSide | RightSide

// along are the sides of the unit square that a line between two of its points lies on.
func along(from, to Point) Sides {
	var s Sides
	for _, side := range []struct {
		of Sides
		on bool
	}{
		{TopSide, from.Y == Zero && to.Y == Zero}, {BottomSide, from.Y == Full && to.Y == Full},
		{LeftSide, from.X == Zero && to.X == Zero}, {RightSide, from.X == Full && to.X == Full},
	} {
		if side.on {
			s |= side.of
		}
	}
	return s
}

// Outward are the sides of its block that a piece lies along with an edge; a corner alone does not count. A piece that lies
// along none, and whose wide end runs from one side to the next, faces the corner between both: then together is true, and it
// faces the outside only where both do.
func (p *Piece) Outward() (sides Sides, together bool) {
	for i, from := range p.Outline {
		sides |= along(from, p.Outline[(i+1)%len(p.Outline)])
	}
	if sides == 0 && len(p.Outline) == 3 {
		from, to := p.Outline[1], p.Outline[2]
		return along(from, from) | along(to, to), true
	}
	return sides, false
}

// Facing are the sides of the quilt that a piece faces in a block whose sides so many are on the outside.
func (p *Piece) Facing(outside Sides) Sides {
	sides, together := p.Outward()
	if together && sides&outside != sides {
		return 0
	}
	return sides & outside
}

// RoleFacing is the role that gives a piece of some role its fabric where it faces some sides of the quilt: its own, or one that
// is given and takes its place. One for a side goes before one for all, and top and bottom, which borders run past, before
// left and right.
func (k *Kind) RoleFacing(role int, facing Sides, given func(role int) bool) int {
	found := role
	for i := range k.Roles {
		r := &k.Roles[i]
		if facing == 0 || !r.TakesPlaceOf(role) || !given(i) {
			continue
		}
		if r.Sides&facing != 0 {
			return i
		}
		if r.Sides == 0 {
			found = i
		}
	}
	return found
}
