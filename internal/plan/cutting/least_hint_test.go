package cutting

import (
	"fmt"
	"testing"

	"eighthturn/internal/quilttest/lay"
)

// hintAmiss says where a plan's word on planning with the least cloth is not what such a plan comes to.
func hintAmiss(usual, least *Plan) (told int, err error) {
	for i := range usual.Fabrics {
		h := usual.Fabrics[i].OnHand
		if h == nil || h.Enough {
			continue
		}
		if h.ByLeast {
			told++
		}
		if enough := least.Fabrics[i].OnHand.Enough; h.ByLeast != enough {
			return told, fmt.Errorf("%s: %s is said to be enough with the least cloth: %v; it is: %v", usual.Fabrics[i].Name, fmt.Sprint(h.HaveCut), h.ByLeast, enough)
		}
	}
	return told, nil
}

// TestLeastClothIsOfferedWhereItSuffices: for every length on hand, whether the least cloth would do is what a plan with it says.
func TestLeastClothIsOfferedWhereItSuffices(t *testing.T) {
	told := 0
	for inches := 1; inches < 60; inches += 2 {
		top := lay.Top(t, fmt.Sprintf("strip 4\nfabric cream #f4ead7\nfabric navy #1f3350\nfabric rust #b5532a on-hand %d.5 in\nblock W web wedges navy kites cream\ngrid\n W W W W W W\nrepeat down 7\nborder 2 rust\nbinding 2 1/2 rust\n", inches))
		usual, least := Build(nil, top, Options{}), Build(nil, top, Options{LeastCloth: true})
		n, err := hintAmiss(usual, least)
		if told += n; err != nil {
			t.Error(err)
		}
		for i := range usual.Fabrics { // a hint that is not true is noticed, and one that is missing
			if h := usual.Fabrics[i].OnHand; h != nil && !h.Enough {
				h.ByLeast = !h.ByLeast
				if _, err := hintAmiss(usual, least); err == nil {
					t.Errorf("%d 1/2 in: a wrong hint is not noticed", inches)
				}
			}
		}
	}
	if told == 0 {
		t.Error("it is never enough")
	}
}
