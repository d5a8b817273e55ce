package preview

import (
	"encoding/json"
	"fmt"
	"slices"
	"strconv"
	"strings"
	"testing"

	"eighthturn/internal/plan/cutting"
	"eighthturn/internal/plan/sewing"
	"eighthturn/internal/quilt"
	"eighthturn/layout"
)

// huge is a layout that reads well and cannot be cut: its pieces are longer than cloth is wide.
var huge = strings.Replace(strings.Replace(seafarers, "strip   4", "side 110", 1), "border  3  mist\n", "", 1)

// plansOf are the plans of a top, made once.
func plansOf(top *quilt.Top) *plans {
	laid.Lock()
	defer laid.Unlock()
	if laid.plans[top] == nil {
		laid.plans[top] = newPlans(top, layout.NewSource(""), "quilt")
	}
	return laid.plans[top]
}

// Nothing here runs beside other tests, since some of those measure time.

// samePatches says whether two lists hold the same, in any order, each once.
func samePatches(a, b []int) bool {
	sorted := slices.Sorted(slices.Values(a))
	return slices.Equal(sorted, distinctOf(b)) && slices.Equal(sorted, distinctOf(a))
}

// TestCuttingRows: every row of the cutting report lights up the patches that the plan cuts by
// it, and each patch of the top is a line's.
func TestCuttingRows(t *testing.T) {
	for name, top := range everyTop(t) {
		for _, fault := range apartFromCuts(top, tabSources()[1].make(plansOf(top))) {
			t.Errorf("%s: %s", name, fault)
		}
	}
}

// TestCuttingRowsCatches: a row that lights up a patch too many, too few or another's is seen.
func TestCuttingRowsCatches(t *testing.T) {
	top := everyTop(t)["seafarers"]
	for name, spoil := range map[string]func(r reportTab){
		"a line with one too few": func(r reportTab) { p := &titledSection(r, "Pieces").Rows[0].Patches; *p = (*p)[1:] },
		"a line with one twice":   func(r reportTab) { p := &titledSection(r, "Pieces").Rows[0].Patches; *p = append(*p, (*p)[0]) },
		"two lines swapped": func(r reportTab) {
			s := titledSection(r, "Pieces").Rows
			s[0].Patches, s[1].Patches = s[1].Patches, s[0].Patches
		},
		"a line left out":             func(r reportTab) { s := titledSection(r, "Pieces"); s.Rows = s.Rows[1:] },
		"a strip with another's":      func(r reportTab) { w := stripRow(r); w.Patches = titledSection(r, "Pieces").Rows[5].Patches },
		"a strip that lights nothing": func(r reportTab) { stripRow(r).Patches = nil },
		"a fabric with another's":     func(r reportTab) { s := titledSection(r, "To buy").Rows; s[0].Faces = s[1].Faces },
	} {
		r := tabSources()[1].make(plansOf(top))
		for i := range r.Sections {
			r.Sections[i].Rows = slices.Clone(r.Sections[i].Rows)
			for j := range r.Sections[i].Rows {
				r.Sections[i].Rows[j].Patches = slices.Clone(r.Sections[i].Rows[j].Patches)
			}
		}
		spoil(r)
		if len(apartFromCuts(top, r)) == 0 {
			t.Errorf("%s goes unnoticed", name)
		}
	}
}

// stripRow is a row of the strips of a fabric.
func stripRow(r reportTab) *tabRow { return &titledSection(r, "harbour: ").Rows[1] }

// apartFromCuts says where a report's rows are not those of a plan made apart from it.
func apartFromCuts(top *quilt.Top, r reportTab) (faults []string) {
	plan := cutting.Build(nil, top, cutting.Options{})
	fault := func(format string, a ...any) { faults = append(faults, fmt.Sprintf(format, a...)) }
	of := map[int][]int{} // patches by line, read off the patches
	for patch, line := range plan.LineOf {
		of[line] = append(of[line], patch)
	}
	rows := titledSection(r, "Pieces").Rows
	for n := range plan.Lines {
		if n >= len(rows) || rows[n].Cells[0] != strconv.Itoa(n+1) || !samePatches(rows[n].Patches, of[n]) {
			fault("line %d is not its row", n+1)
			break
		}
	}
	for i := range plan.Fabrics {
		f := &plan.Fabrics[i]
		var faces []int
		for n := range top.Faces {
			if int(top.Faces[n].Fabric) == f.Index {
				faces = append(faces, n)
			}
		}
		if w := titledSection(r, "To buy").Rows[i]; !strings.HasPrefix(w.Cells[0]+" (", f.Name+" (") || !samePatches(w.Faces, faces) {
			fault("what is bought of %s lights up %d faces, it has %d", f.Name, len(w.Faces), len(faces))
		}
		for _, w := range titledSection(r, layout.Visible(f.Name)+": ").Rows {
			if len(w.Cells) < 5 {
				continue
			}
			var wanted []int
			for _, text := range strings.Split(w.Cells[3], ", ") {
				if n, err := strconv.Atoi(text); err == nil {
					wanted = append(wanted, of[n-1]...)
				}
			}
			if !samePatches(w.Patches, wanted) {
				fault("%s, %s: %d patches, wanted %d", f.Name, strings.Join(w.Cells, " "), len(w.Patches), len(wanted))
			}
		}
	}
	return faults
}

