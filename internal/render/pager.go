package render

// page is what stands on one page between head and foot.
type page struct {
	placed []placed
	part   int // that its first slice belongs to, -1 before the first
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
}

// paginate puts slices on pages.
func paginate(list []slice, l look) []page {
	p := &pager{top: l.top, bottom: l.bottom}
	p.turn()
	p.flow(list, free)
	if n := len(p.pages); n > 1 && p.empty() {
		p.pages = p.pages[:n-1]
	}
	return p.pages
}

func (p *pager) turn() {
	p.pages = append(p.pages, page{part: -1})
	p.y = p.top
}

func (p *pager) empty() bool { return len(p.pages[len(p.pages)-1].placed) == 0 }

// flow places slices in units that are held together by more than a tie.
func (p *pager) flow(list []slice, held tie) {
	for len(list) > 0 {
		n := 1
		for n < len(list) && list[n].tie > held {
			n++
		}
		if list[0].newPage && !p.empty() {
			p.turn()
		}
		p.unit(list[:n], held)
		list = list[n:]
	}
}

// unit places slices on this page or the next; where they do not fit on any they are parted
// where they are held least.
func (p *pager) unit(list []slice, held tie) {
	if p.put(list) {
		return
	}
	if over := p.tall(list, true) - (p.bottom - p.top); !p.empty() && (over <= 0 || shrunk(list, over) != nil) {
		p.turn()
		if p.put(list) {
			return
		}
	}
	if len(list) > 1 {
		p.flow(list, held+1)
		return
	}
	if !p.empty() {
		p.turn()
	}
	p.set(list) // higher than a page: as much of it as there is will be found by the check
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
		for _, s := range p.repeated(list[0]) {
			height += s.height
		}
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

// put places slices on this page if they fit, one of them made smaller if it may be.
func (p *pager) put(list []slice) bool {
	over := p.y + p.tall(list, p.empty()) - p.bottom
	if over > 1e-9 {
		list = shrunk(list, over)
	}
	if list == nil {
		return false
	}
	p.set(list)
	return true
}

// shrunk are the slices with one illustration lower by so much, nil if none can be.
func shrunk(list []slice, by float64) []slice {
	for i, s := range list {
		if s.flex == nil || s.height-by < s.flex.least {
			continue
		}
		smaller := append([]slice(nil), list...)
		smaller[i].height -= by
		smaller[i].marks = s.flex.at(smaller[i].height)
		return smaller
	}
	return nil
}

func (p *pager) set(list []slice) {
	if p.empty() {
		for _, s := range p.repeated(list[0]) {
			s.again = true
			p.drop(s)
		}
		list = append([]slice(nil), list...)
		list[0].above = 0
	}
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
	now.placed = append(now.placed, placed{s, p.y})
	p.y += s.height
}
