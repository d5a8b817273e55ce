package layout_test

import (
	"slices"
	"testing"

	"eighthturn/internal/quilttest/invent"
	"eighthturn/internal/quilttest/judges"
	"eighthturn/layout"
	"eighthturn/samples"
)

// TestPlacesOfAuditions: each place of the list can be auditioned with what the list says that it may be given, has a fabric that is
// there now, and each role that a block gives is in the list or is given by the webs, which are.
func TestPlacesOfAuditions(t *testing.T) {
	texts := []string{auditioned, "palette tidewater\n" + auditioned}
	for _, s := range samples.All() {
		texts = append(texts, s.Text)
	}
	for seed := range uint64(judges.Of(20, 200)) {
		texts = append(texts, invent.Layout(seed))
	}
	for _, text := range texts {
		r := layout.Inspect(text, nil)
		if r.Design == nil {
			t.Fatal(r.Faults)
		}
		list := r.AuditionPlaces("")
		for _, p := range list {
			tried := r.AuditionFabrics("")
			if !p.Plain {
				for _, s := range r.Design.StripSets {
					tried = append(tried, s.Name)
				}
			}
			tried = append(tried, "#123456")
			if p.Deal > 0 {
				tried = []string{"1", "2"}
			}
			if len(tried) > layout.MaxAuditions {
				tried = tried[len(tried)-layout.MaxAuditions:]
			}
			if _, err := r.Auditions(p.AuditionOf, tried); err != nil {
				t.Errorf("%s of %q: %v\n%s", p.Role, p.Of, err, text)
			}
			if p.Fabric < 0 || p.Fabric >= len(r.Design.Fabrics) {
				t.Errorf("%s of %q has fabric %d\n%s", p.Role, p.Of, p.Fabric, text)
			}
		}
		has := func(role, of string) bool {
			return slices.ContainsFunc(list, func(p layout.AuditionPlace) bool { return p.Role == role && p.Of == of })
		}
		for _, b := range r.Design.Blocks {
			for i, role := range b.Kind.Roles {
				if len(b.Fills[i]) > 0 && !has(role.Name, b.Label) && !(role.OfWebs && has("webs", "")) {
					t.Errorf("%s of %s is no place\n%s", role.Name, b.Label, text)
				}
			}
		}
		if r.Design.Binding != nil && !has("binding", "") {
			t.Errorf("the binding is no place\n%s", text)
		}
	}
}
