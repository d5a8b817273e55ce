package preview

import (
	"fmt"
	"maps"
	"math"
	"reflect"
	"slices"
	"strings"
	"sync"
	"testing"

	"eighthturn/internal/measure"
	"eighthturn/internal/plan/contrast"
	"eighthturn/internal/quilt"
	"eighthturn/internal/quilttest/invent"
	"eighthturn/internal/quilttest/judges"
	"eighthturn/internal/report"
	"eighthturn/layout"
)

// seafarers is a layout that fails in several ways: two blues of one value, a red and a green
// that colour alone parts, and a border of nearly its own field's value.
const seafarers = `title   "Seafarers"
strip   4
fabric  spray  #f2efe4
fabric  harbour #3a5a80
fabric  slate  #4a5866
fabric  buoy   #c04040
fabric  moss   #4e7a3a
fabric  mist   #e6e2d2

block  A  web  wedges harbour slate  kites spray
block  B  web  wedges buoy moss      kites mist

grid
  A B A B
  B A B A
  A B A B

border  3  mist
`

// everyTop lays the samples and many invented layouts, once.
func everyTop(t *testing.T) map[string]*quilt.Top {
	t.Helper()
	texts := layouts(t)
	texts["seafarers"] = seafarers
	for seed := range judges.Of(25, 60) {
		texts[fmt.Sprint("invented ", seed)] = invent.Layout(uint64(seed))
	}
	laid.Lock()
	defer laid.Unlock()
	for name, text := range texts {
		if laid.tops[name] != nil {
			continue
		}
		design, _, faults := layout.Read(text)
		if design == nil {
			t.Fatalf("%s: %v", name, faults)
		}
		laid.tops[name] = quilt.Lay(design)
	}
	return maps.Clone(laid.tops)
}

// laid are the tops of everyTop and their plans, which all tests share and nobody changes.
var laid = struct {
	sync.Mutex
	tops  map[string]*quilt.Top
	plans map[*quilt.Top]*plans
}{tops: map[string]*quilt.Top{}, plans: map[*quilt.Top]*plans{}}

// TestRowsAreTheStudys: the seams of every row are those that the study means, as many of
// them and as long.
func TestRowsAreTheStudys(t *testing.T) {
	t.Parallel()
	for name, top := range everyTop(t) {
		for _, fault := range apartFromStudy(top, tabSources()[0].make(plansOf(top))) {
			t.Errorf("%s: %s", name, fault)
		}
	}
}

// TestRowsAreTheStudysCatches: a row with a seam too many, too few, or another's is seen.
func TestRowsAreTheStudysCatches(t *testing.T) {
	t.Parallel()
	top := everyTop(t)["seafarers"]
	for name, spoil := range map[string]func(rows []tabRow){
		"one too few":  func(rows []tabRow) { rows[0].Seams = rows[0].Seams[1:] },
		"one twice":    func(rows []tabRow) { rows[0].Seams = append(rows[0].Seams, rows[0].Seams[0]) },
		"another's":    func(rows []tabRow) { rows[0].Seams[0] = rows[len(rows)-1].Seams[0] },
		"two swapped":  func(rows []tabRow) { rows[0].Seams, rows[1].Seams = rows[1].Seams, rows[0].Seams },
		"none at all":  func(rows []tabRow) { rows[0].Seams = nil },
		"of a stretch": func(rows []tabRow) { rows[0].Seams[0] = len(top.Seams) - 1 },
	} {
		r := tabSources()[0].make(plansOf(top))
		rows := slices.Clone(titledSection(r, "Fabrics that meet").Rows)
		for i := range rows {
			rows[i].Seams = slices.Clone(rows[i].Seams)
		}
		spoil(rows)
		titledSection(r, "Fabrics that meet").Rows = rows
		if len(apartFromStudy(top, r)) == 0 {
			t.Errorf("%s goes unnoticed", name)
		}
	}
}

// titledSection is a section by the beginning of its title, empty if there is none.
func titledSection(r reportTab, title string) *tabSection {
	for i := range r.Sections {
		if strings.HasPrefix(r.Sections[i].Title, title) {
			return &r.Sections[i]
		}
	}
	return &tabSection{}
}

