package booklet

import (
	"fmt"
	"maps"
	"slices"
	"strings"

	"eighthturn/internal/document"
	"eighthturn/internal/report"
)

// wrongSewing is what the sewing report says and the pattern does not as often: of blocks that are sewn like one before, their number
// and fabrics; of others the steps too; pressing, and how all goes together.
func wrongSewing(d document.Document, r Reports) []string {
	said := ownTexts(d)
	wanted := map[string]int{}
	for _, text := range sewingTexts(r) {
		wanted[text]++
	}
	var wrong []string
	for _, text := range slices.Sorted(maps.Keys(wanted)) {
		there := 0
		for _, s := range said {
			there += strings.Count(s, text)
		}
		if there < wanted[text] {
			wrong = append(wrong, fmt.Sprintf("the pattern says %d times and not %d: %s", there, wanted[text], text))
		}
	}
	return wrong
}

// sewingTexts are the sentences that a pattern has from the sewing report.
func sewingTexts(r Reports) []string {
	b := newBook(r, Options{})
	d := b.sewing
	var list []string
	var take func(blocks []document.Block)
	take = func(blocks []document.Block) {
		for _, block := range blocks {
			switch v := block.(type) {
			case document.Section:
				take(v.Blocks)
			case document.Paragraph:
				list = append(list, v.Text.String())
			case document.Box:
				take(v.Blocks)
			case document.List:
				for _, it := range v.Items {
					list = append(list, it.Text.String())
					take(it.Blocks)
				}
			}
		}
	}
	var ids []string
	for n := range b.Sewing.Blocks {
		ids = append(ids, report.SewingBlock(n, ""))
	}
	for _, s := range d.Sections {
		n := slices.Index(ids, s.ID)
		if n < 0 {
			take(s.Blocks)
			continue
		}
		take(s.Blocks[:1])
		if b.sewnLike(n) < 0 {
			take(b.sewn(report.SewingBlock(n, "steps")).Blocks)
			take(b.sewn(report.SewingBlock(n, "pressing")).Blocks)
		}
		if len(b.Sewing.Blocks[n].Variants) <= report.MaxPlacements {
			take(report.WithoutPlaces(b.sewn(report.SewingBlock(n, "fabrics"))).Blocks)
		}
	}
	return list
}
