package booklet

import (
	"fmt"
	"math"
	"math/big"
	"reflect"
	"regexp"
	"slices"
	"strings"
	"sync"

	"eighthturn/internal/document"
	"eighthturn/internal/measure"
)

const numberPattern = `[0-9]+ [0-9]+/[0-9]+|[0-9]+/[0-9]+|[0-9]+(?:\.[0-9]+)?`

var (
	lengthPattern = regexp.MustCompile(`(at least |up to |under |exactly )?([Aa]bout |generous |scant )?(?:(` + numberPattern + `) by )?(` + numberPattern + `) (in|cm|mm|m|yd)\b`)
	// what is rounded up though no word says so: the cloth of a fabric, what wedges take of a strip, how long strips and sets are
	roundedUp  = regexp.MustCompile(`(: |\(|short by |[0-9] (?:strips? (?:for|to be joined for) [^;]*?, |sets? )|(?:the|each) set |length of |length used )((?:` + numberPattern + `) (?:in|cm)\b)`)
	shortSides = regexp.MustCompile(`(short sides (?:about )?[0-9 ./]+) and `)
)

// numberedName is a name of a fabric that ends in a number, which is no length and no count.
var numberedName = regexp.MustCompile(`\pL+[-_][0-9]+`)

// unitSizes are the units in nanometres.
func unitSize(unit string) *big.Rat {
	return map[string]*big.Rat{
		"in": big.NewRat(25_400_000, 1), "yd": big.NewRat(36*25_400_000, 1), "mm": big.NewRat(1_000_000, 1), "cm": big.NewRat(10_000_000, 1), "m": big.NewRat(1_000_000_000, 1),
	}[unit]
}

// value is a written number as a fraction, worked out by math/big and not by package measure.
func value(text string) *big.Rat {
	sum := new(big.Rat)
	for _, part := range strings.Fields(text) {
		v, ok := new(big.Rat).SetString(part)
		if !ok {
			panic(text)
		}
		sum.Add(sum, v)
	}
	return sum
}

// written is a length that a text names.
type written struct {
	text         string
	nm           *big.Rat
	about        bool
	yards        bool
	above, below bool  // scant: it stands above what it is, or generous: below
	more, less   bool  // as words round: it may be up to an eighth of an inch above, or below
	rounded      int64 // half of its last decimal in nanometres, where it is exact or of cloth and rounded; else 0
}

// namedLengths are the lengths that texts name: many patterns say the same.
var namedLengths sync.Map

// lengthsIn are the lengths that a text names, not to be changed.
func lengthsIn(text string) []written {
	if list, ok := namedLengths.Load(text); ok {
		return list.([]written)
	}
	list := readLengths(text)
	namedLengths.Store(text, list)
	return list
}

func readLengths(text string) []written {
	var list []written
	less := strings.HasPrefix(text, "Leftover") || strings.HasPrefix(text, "Usable leftovers")
	text = roundedUp.ReplaceAllString(numberedName.ReplaceAllString(text, "a fabric"), "$1 at least $2")
	text = shortSides.ReplaceAllString(text, "$1 by ")
	for _, m := range lengthPattern.FindAllStringSubmatch(text, -1) {
		about := m[2] != ""
		for _, number := range m[3:5] {
			if number == "" {
				continue
			}
			l := written{text: m[0], nm: new(big.Rat).Mul(value(number), unitSize(m[5])), about: about, yards: m[5] == "yd" || m[5] == "m", more: m[1] == "at least " || m[1] == "up to " || m[1] == "under ", less: less, above: m[2] == "scant ", below: m[2] == "generous "}
			if _, decimals, _ := strings.Cut(number, "."); decimals != "" && (m[1] == "exactly " || l.yards) {
				half, _ := new(big.Rat).Quo(unitSize(m[5]), big.NewRat(2*int64(math.Pow10(len(decimals))), 1)).Float64()
				l.rounded = int64(half) + 1
			}
			list = append(list, l)
		}
	}
	return list
}

// reported are all lengths of the reports, found by walking through them.
func reported(r Reports) map[measure.NM]bool {
	found := map[measure.NM]bool{}
	t := r.Top
	for _, l := range []measure.NM{t.Outer.Width(), t.Outer.Height(), t.Seam, t.SideFinished, measure.Yard, r.Top.Units.Mark()} {
		found[l] = true
	}
	middle := map[measure.System]measure.NM{measure.Inches: measure.Inch, measure.Centimetres: 3 * measure.Centimetre}[t.Units]
	for _, l := range []measure.NM{middle, middle + 2*t.Seam, 3*(middle+2*t.Seam) - 4*t.Seam} { // three strips sewn together
		found[l] = true
	}
	for _, b := range t.CutFacts.Borders {
		found[b.Width] = true
	}
	for _, side := range [][]measure.NM{measure.Inches: {6 * measure.Inch, 24 * measure.Inch}, measure.Centimetres: {15 * measure.Centimetre, 60 * measure.Centimetre}}[t.Units] { // of a ruler
		found[side] = true
	}
	for one, i := r.Plans.One(), 0; i < len(one.Lines); i++ { // strips in kits are longer, to be cut to the quilt's measure
		found[one.Lines[i].Piece.AlongCut+one.Longer] = true
	}
	seen := map[uintptr]bool{}
	walk(reflect.ValueOf(*r.Cuts), found, seen)
	walk(reflect.ValueOf(*r.Plans.One()), found, seen)
	for i := range r.Sewing.Blocks {
		walk(reflect.ValueOf(r.Sewing.Blocks[i]), found, seen)
	}
	for _, p := range r.Plans.Sized() { // the tables of sizes
		found[p.Top.Outer.Width()], found[p.Top.Outer.Height()], found[p.Top.SideFinished] = true, true, true
		for _, b := range p.Top.CutFacts.Borders {
			found[b.Width] = true
		}
		walk(reflect.ValueOf(*p.Cuts()), found, seen)
	}
	found[r.Sewing.Grain.Staystitch] = true
	for _, s := range r.Sewing.Assembly.Stages {
		walk(reflect.ValueOf(s), found, seen)
	}
	return found
}

