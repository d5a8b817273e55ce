package measure

import (
	"strings"
)

// A System writes lengths, and nothing else does. Each method's name is its policy:
//
//	Nearest  what people read: exact where a short number says it, and else "about" and the nearest mark of a ruler
//	AtLeast  where more does no harm: what is needed, what may stand out
//	AtMost   where less does no harm: what is left over
//	Shop     cloth as shops sell it
//	Exact    what geometry asks for, under the word "exactly"
//
// A length of one plan is so written by Nearest in every output. What the language reads back, such as a layout's own
// numbers in messages, is written by Text.

// Nearest writes nm with its unit as people read it: exactly, where sixty-fourths of an inch or hundredths of the unit show
// it ("3 1/2 in", "5.08 in", "8.89 cm"); else to the nearest Mark, with the word about ("about 5 1/16 in"); what is less than
// half a mark is "under 1/16 in".
func (s System) Nearest(nm NM) string {
	text, about := s.nearest(nm)
	return about + text + " " + s.short()
}

// By writes a width and a height, the unit once: "2 by 14 in", "about 5 1/16 by 7 in".
func (s System) By(width, height NM) string {
	text, about := s.nearest(width)
	if also, alsoAbout := s.nearest(height); also != "" {
		text, about = text+" by "+also, max(about, alsoAbout)
	}
	return about + text + " " + s.short()
}

// Size is By of a rectangle, and "7 in square" of a square.
func (s System) Size(width, height NM) string {
	if d := width - height; d <= Slack && d >= -Slack {
		return s.Nearest(width) + " square"
	}
	return s.By(width, height)
}

// Number is Nearest without the unit, for a column that names it.
func (s System) Number(nm NM) string {
	text, about := s.nearest(nm)
	return about + text
}

// nearest is nm without its unit, and "about " or "".
func (s System) nearest(nm NM) (text, about string) {
	if nm < -Slack {
		text, about = s.nearest(-nm)
		if strings.HasPrefix(text, "under ") {
			return "0", "about "
		}
		return "-" + text, about
	}
	for _, fine := range [2]NM{s.Fine(), s.Unit() / 100} {
		if at, on := On(nm, fine); on {
			return Number(at, s), ""
		}
	}
	at := Nearest(nm, s.Mark())
	if at == 0 {
		return "under " + Number(s.Mark(), s), ""
	}
	return Number(at, s), "about "
}

// Offset is Nearest as quilters say it of a small length in inches that lies on no mark: "a generous 3/16 in" for a little more than
// the mark, "a scant 3/16 in" for a little less; "about" is left for what no eye sees, half of 1/64 in. Common practice, no source.
func (s System) Offset(nm NM) string {
	text := s.Nearest(nm)
	short, about := strings.CutPrefix(text, "about ")
	switch at := Nearest(nm, s.Mark()); {
	case s == Centimetres || !about:
		return text
	case nm-at > Inch/128:
		return "a generous " + short
	case at-nm > Inch/128:
		return "a scant " + short
	}
	return text
}

// AtLeast writes a length of which more does no harm, rounded up to a mark as upToMark says.
func (s System) AtLeast(nm NM) string { return Text(s.upToMark(nm), s) }

// ByAtLeast is a width and a height, each rounded up as by AtLeast.
func (s System) ByAtLeast(width, height NM) string {
	return Number(s.upToMark(width), s) + " by " + s.AtLeast(height)
}

// AtMost writes a length of which less does no harm, rounded down to a mark as downToMark says; what is less than a
// mark is "under 1/8 in".
func (s System) AtMost(nm NM) string {
	at := s.downToMark(nm)
	if at == 0 && nm > Slack {
		return "under " + Text(s.CutMark(), s)
	}
	return Text(at, s)
}

// ByAtMost is a width and a height, each rounded down as by AtMost.
func (s System) ByAtMost(width, height NM) string {
	return Number(s.downToMark(width), s) + " by " + Text(s.downToMark(height), s)
}

// Shop writes a length of cloth as shops sell it, in yards or metres: by the eighth of a yard or the tenth of a metre, and to
// two decimals where no shop would cut it so. What to buy is rounded up before, by the plan.
func (s System) Shop(nm NM) string {
	of, name := NM(36), " yd"
	if s == Centimetres {
		of, name = 100, " m"
	}
	if nm%s.ShopStep() == 0 {
		return Number(nm/of, s) + name
	}
	return Decimal(nm/of, s, 2) + name
}

// Distance writes how far off something is seen from: feet to a tenth, metres to a hundredth.
func (s System) Distance(nm NM) string {
	if s == Centimetres {
		return Decimal(nm/100, s, 2) + " m"
	}
	return strings.TrimSuffix(Decimal(nm/12, s, 1), ".0") + " ft"
}

// Exact writes nm with its unit: a mixed fraction where sixty-fourths of an inch show it, and up to three decimals where not.
// It stands under the word "exactly" and nowhere else.
func (s System) Exact(nm NM) string { return s.ExactNumber(nm) + " " + s.short() }

// ExactNumber is Exact without the unit.
func (s System) ExactNumber(nm NM) string {
	if at, on := On(nm, s.Fine()); on {
		return Number(at, s)
	}
	return decimal(nm, s.Unit(), 3)
}

// AboutMeans tells the reader of the nearest mark.
func (s System) AboutMeans() string { return "About means to the nearest " + Text(s.Mark(), s) + "." }

// short is the unit as it stands behind a number: "in" or "cm".
func (s System) short() string {
	if s == Centimetres {
		return "cm"
	}
	return "in"
}

// JSONLength is a length in every JSON that is written: exact, and as people read it.
type JSONLength struct {
	NM   NM     `json:"nm"`
	Text string `json:"text"`
}

// JSON is nm for JSON, its text written by Nearest.
func (s System) JSON(nm NM) JSONLength { return JSONLength{nm, s.Nearest(nm)} }
