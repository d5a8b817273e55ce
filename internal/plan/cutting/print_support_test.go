package cutting

import (
	"fmt"
	"math/rand/v2"
	"strings"

	"eighthturn/internal/measure"
	"eighthturn/internal/quilt"
	"eighthturn/internal/quilttest/lay"
	"eighthturn/layout"
)

// printLayout is an invented layout with a fabric that has a print: stripes, or what a photo would show in their place.
func printLayout(seed uint64) string {
	r := rand.New(rand.NewPCG(seed, 17))
	var b strings.Builder
	say := func(format string, args ...any) { fmt.Fprintf(&b, format+"\n", args...) }
	say("units inches\nside %d\nfabric navy #1f3350\nfabric cream #f4ead5\nfabric rust #a8452c", 4+r.IntN(6))
	crosswise := []string{"", " crosswise"}[r.IntN(2)]
	say("fabric awning stripes navy %d/8 cream %d/8 rust 1 %d/4%s usable-width %d", 1+r.IntN(7), 1+r.IntN(7), 1+r.IntN(3), crosswise, 30+r.IntN(20))
	say("motif rose awning across %d down %d 1/2 pointing %d%s", r.IntN(9), r.IntN(9), 15*r.IntN(24), []string{" mirrored", "", ""}[seed%3])
	say("motif bud awning across %d down %d", r.IntN(9), r.IntN(9))
	values := []string{"rose", "bud", "awning", "awning lengthwise from 1/4", "awning crosswise from 1/8", "awning lengthwise", "awning crosswise", "navy"}
	value := func() string { return values[r.IntN(len(values))] }
	say("block A ring wedges %s corners %s", value(), value())
	say("block B %s", []string{
		fmt.Sprintf("ring wedges rose %s corners cream", value()), fmt.Sprintf("web wedges %s kites rose", value()),
		fmt.Sprintf("plain piece %s", value()),
	}[r.IntN(3)])
	say("border %d %s%s", 1+r.IntN(3), []string{"navy", "awning", "awning lengthwise"}[r.IntN(3)], []string{" corners rose", "", "", " corners bud"}[seed%4])
	say("binding 2 1/2 %s\ngrid", []string{"navy", "awning"}[r.IntN(2)])
	for range 2 + r.IntN(4) {
		row := " "
		for range 4 {
			row += []string{" A", " B"}[r.IntN(2)]
		}
		say("%s", row)
	}
	return b.String()
}

// printTops are so many of them.
func printTops(count int) (list []lay.Named) {
	for seed := range uint64(count) {
		top, err := printTop(seed)
		if err != nil {
			panic(err)
		}
		list = append(list, lay.Named{Name: fmt.Sprint("print ", seed), Top: top})
	}
	return list
}

// printTop is such a layout laid out; every other one has a print with a repeat both ways in place of the stripes.
func printTop(seed uint64) (*quilt.Top, error) {
	d, _, faults := layout.Read(printLayout(seed))
	if errors, _ := layout.Count(faults); errors > 0 || d == nil {
		return nil, fmt.Errorf("%v\n%s", faults, printLayout(seed))
	}
	top := quilt.Lay(d)
	if seed%2 == 1 {
		r := rand.New(rand.NewPCG(seed, 3))
		for i := range top.Fabrics {
			if top.Fabrics[i].Cloth != nil {
				top.Fabrics[i].Cloth = &quilt.Cloth{Across: measure.NM(4+r.IntN(60)) * measure.Inch / 2, Down: measure.NM(4+r.IntN(60)) * measure.Inch / 2, Repeats: true}
			}
		}
	}
	return top, nil
}