// TestSewingRows: every row of the sewing report lights up what the plan sews by it.
func TestSewingRows(t *testing.T) {
	for name, top := range everyTop(t) {
		for _, fault := range apartFromSews(top, tabSources()[2].make(plansOf(top))) {
			t.Errorf("%s: %s", name, fault)
		}
	}
}

// TestSewingRowsCatches: a step, a colouring, a seam or a joint of another place is seen.
func TestSewingRowsCatches(t *testing.T) {
	top := everyTop(t)["starfish.quilt"]
	block := func(r reportTab) []tabRow {
		for _, s := range r.Sections {
			if lastStep(s.Rows) != nil {
				return s.Rows
			}
		}
		return nil
	}
	last := func(rows []tabRow) *tabRow { return &rows[len(rows)-1] }
	for name, spoil := range map[string]func(r reportTab){
		"a step without a patch":   func(r reportTab) { p := &lastStep(block(r)).Patches; *p = (*p)[1:] },
		"a step with another's":    func(r reportTab) { lastStep(block(r)).Patches[0] = len(top.Patches) - 1 },
		"a colouring with another": func(r reportTab) { last(block(r)).Patches[0] = len(top.Patches) - 1 },
		"a seam left out":          func(r reportTab) { s := &joiningRows(r)[0].Seams; *s = (*s)[1:] },
		"a seam sewn twice": func(r reportTab) {
			s := joiningRows(r)
			s[1].Seams = append(s[1].Seams, s[0].Seams[0])
		},
		"a seam pressed twice": func(r reportTab) {
			w := pressingRows(r)
			w[0].Seams = append(w[0].Seams, w[0].Seams[0])
		},
		"a joint that nests": func(r reportTab) { unnested(r).Patches = unnested(r).Patches[4:] },
	} {
		r := tabSources()[2].make(plansOf(top))
		spoil(r)
		if len(apartFromSews(top, r)) == 0 {
			t.Errorf("%s goes unnoticed", name)
		}
	}
}

func lastStep(rows []tabRow) *tabRow {
	at := -1
	for i := range rows {
		if rows[i].Head {
			at = i
		}
	}
	if at < 0 {
		return nil
	}
	return &rows[at]
}

// unnested is the row of the joints that do not nest, nil if there is none.
func unnested(r reportTab) *tabRow {
	for i := range r.Sections {
		for n := range r.Sections[i].Rows {
			if row := &r.Sections[i].Rows[n]; len(row.Cells) > 0 && strings.Contains(row.Cells[0], "Seams do not nest at") {
				return row
			}
		}
	}
	return nil
}

// apartFromSews says where a report's rows are not those of the top, and of a plan made apart.
func apartFromSews(top *quilt.Top, r reportTab) (faults []string) {
	fault := func(format string, a ...any) { faults = append(faults, fmt.Sprintf(format, a...)) }
	plan := sewing.Build(nil, top, cutting.Pieces(top, cutting.Options{}), sewing.Options{})
	for i := range plan.Blocks {
		faults = append(faults, apartFromBlock(top, &plan.Blocks[i], titledSection(r, "Block "+plan.Blocks[i].Label+": ").Rows)...)
	}
	sewn := map[int]int{}
	for _, w := range joiningRows(r) {
		for _, n := range w.Seams {
			sewn[n]++
		}
	}
	loose, column := len(plan.Assembly.Loose) > 0, columnOf(plan)
	for i := range top.Seams {
		one, other := top.Faces[top.Seams[i].A].Patch, top.Faces[top.Seams[i].B].Patch
		a, b := &top.Patches[one], &top.Patches[other]
		parted := a.Cell != b.Cell || a.Cell < 0
		if column[int(one)]+column[int(other)] > 0 {
			parted = column[int(one)] != column[int(other)]
		}
		if want := map[bool]int{true: 1, false: 0}[parted]; sewn[i] != want && !(loose && sewn[i] < want) {
			fault("seam %d between cells %d and %d is sewn %d times when blocks are joined", i, a.Cell, b.Cell, sewn[i])
			break
		}
	}
	if pressed, joined := pressedSeams(r, "Press the seams between blocks", "Press the seams between sashes", "Press the seams between posts"), joiningRows(r); len(joined) > 0 && strings.HasPrefix(joined[0].Cells[0], "Sew the blocks of each") && !samePatches(pressed, joined[0].Seams) {
		fault("%d seams between blocks are pressed, %d are sewn", len(pressed), len(joined[0].Seams))
	}
	var wanted []int
	for n := range plan.Pressing.Joints {
		if !plan.Pressing.Joints[n].Nests {
			wanted = append(wanted, plan.JointPatches(n)...)
		}
	}
	if w := unnested(r); (w == nil) != (len(wanted) == 0) || w != nil && !slices.Equal(distinctOf(w.Patches), distinctOf(wanted)) {
		fault("other joints than those that do not nest are lit up")
	}
	return faults
}

