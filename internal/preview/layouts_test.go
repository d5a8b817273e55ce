package preview

import (
	"fmt"
	"os"
	"path/filepath"
	"strings"
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

// quiltOf is a field of web blocks with twelve fabrics; banded gives its wedges three bands.
func quiltOf(columns, rows int, banded bool) string {
	var b strings.Builder
	b.WriteString("title \"A field\"\nstrip 4\n")
	for i := range 12 {
		fmt.Fprintf(&b, "fabric f%d #%02x%02x%02x\n", i, 40+15*i, 200-12*i, 90+(i*67)%120)
	}
	b.WriteString("strip-set shore f0 1 3/4 f1 1 1/2 f2 1 3/4\n")
	for i := range 4 {
		if banded {
			fmt.Fprintf(&b, "block B%d web wedges shore turned shore kites f%d f%d\n", i, 4+2*i, 5+2*i)
		} else {
			fmt.Fprintf(&b, "block B%d web wedges f%d f%d kites f%d f%d\n", i, i, i+4, (i+8)%12, (i+5)%12)
		}
	}
	b.WriteString("grid\n")
	for y := range rows {
		for x := range columns {
			fmt.Fprintf(&b, " B%d", (x*7+y*3)%4)
		}
		b.WriteString("\n")
	}
	b.WriteString("border 4 f3\n")
	return b.String()
}

// edits are what a save changes; each is told the number of the save.
var edits = []struct {
	name string
	edit func(text string, n int) string
}{
	{"recolour", func(text string, n int) string {
		at := strings.Index(text, "fabric f1 #") + len("fabric f1 #")
		return text[:at] + fmt.Sprintf("%02x8040", n*37&255) + text[at+6:]
	}},
	{"one-block", func(text string, n int) string {
		before, after, _ := strings.Cut(text, "grid\n")
		lines := strings.SplitAfter(after, "\n")
		row := len(lines) / 2
		lines[row] = fmt.Sprintf(" B%d", n%4) + lines[row][3:]
		return before + "grid\n" + strings.Join(lines, "")
	}},
	{"whole-layout", func(text string, n int) string {
		return strings.Replace(text, "strip 4", fmt.Sprintf("strip %d 1/2", 3+n%2), 1)
	}},
}
