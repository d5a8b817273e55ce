package supplies

import (
	"os"
	"slices"
	"strconv"
	"strings"
	"testing"

	"eighthturn/internal/measure"
)

// row is a line of the published figures.
type row struct {
	what, name, source string
	least, most        Size
}

// published reads the figures, which stand page by page.
func published(t *testing.T) []row {
	t.Helper()
	text, err := os.ReadFile("../../../testdata/supplies/published.tsv")
	if err != nil {
		t.Fatal(err)
	}
	var list []row
	for _, line := range strings.Split(strings.TrimSpace(string(text)), "\n") {
		if strings.HasPrefix(line, "#") {
			continue
		}
		parts := strings.Split(line, "\t")
		var nm [4]measure.NM
		fields := strings.Fields(parts[2])
		for i, field := range fields {
			inches, err := strconv.ParseFloat(field, 64)
			if err != nil {
				t.Fatal(line, err)
			}
			nm[i] = measure.NM(inches * float64(measure.Inch))
		}
		r := row{what: parts[0], name: parts[1], source: parts[3], least: Size{nm[0], nm[1]}, most: Size{nm[2], nm[3]}}
		if len(fields) == 2 {
			r.most = r.least
		}
		list = append(list, r)
	}
	return list
}

// offered is what the program has of the same sorts.
func offered() []row {
	var list []row
	for _, b := range Beds() {
		for _, p := range b.Quilts {
			list = append(list, row{"quilt", b.Name, p.Source, p.Least, p.Most})
		}
		for _, p := range b.Mattresses {
			list = append(list, row{"mattress", b.Name, p.Source, p.Least, p.Most})
		}
	}
	for _, p := range packages() {
		list = append(list, row{"batting", p.Name, p.Source, p.Size, p.Size})
	}
	for _, p := range Precuts() {
		if p.Sort != MetricFatQuarter { // in centimetres
			list = append(list, row{"sold", p.Name, p.Source, p.Sold, p.Sold})
		}
	}
	return list
}

// Every size that a quilter is shown stands on the page that is named beside it, and what a page says of quilts, of batting and
// of precuts is all there. Of mattresses three pages a bed are enough.
func TestSizesAsPublished(t *testing.T) {
	pages, shown := published(t), offered()
	for _, r := range shown {
		if !slices.Contains(pages, r) {
			t.Errorf("%s does not say of a %s, %s: %v to %v", r.source, r.name, r.what, r.least, r.most)
		}
	}
	for _, r := range pages {
		if r.what != "mattress" && r.what != "least" && !slices.Contains(shown, r) {
			t.Errorf("of %s, %s %s: %v to %v is left out", r.source, r.name, r.what, r.least, r.most)
		}
	}
}

// Real pieces measure less than they are sold as. What is reckoned with is never more than is sold, nor more than the least that a page
// names; a fat eighth is as wide as a fat quarter, and a strip as long as the cloth is usually wide (common practice).
func TestPrecutsAreReckonedSmall(t *testing.T) {
	for _, p := range Precuts() {
		if p.Usable.Width > p.Sold.Width || p.Usable.Height > p.Sold.Height {
			t.Errorf("of a %s more can be used than is sold", p.Name)
		}
		for _, r := range published(t) {
			if r.what == "least" && r.name == p.Name && p.Usable != r.least {
				t.Errorf("a %s is reckoned as %v, the least that %s names is %v", p.Name, p.Usable, r.source, r.least)
			}
		}
	}
	for name, want := range map[string]Size{"fat eighth": {in(20, 0), in(9, 0)}, "2 1/2 in strip": {in(40, 0), in(2, 32)}, "5 in square": {in(5, 0), in(5, 0)}, "10 in square": {in(10, 0), in(10, 0)}} {
		if p, ok := findPrecut(name); !ok || p.Usable != want {
			t.Errorf("a %s is reckoned as %v, want %v", name, p.Usable, want)
		}
	}
}

