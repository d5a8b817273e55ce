// Command judged prints what the build tag judges changes: first the folders of the packages with such tests, then a pattern
// for go test -run that names the tests. All others give the same without the tag and need not run twice. A test is changed
// where it stands in a file with the tag, and where it asks package judges, itself or by way of what it uses of its own
// package or of quilttest's.
//
// Names are compared, not types: a test may run once too often, but none is left out.
package main

import (
	"fmt"
	"go/ast"
	"go/build/constraint"
	"go/parser"
	"go/token"
	"io/fs"
	"maps"
	"os"
	"path"
	"slices"
	"strings"
)

const (
	tag      = "judges"
	module   = "eighthturn/"
	ours     = "internal/quilttest/" // packages for tests, whose plain files count as well
	toolkits = module + ours
)

func main() {
	tests, err := judged(os.DirFS("."))
	if err != nil {
		fmt.Fprintln(os.Stderr, err)
		os.Exit(1)
	}
	folders, names := map[string]bool{}, map[string]bool{}
	for _, test := range tests {
		folders["./"+test.folder], names[test.name] = true, true
	}
	fmt.Println(strings.Join(slices.Sorted(maps.Keys(folders)), " "))
	fmt.Printf("^(%s)$\n", strings.Join(slices.Sorted(maps.Keys(names)), "|"))
}

// declared is something that a file declares at its top, by the folder of its package. A type is taken to mention its methods:
// whoever has a value of it got it from what mentions the type, so that calls need not be looked at.
type declared struct{ folder, name string }

// uses is what each declaration mentions, and which are changed whatever they mention.
type uses struct {
	mentions map[declared]map[declared]bool
	changed  map[declared]bool
}

// judged is the tests, fuzz targets and examples of a tree that the tag changes, in order. A plain file of the program that
// has the tag is an error, and so is one that cannot be parsed.
func judged(tree fs.FS) ([]declared, error) {
	u := uses{map[declared]map[declared]bool{}, map[declared]bool{}}
	err := fs.WalkDir(tree, ".", func(file string, entry fs.DirEntry, err error) error {
		if err != nil {
			return err
		}
		if entry.IsDir() && (entry.Name() == "node_modules" || strings.HasPrefix(entry.Name(), ".") && file != ".") {
			return fs.SkipDir
		}
		if entry.IsDir() || !strings.HasSuffix(file, ".go") {
			return nil
		}
		text, err := fs.ReadFile(tree, file)
		if err != nil {
			return err
		}
		return u.read(file, text)
	})
	if err != nil {
		return nil, err
	}
	u.join()
	u.spread()
	var tests []declared
	for d := range u.changed {
		if isTest(d.name) {
			tests = append(tests, d)
		}
	}
	slices.SortFunc(tests, func(a, b declared) int {
		return strings.Compare(a.folder+" "+a.name, b.folder+" "+b.name)
	})
	return tests, nil
}

func isTest(name string) bool {
	return name != "TestMain" && (strings.HasPrefix(name, "Test") || strings.HasPrefix(name, "Fuzz") || strings.HasPrefix(name, "Example"))
}

