package main

import (
	"fmt"
	"go/ast"
	"go/parser"
	"go/token"
	"io/fs"
	"slices"
	"strconv"
	"testing"

	"eighthturn/internal/blocks"
)

// A piece shape is one file in blocks and one line in its list; nothing else names a shape by its constant, or asks
// for one by its word. Sentences may have the word.

// shapeExceptions are words of shapes that are compared outside blocks for another reason, by folder.
func shapeExceptions() []exception {
	return []exception{
		{"layout", "strip", "a word of the language: the statement of the strip that wedges come from"},
	}
}

// shapeConstants are the names of the constants of type Shape, read off the package.
func shapeConstants(t *testing.T) []string {
	t.Helper()
	file, err := parser.ParseFile(token.NewFileSet(), "../../internal/blocks/shape.go", nil, 0)
	if err != nil {
		t.Fatal(err)
	}
	var list []string
	for _, d := range file.Decls {
		g, ok := d.(*ast.GenDecl)
		if !ok || g.Tok != token.CONST {
			continue
		}
		if first, ok := g.Specs[0].(*ast.ValueSpec).Type.(*ast.Ident); !ok || first.Name != "Shape" {
			continue
		}
		for _, s := range g.Specs {
			list = append(list, s.(*ast.ValueSpec).Names[0].Name)
		}
	}
	return list
}

// shapesNamed are the constants of shapes outside blocks, the words that something is compared with and are no exception, and which exceptions there were.
func shapesNamed(t *testing.T, source fs.FS) (list []string, excused map[exception]bool) {
	constants, words := shapeConstants(t), map[string]bool{}
	for _, s := range blocks.Shapes() {
		words[s.String()] = true
	}
	excused = map[exception]bool{}
	compared := func(path, folder string, with ...ast.Expr) {
		for _, e := range with {
			lit, ok := e.(*ast.BasicLit)
			if !ok || lit.Kind != token.STRING {
				continue
			}
			text, err := strconv.Unquote(lit.Value)
			if err != nil || !words[text] {
				continue
			}
			i := slices.IndexFunc(shapeExceptions(), func(e exception) bool { return e.folder == folder && e.text == text })
			if i < 0 {
				list = append(list, fmt.Sprintf("%s compares with the word %q", path, text))
			} else {
				excused[shapeExceptions()[i]] = true
			}
		}
	}
	for _, f := range goFiles(t, source) {
		if f.folder == "internal/blocks" {
			continue
		}
		ast.Inspect(f.File, func(n ast.Node) bool {
			switch n := n.(type) {
			case *ast.SelectorExpr:
				if from, ok := n.X.(*ast.Ident); ok && from.Name == "blocks" && slices.Contains(constants, n.Sel.Name) {
					list = append(list, fmt.Sprintf("%s names the shape %s", f.path, n.Sel.Name))
				}
			case *ast.BinaryExpr:
				if n.Op == token.EQL || n.Op == token.NEQ {
					compared(f.path, f.folder, n.X, n.Y)
				}
			case *ast.CaseClause:
				compared(f.path, f.folder, n.List...)
			}
			return true
		})
	}
	return list, excused
}

func TestNothingElseNamesAShape(t *testing.T) {
	if found, want := len(shapeConstants(t)), len(blocks.Shapes()); found != want {
		t.Fatalf("%d constants, %d descriptions", found, want)
	}
	list, excused := shapesNamed(t, project())
	for _, line := range list {
		t.Error(line)
	}
	for _, e := range shapeExceptions() {
		if !excused[e] {
			t.Errorf("%s does not have %q any more: take the exception out", e.folder, e.text)
		}
	}
}

func TestNothingElseNamesAShapeCatches(t *testing.T) {
	for i, constant := range shapeConstants(t) {
		source := tree(map[string]string{
			"sewing/a.go":          "package sewing\n\nfunc f(s blocks.Shape) bool { return s == blocks." + constant + " }\n",
			"svgout/a.go":          "package svgout\n\nfunc f(s blocks.Shape) bool { return s.String() == `" + blocks.Shapes()[i].String() + "` }\n",
			"internal/blocks/a.go": "package blocks\n\nconst name = \"" + blocks.Shapes()[i].String() + "\"\n",
			"sewing/a_test.go":     "package sewing\n\nvar s = blocks." + constant + "\n",
		})
		if list, _ := shapesNamed(t, source); len(list) != 2 {
			t.Errorf("%s: found %q, want two things", constant, list)
		}
	}
}
