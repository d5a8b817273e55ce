package svgout

import (
	"fmt"
	"math/rand/v2"
	"regexp"
	"slices"
	"strconv"
	"strings"
	"testing"

	"eighthturn/internal/measure"
	"eighthturn/internal/quilt"
	"eighthturn/internal/quilttest/invent"
)

var plainNumber = regexp.MustCompile(`^(-?)(0|[1-9]\d*)(?:\.(\d{0,3}[1-9]))?$`)

// tenThousandths reads a number with up to four decimals, as a whole number of them.
func tenThousandths(text string) (int64, error) {
	plain := plainNumber.FindStringSubmatch(text)
	if plain == nil {
		return 0, fmt.Errorf("%q is not written plainly", text)
	}
	n, err := strconv.ParseInt(plain[1]+plain[2]+plain[3]+strings.Repeat("0", 4-len(plain[3])), 10, 64)
	return n, err
}

// lawReadBack says that a length, written in units of a 96th of an inch and read back, is the nearest ten-thousandth of one.
func lawReadBack(write func(b []byte, nm measure.NM) []byte, nm measure.NM) error {
	text := string(write(nil, nm))
	n, err := tenThousandths(text)
	if err != nil {
		return err
	}
	// A unit is 25,400,000/96 nanometres, so a ten-thousandth is 635/24 of them.
	if twice := 48*int64(nm) - 1270*n; twice < -635 || twice > 635 {
		return fmt.Errorf("%d nm are written %s", nm, text)
	}
	return nil
}

// lengthsToWrite are lengths around 0 and every power of ten of a unit and of its ten-thousandth, both sides of it, and some
// between them.
func lengthsToWrite() []measure.NM {
	var list []measure.NM
	for step := int64(1); step <= 100_000_000_000; step *= 10 {
		for _, n := range []int64{0, step, 2 * step, 5 * step, 11 * step} {
			for off := int64(-40); off <= 40; off++ {
				list = append(list, measure.NM(n*635/24+off), -measure.NM(n*635/24+off))
			}
			list = append(list, measure.NM((n+step/10)*635/24), measure.NM((n+step/100)*635/24))
		}
	}
	rng := rand.New(rand.NewPCG(61, 67))
	for range 5_000 {
		list = append(list, measure.NM(rng.Int64N(1<<(4+rng.IntN(38)))))
	}
	return list
}

func TestNumbersReadBack(t *testing.T) {
	for _, nm := range lengthsToWrite() {
		if err := lawReadBack(appendNumber, nm); err != nil {
			t.Error(err)
		}
	}
	for n := range int32(20_000) {
		text := string(appendHundredths(nil, n))
		if got, err := tenThousandths(text); err != nil || got != int64(n)*100 {
			t.Errorf("%d hundredths are written %s", n, text)
		}
	}
	for n := int64(0); n < 40_000_000; n += 1 + n/1000 {
		// A hundredth of a unit is 25,400,000/9,600 nanometers, which is 15,875/6.
		if twice := 12*n - 31_750*int64(hundredths(measure.NM(n))); twice < -15_875 || twice > 15_875 {
			t.Errorf("%d nm are %d hundredths", n, hundredths(measure.NM(n)))
		}
		if twice := 12*int64(ofHundredths(int32(n))) - 31_750*n; twice < -6 || twice > 6 {
			t.Errorf("%d hundredths are %d nm", n, ofHundredths(int32(n)))
		}
	}
	for _, nm := range []measure.NM{0, 1, -1, 13, -13} {
		if text := string(appendNumber(nil, nm)); text != "0" {
			t.Errorf("%d nm are written %s", nm, text)
		}
	}
}

func TestNumbersReadBackCatches(t *testing.T) {
	for what, replace := range map[string][2]string{
		"tens without their first digit":     {`^1(\d(\.|$))`, "$1"},
		"hundreds without their first digit": {`^1(\d\d(\.|$))`, "$1"},
		"a lost nought":                      {`\.0`, "."},
		"a lost sign":                        {`^-`, ""},
		"three decimals":                     {`(\.\d\d[1-9])\d$`, "$1"},
		"idle noughts":                       {`(\.\d)$`, "${1}0"},
	} {
		pattern, caught := regexp.MustCompile(replace[0]), false
		bad := func(b []byte, nm measure.NM) []byte {
			return append(b, pattern.ReplaceAllString(string(appendNumber(nil, nm)), replace[1])...)
		}
		for _, nm := range lengthsToWrite() {
			caught = caught || lawReadBack(bad, nm) != nil
		}
		if !caught {
			t.Errorf("%s: not caught", what)
		}
	}
}

// lawPlaces says that the cloth of a drawing has the outlines of the top's faces, corner by corner to the nearest
// ten-thousandth of a unit, and no others.
func lawPlaces(top *quilt.Top, svg []byte) error {
	count, err := byColour(svg)
	if err != nil {
		return err
	}
	var drawn, want []string
	for outline, n := range count {
		_, data, _ := strings.Cut(outline, " M")
		var corners []string
		for _, number := range strings.FieldsFunc(data, func(r rune) bool { return r == 'L' || r == ' ' }) {
			at, err := tenThousandths(number)
			if err != nil {
				return err
			}
			corners = append(corners, strconv.FormatInt(at, 10))
		}
		drawn = append(drawn, slices.Repeat([]string{strings.Join(corners, " ")}, n)...)
	}
	nearest := func(nm measure.NM) string { return strconv.FormatInt((48*int64(nm)+635)/1270, 10) }
	for _, f := range top.Faces {
		var corners []string
		for _, p := range f.Outline {
			corners = append(corners, nearest(p.X), nearest(p.Y))
		}
		want = append(want, strings.Join(corners, " "))
	}
	slices.Sort(drawn)
	slices.Sort(want)
	for i := range min(len(drawn), len(want)) {
		if drawn[i] != want[i] {
			return fmt.Errorf("the drawing has %q, the top %q", drawn[i], want[i])
		}
	}
	if len(drawn) != len(want) {
		return fmt.Errorf("%d outlines are drawn, the top has %d", len(drawn), len(want))
	}
	return nil
}

func TestOutlinesAreTheTops(t *testing.T) {
	list := tops(t)
	for seed := range uint64(6) {
		list = append(list, named{fmt.Sprint("seed ", seed), lay(t, invent.Layout(seed))})
	}
	for _, top := range list {
		if err := lawPlaces(top.Top, drawn(t, top.Top, Options{})); err != nil {
			t.Errorf("%s: %v", top.name, err)
		}
	}
	top := lapTop(t)
	law := func(bad []byte) error { return lawPlaces(top, bad) }
	svg := drawn(t, top, Options{ByFabric: true})
	broken(t, law, svg, `(cloth-1" d="M)(\d)`, "${1}1${2}")
	broken(t, law, svg, `(cloth-1" d="M[^L]*\.\d)\d`, "${1}")
	broken(t, law, svg, `(cloth-1" d=")M[^Z]*Z`, "${1}")
}
