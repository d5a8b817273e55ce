package booklet

import (
	"fmt"
	"image"
	"math"
	"regexp"
	"slices"
	"strconv"
	"strings"
	"testing"

	"eighthturn/internal/diagram"
	"eighthturn/internal/document"
	"eighthturn/internal/measure"
	"eighthturn/internal/plan/cutting"
	"eighthturn/internal/quilt"
	"eighthturn/internal/report"
	"eighthturn/samples"
)

// Drawings of the layout and pages to color are the top: labels in their blocks, arrows to their tops, numbers in line with rows and columns.

// smallBooks are patterns in the making of the samples and of odd layouts that are not large.
func smallBooks(t *testing.T) map[string]*patternBuilder {
	list := map[string]*patternBuilder{}
	texts := odd()
	for _, s := range samples.All() {
		texts[s.Name] = s.Text
	}
	for name, text := range texts {
		if r := study(t, text, cutting.Options{}); len(r.Top.Patches) < 1500 {
			list[name] = newBook(r, Options{})
		}
	}
	return list
}

// inside says whether a place lies in a rectangle.
func inside(p measure.Point, r quilt.Rect) bool {
	return p.X > r.Min.X && p.X < r.Max.X && p.Y > r.Min.Y && p.Y < r.Max.Y
}

// wrongLayout is what the drawing of a layout shows otherwise than the plan.
func wrongLayout(b *patternBuilder, d document.Drawing) (wrong []string) {
	fail := func(format string, values ...any) { wrong = append(wrong, fmt.Sprintf(format, values...)) }
	numbers := map[string][]measure.Point{}
	labels := map[int]string{}
	arrows := map[int]measure.Point{}
	for _, m := range d.Marks {
		switch {
		case m.Words != nil && !inside(m.Words.At, quilt.Rect{Min: d.Min, Max: d.Max}):
			numbers[m.Words.Text] = append(numbers[m.Words.Text], m.Words.At)
		case m.Words != nil:
			for cell := range b.Top.Cells {
				if inside(m.Words.At, b.Top.CellRect(cell)) {
					labels[cell] = m.Words.Text
				}
			}
		case m.Line != nil && m.Line.End == diagram.Arrow:
			from, to := m.Line.Points[0], m.Line.Points[1]
			for cell := range b.Top.Cells {
				if r := b.Top.CellRect(cell); inside(from, r) && inside(to, r) {
					arrows[cell] = measure.Point{X: sign(to.X - from.X), Y: sign(to.Y - from.Y)}
				}
			}
		}
	}
	for i := range b.Sewing.Blocks {
		k := &b.Sewing.Blocks[i]
		for _, v := range k.Variants {
			for _, at := range v.Cells {
				if b.labelled() && !strings.HasPrefix(labels[at.Cell], k.Label) {
					fail("cell %d is labeled %q, and block %s lies there", at.Cell, labels[at.Cell], k.Label)
				}
				delete(labels, at.Cell)
				way, is := arrows[at.Cell]
				delete(arrows, at.Cell)
				if is != (report.HasArrow(k) && b.labelled()) {
					fail("cell %d has an arrow: %v", at.Cell, is)
				} else if is && way != [4]measure.Point{{Y: -1}, {X: 1}, {Y: 1}, {X: -1}}[at.Turns%4] {
					fail("cell %d is turned %d quarters, its arrow points to %v", at.Cell, at.Turns, way)
				}
			}
		}
	}
	if len(labels)+len(arrows) > 0 {
		fail("there are %d labels and %d arrows of no block", len(labels), len(arrows))
	}
	return append(wrong, wrongAxes(b, d, numbers)...)
}

func sign(nm measure.NM) measure.NM {
	switch {
	case nm > 0:
		return 1
	case nm < 0:
		return -1
	}
	return 0
}

