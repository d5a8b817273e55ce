package invent

import (
	"math/rand/v2"
	"strconv"
	"strings"

	"eighthturn/internal/blocks"
)

// onHand are lines of pieces on hand at the end of one layout in three, from numbers of their own as with colorways: some that the
// quilt takes, and some that it has no use for.
func (v *inventor) onHand(seed uint64, text string) string {
	v.Rand = rand.New(rand.NewPCG(seed, 0x04a4d))
	if !v.one(3) {
		return ""
	}
	heights := map[blocks.WedgeHeight]bool{}
	for _, k := range v.kinds {
		if k.Height != blocks.NoWedges {
			heights[k.Height] = true
		}
	}
	roles := []string{"wedges", "Wedges", "wedges", "kites", "corners"}
	if len(heights) > 1 { // it would have to say which strip
		roles = roles[3:]
	}
	var lines strings.Builder
	for range 1 + v.IntN(4) {
		role, cloth := pick(v, roles), pick(v, v.fabrics)
		if strings.EqualFold(role, "wedges") && len(v.sets) > 0 && len(v.pools) == 0 && v.dealt == nil && !v.one(3) {
			cloth = pick(v, v.sets)
			if v.one(2) {
				cloth = "reversed " + cloth
			}
		}
		lines.WriteString(v.line("on-hand", role, cloth, strconv.Itoa(1+v.IntN(1<<v.IntN(8)))) + lineEnd(text))
	}
	return lines.String()
}
