package samples

import (
	"embed"
	"strings"
)

//go:embed starters/*.quilt
var starterFiles embed.FS

// Starter is a small layout of one sort, every line of it explained, that a quilter changes into a quilt of her own.
type Starter struct {
	Name  string // of the sort, and of the file without its extension
	About string // its first line: what it makes, without full stop
	Text  string // the whole layout
}

// Starters is every starter, in the order of their names.
func Starters() []Starter {
	const folder = "starters"
	entries, _ := starterFiles.ReadDir(folder) // what is embedded can be read
	list := make([]Starter, 0, len(entries))
	for _, e := range entries {
		text, _ := starterFiles.ReadFile(folder + "/" + e.Name())
		about, _, _ := strings.Cut(string(text), "\n")
		list = append(list, Starter{strings.TrimSuffix(e.Name(), extension), strings.Trim(about, "# ."), string(text)})
	}
	return list
}
