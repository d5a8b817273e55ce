package main

import (
	"strings"
	"testing"

	"github.com/spf13/cobra"

	"eighthturn/internal/quilt"
	"eighthturn/layout"
)

// TestDroppedOptionsAreToldOnce: an option of the page that does not go with the layout's units is left away with one note, in the words
// in which a command refuses it, however often the layout is saved; one that goes is not told of.
func TestDroppedOptionsAreToldOnce(t *testing.T) {
	lay := func(units string) *quilt.Top {
		design, _, list := layout.Read(units + "side 10\nfabric a #112233\nblock P plain piece a\ngrid\n P\n")
		if design == nil {
			t.Fatal(list)
		}
		return quilt.Lay(design)
	}
	cmd := &cobra.Command{Use: "preview"}
	var said strings.Builder
	notes := notesOnce{to: &said}
	o := cutOptions{quarters: true, leastCloth: true}
	if o.onPage(cmd, lay(""), notes.say); said.Len() > 0 {
		t.Errorf("quarter yards go with inches, and it says %q", said.String())
	}
	for range 3 {
		if got := o.onPage(cmd, lay("units cm\n"), notes.say); got.Quarters || !got.LeastCloth {
			t.Errorf("the other options are %+v", got)
		}
	}
	_, refused := o.of(cmd, lay("units cm\n"))
	if text := said.String(); strings.Count(text, "note: ") != 1 || !strings.Contains(text, refused.(*problem).message) {
		t.Errorf("it says %q", text)
	}
}
