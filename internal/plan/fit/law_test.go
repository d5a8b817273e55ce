package fit

import (
	"cmp"
	"errors"
	"fmt"
	"regexp"
	"slices"
	"strings"
	"testing"

	"eighthturn/internal/measure"
	"eighthturn/internal/plan/supplies"
	"eighthturn/internal/quilt"
	"eighthturn/internal/quilttest/invent"
	"eighthturn/internal/quilttest/judges"
	"eighthturn/layout"
	"eighthturn/samples"
)

// Laws, for any layout and size. Each has a broken suggestion that it catches.

// inches is a size in whole inches.
func inches(width, height int64) Wanted {
	return Wanted{Finished: supplies.Size{Width: measure.NM(width) * measure.Inch, Height: measure.NM(height) * measure.Inch}}
}

// breaks are the laws that a suggestion breaks.
func breaks(r *Report, s *Suggestion) []string {
	design, source, faults := layout.Read(s.Text)
	if design == nil {
		var b strings.Builder
		_ = layout.Report(&b, "suggestion", source, faults)
		return []string{"it reads without an error: " + b.String()}
	}
	var list []string
	law := func(holds bool, text string, args ...any) {
		if !holds {
			list = append(list, fmt.Sprintf(text, args...))
		}
	}
	was := r.Now.BordersFinished
	if r.Size != "" {
		now, _, _ := layout.Read(r.Now.Text)
		design, was = design.InSize(r.Size), nil
		for _, b := range now.Borders {
			was = append(was, b.Width)
		}
	}
	if design == nil {
		return []string{"it has the size"}
	}
	top := quilt.Lay(undealt(design))
	law(top.Outer.Width() == s.Finished.Width && top.Outer.Height() == s.Finished.Height, "it is as large as it says: %s by %s", measure.Text(top.Outer.Width(), r.Units), measure.Text(top.Outer.Height(), r.Units))
	law(top.Columns == s.Columns && top.Rows == s.Rows, "it has as many blocks as it says: %d by %d", top.Columns, top.Rows)
	law(top.SideFinished == s.SideFinished, "its blocks are as large as it says")
	law(!r.ByStrip || slices.Contains(design.StripsCut[:], s.StripCut), "its strip is the one it says")
	law(s.Over.Width == s.Finished.Width-r.Wanted.Finished.Width && s.Over.Height == s.Finished.Height-r.Wanted.Finished.Height, "it is off by what it says")
	var widths []measure.NM
	for _, b := range design.Borders {
		widths = append(widths, b.Width)
	}
	law(slices.Equal(widths, s.BordersFinished), "its borders are as wide as it says: %v", widths)
	law(s.Borders != AsWritten || slices.Equal(widths, was), "borders as written are those")
	law(s.Borders != LeftOut || len(widths) == 0 && len(was) > 0, "borders left out are out")
	law(s.Borders != Scaled || sum(widths) <= max(r.MaxBorder, 2*measure.NM(len(widths))*markOf(r)), "scaled borders are within what may be")
	law(written(r.Now.Text, s.Changes) == s.Text, "its changes make its text")
	if r.Size == "" {
		list = append(list, sizeBreaks(r, s, design)...)
	}
	return list
}

// sizeBreaks are the laws that the size line of a suggestion breaks.
func sizeBreaks(r *Report, s *Suggestion, design *layout.Design) []string {
	with, source, faults := layout.Read(layout.Apply(r.Now.Text, []layout.Edit{withSize(r.Now.Text, s)}))
	if with == nil {
		var b strings.Builder
		_ = layout.Report(&b, "with the size", source, faults)
		return []string{"its size line reads without an error: " + b.String()}
	}
	if size, own := measured(with.InSize(strings.Fields(s.SizeLine)[1])), measured(design); size != own {
		return []string{fmt.Sprintf("its size line %s gives the same quilt: %s, %s", s.SizeLine, size, own)}
	}
	return nil
}

// undealt is a design whose pools have one fabric each: who gets which scrap is nothing to how large a quilt is, and takes most of
// the time that it is laid in.
func undealt(d *layout.Design) *layout.Design {
	other := *d
	other.Pools = slices.Clone(d.Pools)
	for i := range other.Pools {
		other.Pools[i].Fabrics = other.Pools[i].Fabrics[:1]
	}
	return &other
}

