// Package orders finds, where a cutting plan leaves wedges of strip sets over that all lie one way round, the nearest layout that uses
// both ways round.
package orders

import (
	"slices"
	"strings"

	"eighthturn/internal/plan/cutting"
	"eighthturn/internal/plan/supplies"
	"eighthturn/internal/quilt"
	"eighthturn/internal/stop"
	"eighthturn/layout"
	"eighthturn/palettes"
)

// Better is such a layout, and what it saves.
type Better struct {
	Lines    []string `json:"lines"`     // to write
	ByWebs   bool     `json:"by_webs"`   // webs take turns; else the wedges of each block do
	Sets     [2]int   `json:"sets"`      // strip sets to sew, now and then
	LeftOver [2]int   `json:"left_over"` // wedges, now and then
	Saved    []Saved  `json:"saved"`     // fabrics of which less is bought then
}

// Saved is a fabric of which less is bought.
type Saved struct {
	Fabric int               `json:"fabric"` // index of the top's
	Now    supplies.Purchase `json:"now"`
	Then   supplies.Purchase `json:"then"`
}

// How much is tried: so many layouts, and none near a plan that was hard to make or of a top with more pieces than a few quilts have.
const (
	mostTried = 4
	mostFaces = 40_000
)

// search is the work on one layout.
type search struct {
	*layout.Reading
	sign  *stop.Sign
	like  *quilt.Top // that the plan is for: of the layout as it is written, or in a size and a colorway
	plan  *cutting.Plan
	o     cutting.Options
	cloth func(string) (palettes.PhotoSample, error)
	tried int // layouts
}

// find is the layouts near one without errors that save most strip sets: first the best in which webs take turns, then one in which the
// wedges of blocks do, where that saves more; none where nothing is saved.
func (s *search) find() []Better {
	list := make([]Better, 0, 2)
	fewest := setsOf(s.plan)
	for _, byWebs := range []bool{true, false} {
		if b := s.best(byWebs); b != nil && b.Sets[1] < fewest {
			fewest, list = b.Sets[1], append(list, *b)
		}
	}
	return list
}

// Nearby finds such layouts near the text of one, in the size and the colorway of a top of it; cloth reads the photos that it names. What
// it gives wants the top's plan, and the options of that.
func Nearby(text string, cloth func(string) (palettes.PhotoSample, error), like *quilt.Top) func(*stop.Sign, *cutting.Plan, cutting.Options) []Better {
	return func(sign *stop.Sign, plan *cutting.Plan, o cutting.Options) []Better {
		hard := slices.ContainsFunc(plan.Fabrics, func(f cutting.Fabric) bool { return f.SearchEnded })
		if hard || len(like.Faces) > mostFaces || len(wasteful(plan)) == 0 {
			return nil
		}
		reading := layout.Inspect(text, cloth)
		if reading.Design == nil {
			return nil
		}
		return (&search{Reading: &reading, sign: sign, like: like, plan: plan, o: o, cloth: cloth}).find()
	}
}

// planned is the plan for a text, in the size and the colorway that the work is on; nil where it cannot be had.
func (s *search) planned(text string) *cutting.Plan {
	design, _, _ := layout.ReadWith(text, s.cloth)
	if design == nil {
		return nil
	}
	if s.like.Size != "" {
		design = design.InSize(s.like.Size)
	}
	if design == nil {
		return nil
	}
	top := quilt.LayUntil(s.sign, design)
	if s.like.Colorway != "" {
		in, err := top.InNamed(s.like.Colorway)
		if err != nil {
			return nil
		}
		top = in
	}
	plan := cutting.Build(s.sign, top, s.o)
	if len(plan.Faults) > 0 {
		return nil
	}
	return plan
}

// best is the one of either sort that saves most, the first of several; nil for none.
func (s *search) best(byWebs bool) *Better {
	var found *Better
	for _, name := range wasteful(s.plan) {
		for _, t := range trials(s.Reading, name, byWebs) {
			if s.tried == mostTried {
				return found
			}
			s.tried++
			then := s.planned(t.Text)
			if then == nil || found != nil && setsOf(then) >= found.Sets[1] {
				continue
			}
			found = &Better{t.Lines, byWebs, [2]int{setsOf(s.plan), setsOf(then)}, [2]int{leftOver(s.plan), leftOver(then)}, saved(s.plan, then)}
		}
	}
	return found
}

