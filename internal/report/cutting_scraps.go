package report

import (
	"slices"

	"eighthturn/internal/document"
	"eighthturn/internal/measure"
	"eighthturn/internal/plan/cutting"
)

// ScrapsID is the id of the section by which a stash is sorted.
const ScrapsID = "scraps-to-sort"

// scrapSize is what pieces of one sort from one pool take: the smallest scrap that gives a piece, and how many of it there must be.
type scrapSize struct {
	pool          int
	piece         string
	across, along measure.NM
	gives, pieces int
	patches       []int
}

// scrapsToSort is the smallest scraps that still give a piece, for the pieces that are dealt from each pool.
func (c *cuts) scrapsToSort() document.Section {
	s := section(ScrapsID, "Scraps to sort", document.Detail)
	sizes := c.scrapSizes()
	if len(sizes) == 0 {
		return s
	}
	t := table(words("pool"), words("piece"), words("smallest scrap"), counts("scraps"))
	for i := range sizes {
		z := &sizes[i]
		r := row(c.plans.Top.Credits.Pools[z.pool].Name, z.piece, "at least "+c.Units.ByAtLeast(z.across, z.along), number((z.pieces+z.gives-1)/z.gives))
		r.About = document.About{Faces: c.facesOf(z.patches)}
		t.Rows = append(t.Rows, r)
	}
	s.Blocks = []document.Block{t, para("Sort your scraps by value into the pools, then by size. A scrap of the smallest size, with square corners, gives %s; a larger one may give more. Set a few extra aside of each.", scrapGives(sizes))}
	return s
}

// scrapGives says how many pieces the smallest scraps give.
func scrapGives(sizes []scrapSize) string {
	if i := slices.IndexFunc(sizes, func(z scrapSize) bool { return z.gives > 1 }); i >= 0 {
		return "one piece, or " + measure.Count(sizes[i].gives, "piece") + " where the square or rectangle is cut in two"
	}
	return "one piece"
}

// scrapSizes are the sizes for each pool, in the order of the pools and the plan's lines.
func (c *cuts) scrapSizes() (list []scrapSize) {
	top := c.plans.Top
	for _, p := range top.CutFacts.Pooled {
		patch := int(top.Faces[p.Face].Patch)
		line := &c.Lines[c.LineOf[patch]]
		if line.Set >= 0 {
			continue // strips are sewn into sets before anything is cut
		}
		across, along := smallestScrap(&line.Piece)
		piece := c.plans.useName(line)
		at := slices.IndexFunc(list, func(z scrapSize) bool {
			return z.pool == int(p.Pool) && z.piece == piece && z.across == across && z.along == along
		})
		if at < 0 {
			at = len(list)
			list = append(list, scrapSize{pool: int(p.Pool), piece: piece, across: across, along: along, gives: line.Piece.Method.PerUnit()})
		}
		list[at].pieces += c.Copies
		list[at].patches = append(list[at].patches, patch)
	}
	slices.SortStableFunc(list, func(a, b scrapSize) int { return a.pool - b.pool })
	return list
}

// smallestScrap is the least rectangle of cloth that a piece is cut from by itself.
func smallestScrap(p *cutting.Piece) (across, along measure.NM) {
	if p.Method == cutting.Nested {
		return p.AcrossCut, p.WideCut
	}
	return p.AcrossCut, p.AlongCut
}

// facesOf are the faces of patches.
func (c *cuts) facesOf(patches []int) (faces []int) {
	for _, n := range patches {
		p := &c.plans.Top.Patches[n]
		for f := p.First; f < p.First+p.Count; f++ {
			faces = append(faces, int(f))
		}
	}
	return faces
}