// A shop that sells by the metre has its own fat quarters in place of those of a yard; squares and strips are inches everywhere.
func TestPrecutsOfEitherSystem(t *testing.T) {
	sold := func(s measure.System) (names []string) {
		for _, p := range Precuts() {
			if p.SoldIn(s) {
				names = append(names, p.Name)
			}
		}
		return names
	}
	inches, metric := sold(measure.Inches), sold(measure.Centimetres)
	if slices.Contains(inches, "metric fat quarter") || !slices.Contains(inches, "fat quarter") || !slices.Contains(inches, "5 in square") {
		t.Errorf("by the yard shops have %v", inches)
	}
	if slices.Contains(metric, "fat quarter") || !slices.Contains(metric, "metric fat quarter") || !slices.Contains(metric, "5 in square") {
		t.Errorf("by the metre shops have %v", metric)
	}
}

// The middle is the width that as many lists go below as above, or one more above, and so is the height.
func TestMiddleOfTheLists(t *testing.T) {
	middling := func(all []measure.NM, got measure.NM) bool {
		below, above := 0, 0
		for _, nm := range all {
			if nm < got {
				below++
			} else if nm > got {
				above++
			}
		}
		return slices.Contains(all, got) && below <= (len(all)-1)/2 && above <= len(all)/2
	}
	ask := func(name string, list []Published, got Size) {
		var widths, heights []measure.NM
		for _, p := range list {
			widths, heights = append(widths, (p.Least.Width+p.Most.Width)/2), append(heights, (p.Least.Height+p.Most.Height)/2)
		}
		if !middling(widths, got.Width) || !middling(heights, got.Height) {
			t.Errorf("%s: %v is not in the middle of %v and %v", name, got, widths, heights)
		}
	}
	for _, b := range Beds() {
		ask(b.Name+", quilts", b.Quilts, b.Quilt())
		if len(b.Mattresses) > 0 {
			ask(b.Name+", mattresses", b.Mattresses, b.Mattress())
		}
	}
}

// A bed is found by each of its names, whatever the capitals, and whether its words stand apart, behind a hyphen or a low line.
func TestBedsByAnyName(t *testing.T) {
	for _, b := range Beds() {
		for _, name := range append([]string{b.Name}, b.Also...) {
			for _, typed := range []string{" " + name + " ", strings.ToUpper(name), strings.ReplaceAll(name, " ", "-"), strings.ReplaceAll(name, " ", "_"), strings.ReplaceAll(name, " ", "\u00a0 ")} {
				if found, ok := FindBed(typed); !ok || found.Name != b.Name {
					t.Errorf("%q does not find %s", typed, b.Name)
				}
			}
		}
	}
	if _, ok := FindBed("emperor"); ok {
		t.Error("a bed that no list has is found")
	}
}

// TestOwnPrecuts: what a quilter has of a sort is what shops of the same system sell of it; an eighth is half a quarter, cut along it; strips are as long
// as the cloth is wide.
func TestOwnPrecuts(t *testing.T) {
	const cm = measure.Centimetre
	for units, list := range map[measure.System]string{measure.Inches: "fat quarter", measure.Centimetres: "metric fat quarter"} {
		sold, _ := findPrecut(list)
		quarter, eighth := OwnPrecut(FatQuarter, 0, 0, units), OwnPrecut(FatEighth, 0, 0, units)
		if quarter.Name != "fat quarter" || quarter.Usable != sold.Usable || quarter.Sort != sold.Sort {
			t.Errorf("%v: a fat quarter is %+v, shops have %+v", units, quarter, sold)
		}
		if half := (Size{quarter.Usable.Width, quarter.Usable.Height / 2}); eighth.Name != "fat eighth" || eighth.Usable != half || eighth.Sort != FatEighth {
			t.Errorf("%v: a fat eighth is %+v, want %v", units, eighth, half)
		}
	}
	strip, square := OwnPrecut(StripPrecut, in(2, 32), in(42, 0), measure.Inches), OwnPrecut(SquarePrecut, 12*cm, in(42, 0), measure.Centimetres)
	if strip.Name != "2 1/2 in strip" || strip.Usable != (Size{in(42, 0), in(2, 32)}) || strip.Sort != StripPrecut {
		t.Errorf("a strip is %+v", strip)
	}
	if square.Name != "12 cm square" || square.Usable != (Size{12 * cm, 12 * cm}) || square.Sort != SquarePrecut {
		t.Errorf("a square is %+v", square)
	}
}
