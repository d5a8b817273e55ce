package report

import (
	"slices"

	"eighthturn/internal/document"
	"eighthturn/internal/measure"
	"eighthturn/internal/plan/sewing"
	"eighthturn/internal/quilt"
)

// Sections of Sewing; SewingBlock and BorderSection name those of one block or border.
const (
	SewingSizes     = "sizes"
	SewingTogether  = "together"
	SewingGrain     = "grain"
	SewingBulk      = "bulk"
	SewingCare      = "care"
	SewingLayout    = "layout"
	SewingFinishing = "finishing"
)

// maxListed is how many places, variants or reasons of one sort are listed one by one.
const maxListed = 12

// maxPlaces is how many groups of places a sentence names.
const maxPlaces = 24

// Sewing is how a top goes together: the blocks step by step, how they are joined, pressing, and where fabric stretches or
// grows thick.
func Sewing(p *Plans) document.Document {
	s := newSewer(p)
	d := document.Document{Title: p.named("how it goes together")}
	d.Sections = append(d.Sections, s.glance(), s.sizes())
	for i := range s.Blocks {
		d.Sections = append(d.Sections, s.block(i))
	}
	for _, section := range []document.Section{s.layout(), s.together(), s.finishing(), s.care(), s.judged()} {
		if len(section.Blocks) > 0 {
			d.Sections = append(d.Sections, section)
		}
	}
	return d
}

// sizes is what to know before the steps: how sizes are measured, how places are counted, how seams are spun.
func (s *sewer) sizes() document.Section {
	out := document.Section{ID: SewingSizes, Title: "Before you sew", Depth: document.Detail, Blocks: []document.Block{
		para("Use a %s seam allowance throughout. Sizes are unfinished, raw edge to raw edge, to the nearest %s. "+
			"After each step, measure one unit before you sew the rest. Count rows from the top and columns from the left.%s", s.units.Nearest(s.Seam), s.units.Nearest(s.units.Mark()), s.clockwise()),
	}}
	if slices.ContainsFunc(s.Blocks, func(b sewing.Block) bool { return b.Spins() }) {
		out.Blocks = append(out.Blocks, para("To spin seams, remove the few stitches of the last seam that lie in the seam allowance, swirl the seams and press flat."))
	}
	return out
}

// clockwise says what that means; "" where no block is pressed or put together around its center.
func (s *sewer) clockwise() string {
	if !slices.ContainsFunc(s.Blocks, func(b sewing.Block) bool { return !b.Column && len(b.Steps) > 1 }) {
		return ""
	}
	return " Clockwise means as seen from the right side; on the wrong side, where you press, it is counterclockwise, as the arrows in the pictures show."
}

// sewer words a sewing plan.
type sewer struct {
	*sewing.Plan
	plans    *Plans
	top      *quilt.Top
	units    measure.System
	several  bool    // of quilts that are made: numbers are those of one
	sewnBy   [][]int // seams of the top by seam of the assembly
	sets     *sewing.StripSets
	lined    bool // a picture of the rows or columns was placed
	bordered bool // a picture of the borders was placed
}

func newSewer(p *Plans) *sewer {
	plan := p.Steps()
	return &sewer{Plan: plan, plans: p, top: p.Top, units: plan.Units, several: p.Cutting.Copies > 1, sewnBy: sewnBy(p.Top, plan)}
}

// forEach says that numbers are for one quilt, where several are made.
func (s *sewer) forEach() string {
	if s.several {
		return " for each quilt"
	}
	return ""
}

// care is what is usually said where irons, machines and pins are at work.
func (s *sewer) care() document.Section {
	box := document.Box{Caution: true, Word: "Safety"}
	box.Blocks = bullets(SewingCautions()...)
	return document.Section{ID: SewingCare, Depth: document.Detail, Blocks: []document.Block{box}}
}

// SewingCautions are the usual cautions where irons, machines and pins are at work.
func SewingCautions() []string {
	return []string{
		"A hot iron burns: hold it by the handle only, keep your face and fingers out of the steam, and stand it on its heel whenever you let go of it.",
		"Keep the iron's cord where nobody can pull it down, and away from the cutter and mat. Fill the iron only when it is off, unplugged and cool.",
		"One person at a time at the ironing board. Keep children and pets away, and unplug the iron before you leave the room.",
		"Never press over pins. Remove pins before the needle reaches them; put them back in the box and count them.",
		"Keep fingers clear of the needle: stop the machine first. Take your foot off the pedal before threading.",
		"Use spray starch away from flames and heat, let it soak in before you press, and open a window.",
	}
}

// sentences is a list that has what is said about one thing after the other.
type sentences struct{ document.List }

func (l *sentences) add(text string, about document.About) *document.Item {
	if text == "" {
		return &document.Item{}
	}
	l.Items = append(l.Items, document.Item{Text: document.Plain(text), About: about})
	return &l.Items[len(l.Items)-1]
}

// blocks are the list, nothing if it is empty.
func (l *sentences) blocks() []document.Block {
	if len(l.Items) == 0 {
		return nil
	}
	return []document.Block{l.List}
}