// joiningRows are the rows that sew the blocks together, pressingRows those that press their seams: those with seams, from their
// section on.
func joiningRows(r reportTab) []*tabRow { return rowsOfJoining(r, false) }

func pressingRows(r reportTab) []*tabRow { return rowsOfJoining(r, true) }

func rowsOfJoining(r reportTab, press bool) (list []*tabRow) {
	within := false
	for i := range r.Sections {
		s := &r.Sections[i]
		if s.Title != "" {
			within = s.Title == "Joining the blocks" || s.Title == "Joining the columns"
		}
		for n := range s.Rows {
			if within && len(s.Rows[n].Seams) > 0 && (strings.HasPrefix(s.Rows[n].Cells[0], "Press") || strings.HasPrefix(s.Rows[n].Cells[0], "Exception")) == press {
				list = append(list, &s.Rows[n])
			}
		}
	}
	return list
}

// pressedSeams are the seams of the rows of pressing that begin with some words.
func pressedSeams(r reportTab, begins ...string) (list []int) {
	for _, w := range pressingRows(r) {
		if slices.ContainsFunc(begins, func(b string) bool { return strings.HasPrefix(w.Cells[0], b) }) {
			list = append(list, w.Seams...)
		}
	}
	return list
}

// columnOf is for each patch of a column the column's upper cell; in a column all seams are
// those of a block.
func columnOf(plan *sewing.Plan) map[int]int {
	of := map[int]int{}
	for i := range plan.Blocks {
		for _, c := range plan.Blocks[i].Variants {
			for _, at := range c.Cells {
				for _, n := range at.Patches {
					if plan.Blocks[i].Column {
						of[int(n)] = at.Cell + 1
					}
				}
			}
		}
	}
	return of
}

// apartFromBlock checks the last step, which joins all pieces of a block, and the colourings,
// which are all blocks of the label, against the cells of the top.
func apartFromBlock(top *quilt.Top, b *sewing.Block, rows []tabRow) (faults []string) {
	var all []int
	for i := range top.Patches {
		if cell := top.Patches[i].Cell; cell >= 0 && top.Cells[cell].Label == b.Label {
			all = append(all, i)
		}
	}
	if b.Column {
		all = nil // a column takes pieces of several labels
		for _, c := range b.Variants {
			for _, at := range c.Cells {
				for _, n := range at.Patches {
					all = append(all, int(n))
				}
			}
		}
	}
	if w := lastStep(rows); w != nil && !samePatches(w.Patches, all) {
		faults = append(faults, fmt.Sprintf("the last step of %s lights up %d patches of %d", b.Label, len(w.Patches), len(all)))
	}
	var placed []int
	for _, w := range rows[max(0, len(rows)-len(b.Variants)):] {
		placed = append(placed, w.Patches...)
	}
	if len(b.Variants) <= 12 && !samePatches(placed, all) {
		faults = append(faults, fmt.Sprintf("the colourings of %s light up %d patches of %d", b.Label, len(placed), len(all)))
	}
	return faults
}