// wrongAxes is which row or column has no number beside it, in line with its blocks.
func wrongAxes(b *patternBuilder, d document.Drawing, numbers map[string][]measure.Point) (wrong []string) {
	want := 0
	for n := b.every(); n <= b.Top.Columns; n += b.every() {
		want++
		r := b.Top.CellRect(n - 1)
		if !slices.ContainsFunc(numbers[strconv.Itoa(n)], func(p measure.Point) bool { return p.Y < d.Min.Y && p.X == (r.Min.X+r.Max.X)/2 }) {
			wrong = append(wrong, fmt.Sprintf("column %d has no number above it", n))
		}
	}
	for n := b.every(); n <= b.Top.Rows && b.noun() == "block"; n += b.every() {
		want++
		r := b.Top.CellRect((n - 1) * b.Top.Columns)
		if !slices.ContainsFunc(numbers[strconv.Itoa(n)], func(p measure.Point) bool { return p.X < d.Min.X && p.Y == (r.Min.Y+r.Max.Y)/2 }) {
			wrong = append(wrong, fmt.Sprintf("row %d has no number beside it", n))
		}
	}
	for _, list := range numbers {
		want -= len(list)
	}
	if want != 0 {
		wrong = append(wrong, fmt.Sprintf("%d numbers too few", want))
	}
	return wrong
}

// areaIn is the area of all outlines of some layers.
func areaIn(layers []document.Layer, which func(l *document.Layer) bool) (sum float64) {
	for i := range layers {
		if !which(&layers[i]) {
			continue
		}
		for _, o := range layers[i].Paths {
			twice := 0.0
			for k := range o {
				p, q := o[k], o[(k+1)%len(o)]
				twice += float64(p.X)*float64(q.Y) - float64(p.Y)*float64(q.X)
			}
			sum += math.Abs(twice) / 2
		}
	}
	return sum
}

// TestDrawingsAreTheTop: see wrongLayout; and a page to color has each piece once, and each strip seam.
func TestDrawingsAreTheTop(t *testing.T) {
	arrows := 0
	for name, b := range smallBooks(t) {
		d := b.layoutDrawing(b.wholeGrid(), b.Top.Outer)
		for _, wrong := range wrongLayout(b, d) {
			t.Errorf("%s: %s", name, wrong)
		}
		for i, m := range d.Marks {
			if m.Line != nil && m.Line.End == diagram.Arrow {
				arrows++
				broken := d
				broken.Marks = slices.Delete(slices.Clone(d.Marks), i, i+1)
				if len(wrongLayout(b, broken)) == 0 {
					t.Errorf("%s: an arrow that is missing is not noticed", name)
				}
				break
			}
		}
		if outlines := areaIn(d.Layers, func(l *document.Layer) bool { return l.Name == "blocks" }); b.every() == 1 {
			want := 0.0
			for i := range b.Top.Cells {
				if !b.Top.Empty(i) {
					r := b.Top.CellRect(i)
					want += float64(r.Width()) * float64(r.Height())
				}
			}
			if b.Top.StepFinished == b.Top.SideFinished && math.Abs(outlines/want-1) > 1e-6 {
				t.Errorf("%s: the edges of blocks hold %.6f of them", name, outlines/want)
			}
		}
		lines := b.lineDrawing()
		whole := 0.0
		for i := range b.Top.Patches {
			if !slices.Equal(lines.Layers[0].Paths[i], b.Top.Patches[i].Outline) {
				t.Errorf("%s: piece %d is drawn otherwise", name, i)
			}
			whole++
		}
		if len(lines.Layers[0].Paths) != int(whole) || len(b.Top.StripSeams) > 0 != (len(lines.Layers) == 2) || len(lines.Layers) == 2 && len(lines.Layers[1].Paths) != len(b.Top.StripSeams) {
			t.Errorf("%s: a page to color has %d pieces in %d layers", name, len(lines.Layers[0].Paths), len(lines.Layers))
		}
		if lines.Min != b.Top.Outer.Min || lines.Max != b.Top.Outer.Max {
			t.Errorf("%s: a page to color goes from %v to %v", name, lines.Min, lines.Max)
		}
	}
	if arrows == 0 {
		t.Error("no layout has arrows")
	}
}

