// Package motifs turns a print of a laid-out top into a plan of places from which eight like wedges make unlike figures.
package motifs

import (
	"fmt"
	"slices"

	"eighthturn/internal/measure"
	"eighthturn/internal/quilt"
	"eighthturn/internal/stop"
	"eighthturn/layout"
)

// Plan is places on one print, the one with most contrast first and each next one as unlike those before it as there is.
type Plan struct {
	Title         string       `json:"title"`
	Fabric        string       `json:"fabric"`
	WedgeFinished measure.NM   `json:"wedge_finished"` // its height
	RepeatAcross  measure.NM   `json:"repeat_across"`
	RepeatDown    measure.NM   `json:"repeat_down"`
	Apart         measure.NM   `json:"apart" length:"atmost"` // any two places are at least so far apart on the cloth, or on stripes turned by Quarter at least
	Striped       bool         `json:"striped"`
	Asked         int          `json:"asked"`
	Lengthwise    []measure.NM `json:"mirror_lines_lengthwise"`    // of the print, along the selvages: so far across
	Crosswise     []measure.NM `json:"mirror_lines_crosswise"`     // from selvage to selvage: so far down
	AnyLengthwise bool         `json:"any_mirror_line_lengthwise"` // stripes crosswise are mirrored at any line along the selvages
	AnyCrosswise  bool         `json:"any_mirror_line_crosswise"`
	Mirrored      bool         `json:"mirrored"` // wedges are mirrored in pairs
	Motifs        []Motif      `json:"motifs"`
}

// Motif is one place, and the figure that eight wedges from it make. Lights are CIE L*.
type Motif struct {
	Name     string     `json:"name"` // that the layout has not yet
	Across   measure.NM `json:"across"`
	Down     measure.NM `json:"down"`
	Pointing int        `json:"pointing"` // degrees clockwise
	Figure   Figure     `json:"figure"`
	Light    bool       `json:"light_figure"` // the figure is lighter than what is around it
	Busy     bool       `json:"busy"`         // what is small in the wedge has more contrast than the figure
	Mean     float64    `json:"mean_light"`   // in linear light
	Contrast float64    `json:"contrast"`     // how far parts of the wedge are from its mean: CIELAB, root mean square
	Share    float64    `json:"light_share"`  // of the wedge that is lighter than the middle of the print, 0 to 1
	Line     string     `json:"line"`         // to write into the layout
	Top      *quilt.Top `json:"-"`            // the eight wedges
}

// Figure is what stands out of eight like wedges.
type Figure uint8

const (
	Even       Figure = iota // nothing, all being alike
	Center                   // the middle
	Wreath                   // a ring between the middle and the edge
	Rim                      // the edge
	Starburst                // eight points, one in the middle of each wedge
	Spokes                   // eight rays along the seams
	Pinwheel                 // one side of each wedge
	FourPoints               // the same, where every other wedge is mirrored
	Mixed                    // no one thing, with contrast
)

// String is the figure's name for other programs.
func (f Figure) String() string {
	return [...]string{"even", "center", "wreath", "rim", "starburst", "spokes", "pinwheel", "four points", "mixed"}[f]
}

// MarshalText writes the figure for other programs.
func (f Figure) MarshalText() ([]byte, error) { return []byte(f.String()), nil }

// How many places are chosen.
const (
	Usual = 12
	Most  = 30
)

// Options of a plan; the zero value chooses as many as is usual.
type Options struct {
	Count    int                    // 0 for Usual
	Mirrored bool                   // every other wedge is cut from the place mirrored at a line of the print
	Taken    func(name string) bool // says whether the layout has a name; nil for never
	Sign     *stop.Sign             // ends the work; nil for never
}

// Unfit is a fabric that gives no motifs.
type Unfit struct {
	Why                      Why
	Pixels                   int // of a wedge's height in the photo
	NeededAcross, NeededDown int // pixels of a whole repeat
}

// Why is why a fabric gives no motifs.
type Why uint8

const (
	OneColor Why = iota // it has neither a photo nor stripes
	NoRepeat            // its photo does not say after how much cloth it comes again
	NoWedges            // no block of the layout has a wedge
	TooSmall            // its photo has too few pixels
	NoMirror            // its print has no mirror line
)

