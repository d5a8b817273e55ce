package motifs

import (
	"image"
	"math"

	"eighthturn/internal/measure"
	"eighthturn/internal/quilt"
	"eighthturn/internal/stop"
)

// Bounds of the search; our choice.
const (
	mostPlaces  = 1536 // of the repeat that are looked at
	turnOfPrint = 45   // degrees from one way of pointing to the next
	turnOfLines = 15   // the same on stripes, of which the place along them changes nothing
	// Quarter is by how many degrees two motifs of stripes are turned at the least that lie at one place.
	Quarter = 30
	around  = 360
)

// place is a place of the cloth and a way to point.
type place struct {
	across, down measure.NM
	pointing     int
}

// search is all places that are looked at, with what a wedge shows there.
type search struct {
	cloth  *quilt.Cloth
	lights *lights
	places []place
	shown  []shown
	apart  measure.NM
	alike  func(place) bool // says that a place is its own mirror image, where pairs are asked for; nil for none
	sign   *stop.Sign
}

// newSearch looks at places at even distances, whole marks of a ruler.
func newSearch(cloth *quilt.Cloth, picture *image.RGBA, height measure.NM, units measure.System, o Options) *search {
	s := &search{cloth: cloth, lights: newLights(cloth, picture), sign: o.Sign}
	mark := units.Usual(measure.Inch/8, 5*measure.Millimetre)
	turn, across, down := turnOfPrint, cloth.Across, cloth.Down
	if cloth.Stripes != nil {
		turn = turnOfLines
		if cloth.Stripes.Crosswise {
			across = 1
		} else {
			down = 1
		}
	}
	marks := func(length, step measure.NM) int { return max(1, int((length+step-1)/step)) }
	step := mark
	for marks(across, step)*marks(down, step) > mostPlaces {
		step += mark
	}
	wedges := make([]wedge, 0, around/turn)
	for pointing := 0; pointing < around; pointing += turn {
		wedges = append(wedges, newWedge(height, pointing))
	}
	count := marks(across, step) * marks(down, step) * len(wedges)
	s.places, s.shown = make([]place, 0, count), make([]shown, 0, count)
	for y := range marks(down, step) {
		s.sign.Step(marks(across, step) * len(wedges) * cells * perCell)
		for x := range marks(across, step) {
			for i := range wedges {
				at := place{measure.NM(x) * step, measure.NM(y) * step, i * turn}
				s.places, s.shown = append(s.places, at), append(s.shown, s.lights.of(&wedges[i], at))
			}
		}
	}
	s.apart = s.farEnough(o.Count)
	return s
}

// farEnough is how far apart so many places lie on the cloth: circles as wide round each cover less than it, so there is room for all.
func (s *search) farEnough(count int) measure.NM {
	if s.cloth.Stripes != nil {
		return s.cloth.Across / measure.NM(2*count)
	}
	return measure.NM(0.5 * math.Sqrt(float64(s.cloth.Across)*float64(s.cloth.Down)/float64(count)))
}

// between is how far apart two places are on a cloth that comes again.
func (s *search) between(a, b place) measure.NM {
	way := func(d, repeat measure.NM) float64 {
		d = max(d, -d) % repeat
		return float64(min(d, repeat-d))
	}
	return measure.NM(math.Hypot(way(a.across-b.across, s.cloth.Across), way(a.down-b.down, s.cloth.Down)))
}

// different says whether two places may both be chosen.
func (s *search) different(a, b place) bool {
	if s.between(a, b) >= s.apart {
		return true
	}
	turn := max(a.pointing-b.pointing, b.pointing-a.pointing)
	return s.cloth.Stripes != nil && min(turn, around-turn) >= Quarter
}

// chosen are places by index: that with most contrast first, then again and again the one that has most contrast and is least like those
// before it together. There are fewer than asked for where a repeat has no more.
func (s *search) chosen(count int) (list []int) {
	unlike := make([]float64, len(s.places))
	free := make([]bool, len(s.places))
	for i := range free {
		unlike[i], free[i] = math.Inf(1), s.alike == nil || !s.alike(s.places[i])
	}
	for len(list) < count {
		best, most := -1, -1.0
		for i := range s.places {
			if worth := s.shown[i].contrast + min(unlike[i], s.shown[i].contrast); free[i] && worth > most {
				best, most = i, worth
			}
		}
		if best < 0 {
			break
		}
		s.sign.Step(len(s.places) * cells)
		list = append(list, best)
		for i := range s.places {
			if free[i] = free[i] && s.different(s.places[i], s.places[best]); free[i] {
				unlike[i] = min(unlike[i], s.shown[i].unlike(&s.shown[best]))
			}
		}
	}
	return list
}

// motif is what there is to say of a place.
func (s *search) motif(i int) Motif {
	at, w := s.places[i], &s.shown[i]
	figure, light := w.figure()
	return Motif{
		Across: at.across, Down: at.down, Pointing: at.pointing, Figure: figure, Light: light, Busy: w.within > w.contrast,
		Mean: w.mean(), Contrast: w.contrast, Share: w.share,
	}
}
