package contrast

import (
	"path/filepath"
	"slices"
	"strings"
	"testing"

	"eighthturn/internal/quilttest/lay"

	"eighthturn/internal/quilt"
)

// TestFacesAreTheFigures: the faces of a figure are each named once and show the very fabrics
// that it is made of.
func TestFacesAreTheFigures(t *testing.T) {
	files, err := filepath.Glob("../../../testdata/values/layouts/*.quilt")
	if err != nil || len(files) == 0 {
		t.Fatalf("no layouts: %v", err)
	}
	for _, file := range files {
		name := strings.TrimSuffix(filepath.Base(file), ".quilt")
		top := read(t, name)
		r := Study(top, Options{})
		for i := range r.Figures {
			if fault := facesApart(top, &r.Figures[i]); fault != "" {
				t.Errorf("%s, %s: %s", name, r.Figures[i].Sort, fault)
			}
		}
	}
}

func TestFacesNotice(t *testing.T) {
	top := lay.Top(t, kingSize())
	f := Study(top, Options{}).Figures[0]
	for name, faces := range map[string][]int32{"none": nil, "one twice": append(slices.Clone(f.Faces), f.Faces[0]), "one of the ground": {int32(len(top.Faces) - 1)}} {
		spoilt := f
		spoilt.Faces = faces
		if facesApart(top, &spoilt) == "" {
			t.Errorf("%s goes unnoticed", name)
		}
	}
}

// facesApart says what is wrong with the faces of a figure.
func facesApart(top *quilt.Top, f *Figure) string {
	want := slices.Clone(f.Of)
	if f.Sort == Alternation || f.Sort == ByTurns {
		want = union(want, f.Against)
	}
	var got []string
	for _, i := range f.Faces {
		got = union(got, []string{top.Fabrics[top.Faces[i].Fabric].Name})
	}
	slices.Sort(got)
	slices.Sort(want)
	once := slices.Compact(slices.Sorted(slices.Values(f.Faces)))
	switch {
	case len(once) != len(f.Faces) || len(once) == 0:
		return "a face stands twice, or there is none"
	case !slices.Equal(got, want):
		return "it is of " + strings.Join(got, ", ") + " and not of " + strings.Join(want, ", ")
	}
	return ""
}