// measured is all that the outlines of a design follow from: its blocks with their turns, their size, and what goes round them.
func measured(d *layout.Design) string {
	var b strings.Builder
	fmt.Fprintln(&b, d.Units, d.Columns, d.Rows, d.SideFinished, d.StripsCut, d.Seam)
	for _, c := range d.Cells {
		fmt.Fprint(&b, c.Block, ":", c.Turns, " ")
	}
	for _, e := range d.Borders {
		fmt.Fprint(&b, " border ", e.Width)
	}
	for _, s := range d.StripSets {
		for _, band := range s.Bands {
			fmt.Fprint(&b, " ", band.Cut)
		}
	}
	for _, r := range d.Runs {
		fmt.Fprint(&b, " ", r.Divided)
	}
	return b.String()
}

func markOf(r *Report) measure.NM {
	if r.Units == measure.Centimetres {
		return measure.Centimetre / 2
	}
	return measure.Inch / 4
}

// written is a layout with lines changed as a person would change them.
func written(text string, changes []Change) string {
	ends := regexp.MustCompile("\r\n|[\n\r\u2028\u2029\u0085]|$")
	var lines []string
	for rest := text; rest != ""; {
		n := ends.FindStringIndex(rest)[1]
		lines, rest = append(lines, rest[:n]), rest[n:]
	}
	var b strings.Builder
	at := 0
	for _, c := range changes {
		b.WriteString(strings.Join(lines[at:c.First-1], ""))
		old := strings.Join(lines[c.First-1:c.Last], "")
		last := lines[c.Last-1]
		end := last[ends.FindStringIndex(last)[0]:]
		if strings.TrimSuffix(old, end) != c.Was {
			return "line " + fmt.Sprint(c.First) + " is not " + c.Was
		}
		if b.WriteString(c.Write); c.Write != "" {
			b.WriteString(end)
		}
		at = c.Last
	}
	b.WriteString(strings.Join(lines[at:], ""))
	return b.String()
}

// reportBreaks are the laws that a report breaks.
func reportBreaks(r *Report) []string {
	var list []string
	weighed := weighing(r)
	for i := range r.Suggestions {
		for _, b := range breaks(r, &r.Suggestions[i]) {
			list = append(list, fmt.Sprintf("suggestion %d: %s", i+1, b))
		}
		if i > 0 && i != r.LaidOut {
			a, b := &r.Suggestions[i-1], &r.Suggestions[i]
			if rank := cmp.Or(cmp.Compare(a.MoreWarnings, b.MoreWarnings), cmp.Compare(weighed(a), weighed(b)), cmp.Compare(abs(a.SideFinished-r.Now.SideFinished), abs(b.SideFinished-r.Now.SideFinished))); rank > 0 {
				list = append(list, fmt.Sprintf("suggestion %d is better than the one before", i+1))
			}
		}
	}
	if r.LaidOut != min(max(r.Nearest, 1), len(r.Suggestions)) {
		list = append(list, fmt.Sprintf("%d of %d are laid out", r.LaidOut, len(r.Suggestions)))
	}
	return list
}

// weighing is what suggestions are off: across and down, added up, the worse of the two counted twice; a quarter of what their borders differ;
// and in a grid of webs and stars two inches for each odd number of blocks.
func weighing(r *Report) func(s *Suggestion) measure.NM {
	now, _, _ := layout.Read(r.Now.Text)
	var own measure.NM
	for _, b := range now.Borders {
		own += b.Width
	}
	lattice := now.Sash == nil && slices.ContainsFunc(now.Cells, func(c layout.Cell) bool { return c.Block >= 0 && now.Blocks[c.Block].Kind.Turning.InLattice() })
	return func(s *Suggestion) measure.NM {
		w, h := abs(s.Finished.Width-r.Wanted.Finished.Width), abs(s.Finished.Height-r.Wanted.Finished.Height)
		cost, differ := w+h+max(w, h), own
		for _, nm := range s.BordersFinished {
			differ -= nm
		}
		for _, n := range []int{s.Columns, s.Rows} {
			if lattice && n%2 == 1 {
				cost += 2 * measure.Inch
			}
		}
		return cost + abs(differ)/4
	}
}

func TestSamplesFit(t *testing.T) {
	for _, s := range judges.Some(samples.All(), 5) {
		for _, o := range []Options{
			{Wanted: inches(90, 108)}, {Wanted: inches(14, 70)}, {Wanted: inches(1, 1)},
			{Wanted: inches(60, 80), From: 5 * measure.Inch / 2, To: 6 * measure.Inch, Step: measure.Inch / 2, MaxBorder: 4 * measure.Inch},
		} {
			r, err := Fit(s.Text, o)
			if err != nil {
				t.Fatalf("%s: %v", s.Name, err)
			}
			for _, b := range reportBreaks(r) {
				t.Errorf("%s for %v: %s", s.Name, o, b)
			}
			if len(r.Suggestions) == 0 {
				t.Errorf("%s for %v: there is nothing", s.Name, o)
			}
			for _, g := range r.Suggestions {
				if g.MoreWarnings > 0 {
					t.Errorf("%s for %v: %d by %d warns of %q", s.Name, o, g.Columns, g.Rows, g.Warnings)
				}
			}
		}
	}
}

