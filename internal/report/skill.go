package report

import (
	"slices"

	"eighthturn/internal/blocks"
	"eighthturn/internal/measure"
	"eighthturn/internal/plan/sewing"
	"eighthturn/internal/quilt"
)

// manyPieces is how many pieces make a quilt harder by their number alone. Common practice, no source.
const manyPieces = 600

// skills are what asks for skill in a quilt.
type skills struct {
	bias, partial, sets, trimmed, columns, round bool
	pieces                                       int // of the blocks
}

func skillsOf(p *Plans) skills {
	s := skills{sets: len(p.Top.CutFacts.Sets) > 0, pieces: count(p.Top.Patches, func(q quilt.Patch) bool { return q.Cell >= 0 })}
	for i := range p.Steps().Blocks {
		b := &p.Steps().Blocks[i]
		s.columns = s.columns || b.Column
		s.round = s.round || b.Spins()
		s.bias = s.bias || slices.ContainsFunc(b.Edges[:], func(e sewing.EdgeGrain) bool { return e.OffGrain+e.Bias > 0 })
		for n := range b.Steps {
			step := &b.Steps[n]
			s.trimmed = s.trimmed || step.Before != nil
			s.partial = s.partial || slices.ContainsFunc(step.Joins, func(j sewing.Join) bool { return j.Ends[0].Partial || j.Ends[1].Partial })
		}
	}
	return s
}

func count[T any](list []T, is func(T) bool) int {
	n := 0
	for _, v := range list {
		if is(v) {
			n++
		}
	}
	return n
}

// SkillLevel is the quilt's skill level with its reasons: the layout's own, or one step for each thing that asks for skill.
// Common practice, no source.
func SkillLevel(p *Plans) string {
	s := skillsOf(p)
	var reasons []string
	for _, r := range []struct {
		is   bool
		text string
	}{{s.bias, "bias edges"}, {s.partial, "partial seams"}, {s.sets, "strip sets"}, {s.columns, "columns of tumblers"}} {
		if r.is {
			reasons = append(reasons, r.text)
		}
	}
	steps := len(reasons)
	if s.pieces > manyPieces {
		steps++
	}
	level := []string{"beginner", "confident beginner", "intermediate", "intermediate", "advanced"}[min(steps, 4)]
	if own := p.Top.Credits.Level; own != "" {
		level = own
	}
	return level + " (" + measure.List(append(reasons, measure.Count(s.pieces, "piece")+" in the blocks")) + ")"
}

// Skills are what one learns or needs for the quilt.
func Skills(p *Plans) []string {
	s := skillsOf(p)
	list := []string{"rotary cutting"}
	for _, skill := range []struct {
		is   bool
		text string
	}{
		{len(newCuts(p).shapesWith(blocks.WedgeRule)) > 0, "cutting with a wedge ruler"},
		{s.sets, "sewing strip sets and cutting wedges from them"},
		{s.trimmed, "trimming oversize pieces after sewing"},
		{s.partial, "partial seams"},
		{s.round, "spinning seams at the center of a block"},
		{s.bias, "handling bias edges"},
		{s.columns, "joining columns of tumblers"},
		{len(p.Top.Cells) > 1, "nesting seams where " + measure.Plural((Grid{p.Top, p.Steps()}).Noun()) + " meet"},
		{len(p.Top.CutFacts.Borders) > 0, "borders cut to the quilt's measure"},
		{p.Top.CutFacts.Binding != nil, "double-fold binding with mitered corners"},
	} {
		if skill.is {
			list = append(list, skill.text)
		}
	}
	return list
}