// read notes what the declarations of a file mention.
func (u *uses) read(file string, text []byte) error {
	f, err := parser.ParseFile(token.NewFileSet(), file, text, parser.SkipObjectResolution|parser.ParseComments)
	if err != nil {
		return err
	}
	folder, tagged := path.Dir(file), tagged(f)
	if !strings.HasSuffix(file, "_test.go") && !strings.HasPrefix(file, ours) {
		if tagged {
			return fmt.Errorf("%s: the program itself has the tag %s", file, tag)
		}
		return nil
	}
	toolkit := map[string]string{} // the folder of a package for tests, by its name in this file
	for _, i := range f.Imports {
		at := strings.Trim(i.Path.Value, `"`)
		if !strings.HasPrefix(at, toolkits) {
			continue
		}
		local := path.Base(at)
		if i.Name != nil {
			local = i.Name.Name
		}
		if local == "." {
			return fmt.Errorf("%s: %s is imported without a name", file, at)
		}
		toolkit[local] = strings.TrimPrefix(at, module)
	}
	add := func(name string, node ast.Node) { u.add(declared{folder, name}, node, toolkit, tagged) }
	for _, d := range f.Decls {
		switch d := d.(type) {
		case *ast.FuncDecl:
			if d.Recv == nil {
				add(d.Name.Name, d)
				continue
			}
			var receiver string
			ast.Inspect(d.Recv.List[0].Type, func(node ast.Node) bool {
				if name, ok := node.(*ast.Ident); ok && receiver == "" {
					receiver = name.Name
				}
				return true
			})
			add(receiver+"."+d.Name.Name, d)
			u.mention(declared{folder, receiver}, declared{folder, receiver + "." + d.Name.Name})
		case *ast.GenDecl:
			for _, s := range d.Specs {
				switch s := s.(type) {
				case *ast.ValueSpec:
					for _, n := range s.Names {
						add(n.Name, d) // all of it: a constant may go on from the one above
					}
				case *ast.TypeSpec:
					add(s.Name.Name, s)
				}
			}
		}
	}
	return nil
}

// tagged says whether a file's build constraint has the tag, or the lack of it.
func tagged(f *ast.File) bool {
	for _, group := range f.Comments {
		for _, c := range group.List {
			if c.Pos() > f.Package || !constraint.IsGoBuild(c.Text) {
				continue
			}
			if expression, err := constraint.Parse(c.Text); err == nil && mentionsTag(expression) {
				return true
			}
		}
	}
	return false
}

func mentionsTag(e constraint.Expr) bool {
	switch e := e.(type) {
	case *constraint.TagExpr:
		return e.Tag == tag
	case *constraint.NotExpr:
		return mentionsTag(e.X)
	case *constraint.AndExpr:
		return mentionsTag(e.X) || mentionsTag(e.Y)
	case *constraint.OrExpr:
		return mentionsTag(e.X) || mentionsTag(e.Y)
	}
	return false
}

// add notes all that a declaration mentions.
func (u *uses) add(d declared, node ast.Node, toolkit map[string]string, tagged bool) {
	u.changed[d] = u.changed[d] || tagged
	var look func(node ast.Node) bool
	look = func(node ast.Node) bool {
		switch node := node.(type) {
		case *ast.SelectorExpr:
			if x, ok := node.X.(*ast.Ident); ok && toolkit[x.Name] != "" {
				u.mention(d, declared{toolkit[x.Name], node.Sel.Name})
				return false
			}
			ast.Inspect(node.X, look)
			return false
		case *ast.Ident:
			u.mention(d, declared{d.folder, node.Name})
		}
		return true
	}
	ast.Inspect(node, look)
}

func (u *uses) mention(d, what declared) {
	if u.mentions[d] == nil {
		u.mentions[d] = map[declared]bool{}
	}
	u.mentions[d][what] = true
}

// join adds what tests mention without naming it: what runs before any test of a package.
func (u *uses) join() {
	var first []declared
	for d := range u.mentions {
		if strings.HasPrefix(d.folder+"/", ours) && (d.name == "init" || d.name == "_") {
			first = append(first, d)
		}
	}
	for d, list := range u.mentions {
		if isTest(d.name) {
			for _, before := range append(first, declared{d.folder, "init"}, declared{d.folder, "_"}, declared{d.folder, "TestMain"}) {
				list[before] = true
			}
		}
	}
}

// spread makes all that mention something changed changed.
func (u *uses) spread() {
	maps.DeleteFunc(u.changed, func(_ declared, is bool) bool { return !is })
	for more := true; more; {
		more = false
		for d, list := range u.mentions {
			if u.changed[d] {
				continue
			}
			for m := range list {
				if u.changed[m] {
					u.changed[d], more = true, true
					break
				}
			}
		}
	}
}