func walk(v reflect.Value, found map[measure.NM]bool, seen map[uintptr]bool) {
	switch v.Kind() {
	case reflect.Int64:
		if v.Type() == reflect.TypeFor[measure.NM]() {
			n := v.Int()
			found[measure.NM(max(n, -n))] = true
		}
	case reflect.Pointer:
		if !v.IsNil() && !seen[v.Pointer()] {
			seen[v.Pointer()] = true
			walk(v.Elem(), found, seen)
		}
	case reflect.Struct:
		for i := range v.NumField() {
			walk(v.Field(i), found, seen)
		}
	case reflect.Slice, reflect.Array:
		if e := v.Type().Elem().Kind(); e == reflect.Int || e == reflect.Int32 || e == reflect.Uint8 {
			return
		}
		for i := range v.Len() {
			walk(v.Index(i), found, seen)
		}
	}
}

// precutName is a size within the name of a precut or package, which is no length of a report.
var precutName = regexp.MustCompile(`^(?:(?:10|5) in squares?|2 1/2 in strips?)$`)

// unknownLengths are lengths in the text that no report has.
func unknownLengths(d document.Document, r Reports) []string {
	found := reported(r)
	list := make([]measure.NM, 0, len(found))
	for nm := range found {
		list = append(list, nm)
	}
	slices.Sort(list)
	var wrong []string
	for _, text := range ownTexts(d) {
		if precutName.MatchString(text) {
			continue
		}
		for _, l := range lengthsIn(text) {
			if l.nm.Sign() == 0 {
				wrong = append(wrong, fmt.Sprintf("a length of nothing in %q", text))
			}
			if !known(l, list, r.Top.Units) {
				wrong = append(wrong, fmt.Sprintf("no report has %q in %q", l.text, text))
			}
		}
	}
	return wrong
}

// prints says whether a length stands for one of the reports': within half a mark where it says about, and else exactly, but for
// what arithmetic leaves.
func prints(l written, nm measure.NM, slack int64, units measure.System) bool {
	off := new(big.Rat).Sub(l.nm, new(big.Rat).SetInt64(int64(nm)))
	round := int64(measure.Inch/8) - 1
	if units == measure.Centimetres {
		round = int64(measure.Millimetre) - 1
	}
	if l.above && off.Sign() <= 0 || l.below && off.Sign() >= 0 {
		return false
	}
	if l.more && off.Sign() > 0 || l.less && off.Sign() < 0 {
		slack = round
	}
	slack = max(slack, l.rounded, int64(measure.Slack))
	return off.Abs(off).Cmp(big.NewRat(slack, 1)) <= 0
}

// known says whether a length is one of the reports'.
func known(l written, list []measure.NM, units measure.System) bool {
	slack := int64(measure.Inch / 32)
	if units == measure.Centimetres {
		slack = int64(measure.Millimetre / 2)
	}
	if !l.about {
		slack = 0
	}
	if units == measure.Centimetres && l.yards {
		slack = 1
	}
	at, _ := l.nm.Float64()
	i, _ := slices.BinarySearch(list, measure.NM(at)-measure.Inch/8-1)
	for ; i < len(list) && list[i] <= measure.NM(at)+measure.Inch/8+1; i++ {
		if prints(l, list[i], slack, units) {
			return true
		}
	}
	return false
}

// missingCuts are cut sizes of the plan that the text does not name.
func missingCuts(d document.Document, r Reports) []string {
	var list []written
	for _, text := range ownTexts(d) {
		list = append(list, lengthsIn(text)...)
	}
	var wrong []string
	want := func(nm measure.NM, what string) {
		slack := int64(measure.Inch / 32)
		for _, l := range list {
			limit := slack
			if !l.about {
				limit = 0
			}
			if prints(l, nm, limit, r.Cuts.Units) {
				return
			}
		}
		wrong = append(wrong, what+" of "+measure.Text(nm, r.Cuts.Units)+" is not in the text")
	}
	for i := range r.Cuts.Fabrics {
		f := &r.Cuts.Fabrics[i]
		want(f.Purchase.Buy, "the purchase")
		want(f.Purchase.Need, "the exact length")
		for _, s := range f.Strips {
			want(s.WidthCut, "a strip's width")
		}
		for _, n := range f.Lines {
			want(r.Cuts.Lines[n].Piece.AcrossCut, "a piece's width")
		}
	}
	const mostSets = 8 // more are told in a table
	if len(r.Cuts.Sets) <= mostSets {
		for _, s := range r.Cuts.Sets {
			want(s.WidthCut, "a strip set's width")
			for _, b := range s.Bands {
				want(b.WidthCut, "a band's width")
			}
		}
	}
	return wrong
}
