package audition_test

import (
	"bytes"
	"cmp"
	"encoding/json"
	"errors"
	"fmt"
	"math/rand/v2"
	"slices"
	"strings"
	"testing"

	"eighthturn/internal/plan/audition"
	"eighthturn/internal/plan/contrast"
	"eighthturn/internal/quilt"
	"eighthturn/internal/quilttest/invent"
	"eighthturn/internal/quilttest/judges"
	"eighthturn/internal/stop"
	"eighthturn/layout"
	"eighthturn/samples"
)

func read(text string) (*layout.Design, []layout.Fault) {
	d, _, faults := layout.Read(text)
	return d, faults
}

// texts are the samples and invented layouts.
func texts() (list []string) {
	for _, s := range samples.All() {
		list = append(list, s.Text)
	}
	for seed := range uint64(judges.Of(3, 16)) {
		list = append(list, invent.Layout(900+seed))
	}
	return list
}

// verdicts is what a study comes to: every figure, what is lost and the scraps that stray. Fabrics are named in the order in which a
// layout has them, which a line that is written for a palette's fabric changes.
func verdicts(t *testing.T, r *contrast.Report) []byte {
	t.Helper()
	figures := slices.Clone(r.Figures)
	for i := range figures {
		f := &figures[i]
		f.Lacks = slices.Clone(f.Lacks)
		for n := range f.Lacks { // of two fabrics of one value either may come first
			slices.Sort(f.Lacks[n].Names[:])
		}
		slices.SortStableFunc(f.Lacks, func(a, b contrast.Lack) int { // and of seams of one length
			return cmp.Or(cmp.Compare(b.Length, a.Length), slices.Compare(a.Names[:], b.Names[:]))
		})
		f.Of, f.Edge, f.Against = slices.Sorted(slices.Values(f.Of)), slices.Sorted(slices.Values(f.Edge)), slices.Sorted(slices.Values(f.Against))
	}
	text, err := json.Marshal(struct{ Figures, Losses, Stray, Fabrics, Thresholds any }{figures, r.Losses, r.Stray, r.Fabrics, r.Thresholds})
	if err != nil {
		t.Fatal(err)
	}
	return text
}

// sameVerdicts says whether two studies come to the same, to the last number.
func sameVerdicts(t *testing.T, a, b *contrast.Report) error {
	t.Helper()
	x, y := verdicts(t, a), verdicts(t, b)
	if bytes.Equal(x, y) {
		return nil
	}
	n := 0
	for n < min(len(x), len(y)) && x[n] == y[n] {
		n++
	}
	return fmt.Errorf("they differ from …%s on: %s, and %s", x[max(0, n-60):n], x[n:min(len(x), n+80)], y[n:min(len(y), n+80)])
}

var tried = []string{"#101018", "#f8f4ea", "#7a2f16", "#8a8a8a", "#33506b"}

// inPalettes are layouts whose fabrics are partly those of a palette, dealt from a pool and not.
const inPalettes = "strip 4\npalette tidewater\nfabric rust #b5532a\nblock W web wedges %s kites foam\ngrid\n W W W\n W W W\ncolorway dusk rust #334455 slate plum\n"

// TestAuditionsAreStudies: an audition's verdict is that of a study of its own: of the layout with the line written into it, and, where
// only a fabric's color is another, of the fabric in that color (what `values --try` shows), as it is written and in a colorway.
func TestAuditionsAreStudies(t *testing.T) {
	r := rand.New(rand.NewPCG(5, 5))
	for _, text := range append(texts(), fmt.Sprintf(inPalettes, "rust slate"), strings.Replace(fmt.Sprintf(inPalettes, "all"), "block", "scraps all rust slate foam dune\nblock", 1)) {
		reading := layout.Inspect(text, nil)
		if reading.Design == nil {
			t.Fatal(reading.Faults)
		}
		for _, colorway := range append([]string{""}, colorways(reading.Design)...) {
			top := in(quilt.Lay(reading.Design), colorway)
			fabric := top.Fabrics[top.Faces[r.IntN(len(top.Faces))].Fabric].Name
			auditioned(t, reading, top, colorway, fabric)
		}
	}
}

func colorways(d *layout.Design) (list []string) {
	for _, c := range d.Colorways {
		list = append(list, c.Name)
	}
	return list
}

// in is a top in a colorway that it has, "" for as it is written.
func in(top *quilt.Top, colorway string) *quilt.Top {
	if colorway == "" {
		return top
	}
	in, err := top.InNamed(colorway)
	if err != nil {
		panic(err)
	}
	return in
}

