package supplies

import (
	"fmt"

	"eighthturn/internal/measure"
)

// Join is how two strips are sewn end to end.
type Join uint8

const (
	// Diagonal: the strips lie across each other at a right angle and are sewn from corner to corner. The middle line of
	// the two then loses half a cut width of each strip: one cut width a join, whatever the seam allowance.
	Diagonal Join = iota
	// Straight: ends are sewn edge to edge. A join loses two seam allowances.
	Straight
	// InAllowance: joins lose nothing of their own, since the allowance covers them. Published rules of thumb reckon so.
	InAllowance
)

// loss is what a join takes off the length of two strips.
func (j Join) loss(stripCut, seam measure.NM) measure.NM {
	switch j {
	case Diagonal:
		return stripCut
	case Straight:
		return 2 * seam
	}
	return 0
}

// BindingOptions say what is bound and with what.
type BindingOptions struct {
	Units          measure.System // what the defaults below are
	WidthFinished  measure.NM     // of the quilt
	HeightFinished measure.NM     // of the quilt
	StripCut       measure.NM     `json:"strip_cut"` // default 2 1/2 in, 6.5 cm
	UsableWidth    measure.NM     // default 40 in, 100 cm
	Join           Join
	Seam           measure.NM // allowance of straight joins; default 1/4 in, 0.75 cm
	// Allowance is what is added to the perimeter for the four corners and for closing the ring; default 10 in, 25 cm.
	// Published rules add nothing, 9, 10 or 24 inches: it is a convention.
	Allowance   measure.NM
	NoAllowance bool
}

// Binding is strips across the width of the cloth, sewn end to end.
type Binding struct {
	BindingOptions            // as they were filled in
	Perimeter      measure.NM `json:"perimeter"`             // of the quilt
	Need           measure.NM `json:"need" length:"atleast"` // the perimeter with the allowance
	Strips         int        `json:"strips"`
	Comes          measure.NM `json:"comes_of_whole_strips"` // the binding's length, sewn together
	LengthCut      measure.NM `json:"cloth_cut"`             // of cloth
}

// fill puts in the usual lengths.
func (o *BindingOptions) fill() {
	o.StripCut = usual(o.StripCut, o.Units, 5*measure.Inch/2, 65*measure.Millimetre)
	o.UsableWidth = usualWidth(o.UsableWidth, o.Units)
	o.Seam = usualSeam(o.Seam, o.Units)
	if o.Allowance = usual(o.Allowance, o.Units, 10*measure.Inch, 25*measure.Centimetre); o.NoAllowance {
		o.Allowance = 0
	}
}

func usualSeam(nm measure.NM, s measure.System) measure.NM {
	return usual(nm, s, measure.Inch/4, 75*measure.Millimetre/10)
}

// check is an error for the first length that is out of bounds.
func (o *BindingOptions) check() error {
	return within(o.Units,
		bound{"the width of the quilt", o.WidthFinished, 1, maxTop},
		bound{"the height of the quilt", o.HeightFinished, 1, maxTop},
		bound{"the cut width of the binding", o.StripCut, minStrip, MaxExtra},
		bound{"the usable width", o.UsableWidth, measure.Inch, maxCloth},
		bound{"the seam allowance", o.Seam, 1, maxSeam},
		bound{"the allowance", o.Allowance, 0, MaxExtra})
}

// MakeBinding counts the strips of a binding. The error says which length is out of bounds.
func MakeBinding(o BindingOptions) (*Binding, error) {
	o.fill()
	if err := o.check(); err != nil {
		return nil, err
	}
	b := &Binding{BindingOptions: o, Perimeter: 2 * (o.WidthFinished + o.HeightFinished)}
	b.Need = b.Perimeter + o.Allowance
	loss := o.Join.loss(o.StripCut, o.Seam)
	if err := usedUp(o.Units, o.UsableWidth, loss); err != nil {
		return nil, err
	}
	n := perPiece(b.Need, o.UsableWidth, loss)
	if n > maxStrips {
		return nil, fmt.Errorf("%d strips are wanted; the limit is %d", n, maxStrips)
	}
	b.Strips, b.Comes, b.LengthCut = n, joined(n, o.UsableWidth, loss), measure.NM(n)*o.StripCut
	return b, nil
}

// usedUp is an error where joins take all of a strip.
func usedUp(s measure.System, width, loss measure.NM) error {
	if width <= loss {
		return fmt.Errorf("fabric of %s is used up by the joins, which take %s each", measure.Text(width, s), measure.Text(loss, s))
	}
	return nil
}
