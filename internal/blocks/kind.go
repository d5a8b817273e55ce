// Package blocks turns the name of a block kind into its description: roles, the outlines
// of its pieces on the unit square, how it turns, and what its wedges ask of the cloth.
// Nothing else in the project names a kind.
package blocks

import (
	"slices"
	"sync"
)

// Kind describes a block kind. The language, the help, the drawing and the plans all read
// this one description.
type Kind struct {
	Name    string // as written in a layout
	Summary string // one line for help, in a quilter's words
	Drawing string // for help, in letters: see Picture
	Roles   []Role
	Turning Turning
	Points  Corner // the corner, before turning, that `:nw` and its fellows move
	Height  WedgeHeight
	Pieces  []Piece // before turning; pieces of one role stand in the order they are dealt
	Column  bool    // cells under one another are one column, and Pieces is empty: see Column
	Recipe  Recipe  // how the pieces are sewn together
}

// Role is a place for fabric in a kind.
type Role struct {
	Name    string // as written in a layout
	Former  string // as older layouts have it, "" for the same
	Letter  string // in the line view
	Summary string // one line for help
	Counts  []int  // how many values it may take; nil for one or more
	Order   string // how several values are dealt, in a quilter's words
	Dealing Dealing
	Banded  bool  // takes strip sets
	OfWebs  bool  // its pieces belong to web centres, so that `webs` may give their fabric
	Outer   bool  // may be left out; its fabric takes the place of other roles' in the pieces that face the quilt's outside
	OuterOf []int // the indices of those other roles
	Sides   Sides // of the quilt that it is for; 0 for all
}

// TakesPlaceOf says whether a role's fabric may take the place of another's in pieces that face the outside.
func (r *Role) TakesPlaceOf(role int) bool { return r.Outer && slices.Contains(r.OuterOf, role) }

// Dealing is how several values of a role go to its pieces.
type Dealing uint8

const (
	// InShares gives the first share of the pieces to the first value, and so on.
	InShares Dealing = iota
	// InTurn goes round the values, one piece each.
	InTurn
)

// Turning is how a kind finds its place in the lattice of web and star centres.
type Turning uint8

const (
	// Fixed kinds are never turned.
	Fixed Turning = iota
	// AsWritten kinds are turned where the layout says so, and only there.
	AsWritten
	// OnWebCentres kinds stand with their pointing corner on a web centre; either will do.
	OnWebCentres
	// OnStarCentres kinds stand with their pointing corner on a star centre; either will do.
	OnStarCentres
	// ToWebCentre kinds point at one web centre, best one inside the quilt.
	ToWebCentre
	// ToStarCentre kinds point at one star centre, best one inside the quilt.
	ToStarCentre
)

// InLattice says whether the kind is made of two halves and so shares the lattice.
func (t Turning) InLattice() bool { return t > AsWritten }

// OnStar says whether the pointing corner belongs on a star centre.
func (t Turning) OnStar() bool { return t == OnStarCentres || t == ToStarCentre }

// Towards says whether half a turn makes a difference to the kind's outlines.
func (t Turning) Towards() bool { return t == ToWebCentre || t == ToStarCentre }

// Role is the index of the role of that name, the one it has or had, -1 if the kind has none.
func (k *Kind) Role(name string) int {
	for i := range k.Roles {
		if k.Roles[i].Name == name || name != "" && k.Roles[i].Former == name {
			return i
		}
	}
	return -1
}

// Kinds is every block kind, in the order that help lists them. They are made once, and no
// one changes them.
func Kinds() []*Kind { return slices.Clone(kinds()) }

var kinds = sync.OnceValue(func() []*Kind {
	return []*Kind{web(), star(), floating(), floatingStar(), ring(), tumblers(), plain(), halves()}
})

// Find is the kind of that name.
func Find(kinds []*Kind, name string) (*Kind, bool) {
	for _, k := range kinds {
		if k.Name == name {
			return k, true
		}
	}
	return nil, false
}

// Kept is a role whose pieces a layout may say to be on hand, with their shape.
type Kept struct {
	Role  string
	Shape Shape
}

// KeptRoles are those of some kinds, in their order.
func KeptRoles(kinds []*Kind) (list []Kept) {
	for _, k := range kinds {
		for i := range k.Pieces {
			p := &k.Pieces[i]
			kept := Kept{k.Roles[p.Role].Name, p.Shape}
			if p.Shape.Description().Kept && !slices.Contains(list, kept) {
				list = append(list, kept)
			}
		}
	}
	return list
}
