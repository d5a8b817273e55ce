package scraps

// maxSpreadSteps is how much work spreading may be, all in all: a step is two places that are compared, or one number of
// a place's crowds that is worked out.
const maxSpreadSteps = 10_000_000

// spread lets fabrics of one pool change places where those of a line then lie further apart, over and over until nothing
// gets better. How often each is used stays as it is, and no more neighbours are alike.
func (t *solver) spread() {
	s := t.inLines(maxSpreadSteps)
	for s.sweep() {
	}
}

// inLines is the places of all lines, and how many steps spreading them may take.
func (t *solver) inLines(steps int) *spreading {
	s := &spreading{solver: t, at: make([]int, len(t.places)), crowds: make([][]int32, len(t.places)), left: steps}
	for i := range t.places {
		if n := t.places[i].Line; n > 0 {
			for len(s.lines) <= n {
				s.lines = append(s.lines, nil)
			}
			s.at[i] = len(s.lines[n])
			s.lines[n] = append(s.lines[n], int32(i))
			s.placed = append(s.placed, int32(i))
		}
	}
	return s
}

// spreading is the places of all lines.
type spreading struct {
	*solver
	lines  [][]int32 // by Place.Line, in their order
	placed []int32   // those that are in a line
	at     []int     // by place: where in its line
	crowds [][]int32 // by place and fabric, see crowdsOf; none as long as nothing asked
	left   int       // steps
}

// sweep changes every two places about that then lie better; it says whether any did.
func (s *spreading) sweep() bool {
	better := false
	for n, p := range s.placed {
		s.sign.Step(1)
		for _, q := range s.placed[:n] {
			if s.places[p].Pool != s.places[q].Pool || s.fabric[p] == s.fabric[q] {
				continue
			}
			if s.left--; s.left < 0 {
				return false
			}
			if s.gains(p, q) && s.allows(p, q) {
				s.change(p, q)
				better = true
			}
		}
	}
	return better
}

// gains says whether the fabrics of two places lie further apart in their lines once they are changed about.
func (s *spreading) gains(p, q int32) bool {
	a, b := s.fabric[p], s.fabric[q]
	return s.crowd(p, b, q)+s.crowd(q, a, p) < s.crowd(p, a, q)+s.crowd(q, b, p)
}

// change gives two places each other's fabric.
func (s *spreading) change(p, q int32) {
	a, b := s.fabric[p], s.fabric[q]
	s.turn([]int32{p, q}, a, b)
	s.moved(p, a, b)
	s.moved(q, b, a)
}

// moved brings the crowds along a line up to date where a place has a fabric for another.
func (s *spreading) moved(place int32, was, is int) {
	line := s.lines[s.places[place].Line]
	s.left -= len(line)
	for n, other := range line {
		if crowds := s.crowds[other]; crowds != nil && other != place {
			near := nearness(n - s.at[place])
			crowds[was] -= near
			crowds[is] += near
		}
	}
}

// crowd is how a fabric crowds a place in its line, one place left out.
func (s *spreading) crowd(place int32, fabric int, without int32) int32 {
	sum := s.crowdsOf(place)[fabric]
	if s.places[place].Line == s.places[without].Line && s.fabric[without] == fabric {
		sum -= nearness(s.at[without] - s.at[place])
	}
	return sum
}

// crowdsOf is by fabric the more, the nearer it lies to a place in its line.
func (s *spreading) crowdsOf(place int32) []int32 {
	if s.crowds[place] == nil {
		line := s.lines[s.places[place].Line]
		crowds := make([]int32, len(s.marked))
		s.left -= len(line) + len(crowds)
		for n, other := range line {
			if other != place {
				crowds[s.fabric[other]] += nearness(n - s.at[place])
			}
		}
		s.crowds[place] = crowds
	}
	return s.crowds[place]
}

// nearness is the inverse square of a distance along a line, as a whole number, so that a deal is the same on every machine;
// those of one place together stay below four millions.
func nearness(distance int) int32 {
	const unit = 1 << 20
	return int32(unit / (distance * distance))
}
