// Package starters holds small layouts of one sort each, to be changed into quilts of one's own.
package starters

import (
	"embed"
	"strings"
)

//go:embed *.quilt
var files embed.FS

// Starter is a small layout of one sort, every line of it explained, that a quilter changes into a quilt of her own.
type Starter struct {
	Name  string // of the sort, and of the file without its extension
	About string // its first line: what it makes, without full stop
	Text  string // the whole layout
}

// All is every starter, in the order of their names.
func All() []Starter {
	entries, _ := files.ReadDir(".") // what is embedded can be read
	list := make([]Starter, 0, len(entries))
	for _, e := range entries {
		text, _ := files.ReadFile(e.Name())
		about, _, _ := strings.Cut(string(text), "\n")
		list = append(list, Starter{strings.TrimSuffix(e.Name(), ".quilt"), strings.Trim(about, "# ."), string(text)})
	}
	return list
}
