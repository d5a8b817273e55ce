package main

import (
	"go/ast"
	"go/parser"
	"go/token"
	"io/fs"
	"os"
	"path"
	"strings"
	"testing"
	"testing/fstest"
)

// module is the name that the project's own imports begin with.
const module = "eighthturn"

// project is the whole source, read from this folder up. It is read here, not by another program: a test whose input the
// go command does not see would pass from its cache.
func project() fs.FS { return os.DirFS("../..") }

// goFile is one file that is part of the program, not of its tests.
type goFile struct {
	folder, path string
	*ast.File
}

// goFiles reads the files of the program in a tree.
func goFiles(t *testing.T, tree fs.FS) []goFile {
	t.Helper()
	var list []goFile
	err := fs.WalkDir(tree, ".", func(at string, e fs.DirEntry, err error) error {
		switch {
		case err != nil:
			return err
		case e.IsDir() && at != "." && passedBy(e.Name()):
			return fs.SkipDir
		case e.IsDir() || !strings.HasSuffix(at, ".go") || strings.HasSuffix(at, "_test.go"):
			return nil
		}
		text, err := fs.ReadFile(tree, at)
		if err != nil {
			return err
		}
		file, err := parser.ParseFile(token.NewFileSet(), at, text, parser.SkipObjectResolution)
		if err != nil {
			return err
		}
		list = append(list, goFile{path.Dir(at), at, file})
		return nil
	})
	if err != nil {
		t.Fatal(err)
	}
	return list
}

// passedBy says whether the go command passes by a folder too.
func passedBy(name string) bool {
	return name == "testdata" || name == "node_modules" || strings.HasPrefix(name, ".") || strings.HasPrefix(name, "_")
}

// tree is a small project for tests of these tests.
func tree(files map[string]string) fs.FS {
	m := fstest.MapFS{}
	for name, text := range files {
		m[name] = &fstest.MapFile{Data: []byte(text)}
	}
	return m
}
