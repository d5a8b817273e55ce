package preview

import (
	"os"
	"path/filepath"
	"testing"
)

// layouts are layouts of many kinds: the samples and some of our own.
func layouts(t *testing.T) map[string]string {
	t.Helper()
	all := map[string]string{"lanterns": lanterns, "holes": holes}
	files, err := filepath.Glob("../../samples/*.quilt")
	must(t, err)
	for _, file := range files {
		text, err := os.ReadFile(file)
		must(t, err)
		all[filepath.Base(file)] = string(text)
	}
	return all
}

// holes is a layout with places that have nothing in them.
const holes = `title   "Holes"
strip   3
fabric  sand   #e8d8b0
fabric  sea    #20506a
fabric  coral  #d86a50

block  W  web   wedges sea coral  kites sand
block  P  plain piece sand

grid
  W W . P
  W . W W
  P W W .
`