func TestInventedFit(t *testing.T) {
	seeds := uint64(judges.Of(12, 30))
	suggestions, empty := 0, 0
	for seed := range seeds {
		text := invent.Layout(seed)
		o := Options{Wanted: inches(int64(20+seed%70), int64(30+seed*7%80)), Nearest: 1}
		r, err := Fit(text, o)
		if err != nil {
			t.Fatalf("seed %d: %v\n%s", seed, err, text)
		}
		for _, b := range reportBreaks(r) {
			t.Errorf("seed %d: %s\n%s", seed, b, text)
		}
		if suggestions += len(r.Suggestions); len(r.Suggestions) == 0 {
			empty++
		}
	}
	t.Logf("%d layouts, %d suggestions, %d layouts without one", seeds, suggestions, empty)
	if uint64(empty) > seeds/10 {
		t.Errorf("%d of %d layouts have no suggestion", empty, seeds)
	}
}

// TestSizeLinesFit: what is to be written for a size that is named, new or known, makes that size as large as it says.
func TestSizeLinesFit(t *testing.T) {
	texts := map[string]string{"beacon": sample(t, "beacon"), "lanterns": sample(t, "lanterns")}
	for seed := range uint64(judges.Of(2, 14)) {
		texts[fmt.Sprint("invented ", seed)] = invent.Layout(seed)
	}
	for name, text := range texts {
		for _, size := range []string{"twin", "größer"} {
			r, err := Fit(text, Options{Wanted: inches(66, 88), Size: size, Nearest: 1})
			if err != nil {
				t.Fatal(err)
			}
			for _, b := range reportBreaks(r) {
				t.Errorf("%s, %s: %s", name, size, b)
			}
			if design, _, _ := layout.Read(text); r.SizeKnown != (design.InSize(size) != nil) {
				t.Errorf("%s, %s: known %v", name, size, r.SizeKnown)
			}
			if len(r.Suggestions) > 0 {
				s := &r.Suggestions[0]
				if s.Finished.Width++; len(breaks(r, s)) == 0 {
					t.Errorf("%s, %s: another width is not noticed", name, size)
				}
			}
		}
	}
}

// TestSizesForBeds: with its own block the sample comes within published lists of every bed that sizes of quilts are published for
// (the lists stand with their addresses in internal/plan/supplies).
func TestSizesForBeds(t *testing.T) {
	for _, bed := range supplies.Beds() {
		if len(bed.Quilts) < 3 || bed.Quilt().Width < 48*measure.Inch {
			continue // stars of 12 1/4 in are too large a step for a crib
		}
		r, err := Fit(sample(t, "beacon"), Options{Wanted: ForBed(&bed), Size: "other", Nearest: 1})
		if err != nil {
			t.Fatal(err)
		}
		if s := &r.Suggestions[0]; !s.Within || s.StripCut != r.Now.StripCut {
			t.Errorf("%s: %s gives %v, published are %v to %v", bed.Name, s.SizeLine, s.Finished, r.Wanted.Least, r.Wanted.Most)
		}
	}
}

func TestLawsCatch(t *testing.T) {
	text := sample(t, "lanterns")
	for name, spoil := range map[string]func(s *Suggestion){
		"another width":         func(s *Suggestion) { s.Finished.Width++; s.Over.Width++ },
		"another height":        func(s *Suggestion) { s.Finished.Height--; s.Over.Height-- },
		"a block more":          func(s *Suggestion) { s.Columns++ },
		"another side":          func(s *Suggestion) { s.SideFinished += 2 },
		"another strip":         func(s *Suggestion) { s.StripCut++ },
		"a wrong distance":      func(s *Suggestion) { s.Over.Width++ },
		"another border":        func(s *Suggestion) { s.BordersFinished = append([]measure.NM{1}, s.BordersFinished[1:]...) },
		"borders out that stay": func(s *Suggestion) { s.Borders = LeftOut },
		"scaled as written":     func(s *Suggestion) { s.Borders = AsWritten },
		"a change forgotten":    func(s *Suggestion) { s.Changes = s.Changes[1:] },
		"a change of another":   func(s *Suggestion) { s.Changes[0].First++; s.Changes[0].Last++ },
		"a fault":               func(s *Suggestion) { s.Text += "\nborder" },
	} {
		r, err := Fit(text, Options{Wanted: inches(60, 80)})
		if err != nil {
			t.Fatal(err)
		}
		s := &r.Suggestions[slices.IndexFunc(r.Suggestions, func(s Suggestion) bool { return s.Borders == Scaled })]
		if list := breaks(r, s); len(list) > 0 {
			t.Fatal(list)
		}
		spoil(s)
		if len(breaks(r, s)) == 0 {
			t.Errorf("%s goes through", name)
		}
	}
}

