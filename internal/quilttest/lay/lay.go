// Package lay lays layouts out for tests: one by its text, and those that the laws of plans are tried on.
package lay

import (
	"fmt"
	"os"
	"path/filepath"
	"strings"
	"testing"

	"golang.org/x/tools/txtar"

	"eighthturn/internal/quilt"
	"eighthturn/internal/quilttest/invent"
	"eighthturn/layout"
	"eighthturn/samples"
)

// Top is a layout laid out, which must have no errors.
func Top(t testing.TB, text string) *quilt.Top {
	t.Helper()
	top, err := Read(text)
	if err != nil {
		t.Fatal(err)
	}
	return top
}

// Read is a layout laid out, for lists that are made before any test begins; that it has errors is the error.
func Read(text string) (*quilt.Top, error) {
	d, _, faults := layout.Read(text)
	if errors, _ := layout.Count(faults); errors > 0 || d == nil {
		return nil, fmt.Errorf("%v\n%s", faults, text)
	}
	return quilt.Lay(d), nil
}

// must is a layout of our own laid out, for lists that are made before any test begins.
func must(text string) *quilt.Top {
	top, err := Read(text)
	if err != nil {
		panic(err)
	}
	return top
}

// Named is a top and its name, for messages.
type Named struct {
	Name string
	*quilt.Top
}

// Samples are the samples laid out.
func Samples() (list []Named) {
	for _, s := range samples.All() {
		list = append(list, Named{s.Name, must(s.Text)})
	}
	return list
}

// Hundred are the hundred layouts that were written down before the cutting plan was.
func Hundred() (list []Named) {
	a, err := txtar.ParseFile(filepath.Join(root(), "testdata", "cutting", "hundred.txtar"))
	if err != nil || len(a.Files) != 100 {
		panic(fmt.Sprintf("%d layouts: %v", len(a.Files), err))
	}
	for _, f := range a.Files {
		list = append(list, Named{strings.TrimSuffix(f.Name, ".quilt"), must(string(f.Data))})
	}
	return list
}

// Reference are the whole layouts that the reference explains the language by, which have every statement that the samples lack, laid out.
func Reference() (list []Named) {
	text, err := os.ReadFile(filepath.Join(root(), "layout", "LANGUAGE.md"))
	if err != nil {
		panic(err)
	}
	for i, part := range strings.Split(string(text), "\n```quilt\n")[1:] {
		example, _, _ := strings.Cut(part, "\n```")
		if top, err := Read(example + "\n"); err == nil { // not where photos are named
			list = append(list, Named{fmt.Sprint("example ", i+1, " of the reference"), top})
		}
	}
	return list
}

// Invented are so many invented layouts laid out, from a seed on, those with more patches left out.
func Invented(first uint64, count, maxPatches int) (list []Named) {
	for seed := first; len(list) < count; seed++ {
		if top := must(invent.Layout(seed)); len(top.Patches) <= maxPatches {
			list = append(list, Named{fmt.Sprint("invented ", seed), top})
		}
	}
	return list
}

// root is the project's folder: the nearest one up from that of the test that holds its module file.
func root() string {
	at, err := os.Getwd()
	for ; err == nil && at != filepath.Dir(at); at = filepath.Dir(at) {
		if _, err := os.Stat(filepath.Join(at, "go.mod")); err == nil {
			return at
		}
	}
	panic("lay: no module file stands above this folder")
}