// apartFromStudy says where a report's rows are not those of a study made apart from it.
func apartFromStudy(top *quilt.Top, r reportTab) (faults []string) {
	study := contrast.Study(top, contrast.Options{})
	fault := func(format string, a ...any) { faults = append(faults, fmt.Sprintf(format, a...)) }
	near := func(what string, seams []int, count int, length, off measure.NM) {
		if n := len(slices.Compact(slices.Sorted(slices.Values(seams)))); n != count || n != len(seams) {
			fault("%s: %d seams, %d of them different, the study has %d", what, len(seams), n, count)
		}
		if got := lengthOfAll(top, seams); got < length-off || got > length+off {
			fault("%s: %d nm of seams, the study has %d", what, got, length)
		}
	}
	check := func(what string, seams []int, count int, length measure.NM) { near(what, seams, count, length, 0) }
	pairs := titledSection(r, "Fabrics that meet").Rows
	if len(pairs) != min(report.MaxRows, len(study.Pairs)) {
		fault("%d rows of %d pairs", len(pairs), len(study.Pairs))
	}
	for i, w := range pairs {
		p := &study.Pairs[i]
		check("pair "+w.Cells[0], w.Seams, p.Count, p.Length)
		for _, n := range w.Seams {
			s := seamOf(top, n)
			if got := twoOf(int(top.Faces[s.A].Fabric), int(top.Faces[s.B].Fabric)); got != twoOf(p.A, p.B) {
				fault("pair %s has a seam of the fabrics %v", w.Cells[0], got)
				break
			}
		}
	}
	for _, w := range titledSection(r, "Seams that vanish").Rows {
		n := slices.IndexFunc(study.Pairs, func(p contrast.Pair) bool { return p.Names[0]+", "+p.Names[1] == w.Cells[0] })
		if n < 0 {
			check("what vanishes inside", w.Seams, countMarks(study, func(m *contrast.Mark) bool { return m.Inside }), study.Seams.Inside["vanishes"])
			continue
		}
		of := twoOf(study.Pairs[n].A, study.Pairs[n].B)
		between := func(m *contrast.Mark) bool {
			return !m.Inside && twoOf(int(top.Faces[m.Seam.A].Fabric), int(top.Faces[m.Seam.B].Fabric)) == of
		}
		// What vanishes where a line should show is told as one rounded length less another.
		near("vanishing "+w.Cells[0], w.Seams, countMarks(study, between), study.Pairs[n].Gone(), 1)
	}
	for i, m := range r.Marks {
		b := contrast.Bands()[i].String()
		near("marks of "+b, m.Seams, study.Seams.CountBand[b]-study.Seams.CountInside[b], study.Seams.ByBand[b]-study.Seams.Inside[b], 1)
	}
	if lit := titledSection(r, "Fabrics from").Rows; len(lit) != len(study.Fabrics) {
		fault("%d rows of %d fabrics", len(lit), len(study.Fabrics))
	}
	return faults
}

// twoOf are two fabrics, the lower index first.
func twoOf(a, b int) [2]int { return [2]int{min(a, b), max(a, b)} }

// countMarks counts the seams that vanish and are wanted.
func countMarks(study *contrast.Report, wanted func(*contrast.Mark) bool) (n int) {
	for i := range study.Marks {
		if m := &study.Marks[i]; m.Band == contrast.Vanishes && wanted(m) {
			n++
		}
	}
	return n
}

// lengthOfAll adds seams up in the order of the top, as a study does, to the nanometre.
func lengthOfAll(top *quilt.Top, seams []int) measure.NM {
	sum := 0.0
	for _, i := range slices.Sorted(slices.Values(seams)) {
		s := seamOf(top, i)
		dx, dy := float64(s.To.X-s.From.X), float64(s.To.Y-s.From.Y)
		sum += math.Sqrt(float64(dx*dx) + float64(dy*dy))
	}
	return measure.NM(math.Round(sum))
}

