package render

import (
	"fmt"
	"slices"
)

// page is what stands on one page between head and foot.
type page struct {
	placed []placed
	part   int // that its first slice belongs to
}

// placed is a slice with the place of its upper edge.
type placed struct {
	slice
	y float64
}

// pager fills pages with slices.
type pager struct {
	top, bottom float64
	pages       []page
	y           float64
	fresh       bool      // nothing stands on the page but illustrations from the one before
	later       [][]slice // illustrations that wait for the next page
}

// paginate puts slices on pages.
func paginate(list []slice, l look) []page {
	p := &pager{top: l.top, bottom: l.bottom}
	p.turn()
	p.flow(list, free)
	p.catchUp()
	return p.pages
}

func (p *pager) turn() {
	p.pages = append(p.pages, page{})
	p.y, p.fresh = p.top, true
	waiting := p.later
	p.later = nil
	for _, list := range waiting {
		if !p.put(list) {
			p.pages, p.y = append(p.pages, page{}), p.top
			p.set(list)
		}
		p.fresh = true
	}
}

// tight is how much smaller than its least an illustration may be, its words left as they are, where a page would end nearly empty without it.
const tight = 0.4

// catchUp places the illustrations that wait where nothing comes that could stand before them: on this page if they can be
// made small enough, or on the next.
func (p *pager) catchUp() {
	for len(p.later) > 0 {
		if !p.squeezed() {
			p.turn()
			return
		}
	}
}

// squeezed places the first illustration that waits on this page if it can be made small enough.
func (p *pager) squeezed() bool {
	list := slices.Clone(p.later[0])
	if flex := *list[0].flex; p.short() {
		flex.least = flex.words + tight*(flex.least-flex.words)
		list[0].flex = &flex
	}
	if !p.put(list) {
		return false
	}
	p.later = p.later[1:]
	return true
}

func (p *pager) empty() bool { return len(p.pages[len(p.pages)-1].placed) == 0 }

// flow places slices in units that are held together by more than a tie.
func (p *pager) flow(list []slice, held tie) {
	for len(list) > 0 {
		n := 1
		for n < len(list) && list[n].tie > held {
			n++
		}
		if list[0].newPage || list[0].opens {
			p.catchUp()
		}
		if !p.empty() && (list[0].newPage || list[0].opens && !p.short()) {
			p.turn()
		}
		p.unit(list[:n], held)
		list = list[n:]
	}
}

// unit places slices on this page or the next; where they do not fit on any they are parted
// where they are held least.
func (p *pager) unit(list []slice, held tie) {
	if len(p.later) > 0 && slices.ContainsFunc(list, func(s slice) bool { return s.flex != nil }) {
		if p.waits(list) {
			p.later = append(p.later, list)
			return
		}
		if held+1 < bound {
			p.flow(list, held+1)
			return
		}
	}
	if p.put(list) {
		return
	}
	if !p.empty() && p.short() && p.waits(list) {
		p.later = append(p.later, list)
		return
	}
	if !p.empty() && p.short() && p.begins(list, held) {
		p.flow(list, held+1)
		return
	}
	if over := p.tall(list, true) - (p.bottom - p.top); !p.empty() && shrunk(list, over) != nil {
		for !p.empty() { // twice where illustrations had waited
			for len(p.later) > 0 && p.short() && p.squeezed() {
			}
			p.turn()
			if p.put(list) {
				return
			}
		}
	}
	if len(list) > 1 {
		p.flow(list, held+1)
		return
	}
	for !p.empty() {
		p.turn()
	}
	p.set(list) // higher than a page: as much of it as there is will be found by the check
}

// least is how full a page is at the least that no chapter ends on.
const least = 0.5

// short says whether the page is less than half full.
func (p *pager) short() bool { return p.y-p.top < least*(p.bottom-p.top) }

// begins says whether slices that are wanted together, and are too high for what is left of the page, can be parted so that
// the page takes some of them.
func (p *pager) begins(list []slice, held tie) bool {
	if held+1 >= bound {
		return false
	}
	n := 1
	for n < len(list) && list[n].tie > held+1 {
		n++
	}
	return p.y+p.tall(list[:n], false) <= p.bottom
}

// waits says whether slices are an illustration with its caption that may stand on the next page, the text behind it going on
// before it.
func (p *pager) waits(list []slice) bool {
	alone := !slices.ContainsFunc(list[1:], func(s slice) bool { return s.tie != bound || s.flex != nil })
	return alone && list[0].flex != nil && len(list[0].frames) == 0 && p.tall(list, true) <= p.bottom-p.top
}

// tall is the height of slices, at the head of a page or below what is on it.
func (p *pager) tall(list []slice, head bool) float64 {
	height := 0.0
	for i, s := range list {
		if i > 0 || !head {
			height += s.above
		}
		height += s.height
	}
	if head {
		height += p.headsOf(list[0])
	}
	return height
}

