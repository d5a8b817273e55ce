package blocks

import (
	"math"

	"eighthturn/internal/measure"
)

// tumblers: columns of trapezoids as wide as a block, wide and narrow ends in turn, with an
// end piece above and below. Neighbouring columns lean opposite ways.
func tumblers() *Kind {
	return &Kind{
		Name:    "tumblers",
		Summary: "columns of trapezoids; cells under one another are one column, neighboring columns lean opposite ways",
		Drawing: `
+---------------+
|  T        _.-'|
|       _.-'    |
|   _.-'        |
|.-'       T    |
|'-._           |
|    '-._       |
|  T     '-._   |
|            '-.|
|      T      _.|
|         _.-'  |
|     _.-'   T  |
+---------------+`,
		Roles: slicesOf([]Role{{
			Name: "pieces", Letter: "T", Summary: "the pieces of the column, end pieces too",
			Order: "down the column, over and over", Dealing: InTurn,
		}}, edges("end pieces", false, TopSide|BottomSide, 0)),
		Turning: Fixed,
		Height:  WholeSide,
		Column:  true,
		Recipe:  downTheColumn(),
	}
}

// downTheColumn is how a column is sewn: piece to piece, from the top.
func downTheColumn() Recipe {
	return Recipe{
		Steps: []Step{{
			Name: "column",
			Do: "Lay out the pieces of one column in order from the top: an end piece with its square end at the top, the tumblers with their wide sides alternately left and right, and an end piece with its square end at the bottom. " +
				"Sew each to the next along the slanted edges, right sides together. These are bias edges: pin them, and do not pull.",
			Check: "both long edges of the column are straight",
		}},
		Pressing: []Pressing{{Ways: [2]string{"toward the bottom", "toward the top"}}},
	}
}

// tan22 is tan 22.5 degrees = sqrt 2 - 1.
const tan22 = math.Sqrt2 - 1

// Column is how a column of tumblers is divided: Whole whole pieces of a mean length along
// the column, and an end piece of mean length End at either end. All finished, nanometres;
// lengths along the column are measured down its middle.
type Column struct {
	Mean  float64
	Whole int
	End   float64
}

// ColumnError says that a column cannot be divided as asked.
type ColumnError struct {
	Needed measure.NM // the mean length at and below which whole pieces have no narrow side left
}

func (e *ColumnError) Error() string { return "the column cannot be divided" }

// MeanByLine is the mean finished length, down the column, of pieces cut with the given
// line of a wedge rule on the strip's edge: T(2 line - strip - 2 seam), in nanometres. The
// line and the strip are cut widths.
func MeanByLine(line, strip, seam measure.NM) float64 {
	return tan22 * float64(2*line-strip-2*seam)
}

// LineFor is the line of a wedge rule that gives pieces of a mean finished length.
func LineFor(mean float64, strip, seam measure.NM) measure.NM {
	return measure.NM(math.Round((float64(mean/tan22) + float64(strip+2*seam)) / 2))
}

// ByLine divides a column of a finished length, of a side or more, whose pieces have the mean length that a
// line gives; the two end pieces take what is left.
func ByLine(length, side measure.NM, mean float64) (Column, error) {
	lean := float64(tan22 * float64(side))
	if mean <= lean {
		return Column{}, &ColumnError{Needed: measure.NM(math.Ceil(lean))}
	}
	whole := int(math.Floor(float64(length) / mean))
	for whole > 0 && (float64(length)-float64(float64(whole)*mean))/2 <= lean/2 {
		whole--
	}
	return Column{mean, whole, (float64(length) - float64(float64(whole)*mean)) / 2}, nil
}

// ByLength divides a column into pieces of about the wanted mean length: as many as come
// nearest to it, with end pieces of half the mean.
func ByLength(length, side measure.NM, about measure.NM) (Column, error) {
	lean := float64(tan22 * float64(side))
	pieces := max(1, int(math.Round(float64(length)/float64(about))))
	mean := float64(length) / float64(pieces)
	if mean <= lean {
		return Column{}, &ColumnError{Needed: measure.NM(math.Ceil(lean))}
	}
	return Column{mean, pieces - 1, mean / 2}, nil
}

// Slant is how far down a column a slanted seam begins and ends: at the upper of its two
// ends and at the lower, nanometres.
type Slant struct{ Upper, Lower measure.NM }

// Slants is the slanted seams of a column of a finished width: one more than there are whole
// pieces. Every end is rounded once, from where it is, so that corners of columns of
// different lengths that meet are the same point.
func (c Column) Slants(side measure.NM) []Slant {
	half := float64(tan22 * float64(side) / 2)
	slants := make([]Slant, c.Whole+1)
	for i := range slants {
		middle := c.End + float64(float64(i)*c.Mean)
		slants[i] = Slant{measure.NM(math.Round(middle - half)), measure.NM(math.Round(middle + half))}
	}
	return slants
}
