package blocks

import (
	"maps"
	"slices"
	"strings"
	"testing"
)

// words are the sides in the order in which their roles go before others: borders run past the top and the bottom.
var words = []struct {
	of   Sides
	word string
}{{TopSide, "top"}, {BottomSide, "bottom"}, {LeftSide, "left"}, {RightSide, "right"}}

// TestEdgesOfKinds: every kind may have other fabric at the quilt's edge, all round and on each side that a border can lie along: in its wedges and
// its background, and not in the points of stars or the corners of rings.
func TestEdgesOfKinds(t *testing.T) {
	roles := map[string]string{"web": "wedges", "star": "wedges", "floating": "wedges background", "floating-star": "wedges background", "ring": "wedges", "tumblers": "pieces", "plain": "piece", "halves": "pieces"}
	for _, k := range Kinds() {
		var got, plain []string
		for i, r := range k.Roles {
			if !r.Outer {
				plain = append(plain, r.Name)
				continue
			}
			got = append(got, r.Name)
			var of []string
			for j := range k.Roles {
				if r.TakesPlaceOf(j) {
					of = append(of, k.Roles[j].Name)
				}
			}
			if strings.Join(of, " ") != roles[k.Name] || r.Shown() != "edge" || k.Roles[i].Banded != slices.Contains([]string{"web", "star", "ring"}, k.Name) {
				t.Errorf("%s: %s takes the place of %v: %+v", k.Name, r.Name, of, r)
			}
		}
		want := []string{"edge", "edge-top", "edge-bottom", "edge-left", "edge-right"}
		if k.Column {
			want = want[:3]
		}
		if !slices.Equal(got, want) || !slices.Equal(k.RoleNames(), append(plain, "edge")) {
			t.Errorf("%s has the roles %v and is said to have %v", k.Name, got, k.RoleNames())
		}
		for i := range k.Roles {
			side := strings.TrimPrefix(k.Roles[i].Name, "edge-")
			if at := slices.IndexFunc(words, func(w struct {
				of   Sides
				word string
			}) bool {
				return w.word == side
			}); at >= 0 && k.Roles[i].Sides != words[at].of || at < 0 && k.Roles[i].Sides != 0 {
				t.Errorf("%s: %s is for the sides %b", k.Name, k.Roles[i].Name, k.Roles[i].Sides)
			}
		}
	}
}

// touched are the sides of the square of side 1 that two points both lie on.
func touched(p, q dot) (s Sides) {
	for of, on := range map[Sides]bool{TopSide: p.y == 0 && q.y == 0, BottomSide: p.y == 1 && q.y == 1, LeftSide: p.x == 0 && q.x == 0, RightSide: p.x == 1 && q.x == 1} {
		if on {
			s |= of
		}
	}
	return s
}

// TestFacing: a piece faces the sides that one of its edges lies along; one that stands on a corner of the quilt, its wide end from side to side, faces
// the outside only where both are outside.
func TestFacing(t *testing.T) {
	corners := 0
	for _, k := range Kinds() {
		for turns := range 4 {
			for _, p := range k.Turned(turns) {
				var along Sides
				for i := range p.Outline {
					along |= touched(dotOf(p.Outline[i]), dotOf(p.Outline[(i+1)%len(p.Outline)]))
				}
				across := Sides(0)
				if along == 0 && p.Shape == Wedge {
					corners++
					for _, c := range p.Outline[1:] {
						across |= touched(dotOf(c), dotOf(c))
					}
				}
				for outside := range Sides(16) {
					want := along & outside
					if across != 0 && across&outside == across {
						want = across
					}
					if got := p.Facing(outside); got != want {
						t.Errorf("%s: %v faces %b of %b, want %b", k.Name, p.Outline, got, outside, want)
					}
				}
			}
		}
	}
	if corners != 4*4 { // four wedges of a ring, four ways
		t.Errorf("%d pieces stand on corners", corners)
	}
}

// TestRoleFacing: what is given for a side goes before what is given for all, the sides in their order; where nothing that serves is given, a piece keeps
// its role.
func TestRoleFacing(t *testing.T) {
	for _, k := range Kinds() {
		for role := range k.Roles {
			for given := range 1 << len(k.Roles) {
				for facing := range Sides(16) {
					got := k.RoleFacing(role, facing, func(r int) bool { return given>>r&1 == 1 })
					serves := func(name string) bool {
						r := k.Role(name)
						return r >= 0 && given>>r&1 == 1 && slices.Contains(k.Roles[r].OuterOf, role)
					}
					want := role
					if facing != 0 && serves("edge") {
						want = k.Role("edge")
					}
					for _, w := range slices.Backward(words) {
						if facing&w.of != 0 && serves("edge-"+w.word) {
							want = k.Role("edge-" + w.word)
						}
					}
					if got != want {
						t.Fatalf("%s: %s facing %b, given %b: %s, want %s", k.Name, k.Roles[role].Name, facing, given, k.Roles[got].Name, k.Roles[want].Name)
					}
				}
			}
		}
	}
}

// TestKeptRoles: pieces that are kept cut are told once for a role and a shape: kites, corners of rings and wedges.
func TestKeptRoles(t *testing.T) {
	got := map[Kept]int{}
	for _, kept := range KeptRoles(Kinds()) {
		got[kept]++
	}
	if want := map[Kept]int{{"wedges", Wedge}: 1, {"kites", Kite}: 1, {"corners", RingCorner}: 1}; !maps.Equal(got, want) {
		t.Errorf("kept are %v", got)
	}
	if list := KeptRoles([]*Kind{plain(), ring()}); !slices.Equal(list, []Kept{{"wedges", Wedge}, {"corners", RingCorner}}) {
		t.Errorf("of squares and rings these are kept: %v", list)
	}
}
