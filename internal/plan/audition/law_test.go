package audition_test

import (
	"bytes"
	"encoding/json"
	"errors"
	"fmt"
	"math/rand/v2"
	"slices"
	"testing"

	"eighthturn/internal/plan/audition"
	"eighthturn/internal/plan/contrast"
	"eighthturn/internal/quilt"
	"eighthturn/internal/quilttest/invent"
	"eighthturn/internal/quilttest/judges"
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

// verdicts is what a study comes to: every figure, what is lost and the scraps that stray.
func verdicts(t *testing.T, r *contrast.Report) []byte {
	t.Helper()
	text, err := json.Marshal(struct{ Figures, Losses, Stray, Fabrics, Thresholds any }{r.Figures, r.Losses, r.Stray, r.Fabrics, r.Thresholds})
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
	return fmt.Errorf("they differ from …%s on: %s", x[max(0, n-60):n], x[n:min(len(x), n+80)])
}

// dealtAlike says whether two tops have the same fabrics in the same places. A line that is written changes the order of the fabrics where
// one comes from a palette, and scraps are dealt by that order.
func dealtAlike(a, b *quilt.Top) bool {
	return slices.EqualFunc(a.Faces, b.Faces, func(x, y quilt.Face) bool { return a.Fabrics[x.Fabric].Name == b.Fabrics[y.Fabric].Name })
}

var tried = []string{"#101018", "#f8f4ea", "#7a2f16", "#8a8a8a", "#33506b"}

// TestAuditionsAreStudies: an audition's verdict is that of a study of its own, of the fabric in another color (what `values --try` shows),
// and of the layout with the line written into it.
func TestAuditionsAreStudies(t *testing.T) {
	r := rand.New(rand.NewPCG(5, 5))
	list, anew := texts(), 0
	for n, text := range list {
		reading := layout.Inspect(text, nil)
		if reading.Design == nil {
			t.Fatal(reading.Faults)
		}
		top := quilt.Lay(reading.Design)
		fabric := reading.Design.Fabrics[r.IntN(len(reading.Design.Fabrics))].Name
		trials, err := reading.Auditions(fabric, "", tried)
		if err != nil {
			t.Fatalf("%d, %s: %v", n, fabric, err)
		}
		plan, err := audition.Build(top, trials, read, audition.Options{})
		if err != nil {
			t.Fatal(err)
		}
		for i := range plan.Alternatives {
			try, err := contrast.ParseTry(top, trials[i].Try)
			if err != nil {
				t.Fatal(err)
			}
			if err := sameVerdicts(t, plan.Alternatives[i].Study, contrast.Study(contrast.Tried(top, []contrast.Try{try}), contrast.Options{})); err != nil {
				t.Errorf("%d, %s: %v\n%s", n, trials[i].Try, err, text)
			}
			design, faults := read(trials[i].Text)
			if design == nil {
				t.Fatal(faults)
			}
			written := quilt.Lay(design)
			if !dealtAlike(top, written) {
				anew++
				continue
			}
			if err := sameVerdicts(t, plan.Alternatives[i].Study, contrast.Study(written, contrast.Options{})); err != nil {
				t.Errorf("%d, %s written: %v\n%s", n, trials[i].Try, err, text)
			}
		}
	}
	if anew > len(list)*len(tried)/10 {
		t.Errorf("%d of %d are dealt anew", anew, len(list)*len(tried))
	}
}

// TestAuditionsOfRolesAreStudies: the same for the roles of a block, whose fabrics are others and not other colors.
func TestAuditionsOfRolesAreStudies(t *testing.T) {
	made := 0
	for _, text := range texts() {
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
	trials, err := reading.Auditions(role, label, list)
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
