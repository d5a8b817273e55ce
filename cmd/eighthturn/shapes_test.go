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

// shapesNamed are the constants of shapes outside blocks, and the words of shapes that something is
// compared with.
func shapesNamed(t *testing.T, source fs.FS) (list []string) {
	constants, words := shapeConstants(t), map[string]bool{}
	for _, s := range blocks.Shapes() {
		words[s.String()] = true
	}
	compared := func(path string, with ...ast.Expr) {
		for _, e := range with {
			lit, ok := e.(*ast.BasicLit)
			if !ok || lit.Kind != token.STRING {
				continue
			}
			text, err := strconv.Unquote(lit.Value)
			if err != nil || !words[text] {
				continue
			}
			list = append(list, fmt.Sprintf("%s compares with the word %q", path, text))
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
					compared(f.path, n.X, n.Y)
				}
			case *ast.CaseClause:
				compared(f.path, n.List...)
			}
			return true
		})
	}
	return list
}

func TestNothingElseNamesAShape(t *testing.T) {
	if found, want := len(shapeConstants(t)), len(blocks.Shapes()); found != want {
		t.Fatalf("%d constants, %d descriptions", found, want)
	}
	for _, line := range shapesNamed(t, project()) {
		t.Error(line)
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
		if list := shapesNamed(t, source); len(list) != 2 {
			t.Errorf("%s: found %q, want two things", constant, list)
		}
	}
}