func sample(t testing.TB, name string) string {
	t.Helper()
	for _, s := range samples.All() {
		if s.Name == name {
			return s.Text
		}
	}
	t.Fatalf("no sample is called %s", name)
	return ""
}

// The same layout and options give the same report.
func TestSameReport(t *testing.T) {
	text := sample(t, "regatta")
	a, err := Fit(text, Options{Wanted: inches(60, 80)})
	if err != nil {
		t.Fatal(err)
	}
	b, _ := Fit(text, Options{Wanted: inches(60, 80)})
	a.Read, b.Read = nil, nil
	if fmt.Sprintf("%+v", a) != fmt.Sprintf("%+v", b) {
		t.Error("two reports differ")
	}
}

// Faults of a layout and of options are errors, and none of them panics.
func TestRefused(t *testing.T) {
	if _, err := Fit("strip 4", Options{Wanted: inches(60, 80)}); !errors.Is(err, errFaulty) {
		t.Errorf("a layout without a grid: %v", err)
	}
	text := sample(t, "nets")
	good := inches(60, 80)
	for name, o := range map[string]Options{
		"no size":           {},
		"a huge size":       {Wanted: inches(60, 1<<30)},
		"turned ends":       {Wanted: good, From: 4 * measure.Inch, To: 3 * measure.Inch},
		"only an end":       {Wanted: good, To: 3 * measure.Inch},
		"below nothing":     {Wanted: good, From: -1, To: 3},
		"a huge strip":      {Wanted: good, From: 1, To: 1 << 60, Step: 1 << 59},
		"too many":          {Wanted: good, From: measure.Inch, To: 6 * measure.Inch, Step: 1},
		"a step back":       {Wanted: good, Step: -1},
		"a huge border":     {Wanted: good, MaxBorder: 1 << 60},
		"a border below 0":  {Wanted: good, MaxBorder: -1},
		"too many laid out": {Wanted: good, Nearest: 1000},
	} {
		if r, err := Fit(text, o); err == nil || r != nil {
			t.Errorf("%s goes through", name)
		}
	}
	// Strips that leave nothing are refused one by one, with the fault.
	r, err := Fit(text, Options{Wanted: good, From: measure.Inch / 4, To: measure.Inch / 2, Step: measure.Inch / 4})
	if err != nil || len(r.Refused) != 2 || !strings.Contains(r.Refused[0].Message, "seam") {
		t.Errorf("strips of a quarter and half an inch: %+v, %v", r, err)
	}
}

func FuzzFit(f *testing.F) {
	for _, s := range samples.All() {
		f.Add(s.Text, int64(60), int64(80))
	}
	for seed := range uint64(judges.Of(5, 12)) {
		f.Add(invent.Mutant(seed), int64(20), int64(30))
	}
	for seed := range uint64(judges.Of(2, 12)) {
		f.Add(invent.WithSize(seed, invent.Layout(seed), "other"), int64(20), int64(30))
	}
	f.Add("side 4 1/2\nfabric a navy\nfabric b white\nstrip-set s a 1 b rest\nblock W web wedges s kites b\nblock T tumblers pieces a b about 3 3/4 cut\nblock U tumblers pieces a b line 7\ngrid\n  W T W U\n  W T W U\nborder 2 cut a\nsize big side 6 1/2 cut border 3 cut\nsize metric side 12 cut units cm down 4\n", int64(30), int64(30))
	f.Fuzz(func(t *testing.T, text string, width, height int64) {
		if len(text) > 4000 || width > 200 || height > 200 {
			return
		}
		if d, _, _ := layout.Read(text); d != nil {
			for _, s := range d.Sizes {
				written := WrittenOut(text, s.Name, nil)
				if alone, _, list := layout.Read(written); alone == nil || measured(alone) != measured(s.Design) {
					t.Errorf("the size %s written out is another quilt: %v\n%s", s.Name, list, written)
				}
			}
		}
		r, err := Fit(text, Options{Wanted: inches(width, height), Nearest: 1})
		if err != nil {
			return
		}
		for _, b := range reportBreaks(r) {
			t.Error(b)
		}
	})
}

// withSize is what to write so that a suggestion is a size of the layout: its line behind all others.
func withSize(text string, s *Suggestion) layout.Edit {
	end := len(strings.TrimRight(text, " \t\r\n"))
	return layout.Edit{Span: layout.Span{Start: end, End: end}, Text: (&fitting{text: text}).newline() + s.SizeLine}
}
