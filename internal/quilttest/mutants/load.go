package main

import (
	"cmp"
	"fmt"
	"go/ast"
	"os"
	"path/filepath"
	"slices"
	"strings"

	"golang.org/x/tools/go/packages"
)

// folder is a package with its breakages.
type folder struct {
	path    string
	name    string
	dir     string
	files   []file
	mutants []mutant
}

// file is a file of a package, and how it is broken.
type file struct {
	name    string
	text    string
	changes []change // in no order
}

// change is text that is put in at a byte of the file. Of several at one place those that end come first, the inner before
// the outer; then those that begin, the outer before the inner.
type change struct {
	at     int
	ends   bool
	extent int // bytes of what is broken
	number int // of two that break the same text, the outer one has the lower
	text   string
}

// load reads packages and finds where they can be broken.
func load(patterns []string) ([]folder, error) {
	config := &packages.Config{Mode: packages.NeedName | packages.NeedFiles | packages.NeedCompiledGoFiles | packages.NeedSyntax | packages.NeedTypes | packages.NeedTypesInfo | packages.NeedImports}
	list, err := packages.Load(config, patterns...)
	if err != nil {
		return nil, err
	}
	var folders []folder
	for _, p := range list {
		if len(p.Errors) > 0 {
			return nil, p.Errors[0]
		}
		d := folder{path: p.PkgPath, name: p.Name}
		for i, syntax := range p.Syntax {
			name := p.CompiledGoFiles[i]
			text, err := os.ReadFile(name)
			if err != nil {
				return nil, err
			}
			d.dir = filepath.Dir(name)
			b := breaker{info: p.TypesInfo, home: p.Types, fset: p.Fset, text: string(text), name: name, imported: imported(syntax), next: len(d.mutants) + 1, named: map[string]int{}}
			b.file(syntax)
			d.mutants = append(d.mutants, b.mutants...)
			d.files = append(d.files, file{name, string(text), b.changes})
		}
		if len(d.files) == 0 {
			return nil, fmt.Errorf("%s has no files", p.PkgPath)
		}
		folders = append(folders, d)
	}
	return folders, nil
}

// imported is what a file calls the packages that it imports, by their paths, where it gives no name of its own.
func imported(f *ast.File) map[string]bool {
	paths := map[string]bool{}
	for _, spec := range f.Imports {
		if spec.Name == nil {
			paths[strings.Trim(spec.Path.Value, `"`)] = true
		}
	}
	return paths
}

// broken is the text with all its breakages asleep.
func (f *file) broken() string {
	changes := slices.Clone(f.changes)
	for i := range changes {
		changes[i].number = i
	}
	slices.SortFunc(changes, func(a, b change) int {
		switch {
		case a.at != b.at:
			return a.at - b.at
		case a.ends != b.ends:
			if a.ends {
				return -1
			}
			return 1
		case a.ends:
			return cmp.Or(a.extent-b.extent, b.number-a.number)
		default:
			return cmp.Or(b.extent-a.extent, a.number-b.number)
		}
	})
	var out strings.Builder
	at := 0
	for _, c := range changes {
		out.WriteString(f.text[at:c.at])
		out.WriteString(c.text)
		at = c.at
	}
	out.WriteString(f.text[at:])
	return out.String()
}
