// Package supplies turns the finished size of a top into what is bought beside its patches, and lengths of cloth into what
// a shop sells: backing, batting, binding, strips for borders, sizes of beds.
//
// It knows nothing of layouts. Lengths are whole nanometres, finished, cut, or of cloth as it lies in the shop, as their
// names say. Where the trade has several habits the fields say which one was followed.
package supplies

import "eighthturn/internal/measure"

// Buying says how lengths of cloth become what is bought. Of the zero value, yards up to the next eighth: the closest
// rounding that is in use, and common practice with no source.
type Buying struct {
	Units      measure.System // yards, or metres up to the next tenth
	Quarters   bool           // up to a quarter of a yard in place of an eighth; has no part in metres
	SquaringUp measure.NM     // added for the ends, which are cut square first; default none
	Spare      measure.NM     // added for slips and shrinking; default none
}

// Purchase is a length of cloth to buy.
type Purchase struct {
	ExactCut measure.NM `json:"exact_cut" length:"atleast"` // as it was asked for
	SquareUp measure.NM `json:"square_up"`                  // of what is needed: for squaring up
	Spare    measure.NM `json:"spare"`                      // of what is needed: for slips
	Need     measure.NM `json:"need" length:"atleast"`      // with squaring up and the spare length
	Buy      measure.NM `json:"buy" length:"shop"`          // a whole number of steps, Need or more
	Left     measure.NM `json:"left" length:"atmost"`       // of what is bought, where nothing is taken for squaring up and for slips
	Step     measure.NM `json:"step" length:"shop"`         // what a shop cuts by
}

// Step is what lengths are rounded up to.
func (b Buying) Step() measure.NM {
	if b.Quarters && b.Units == measure.Inches {
		return measure.Yard / 4
	}
	return b.Units.ShopStep()
}

// Of is what to buy for some lengths of one cloth, each 0 or more: they are added up first, and the total is rounded once.
// A length that is a whole number of steps stays as it is. For no length nothing is bought.
func (b Buying) Of(lengthsCut ...measure.NM) Purchase {
	p := Purchase{Step: b.Step()}
	for _, length := range lengthsCut {
		p.ExactCut += length
	}
	if p.ExactCut <= 0 {
		return p
	}
	p.SquareUp, p.Spare = b.SquaringUp, b.Spare
	p.Need = p.ExactCut + b.SquaringUp + b.Spare
	p.Buy = measure.RoundUp(p.Need, p.Step)
	p.Left = p.Buy - p.ExactCut
	return p
}
