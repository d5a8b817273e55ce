package supplies

import (
	"fmt"

	"eighthturn/internal/measure"
)

// BackingOptions say what a backing is to cover and what it is made of.
type BackingOptions struct {
	Units          measure.System // what the defaults below are
	WidthFinished  measure.NM     // of the top
	HeightFinished measure.NM     // of the top
	UsableWidth    measure.NM     // of the cloth between its selvages, wide backing cloth as well; default 40 in, 100 cm
	Overhang       measure.NM     `json:"overhang"`       // beyond the top, on each side; default 4 in, 10 cm
	Seam           measure.NM     `json:"seam_allowance"` // allowance of the seams between panels; default 1/2 in, 1.5 cm
}

// Direction is which way the seams of a backing run.
type Direction uint8

const (
	// UpAndDown: the panels stand beside each other, as long as the backing is high.
	UpAndDown Direction = iota
	// Across: the panels lie under each other, as long as the backing is wide. Long-arm quilters often prefer it.
	Across
)

// String is the direction's name for other programs.
func (d Direction) String() string { return [...]string{"up-and-down", "across"}[d] }

// Backing is the two ways to make a backing.
type Backing struct {
	BackingOptions            // as they were filled in
	WidthCut       measure.NM `json:"width_cut" length:"atleast"` // of the backing
	HeightCut      measure.NM `json:"height_cut" length:"atleast"`
	Ways           [2]Pieced  `json:"ways"` // by Direction
	Less           Direction  `json:"less"` // the way that takes less cloth; Across if they take the same
}

// Pieced is a backing whose seams run one way.
type Pieced struct {
	Panels    int        `json:"panels"`                      // widths of cloth
	PanelCut  measure.NM `json:"panel_cut" length:"atleast"`  // the length of each
	AcrossCut measure.NM `json:"across_cut" length:"atleast"` // what must be covered across the panels
	Comes     measure.NM `json:"comes"`                       // what all the panels come to across, sewn together at their whole usable width
	LengthCut measure.NM `json:"length_cut" length:"atleast"` // of cloth in all
	// Split is the cut widths where one panel is cut in two along its length, the halves outside, so that no seam runs down
	// the middle. It has one seam more. Nil for an odd number of panels, and where the halves would not reach.
	Split []measure.NM
	Cliff Cliff `json:"cliff"`
	Left  Size  `json:"left_over" length:"atmost"` // one piece, where the panels cover more than they must: its width and length, cut
}

// Cliff is how near the number of panels is to another one.
type Cliff struct {
	Step  measure.NM `json:"step"`          // 1 in, 2.5 cm
	Costs bool       `json:"costs_a_panel"` // cloth that is a step narrower takes a panel more, or more than one, or leaves nothing
	Saves bool       `json:"saves_a_panel"` // cloth that is a step wider takes one less
}

// MakeBacking plans a backing both ways. The error says which length is out of bounds.
func MakeBacking(o BackingOptions) (*Backing, error) {
	o.UsableWidth = usualWidth(o.UsableWidth, o.Units)
	o.Seam = usual(o.Seam, o.Units, measure.Inch/2, 15*measure.Millimetre)
	o.Overhang = usual(o.Overhang, o.Units, 4*measure.Inch, 10*measure.Centimetre)
	if err := o.check(); err != nil {
		return nil, err
	}
	b := &Backing{BackingOptions: o, WidthCut: o.WidthFinished + 2*o.Overhang, HeightCut: o.HeightFinished + 2*o.Overhang}
	b.Ways[UpAndDown] = o.pieced(b.WidthCut, b.HeightCut)
	b.Ways[Across] = o.pieced(b.HeightCut, b.WidthCut)
	if b.Less = Across; b.Ways[UpAndDown].LengthCut < b.Ways[Across].LengthCut {
		b.Less = UpAndDown
	}
	return b, nil
}

func (o *BackingOptions) check() error {
	err := within(o.Units,
		bound{"the width of the top", o.WidthFinished, 1, maxTop},
		bound{"the height of the top", o.HeightFinished, 1, maxTop},
		bound{"the usable width", o.UsableWidth, measure.Inch, maxCloth},
		bound{"the overhang", o.Overhang, 0, MaxExtra},
		bound{"the seam allowance of the backing", o.Seam, 1, maxSeam})
	if err != nil {
		return err
	}
	if o.UsableWidth <= 2*o.Seam {
		return fmt.Errorf("fabric of %s leaves nothing between two seam allowances of %s", measure.Text(o.UsableWidth, o.Units), measure.Text(o.Seam, o.Units))
	}
	longest := max(o.WidthFinished, o.HeightFinished) + 2*o.Overhang
	if n := perPiece(longest, o.UsableWidth, 2*o.Seam); n > maxPanels {
		return fmt.Errorf("the backing takes %d panels; the limit is %d", n, maxPanels)
	}
	return nil
}

// pieced lays panels of a length side by side until they cover what lies across.
func (o *BackingOptions) pieced(across, along measure.NM) Pieced {
	n := perPiece(across, o.UsableWidth, 2*o.Seam)
	p := Pieced{
		Panels: n, PanelCut: along, AcrossCut: across, Comes: joined(n, o.UsableWidth, 2*o.Seam), LengthCut: measure.NM(n) * along,
	}
	p.Split, p.Cliff = o.split(n, across), o.cliff(n, across)
	if spare := p.Comes - across; spare > 0 {
		p.Left = Size{spare, along}
	}
	return p
}

// split is whole panels with half a panel on either side, nil where they do not cover what lies across.
func (o *BackingOptions) split(n int, across measure.NM) []measure.NM {
	half := o.UsableWidth / 2
	if n%2 != 0 || measure.NM(n-1)*o.UsableWidth+2*half-measure.NM(n)*2*o.Seam < across {
		return nil
	}
	list := []measure.NM{half}
	for range n - 1 {
		list = append(list, o.UsableWidth)
	}
	return append(list, half)
}

// cliff asks how many panels cloth takes that is a little narrower or wider.
func (o *BackingOptions) cliff(n int, across measure.NM) Cliff {
	c := Cliff{Step: usual(0, o.Units, measure.Inch, 25*measure.Millimetre)}
	narrow, wide := o.UsableWidth-c.Step, o.UsableWidth+c.Step
	c.Costs = narrow <= 2*o.Seam || perPiece(across, narrow, 2*o.Seam) > n
	c.Saves = perPiece(across, wide, 2*o.Seam) < n
	return c
}
