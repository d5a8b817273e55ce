package report

import (
	"eighthturn/internal/document"
	"eighthturn/internal/measure"
	"eighthturn/internal/plan/sewing"
	"eighthturn/internal/quilt"
)

// Sections of Sewing; SewingBlock and BorderSection name those of one block or border.
const (
	SewingSizes    = "sizes"
	SewingTogether = "together"
	SewingPressing = "pressing"
	SewingGrain    = "grain"
	SewingBulk     = "bulk"
	SewingCare     = "care"
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
	d.Sections = append(d.Sections, document.Section{ID: SewingSizes, Blocks: []document.Block{
		para("Sew with a seam allowance of %s throughout. Sizes are unfinished, from cut edge to cut edge with the seam allowances, to the nearest %s. "+
			"After each step measure one unit before you sew the others. Rows are counted from the top, columns from the left. "+
			"Clockwise is as the right side shows it; on the wrong side, where you press, it looks anticlockwise, as the arrows in the pictures show it.", s.units.Nearest(s.Seam), s.units.Nearest(s.units.Mark())),
	}})
	for i := range s.Blocks {
		d.Sections = append(d.Sections, s.block(i))
	}
	for _, section := range []document.Section{s.together(), s.pressing(), s.grain(), s.bulk(), s.care(), s.judged()} {
		if len(section.Blocks) > 0 {
			d.Sections = append(d.Sections, section)
		}
	}
	return d
}

// sewer words a sewing plan.
type sewer struct {
	*sewing.Plan
	top      *quilt.Top
	units    measure.System
	several  bool    // of quilts that are made: numbers are those of one
	sewnBy   [][]int // seams of the top by seam of the assembly
	lined    bool    // a picture of the rows or columns was placed
	bordered bool    // a picture of the borders was placed
}

func newSewer(p *Plans) *sewer {
	plan := p.Steps()
	return &sewer{Plan: plan, top: p.Top, units: plan.Units, several: p.Cutting.Copies > 1, sewnBy: sewnBy(p.Top, plan)}
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
	box := document.Box{Caution: true, Word: "Take care"}
	box.Blocks = bullets(SewingCautions()...)
	return document.Section{ID: SewingCare, Blocks: []document.Block{box}}
}

// SewingCautions are the usual cautions where irons, machines and pins are at work.
func SewingCautions() []string {
	return []string{
		"A hot iron burns: take it by its handle alone, keep face and fingers out of the steam, and stand it on its heel whenever you let go of it.",
		"Lay the iron's cord where nobody pulls it down, and away from the cutter and its mat; fill the iron only when it is off, unplugged and cool.",
		"One at a time at the ironing board; keep children and animals away from it, and pull the plug before you leave the room.",
		"Never press over pins. Take them out before the needle reaches them, and count them back into their box.",
		"Stop the machine before you reach near its needle, and take your foot off the pedal when you thread it.",
		"Spray starch only away from flame and from anything that glows, let it soak in before you press, and open a window.",
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
