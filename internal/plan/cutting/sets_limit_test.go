package cutting

import (
	"fmt"
	"strings"
	"testing"

	"eighthturn/internal/quilt"
	"eighthturn/layout"
)

// pooledSets is webs from a strip set whose strips come from a pool of so many fabrics.
func pooledSets(t *testing.T, fabrics, strips int) *quilt.Top {
	t.Helper()
	var b strings.Builder
	b.WriteString("side 4\n")
	pool := "scraps p"
	for i := range fabrics {
		fmt.Fprintf(&b, "fabric f%d #%06x\n", i, i*0x3457)
		pool += fmt.Sprintf(" f%d", i)
	}
	design, _, faults := layout.Read(b.String() + pool + "\nseam 0.02\nstrip-set s" + strings.Repeat(" p 0.1", strips-1) + " p rest\nblock W web wedges s kites f0\ngrid\n W\nrepeat across 24 down 24\n")
	if design == nil {
		t.Fatal(faults)
	}
	return quilt.Lay(design)
}

// TestMaxSets: a plan of more different strip sets than are planned is refused once, in a sentence; one of fewer is not.
func TestMaxSets(t *testing.T) {
	refused := func(fabrics, strips int, message string) int {
		n := 0
		for _, f := range Build(nil, pooledSets(t, fabrics, strips), Options{}).Faults {
			if strings.Contains(f.Message, message) {
				n++
			}
		}
		return n
	}
	const sets, all = "more than 500 different strip sets", "different strip sets of more than 5000 strips in all"
	if n := refused(12, 2, sets); n != 0 {
		t.Errorf("twelve fabrics are refused %d times", n)
	}
	if n := refused(80, 2, sets); n != 1 {
		t.Errorf("eighty fabrics are refused %d times", n)
	}
	if n := refused(12, 20, all) + refused(12, 20, sets); n != 1 {
		t.Errorf("sets of twenty strips are refused %d times", n)
	}
}

// TestSetNames: sets of one name are numbered, the only one of a name is not.
func TestSetNames(t *testing.T) {
	p := Build(nil, pooledSets(t, 3, 2), Options{})
	if len(p.Sets) < 2 || p.SetName(0) != "s 1" || p.SetName(len(p.Sets)-1) != fmt.Sprintf("s %d", len(p.Sets)) {
		t.Errorf("%d sets, the first is %s", len(p.Sets), p.SetName(0))
	}
	for _, n := range everyTop(30) {
		p, count, named := usual(n), map[string]int{}, map[string]bool{}
		for i := range p.Sets {
			count[p.Sets[i].Name]++
			named[p.SetName(i)] = true
		}
		for i := range p.Sets {
			if alone := count[p.Sets[i].Name] == 1; alone != (p.SetName(i) == p.Sets[i].Name) && len(p.Dealt) == 0 || len(named) != len(p.Sets) {
				t.Errorf("%s: of %d sets %q the names are %v", n.name, count[p.Sets[i].Name], p.Sets[i].Name, named)
			}
		}
	}
	if p := Build(nil, pooledSets(t, 1, 2), Options{}); len(p.Sets) != 1 || p.SetName(0) != "s" {
		t.Errorf("%d sets, the first is %s", len(p.Sets), p.SetName(0))
	}
}
