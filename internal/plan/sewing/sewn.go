package sewing

import (
	"slices"

	"eighthturn/internal/blocks"
	"eighthturn/internal/measure"
	"eighthturn/internal/plan/cutting"
)

// sewn is what all blocks of one kind have in common: pieces and joins in the block's own
// frame, unturned.
type sewn struct {
	kind      *blocks.Kind
	column    int // of a column: the upper cell of the one that was taken
	seam      measure.NM
	side      measure.NM
	pieces    []outline
	cuts      []*cutting.Piece // by piece: how it is cut
	joins     []joined
	steps     []int        // by join
	trims     [][]int      // the pieces of every unit that is trimmed
	symmetric [][]int      // by quarter turns: where each piece comes to lie, nil where the kind then looks otherwise
	turns     [4]*rawEdges // by quarter turns, made when they are asked for
}

// joined is a join with its parts put together.
type joined struct {
	blocks.Join
	pieces [2][]int // by part, in the order of sewing
	parts  [2]outline
	unit   outline
	seam   stretch // B lies to the right of it
}

// all is the pieces of both parts.
func (j *joined) all() []int { return append(slices.Clone(j.pieces[0]), j.pieces[1]...) }

// newSewn puts a kind's recipe together from the outlines of its pieces and the patches of the top that they are.
func (p *Plan) newSewn(kind *blocks.Kind, pieces []outline, patches []int32) *sewn {
	s := &sewn{kind: kind, seam: p.Seam, side: p.SideFinished, pieces: pieces}
	for _, patch := range patches {
		s.cuts = append(s.cuts, p.cutOf(int(patch)))
	}
	joins, steps := kind.Recipe.Joins()
	s.steps = steps
	for _, j := range joins {
		s.join(j)
	}
	s.trims = s.trimUnits()
	for quarters := range 4 {
		s.symmetric = append(s.symmetric, s.symmetry(quarters))
	}
	return s
}

// cutOf is how a patch is cut.
func (p *Plan) cutOf(patch int) *cutting.Piece { return &p.cuts.Lines[p.cuts.LineOf[patch]].Piece }

// join adds one join.
func (s *sewn) join(j blocks.Join) {
	made := joined{Join: j}
	for i, part := range [2]blocks.Part{j.A, j.B} {
		made.pieces[i] = s.kind.Recipe.PiecesOf(part)
		made.parts[i] = s.unit(made.pieces[i])
	}
	made.unit = s.unit(made.all())
	made.seam = shared(made.parts[1], made.parts[0])
	s.joins = append(s.joins, made)
}

// Unit is the outline of some pieces together.
func (s *sewn) unit(pieces []int) outline {
	if len(pieces) == 1 {
		return s.pieces[pieces[0]]
	}
	list := make([]outline, len(pieces))
	for i, p := range pieces {
		list[i] = s.pieces[p]
	}
	return united(list)
}

// symmetry is where each piece comes to lie when the block is turned, nil if it then looks
// otherwise.
func (s *sewn) symmetry(quarters int) []int {
	to := make([]int, len(s.pieces))
	for i := range s.kind.Pieces {
		to[i] = slices.IndexFunc(s.kind.Pieces, func(q blocks.Piece) bool {
			return q.Shape == s.kind.Pieces[i].Shape && q.Outline[0] == s.kind.Pieces[i].Outline[0].Turned(quarters) && sameCorners(q.Outline, s.kind.Pieces[i].Outline, quarters)
		})
		if to[i] < 0 {
			return nil
		}
	}
	return to
}

// sameCorners says whether an outline has the corners of another that is turned.
func sameCorners(o, other []blocks.Point, quarters int) bool {
	return len(o) == len(other) && !slices.ContainsFunc(other, func(p blocks.Point) bool { return !slices.Contains(o, p.Turned(quarters)) })
}

// tip says whether a corner of a unit is one of a single piece, which the way it is cut leaves blunt.
func (s *sewn) tip(pieces []int, at point) bool {
	count, blunt := 0, false
	for _, p := range pieces {
		if i := cornerAt(s.pieces[p], at); i >= 0 {
			count++
			blunt = i == s.cuts[p].Shape.Description().Blunt
		}
	}
	return count == 1 && blunt
}