// headsOf is the height of the heads that are printed again above a slice.
func (p *pager) headsOf(first slice) float64 {
	height := 0.0
	for _, s := range p.repeated(first) {
		height += s.height
	}
	return height
}

// repeated are the heads that are printed again where a page begins with a slice; none where
// they would fill a third of it.
func (p *pager) repeated(first slice) []slice {
	height := 0.0
	for _, s := range first.heads {
		height += s.height
	}
	if height > (p.bottom-p.top)/3 {
		return nil
	}
	return first.heads
}

// put places slices on this page if they fit, the illustrations among them and those on the page made smaller if they may be. For
// text alone nothing is made smaller.
func (p *pager) put(list []slice) bool {
	over := p.y + p.tall(list, p.empty()) - p.bottom
	if p.fresh && !p.empty() {
		over += p.headsOf(list[0])
	}
	if over > 1e-9 {
		list = p.pressed(list, over)
	}
	if list == nil {
		return false
	}
	p.set(list)
	return true
}

// pressed are slices that come lower on the page by so much, their illustrations and those above them smaller by the same part of
// what they may; nil where they cannot be made as small as that.
func (p *pager) pressed(list []slice, by float64) []slice {
	own, above := spareOf(list), p.spare()
	if own == 0 || own+above < by {
		return nil
	}
	lift := by * above / (own + above)
	p.lift(lift)
	return shrunk(list, by-lift)
}

// spareOf is how much lower the illustrations among slices may be, in points.
func spareOf(list []slice) float64 {
	spare := 0.0
	for _, s := range list {
		if s.flex != nil {
			spare += max(0, s.height-s.flex.least)
		}
	}
	return spare
}

// shrunk are the slices with their illustrations lower by so much together, each by the same part of what it may; nil if they
// may not.
func shrunk(list []slice, by float64) []slice {
	spare := spareOf(list)
	if by > spare+1e-9 {
		return nil
	}
	if by <= 0 {
		return list
	}
	smaller := append([]slice(nil), list...)
	for i, s := range list {
		if s.flex != nil && s.height > s.flex.least {
			smaller[i] = s.lower((s.height - s.flex.least) * by / spare)
		}
	}
	return smaller
}

// lower is an illustration made lower by so much.
func (s slice) lower(by float64) slice {
	s.height -= by
	s.marks = s.flex.at(s.height)
	return s
}

// onPage are the slices on the page.
func (p *pager) onPage() []slice {
	var list []slice
	for _, one := range p.pages[len(p.pages)-1].placed {
		list = append(list, one.slice)
	}
	return list
}

// spare is how much lower the illustrations on the page may be.
func (p *pager) spare() float64 { return spareOf(p.onPage()) }

// lift makes the illustrations on the page lower by so much together, and moves what is below them up.
func (p *pager) lift(by float64) {
	now := &p.pages[len(p.pages)-1]
	up := 0.0
	for i, s := range shrunk(p.onPage(), by) {
		was := now.placed[i]
		now.placed[i] = placed{s, was.y - up}
		up += was.height - s.height
	}
	p.y -= by
}

func (p *pager) set(list []slice) {
	if p.fresh {
		for i, s := range p.repeated(list[0]) {
			if s.again = true; i == 0 && !p.empty() {
				s.above = list[0].above
			}
			p.drop(s)
		}
	}
	if p.empty() || len(p.repeated(list[0])) > 0 && p.fresh {
		list = append([]slice(nil), list...)
		list[0].above = 0
	}
	p.fresh = false
	for _, s := range list {
		p.drop(s)
	}
}

func (p *pager) drop(s slice) {
	now := &p.pages[len(p.pages)-1]
	if len(now.placed) == 0 {
		now.part = s.part
	}
	p.y += s.above
	if s.fill != nil {
		s.height = max(s.height, p.bottom-p.y)
		s.marks = s.fill(s.height)
	}
	now.placed = append(now.placed, placed{s, p.y})
	p.y += s.height
}

// shortPages are the pages that are less than half full, though neither a chapter nor a page asked for begins behind them.
func shortPages(pages []page, l look) []Warning {
	var list []Warning
	for i, p := range pages[:max(0, len(pages)-1)] {
		next := pages[i+1].placed[0]
		if used := p.filled() / l.room(); used < least && !next.newPage && !next.opens && next.part == p.placed[len(p.placed)-1].part {
			list = append(list, Warning{ShortPage, i + 1, fmt.Sprintf("the page is filled to %.0f %%", 100*used)})
		}
	}
	return list
}

// filled is how much of a page's height is used.
func (p page) filled() float64 {
	last := p.placed[len(p.placed)-1]
	return last.y + last.height - p.placed[0].y
}
