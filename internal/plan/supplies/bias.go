package supplies

import (
	"math/big"

	"eighthturn/internal/measure"
)

// Bias is a binding cut on the bias from one square of cloth: the square is cut on its diagonal, sewn to a slanting piece
// with its bias edges above and below, marked in rows, and sewn to a tube whose rows run on into each other.
type Bias struct {
	Need     measure.NM // of binding
	StripCut measure.NM
	// AreaSquare is the side of the square whose area is the binding's, the next nanometre: a bound that no way of cutting
	// beats.
	AreaSquare measure.NM
	// RuleSquare is AreaSquare up to a whole number of strip widths, as a published rule has it. It may be short, since
	// rows are whole and seams take some.
	RuleSquare measure.NM
	// Square is the least whole number of strip widths that gives the length, in whole rows and with two seams.
	Square measure.NM
	Yield  measure.NM // what Square gives
}

// MakeBias finds the square for a bias binding, its allowance as in a straight one. Join has no part in it. The error
// says which length is out of bounds.
func MakeBias(o BindingOptions) (*Bias, error) {
	o.fill()
	if err := o.check(); err != nil {
		return nil, err
	}
	return biasFor(2*(o.WidthFinished+o.HeightFinished)+o.Allowance, o.StripCut, o.Seam), nil
}

// biasFor is the square for a length of bias strip; lengths are as a binding's check leaves them.
func biasFor(need, stripCut, seam measure.NM) *Bias {
	b := &Bias{Need: need, StripCut: stripCut, AreaSquare: rootUp(need, stripCut)}
	b.RuleSquare = measure.RoundUp(b.AreaSquare, stripCut)
	b.Square = b.RuleSquare
	for BiasYield(b.Square, stripCut, seam) < need {
		b.Square += stripCut
	}
	b.Yield = BiasYield(b.Square, stripCut, seam)
	return b
}

// BiasYield is the bias strip that a square gives, sewn to a tube: the slanting piece is side / sqrt 2 high between its
// bias edges and holds so many whole rows, each as long as the square's diagonal less what two seams, at half a right
// angle to the rows, take: 4 sqrt 2 allowances. It is never above AreaYield.
func BiasYield(side, stripCut, seam measure.NM) measure.NM {
	if stripCut <= 0 || side <= 4*seam {
		return 0
	}
	rows := rootDown(side, side, 2) / stripCut
	return rows * 2 * rootDown(side-4*seam, side-4*seam, 2) // twice x / sqrt 2 is x sqrt 2
}

// AreaYield is the length of strip whose area is that of a piece of cloth, rounded down: more than any way of cutting can
// give.
func AreaYield(width, height, stripCut measure.NM) measure.NM {
	if stripCut <= 0 {
		return 0
	}
	area := new(big.Int).Mul(big.NewInt(int64(width)), big.NewInt(int64(height)))
	return measure.NM(area.Quo(area, big.NewInt(int64(stripCut))).Int64())
}

// rootUp is the square root of a product, rounded up.
func rootUp(a, b measure.NM) measure.NM {
	product := new(big.Int).Mul(big.NewInt(int64(a)), big.NewInt(int64(b)))
	root := new(big.Int).Sqrt(product)
	if new(big.Int).Mul(root, root).Cmp(product) < 0 {
		root.Add(root, big.NewInt(1))
	}
	return measure.NM(root.Int64())
}

// rootDown is the square root of a product divided by a number, rounded down.
func rootDown(a, b, by measure.NM) measure.NM {
	product := new(big.Int).Mul(big.NewInt(int64(a)), big.NewInt(int64(b)))
	product.Quo(product, big.NewInt(int64(by)))
	return measure.NM(product.Sqrt(product).Int64())
}