func (u *Unfit) Error() string { return fmt.Sprint("unfit: ", u.Why) }

// leastPixels is how many pixels of its photo a wedge is high at the least: with fewer nobody sees what it shows. Our choice.
const leastPixels = 12

// Build chooses places on a fabric of a top, by index. The error is an *Unfit.
func Build(top *quilt.Top, fabric int, o Options) (*Plan, error) {
	cloth, height := top.Fabrics[fabric].Cloth, top.WedgeFinished(fabric)
	switch {
	case cloth == nil:
		return nil, &Unfit{Why: OneColor}
	case !cloth.Repeats:
		return nil, &Unfit{Why: NoRepeat}
	case height == 0:
		return nil, &Unfit{Why: NoWedges}
	}
	picture := cloth.Picture()
	if err := largeEnough(cloth, picture, height); err != nil {
		return nil, err
	}
	lines := cloth.MirrorLines()
	if o.Mirrored && lines.None() {
		return nil, &Unfit{Why: NoMirror}
	}
	if o.Count == 0 {
		o.Count = Usual
	}
	s := newSearch(cloth, picture, height, top.Units, o)
	p := &Plan{
		Title: top.Title, Fabric: top.Fabrics[fabric].Name, WedgeFinished: height, RepeatAcross: cloth.Across, RepeatDown: cloth.Down,
		Striped: cloth.Stripes != nil, Asked: o.Count, Apart: s.apart, Mirrored: o.Mirrored,
		Lengthwise: inOrder(lines.Lengthwise), Crosswise: inOrder(lines.Crosswise), AnyLengthwise: lines.AnyLengthwise, AnyCrosswise: lines.AnyCrosswise,
	}
	pairs := &pairing{top, fabric, lines}
	if o.Mirrored {
		s.alike = pairs.alike
	}
	for n, at := range s.chosen(o.Count) {
		m := s.motif(at)
		m.Name = NameOf(p.Fabric, n+1, o.Taken)
		m.Line = (&layout.MotifAt{Name: m.Name, Fabric: p.Fabric, Across: m.Across, Down: m.Down, Pointing: m.Pointing}).Line(top.Units)
		cuts := []quilt.Cut{{Motif: m.Name, Place: measure.Point{X: m.Across, Y: m.Down}, Pointing: m.Pointing}}
		if o.Mirrored {
			cuts = pairs.mirror(&m, cuts[0])
		}
		m.Top = top.EightOf(fabric, height, cuts...)
		p.Motifs = append(p.Motifs, m)
	}
	return p, nil
}

// pairing mirrors places of a fabric's print.
type pairing struct {
	top    *quilt.Top
	fabric int
	lines  layout.MirrorLines
}

// of are a cut and the mirrored one.
func (p *pairing) of(cut quilt.Cut) [2]quilt.Cut {
	return p.top.MirrorPair(p.fabric, cut, p.lines.Line(cut.Place.X, cut.Place.Y))
}

// alike says whether a place is its own mirror image.
func (p *pairing) alike(at place) bool {
	pair := p.of(quilt.Cut{Place: measure.Point{X: at.across, Y: at.down}, Pointing: at.pointing})
	return pair[0] == pair[1]
}

// mirror makes a motif one of mirrored pairs, and says how its wedges are cut by turns.
func (p *pairing) mirror(m *Motif, cut quilt.Cut) []quilt.Cut {
	m.Line += " mirrored"
	if m.Figure == Pinwheel {
		m.Figure = FourPoints
	}
	pair := p.of(cut)
	return pair[:]
}

// inOrder is lines from the edge of a repeat on; never nil.
func inOrder(lines []measure.NM) []measure.NM {
	list := append([]measure.NM{}, lines...)
	slices.Sort(list)
	return list
}

// NameOf is a name for a motif of a fabric by its number, with more digits where taken says that the layout has it; nil for never.
func NameOf(fabric string, number int, taken func(string) bool) string {
	letters := []rune(fabric)
	const ending = 8 // letters
	base := string(letters[:min(len(letters), layout.MaxNameChars-ending)])
	name := fmt.Sprintf("%s-%d", base, number)
	for i := 1; taken != nil && taken(name); i++ {
		name = fmt.Sprintf("%s-%d-%d", base, number, i)
	}
	return name
}