var homeWords = regexp.MustCompile(`(\d+) (more units?|long seams?).*?\(about (\d+) hours? at (\d+) minutes? each\)`)

// TestTheClassIsThePlan: a class welcomes, cuts or opens kits, sews each strip set and each step of every block once, and lays the blocks out;
// what is left for home is what the top has beyond that, in hours to the nearest.
func TestTheClassIsThePlan(t *testing.T) {
	for name, b := range smallBooks(t) {
		times := map[string]int{"welcome": 7, "cutting": 31, "strip-set": 23, "show": 11, "unit": 3, "layout": 19}
		b.Schedule = Schedule{Times: times}
		want := 7 + 31 + 19
		for i := range b.Cuts.Sets {
			if len(b.Cuts.Sets[i].Runs) > 0 {
				want += 23
			}
		}
		units := 0
		var steps []string
		for i := range b.Sewing.Blocks {
			k := &b.Sewing.Blocks[i]
			for n := range k.Steps {
				want += 11 + 3*max(1, k.Steps[n].PerBlock)
				units += max(0, k.Steps[n].Make-max(1, k.Steps[n].PerBlock))
				steps = append(steps, fmt.Sprintf("Block %s, step %d: %s", k.Label, n+1, k.Steps[n].Name))
			}
		}
		got := 0
		hours := b.hours()
		for _, h := range hours {
			got += h.minutes
			if h.guess || strings.HasPrefix(h.text(), "about") {
				t.Errorf("%s: %s is called a guess", name, h.what)
			}
			if len(steps) > 0 && h.what == steps[0] {
				steps = steps[1:]
			}
		}
		if got != want || len(steps) > 0 {
			t.Errorf("%s: the class takes %d minutes, wanted %d, without the steps %q", name, got, want, steps)
		}
		if last := hours[len(hours)-1]; hours[0].minutes != 7 || hours[1].minutes != 31 || last.minutes != 19 {
			t.Errorf("%s: the class begins with %v and %v and ends with %v", name, hours[0], hours[1], last)
		}
		long := 0
		for _, stage := range b.Sewing.Assembly.Stages {
			long += stage.Count
		}
		b.parts = []document.Section{{}}
		b.atHome()
		said := ""
		for _, block := range b.parts[0].Blocks {
			said += block.(document.Paragraph).Text.String()
		}
		found := map[string][3]int{}
		for _, m := range homeWords.FindAllStringSubmatch(said, -1) {
			n, _ := strconv.Atoi(m[1])
			about, _ := strconv.Atoi(m[3])
			each, _ := strconv.Atoi(m[4])
			found[strings.TrimSuffix(m[2], "s")] = [3]int{n, about, each}
		}
		for what, c := range map[string][2]int{"more unit": {units, 3}, "long seam": {long, forLong}} {
			hours := max(1, int(math.Floor(float64(c[0]*c[1])/60+0.5)))
			if wanted := [3]int{c[0], hours, c[1]}; c[0] > 0 && found[what] != wanted || c[0] == 0 && found[what] != [3]int{} {
				t.Errorf("%s: at home there are %v of %s, wanted %v: %q", name, found[what], what, wanted, said)
			}
		}
	}
}