// TestMarksOfDiagrams: whatever a mark of a diagram lights up is what the plan means by its
// numbers, in cutting maps and in the pictures of steps.
func TestMarksOfDiagrams(t *testing.T) {
	for name, top := range everyTop(t) {
		if strings.HasPrefix(name, "invented") && len(top.Patches) > 400 {
			continue
		}
		p := newPicture(top, layout.NewSource(""), newNumbering(1))
		numbers, of := p.pageNumbers(nil), plansOf(top).Cuts().LineOf
		for tab, means := range map[int]func(key string) []int{
			1: func(key string) (list []int) {
				for patch, line := range of {
					if slices.Contains(strings.Fields(key), strconv.Itoa(line)) {
						list = append(list, patch)
					}
				}
				return list
			},
			2: func(key string) (list []int) {
				for _, text := range strings.Fields(key) {
					n, _ := strconv.Atoi(text)
					list = append(list, n)
				}
				return list
			},
		} {
			r := tabSources()[tab].make(plansOf(top))
			for n, draw := range r.diagrams {
				d, err := newPageDiagram(draw(), r.patchesAt, numbers)
				must(t, err)
				for key, i := range d.Marks {
					if !strings.Contains(d.SVG, `data-lit="`+key+`"`) {
						t.Fatalf("%s: nothing in diagram %d of tab %d stands for %q", name, n, tab, key)
					}
					if want := runLengths(numbers.facesOf(means(key), nil)); !slices.Equal(d.Highlights[i].Faces, want) {
						t.Fatalf("%s: %q in diagram %d of tab %d lights up %v, wanted %v", name, key, n, tab, d.Highlights[i].Faces, want)
					}
				}
			}
		}
	}
}

// TestUncuttable: a layout that cannot be cut is told in sentences with their lines, which
// follow the layout's lines, and gives no pattern; all else is there.
func TestUncuttable(t *testing.T) {
	s := aSite(t, Options{})
	publishing(t, s, huge)
	told := func(tab, wanted string) {
		t.Helper()
		if text := body(ask(s, "/report", query("tab="+tab))); !strings.Contains(text, wanted) {
			t.Errorf("tab %s does not say %q: %.600s", tab, wanted, text)
		}
	}
	told("1", "What cannot be cut")
	told("1", "Line 10: a wedge from a strip of about 72 3/8 in cut takes about 60 1/4 in of the strip, but harbour is 40 in between its selvages.")
	told("2", "Joining the blocks")
	told("3", "What cannot be cut leaves nothing")
	told("4", "The pattern cannot be made yet: in line 10,")
	told("5", "The pattern cannot be made yet: in line 10,")
	for path, want := range map[string]int{"/save/pattern.pdf": 422, patternPage: 422, "/save/cutting.csv": 200, "/save/picture.svg": 200} {
		r := ask(s, path, nil)
		if text := body(r); r.StatusCode != want || want == 422 && (!strings.HasPrefix(text, "The pattern cannot be made") || r.Header.Get("Content-Disposition") != "") {
			t.Errorf("%s: %d, %.200s", path, r.StatusCode, text)
		}
	}
	publishing(t, s, "# a comment\n"+huge)
	for _, tab := range []string{"1", "4", "5"} {
		told(tab, "ine 11")
	}
	publishing(t, s, seafarers)
	if l := lettered(t, ask(s, "/report", query("tab=4"))); strings.Contains(string(l.Report), "no pattern") {
		t.Errorf("once it can be cut: %s", l.Report)
	}
}

// TestTextOfPlansIsText: names from the layout run and steer nothing, in reports, diagrams,
// files and the pattern.
func TestTextOfPlansIsText(t *testing.T) {
	s := aSite(t, Options{})
	bad := strings.NewReplacer(`"Seafarers"`, `"</title><script>alert(1)</script><img src=x onerror=alert(1)>"`, "harbour", "ha\u0635rbour").Replace(seafarers)
	publishing(t, s, bad)
	for tab := range tabSources() {
		if text := body(ask(s, "/report", query(fmt.Sprint("tab=", tab)))); strings.ContainsAny(text, "<>\x1b\u202e\u2028") {
			t.Errorf("tab %d holds what could run or steer: %.300s", tab, text)
		}
	}
	for _, path := range []string{"/diagram?tab=1", "/diagram?tab=2", "/diagram?tab=2&number=3", patternPage, "/save/picture.svg", "/save/pattern.html"} {
		path, q, _ := strings.Cut(path, "?")
		text := body(ask(s, path, query(q)))
		if path == "/diagram" {
			var d pageDiagram
			must(t, json.Unmarshal([]byte(text), &d))
			text = d.SVG
		}
		if strings.Contains(text, "<script") || strings.Contains(text, "<img src=x") {
			t.Errorf("%s holds what could run", path)
		}
	}
	if text := body(ask(s, "/save/cutting.csv", nil)); strings.Contains(text, "\n=") || !strings.HasPrefix(text, "\ufeffrow,fabric,line") {
		t.Errorf("the table: %.200s", text)
	}
}

func distinctOf(list []int) []int { return slices.Compact(slices.Sorted(slices.Values(list))) }
