// Package samples holds layouts of our own to start from, for all tests; what the program itself hands out stands in starters.
package samples

import (
	"embed"
	"strings"
)

//go:embed *.quilt
var files embed.FS

const extension = ".quilt"

// Sample is a layout to start from.
type Sample struct {
	Name string // of its file, without the extension
	Text string // the whole layout
}

// All is every sample, in the order of their names.
func All() []Sample {
	entries, _ := files.ReadDir(".") // what is embedded can be read
	list := make([]Sample, 0, len(entries))
	for _, e := range entries {
		text, _ := files.ReadFile(e.Name())
		list = append(list, Sample{strings.TrimSuffix(e.Name(), extension), string(text)})
	}
	return list
}
