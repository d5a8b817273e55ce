package contrast

import (
	"fmt"
	"os"
	"strings"
	"testing"

	"eighthturn/internal/quilt"
	"eighthturn/layout"
)

// laid lays a layout out, which must be without fault.
func laid(t testing.TB, text string) *quilt.Top {
	t.Helper()
	d, _, faults := layout.Read(text)
	if d == nil {
		t.Fatalf("the layout has faults: %v", faults)
	}
	return quilt.Lay(d)
}

// read lays out one of the layouts in testdata.
func read(t testing.TB, name string) *quilt.Top {
	t.Helper()
	text, err := os.ReadFile("../../../testdata/values/layouts/" + name + ".quilt")
	if err != nil {
		t.Fatal(err)
	}
	return laid(t, string(text))
}

// kingSize is a field of 24 by 24 web blocks in wedges of three bands, with two borders.
func kingSize() string {
	var b strings.Builder
	fmt.Fprintln(&b, "strip 4\nfabric cream #f4ead7\nfabric navy #1f3350\nfabric rust #b5532a\nfabric teal #2f7d83")
	fmt.Fprintln(&b, "strip-set shore rust 1 3/4 cream 1 1/2 teal 1 3/4\nwebs shore / reversed shore")
	fmt.Fprintln(&b, "block W web kites cream\ngrid")
	for range 24 {
		fmt.Fprintln(&b, " "+strings.Repeat(" W", 24))
	}
	fmt.Fprintln(&b, "border 1 1/2 rust\nborder 4 navy")
	return b.String()
}

func BenchmarkStudyOfKingSize(b *testing.B) {
	top := laid(b, kingSize())
	for b.Loop() {
		Study(top, Options{})
	}
}