// TestPiecesStandBelowTheirCloth: put back before its rows, the heading of each cloth is the column that it came from.
func TestPiecesStandBelowTheirCloth(t *testing.T) {
	tables := 0
	for name, b := range smallBooks(t) {
		s, _ := b.cut.Section(report.PiecesID)
		list := byCloth(s.Blocks)
		for n, block := range s.Blocks {
			before, is := block.(document.Table)
			column := slices.IndexFunc(before.Columns, func(c document.Column) bool { return c.Title == report.ClothHead })
			if !is || column < 0 {
				continue
			}
			tables++
			after := list[n].(document.Table)
			cloth, row := "", 0
			for i, r := range after.Rows {
				if len(r.Cells) == 1 {
					if next := r.Cells[0].Text.String(); i+1 == len(after.Rows) || next == cloth {
						t.Errorf("%s: %q stands over nothing, or twice", name, next)
					} else {
						cloth = next
					}
					continue
				}
				if was := before.Rows[row].Cells[column].Text.String(); was != cloth || len(r.Cells) != len(before.Columns)-1 || len(after.Columns) != len(r.Cells) {
					t.Errorf("%s: row %d stands below %q, its cloth is %q", name, row+1, cloth, was)
				}
				row++
			}
			if row != len(before.Rows) {
				t.Errorf("%s: %d rows of %d", name, row, len(before.Rows))
			}
		}
	}
	if tables == 0 {
		t.Error("no tables")
	}
}

// TestLinesOfAll: of fabrics that are cut alike, the strips of the first stand with the lines of all.
func TestLinesOfAll(t *testing.T) {
	b := newBook(study(t, "strip 4\nfabric navy #1f3350\nfabric rust #b5532a\nfabric cream #f4ead7\nblock R ring wedges navy rust corners cream\ngrid\n R R\n R R\n", cutting.Options{}), Options{})
	group := []int{0, 1}
	s, _ := b.cut.Section(report.FabricID + "1")
	other, _ := b.cut.Section(report.FabricID + "2")
	checked := 0
	for n, block := range b.linesOfAll(s.Blocks, group) {
		table, is := block.(document.Table)
		column := slices.IndexFunc(table.Columns, func(c document.Column) bool { return c.Title == report.LinesHead })
		if !is || column < 0 {
			continue
		}
		for i, r := range table.Rows {
			checked++
			own, second := s.Blocks[n].(document.Table).Rows[i].Cells[column].Text.String(), other.Blocks[n].(document.Table).Rows[i].Cells[column].Text.String()
			if got := r.Cells[column].Text.String(); got != own+", "+second || own == second {
				t.Errorf("row %d has the lines %q, of %q and %q", i+1, got, own, second)
			}
		}
		if alone := b.linesOfAll(s.Blocks, group[:1])[n].(document.Table).Rows[0].Cells[column].Text.String(); strings.Contains(alone, ", ") {
			t.Errorf("of one fabric it has the lines %q", alone)
		}
	}
	if checked == 0 {
		t.Error("no rows")
	}
}

// TestOnWhite: a pixel on white is mixed with it as much as it is seen through, to the nearest of 255 shades.
func TestOnWhite(t *testing.T) {
	p := image.NewNRGBA(image.Rect(0, 0, 256, 4))
	for i, shade := range []uint8{0, 1, 128, 255} {
		for alpha := range 256 {
			at := p.PixOffset(alpha, i)
			p.Pix[at], p.Pix[at+1], p.Pix[at+2], p.Pix[at+3] = shade, shade/2, shade/3, uint8(alpha)
		}
	}
	before := slices.Clone(p.Pix)
	onWhite(p)
	for i, got := range p.Pix {
		alpha := float64(before[i/4*4+3]) / 255
		want := uint8(math.Floor(float64(before[i])*alpha + 255*(1-alpha) + 0.5))
		if i%4 == 3 {
			want = 255
		}
		if got != want {
			t.Fatalf("%d seen %.3f through is %d, wanted %d", before[i], alpha, got, want)
		}
	}
}

// TestLongFromTwoSeconds: a pattern is said to take long from the seconds that are named on.
func TestLongFromTwoSeconds(t *testing.T) {
	if (Cost{Seconds: longPattern - 1}).Long() || !(Cost{Seconds: longPattern}).Long() {
		t.Errorf("a pattern of %d seconds is long: %v", longPattern, Cost{Seconds: longPattern}.Long())
	}
}