// TestNumbersOfThePage: every face and every seam of a top has a number of its own on the
// page, and there are no more of them.
func TestNumbersOfThePage(t *testing.T) {
	t.Parallel()
	for name, top := range everyTop(t) {
		p := newPicture(top, layout.NewSource(""), newNumbering(1))
		n := p.pageNumbers(nil)
		faces := slices.Sorted(slices.Values(n.face))
		if len(faces) > 0 && (faces[0] != 0 || int(faces[len(faces)-1]) != len(faces)-1 || len(slices.Compact(faces)) != len(top.Faces)) {
			t.Errorf("%s: %d faces are numbered from %d to %d", name, len(top.Faces), faces[0], faces[len(faces)-1])
		}
		all := len(top.Seams) + len(top.StripSeams)
		if numbers := n.seamsOf(upTo(0, all-1)); len(slices.Compact(slices.Sorted(slices.Values(numbers)))) != all {
			t.Errorf("%s: %d seams have the numbers %v", name, all, numbers)
		}
	}
}

// TestStretches: skip and take lead back to the numbers.
func TestStretches(t *testing.T) {
	t.Parallel()
	for _, numbers := range [][]int32{{}, {0}, {5}, {0, 1, 2}, {3, 4, 9, 10, 11, 40}, {7, 7, 2, 3, 2}} {
		var back []int32
		next := int32(0)
		list := runLengths(slices.Clone(numbers))
		for i := 0; i < len(list); i += 2 {
			next += list[i]
			for range list[i+1] {
				back = append(back, next)
				next++
			}
		}
		if want := slices.Compact(slices.Sorted(slices.Values(numbers))); !slices.Equal(back, want) {
			t.Errorf("%v came back as %v by way of %v", numbers, back, list)
		}
	}
}

// TestAlike: a top is the same after a comment was put before it, and another one after any
// other change, though it may look the same.
func TestAlike(t *testing.T) {
	t.Parallel()
	base := draw(seafarers, drawing{}).top
	for name, c := range map[string]struct {
		text string
		want bool
	}{
		"itself":           {seafarers, true},
		"a comment before": {"# a comment\n" + seafarers, true},
		"another colour":   {strings.Replace(seafarers, "#c04040", "#c04041", 1), false},
		"another block":    {strings.Replace(seafarers, "A B A B", "A B B B", 1), false},
		"other thresholds": {strings.Replace(seafarers, "strip   4", "strip   4\ncontrast 8 25", 1), false},
		"another title":    {strings.Replace(seafarers, "Seafarers", "Seafarer", 1), false},
		"another binding":  {seafarers + "binding 2 1/4 slate\n", false},
	} {
		d := draw(c.text, drawing{})
		if d.top == nil {
			t.Fatalf("%s: %v", name, d.faults)
		}
		if got := alike(base, d.top); got != c.want {
			t.Errorf("%s: alike is %v", name, got)
		}
	}
}

// TestAlikeOfAnyKind: whatever a top may come to hold is compared by what it says, and what
// cannot be compared counts as another.
func TestAlikeOfAnyKind(t *testing.T) {
	t.Parallel()
	type holder struct {
		any  any
		list []byte
		next *holder
		call func()
	}
	of := func(h holder) reflect.Value { return reflect.ValueOf(h) }
	for name, c := range map[string]struct {
		a, b holder
		want bool
	}{
		"nothing":         {holder{}, holder{}, true},
		"lists in any":    {holder{any: []int{1}}, holder{any: []int{1}}, true},
		"other lists":     {holder{any: []int{1}}, holder{any: []int{2}}, false},
		"other kinds":     {holder{any: 1}, holder{any: "1"}, false},
		"one is nothing":  {holder{any: 1}, holder{}, false},
		"a further one":   {holder{next: &holder{list: []byte{1}}}, holder{next: &holder{list: []byte{1}}}, true},
		"another further": {holder{next: &holder{list: []byte{1}}}, holder{next: &holder{list: []byte{2}}}, false},
		"a function":      {holder{call: func() {}}, holder{call: func() {}}, false},
	} {
		if got := same(of(c.a), of(c.b)); got != c.want {
			t.Errorf("%s: alike is %v", name, got)
		}
	}
}

// upTo are the numbers from the first to the last.
func upTo(first, last int) []int {
	var list []int
	for n := first; n <= last; n++ {
		list = append(list, n)
	}
	return list
}