// trimmedSide says whether a side of a piece is cut to size only after it is sewn.
func (s *sewn) trimmedSide(piece, side int) bool {
	return slices.Contains(s.cuts[piece].Shape.Description().Trimmed, side)
}

// standsOut is the most by which a piece of a unit stands out that was not trimmed earlier.
func (s *sewn) standsOut(pieces []int) (most measure.NM) {
	for _, p := range pieces {
		if !s.trimmedEarlier(p, pieces) {
			most = max(most, s.cuts[p].StandsOut)
		}
	}
	return most
}

// rawOutline is the raw outline of a unit whose pieces are all trimmed.
func (s *sewn) rawOutline(pieces []int, unit outline) []measure.Vec {
	var raw []measure.Vec
	for i := range unit {
		if tips := s.tipsAt(pieces, unit, i); tips != nil {
			raw = append(raw, s.flatTips(tips, unit, i)...)
		} else {
			raw = append(raw, s.cornerBetween(pieces, unit, i, cornerOut{blunt: true})...)
		}
	}
	return raw
}

// tipsAt is the two pieces whose blunt tips make a corner of a unit, that before the corner first; nil if it is another corner.
func (s *sewn) tipsAt(pieces []int, unit outline, corner int) []int {
	var tips []int
	for _, p := range pieces {
		switch cornerAt(s.pieces[p], unit[corner]) {
		case -1:
		case s.cuts[p].Shape.Description().Blunt:
			tips = append(tips, p)
		default:
			return nil
		}
	}
	if len(tips) != 2 {
		return nil
	}
	before := stretch{unit[(corner+len(unit)-1)%len(unit)], unit[corner]}
	if len(s.partsOf(tips[:1], before)) == 0 {
		tips[0], tips[1] = tips[1], tips[0]
	}
	return tips
}

// flatTips is the raw corner of a unit that two blunt tips make: each is flat across its own middle, a seam allowance beyond the
// finished corner, so that the corner has two points on its sides and one on the seam between them.
func (s *sewn) flatTips(tips []int, unit outline, corner int) []measure.Vec {
	n, at := len(unit), vecOf(unit[corner])
	sides := [2]measure.Vec{vecOf(unit[corner]).Minus(vecOf(unit[(corner+n-1)%n])).Unit(), vecOf(unit[(corner+1)%n]).Minus(at).Unit()}
	var middles [2]measure.Vec // the way into each tip
	for i, p := range tips {
		o := s.pieces[p]
		m := cornerAt(o, unit[corner])
		middles[i] = vecOf(o[(m+len(o)-1)%len(o)]).Minus(at).Unit().Plus(vecOf(o[(m+1)%len(o)]).Minus(at).Unit()).Unit()
	}
	seam := float64(s.seam)
	onSide := func(i int) measure.Vec { // where the flat tip meets its raw side
		start := at.Minus(sides[i].Quarter().Times(seam))
		return start.Plus(sides[i].Times((-seam - start.Minus(at).Dot(middles[i])) / sides[i].Dot(middles[i])))
	}
	between := middles[0].Plus(middles[1]).Unit()
	return []measure.Vec{onSide(0), at.Minus(between.Times(seam / between.Dot(middles[0]))), onSide(1)}
}

// ruler is the way along which a unit is measured: a side of its square corner or, without
// one, its longest side.
func ruler(unit outline) measure.Vec {
	var best measure.Vec
	var most float64
	for i := range unit {
		way := vecOf(unit[(i+1)%len(unit)]).Minus(vecOf(unit[i]))
		if squareAt(unit, i) {
			return way.Unit()
		}
		if way.Length() > most {
			best, most = way.Unit(), way.Length()
		}
	}
	return best
}

// about is the point round which a join's allowance turns: a corner of some piece.
func (s *sewn) about(j *Join) point {
	at := s.kind.Recipe.Pressing[j.Choice].About
	piece := slices.IndexFunc(s.kind.Pieces, func(p blocks.Piece) bool { return slices.Contains(p.Outline, at) })
	return s.pieces[piece][slices.Index(s.kind.Pieces[piece].Outline, at)]
}