// auditioned has a fabric of a top auditioned, and holds each study to those that it should be.
func auditioned(t *testing.T, reading layout.Reading, top *quilt.Top, colorway, fabric string) {
	t.Helper()
	trials, err := reading.Auditions(layout.AuditionOf{Role: fabric, Colorway: colorway}, tried[:judges.Of(2, len(tried))])
	if err != nil {
		t.Fatalf("%s: %v", fabric, err)
	}
	plan, err := audition.Build(top, trials, read, audition.Options{Colorway: func(_ *stop.Sign, t *quilt.Top) (*quilt.Top, error) { return in(t, colorway), nil }})
	if err != nil {
		t.Fatal(err)
	}
	for i := range plan.Alternatives {
		if trials[i].Try != "" {
			try, err := contrast.ParseTry(top, trials[i].Try)
			if err != nil {
				t.Fatal(err)
			}
			if err := sameVerdicts(t, plan.Alternatives[i].Study, contrast.Study(contrast.Tried(top, []contrast.Try{try}), contrast.Options{})); err != nil {
				t.Errorf("%s in %q: %v\n%s", trials[i].Try, colorway, err, reading.Source.Text)
			}
		}
		design, faults := read(trials[i].Text)
		if design == nil {
			t.Fatal(faults)
		}
		written := in(quilt.Lay(design), colorway)
		study, other := plan.Alternatives[i].Study, contrast.Study(written, contrast.Options{})
		if colorway != "" { // where a fabric took another's place it has its own name again, in the same color
			study, other = nameless(study), nameless(other)
		}
		if err := sameVerdicts(t, study, other); err != nil {
			t.Errorf("%s, %s written in %q: %v\n%s", fabric, trials[i].Name, colorway, err, reading.Source.Text)
		}
		if a, b := dealt(plan.Alternatives[i].Top), dealt(written); !slices.Equal(a, b) {
			t.Errorf("%s, %s written in %q: the scraps lie otherwise\n%s", fabric, trials[i].Name, colorway, reading.Source.Text)
		}
	}
}

// nameless is a study without the names of fabrics.
func nameless(r *contrast.Report) *contrast.Report {
	made := &contrast.Report{Losses: r.Losses, Thresholds: r.Thresholds}
	for _, f := range r.Figures {
		f.Of, f.Edge, f.Against, f.Lacks, f.Complement = nil, nil, nil, nil, nil
		made.Figures = append(made.Figures, f)
	}
	return made
}

// dealt is what color each face has.
func dealt(t *quilt.Top) (list []string) {
	for _, f := range t.Faces {
		list = append(list, t.Fabrics[f.Fabric].Colour.Hex())
	}
	return list
}

// TestAuditionsOfRolesAreStudies: the same for the roles of a block, whose fabrics are others and not other colors.
func TestAuditionsOfRolesAreStudies(t *testing.T) {
	made := 0
	for _, text := range judges.Some(texts(), 5) {
		reading := layout.Inspect(text, nil)
		b := &reading.Design.Blocks[0]
		if len(reading.Design.Fabrics) < 2 {
			continue
		}
		first, second := reading.Design.Fabrics[0].Name, reading.Design.Fabrics[1].Name
		for _, role := range b.Kind.Roles {
			for _, list := range [][]string{{first, second, tried[0]}, {first + " " + second, first, second}} {
				if sameAsWritten(t, reading, role.Name, b.Label, list) {
					made++
				}
			}
		}
	}
	if made < 10 {
		t.Errorf("only %d auditions were made", made)
	}
}

// sameAsWritten has an audition made, false where it cannot be, and holds each of its studies to that of the layout as it is to be written.
func sameAsWritten(t *testing.T, reading layout.Reading, role, label string, list []string) bool {
	trials, err := reading.Auditions(layout.AuditionOf{Role: role, Of: label}, list)
	var unfit *layout.Unfit
	if errors.As(err, &unfit) {
		return false
	}
	plan, err := audition.Build(quilt.Lay(reading.Design), trials, read, audition.Options{Sorted: true})
	var wrong *audition.Wrong
	if errors.As(err, &wrong) {
		return false
	}
	if err != nil {
		t.Fatal(err)
	}
	for i := range plan.Alternatives {
		a := &plan.Alternatives[i]
		design, _ := read(trials[a.Number-1].Text)
		if err := sameVerdicts(t, a.Study, contrast.Study(quilt.Lay(design), contrast.Options{})); err != nil {
			t.Errorf("%s of %s, %s: %v", role, label, a.Name, err)
		}
		if i > 0 && contrast.Better(plan.Alternatives[i].Study, plan.Alternatives[i-1].Study) < 0 {
			t.Errorf("%s of %s: they are not sorted", role, label)
		}
	}
	return true
}

// TestVerdictsAreTold: what is not the same is found.
func TestVerdictsAreTold(t *testing.T) {
	d, _ := read(samples.All()[0].Text)
	top := quilt.Lay(d)
	as := contrast.Study(top, contrast.Options{})
	other := contrast.Study(contrast.Tried(top, []contrast.Try{{Fabric: 1, Colour: top.Fabrics[0].Colour}}), contrast.Options{})
	if sameVerdicts(t, as, as) != nil || sameVerdicts(t, as, other) == nil {
		t.Error("a study in other colors passes for the same")
	}
	if contrast.Better(as, other) >= 0 || contrast.Better(other, as) <= 0 || contrast.Better(as, as) != 0 {
		t.Error("a quilt whose star is lost reads as well as one whose star is seen")
	}
}
