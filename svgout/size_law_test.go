package svgout

import (
	"bytes"
	"fmt"
	"strings"
	"testing"
)

// kingMost is how many bytes the picture of this king-size top had when what lies beneath the seams was an outline for every patch, and
// beneathMost is which part of a file that may take now.
const (
	kingMost    = 1706011
	beneathMost = 1.0 / 3
)

// lawSmall says that a file is no larger than it was, and that no more than a third of it lies beneath the seams.
func lawSmall(svg []byte) error {
	if len(svg) > kingMost {
		return fmt.Errorf("%d bytes, expected at most %d", len(svg), kingMost)
	}
	from := bytes.Index(svg, []byte(`<g id="beneath"`))
	if from < 0 {
		return fmt.Errorf("nothing lies beneath the seams")
	}
	long := bytes.Index(svg[from:], []byte("</g>"))
	if part := float64(long) / float64(len(svg)); part > beneathMost {
		return fmt.Errorf("%.0f %% of the file lies beneath the seams", 100*part)
	}
	return nil
}

func TestAKingSizeFileStaysSmall(t *testing.T) {
	top := lay(t, "title \"King of nets\"\nstrip 4\nfabric chalk #f4ecdc\nfabric plum #452a40\nfabric honey #e3b060\nfabric rose #ac4a5e\nstrip-set glow plum 1 3/4 honey 1 1/4 rose 2\nwebs glow\nblock W web kites chalk\n"+
		grid(strings.Split(strings.Repeat(strings.Repeat("W ", 18)+"\n", 18), "\n")[:18]...)+"border 2 rose\nborder 6 plum\n")
	svg := drawn(t, top, Options{})
	if err := lawSmall(svg); err != nil {
		t.Error(err)
	}
	broken(t, lawSmall, svg, `(<g id="beneath"[^>]*>)`, "${1}"+strings.Repeat("0", len(svg)/2))
	broken(t, lawSmall, svg, `</svg>`, strings.Repeat(" ", kingMost)+"</svg>")
}
