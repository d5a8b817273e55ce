package preview

import "eighthturn/internal/quilt"

// join is how two templates meet: the seams between a block and the one to its right or
// below it, from the origin of the first.
type join struct {
	A         int32      `json:"a"`
	B         int32      `json:"b"`
	Below     int        `json:"below"`     // 0 for side by side, 1 for one above the other
	Stretches [][6]int64 `json:"stretches"` // face of A, face of B, the two ends
}

// looseParts is what keeps to no cell: single patches, and the seams beside them.
type looseParts struct {
	// Patches are x, y, look, cell or -1, border or -1, line, and so on.
	Patches []int64 `json:"patches"`
	// Seams are run, face, run, face, the two ends, and 1 for a strip set's, and so on. Runs
	// below the number of cells are cells, the others follow in the order of Patches.
	Seams []int64 `json:"seams"`
}

func (l *looseParts) add(p *pictureBuilder, r run, look int32) {
	patch := &p.Patches[r.first]
	l.Patches = append(l.Patches, units(r.origin.X), units(r.origin.Y), int64(look),
		int64(patch.Cell), int64(patch.Border), int64(p.line(int(patch.Place.Start))))
}

// seams sorts every seam: within a new template, between two templates that have not met
// before, or beside a single patch.
func (p *pictureBuilder) seams() {
	for i := range p.Seams {
		p.seam(&p.Seams[i], 0)
	}
	for i := range p.StripSeams {
		p.seam(&p.StripSeams[i], 1)
	}
}

func (p *pictureBuilder) seam(s *quilt.Seam, strip int64) {
	a, b := p.itemOf[s.A], p.itemOf[s.B]
	cells := int32(len(p.Cells))
	switch {
	case a == b:
		p.innerSeam(s, a, strip)
	case a >= cells || b >= cells:
		p.looseSeam(s, strip)
	case b == a+1, b == a+int32(p.Columns):
		p.crossSeam(s, a, b, false)
	case a == b+1, a == b+int32(p.Columns):
		p.crossSeam(s, b, a, true)
	default:
		p.looseSeam(s, strip)
	}
}

// innerSeam adds a seam to a new template, read off the first run that has it.
func (p *pictureBuilder) innerSeam(s *quilt.Seam, item int32, strip int64) {
	number := p.items[item]
	made := p.fresh[number]
	if made == nil || p.owners[joinKey{a: number, b: -1}][0] != item {
		return
	}
	at := p.runs[item].origin
	made.Inner = append(made.Inner, innerStretch{
		int64(s.A - p.firstFace[item]), int64(s.B - p.firstFace[item]),
		units(s.From.X - at.X), units(s.From.Y - at.Y), units(s.To.X - at.X), units(s.To.Y - at.Y), strip,
	})
}

// crossSeam adds a seam to a new join, read off the first two cells that meet so.
func (p *pictureBuilder) crossSeam(s *quilt.Seam, a, b int32, swapped bool) {
	key := joinKey{p.items[a], p.items[b], b != a+1}
	if p.Columns == 1 {
		key.below = true
	}
	made := p.joins[key]
	switch {
	case made == nil && p.numbers.joinOf[key]:
		return
	case made == nil:
		made = &join{A: key.a, B: key.b}
		if key.below {
			made.Below = 1
		}
		p.joins[key], p.owners[key], p.numbers.joinOf[key] = made, [2]int32{a, b}, true
		p.joinOrder = append(p.joinOrder, key)
	case p.owners[key] != [2]int32{a, b}:
		return
	}
	at := p.runs[a].origin
	faceA, faceB, from, to := s.A, s.B, s.From, s.To
	if swapped {
		faceA, faceB, from, to = s.B, s.A, s.To, s.From
	}
	made.Stretches = append(made.Stretches, [6]int64{
		int64(faceA - p.firstFace[a]), int64(faceB - p.firstFace[b]),
		units(from.X - at.X), units(from.Y - at.Y), units(to.X - at.X), units(to.Y - at.Y),
	})
}

func (p *pictureBuilder) looseSeam(s *quilt.Seam, strip int64) {
	a, b := p.itemOf[s.A], p.itemOf[s.B]
	p.loose.Seams = append(p.loose.Seams, int64(a), int64(s.A-p.firstFace[a]), int64(b), int64(s.B-p.firstFace[b]),
		units(s.From.X), units(s.From.Y), units(s.To.X), units(s.To.Y), strip)
}
