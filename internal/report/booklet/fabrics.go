package booklet

import (
	"slices"

	"eighthturn/internal/document"
	"eighthturn/internal/plan/cutting"
	"eighthturn/internal/plan/supplies"
)

// fabricsPart is what to buy.
func (b *book) fabricsPart() {
	b.part("Fabric requirements", true)
	b.add(b.rests())
	b.addNotes("fabric")
	b.add(b.fabricTable())
	b.finishingTable()
	b.precuts()
	b.ways()
}

// rests says what the lengths rest on.
func (b *book) rests() document.Paragraph {
	text := "Lengths in the shop are rounded up once for each fabric, from the exact length that the cutting plan takes."
	if w, same := b.usableWidth(); same {
		text += " They rest on cloth with " + b.length(w) + " of usable width, which is what lies between the selvages once they are cut off."
	} else {
		text += " They rest on the usable width in the table, which is what lies between the selvages once they are cut off."
	}
	if b.Cuts.Copies > 1 {
		text += " All numbers are for " + count(b.Cuts.Copies, "quilt") + "."
	}
	return para("%s", text)
}

func (b *book) fabricTable() document.Table {
	t := document.Table{Named: true, Columns: []document.Column{{Title: "Fabric"}, {Title: "Buy", Kind: document.Counts}, {Title: "Length needed", Kind: document.Counts}}}
	_, same := b.usableWidth()
	if !same {
		t.Columns = append(t.Columns, document.Column{Title: "Usable width", Kind: document.Counts})
	}
	hand := slices.ContainsFunc(b.Cuts.Fabrics, func(f cutting.Fabric) bool { return f.OnHand != nil })
	if hand {
		t.Columns = append(t.Columns, document.Column{Title: "On hand"})
	}
	t.Columns = append(t.Columns, document.Column{Title: "Used for"})
	for i := range b.Cuts.Fabrics {
		f := &b.Cuts.Fabrics[i]
		row := document.Row{Cells: []document.Cell{b.fabricCell(f), cell(b.shop(f.Purchase.Buy)), cell(b.noLess(f.Purchase.Need))}}
		if !same {
			row.Cells = append(row.Cells, cell(b.length(f.UsableWidth)))
		}
		if hand {
			row.Cells = append(row.Cells, cell(b.onHand(f.OnHand)))
		}
		row.Cells = append(row.Cells, cell(listed(b.uses(i))))
		t.Rows = append(t.Rows, row)
	}
	return t
}

// fabricCell is a fabric's square of colour with its letter and name.
func (b *book) fabricCell(f *cutting.Fabric) document.Cell {
	c := document.Cell{Swatches: b.swatch(f.Index), Text: document.Plain(f.Name)}
	if print := own(f.Print); print != "" && print != f.Name {
		c.Text = append(c.Text, document.Run{Text: " (" + print + ")", Small: true})
	}
	return c
}

func (b *book) swatch(fabric int) []document.Swatch {
	return []document.Swatch{{Letter: b.letters[fabric], Colour: b.Top.Fabrics[fabric].Colour}}
}

func (b *book) onHand(h *cutting.OnHand) string {
	switch {
	case h == nil:
		return ""
	case h.Enough:
		return b.shop(h.HaveCut) + ", enough"
	}
	return b.shop(h.HaveCut) + ", short by " + b.noLess(h.ShortCut)
}

// finishingTable is what finishing takes: backing, batting, binding.
func (b *book) finishingTable() {
	t := document.Table{Named: true, Columns: []document.Column{{Title: "For finishing"}, {Title: "What is needed"}}}
	row := func(name, text string) {
		t.Rows = append(t.Rows, document.Row{Cells: []document.Cell{{Text: document.Bold(name)}, cell(text)}})
	}
	if k := b.Cuts.Binding; k != nil {
		row("Binding", count(k.Strips, "strip")+" "+b.length(k.StripCut)+" wide"+b.forCopies()+" of fabric "+b.letters[b.Top.CutFacts.Binding.Fabric]+"; "+verb(k.Strips, "its", "their")+" cloth is in the table above")
	}
	if k := b.Cuts.Backing; k != nil {
		row("Backing", "at least "+b.sizeAtLeast(k.WidthCut, k.HeightCut)+b.forCopies()+" of fabric "+b.letters[b.Cuts.BackingOf]+"; its cloth is in the table above")
	}
	if k := b.Cuts.Batting; k != nil {
		row("Batting", "at least "+b.sizeAtLeast(k.WidthCut, k.HeightCut)+b.forCopies()+packagesOf(k.Packages))
	}
	if len(t.Rows) > 0 {
		b.add(t)
	}
}

// packagesOf names the smallest packages of batting that hold the quilt.
func packagesOf(list []supplies.Package) string {
	const most = 3
	var names []string
	for _, p := range list {
		if !slices.Contains(names, p.Name) {
			names = append(names, p.Name)
		}
	}
	if len(names) == 0 {
		return "; no package of the usual sizes holds it, so take it from the roll"
	}
	return "; sold as " + listed(names[:min(most, len(names))])
}

// precuts says what would do in place of cloth by the length.
func (b *book) precuts() {
	var names []string
	for i := range b.Cuts.Fabrics {
		for _, p := range b.Cuts.Fabrics[i].Precuts {
			if p.SoldIn(b.units) && !slices.Contains(names, p.Name) {
				names = append(names, p.Name)
			}
		}
	}
	if len(names) == 0 {
		return
	}
	t := document.Table{Named: true, Columns: []document.Column{{Title: "Fabric"}}}
	for _, name := range names {
		t.Columns = append(t.Columns, document.Column{Title: capital(plural(name)), Kind: document.Counts})
	}
	for i := range b.Cuts.Fabrics {
		f := &b.Cuts.Fabrics[i]
		if len(f.Precuts) == 0 {
			continue
		}
		row := document.Row{Cells: []document.Cell{{Swatches: b.swatch(f.Index), Text: document.Plain(f.Name)}}}
		for _, name := range names {
			row.Cells = append(row.Cells, cell(precutText(f.Precuts, name)))
		}
		t.Rows = append(t.Rows, row)
	}
	b.keep(heading(1, "From precuts"), para("What shops sell cut already would do in place of a length. The table says how many of one sort would be enough."), t)
}

// precutText is how many of a precut would do, nothing where none would.
func precutText(list []cutting.Precut, name string) string {
	for _, p := range list {
		if p.Name == name {
			return numeral(p.Count)
		}
	}
	return ""
}

// ways says with which changes the cloth on hand would do.
func (b *book) ways() {
	var items []document.Item
	for i := range b.Cuts.Fabrics {
		f := &b.Cuts.Fabrics[i]
		if text := b.cutWords().WaysToFit(f); text != "" {
			items = append(items, item(lead("Fabric "+b.fabricName(f)+":", "%s", sentence(text))))
		}
	}
	if len(items) > 0 {
		b.add(heading(1, "If the cloth on hand is to do"), document.List{Items: items})
	}
}