// wasteful are the names of the strip sets of which wedges of one order are left over that make a set or more; those of which most are
// left first.
func wasteful(plan *cutting.Plan) (names []string) {
	left := map[string]int{}
	for i := range plan.Sets {
		left[plan.Sets[i].Name] += max(plan.Sets[i].LeftOver[0], plan.Sets[i].LeftOver[1])
	}
	for i := range plan.Sets {
		s := &plan.Sets[i]
		if s.Alike || slices.Contains(names, s.Name) {
			continue
		}
		if max(s.LeftOver[0], s.LeftOver[1]) >= s.PerSet/2 && min(s.Wanted[0], s.Wanted[1]) < max(s.Wanted[0], s.Wanted[1]) {
			names = append(names, s.Name)
		}
	}
	slices.SortStableFunc(names, func(a, b string) int { return left[b] - left[a] })
	return names
}

// trials are the layouts near one in which a set is used both ways round: by webs, or by the wedges of blocks.
func trials(reading *layout.Reading, set string, byWebs bool) []layout.Trial {
	u := &use{reading, set}
	if byWebs {
		return u.byWebs()
	}
	return u.byBlocks()
}

// use is the use of a strip set in a layout.
type use struct {
	*layout.Reading
	set string
}

// alone says whether something is cut from the set and nothing else.
func (u *use) alone(fills []layout.Fill) bool {
	return len(fills) == 1 && fills[0].Set >= 0 && u.Design.StripSets[fills[0].Set].Name == u.set
}

// both is the set both ways round, first as it was.
func (u *use) both(was layout.Fill, between string) string {
	turned := layout.Reversed + " " + u.set
	if was.Reversed {
		return turned + between + u.set
	}
	return u.set + between + turned
}

// byWebs has webs take turns, where all of them are cut from the set.
func (u *use) byWebs() []layout.Trial {
	d := u.Design
	switch {
	case u.alone(d.Webs):
		if t, err := u.Trial(layout.AuditionOf{Role: "webs"}, u.both(d.Webs[0], " / ")); err == nil {
			return []layout.Trial{t}
		}
		return nil
	case d.Webs != nil || d.WebTable != nil:
		return nil
	}
	line := ""
	for i := range d.Blocks {
		for r, fills := range d.Blocks[i].Fills {
			if !d.Blocks[i].Kind.Roles[r].OfWebs || len(fills) == 0 {
				continue
			}
			if !u.alone(fills) {
				return nil
			}
			line = "webs " + u.both(fills[0], " / ")
		}
	}
	if line == "" {
		return nil
	}
	return []layout.Trial{{Text: strings.TrimRight(u.Source.Text, "\r\n") + "\n" + line + "\n", Lines: []string{line}}}
}

// byBlocks has the wedges of each block that is cut from the set alone take turns.
func (u *use) byBlocks() (list []layout.Trial) {
	for i := range u.Design.Blocks {
		b := &u.Design.Blocks[i]
		for r, fills := range b.Fills {
			if !u.alone(fills) {
				continue
			}
			if t, err := u.Trial(layout.AuditionOf{Role: b.Kind.Roles[r].Name, Of: b.Label}, u.both(fills[0], " ")); err == nil {
				list = append(list, t)
			}
		}
	}
	return list
}

// setsOf is how many strip sets are sewn.
func setsOf(p *cutting.Plan) (n int) {
	for i := range p.Sets {
		for _, r := range p.Sets[i].Runs {
			n += r.Sets
		}
	}
	return n
}

// leftOver is how many wedges of strip sets are left over.
func leftOver(p *cutting.Plan) (n int) {
	for i := range p.Sets {
		n += p.Sets[i].LeftOver[0] + p.Sets[i].LeftOver[1]
	}
	return n
}

// saved are the fabrics of which less is bought then.
func saved(now, then *cutting.Plan) (list []Saved) {
	bought := map[int]supplies.Purchase{}
	for i := range then.Fabrics {
		bought[then.Fabrics[i].Index] = then.Fabrics[i].Purchase
	}
	for i := range now.Fabrics {
		f := &now.Fabrics[i]
		if b, known := bought[f.Index]; known && b.Buy < f.Purchase.Buy {
			list = append(list, Saved{f.Index, f.Purchase, b})
		}
	}
	return list
}
