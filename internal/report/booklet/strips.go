package booklet

import (
	"fmt"
	"strings"

	"eighthturn/internal/document"
	"eighthturn/internal/plan/cutting"
)

// mostItems is how many steps of a list are printed; what is beyond is said to be left out.
const mostItems = 120

// mostTogether is how many steps of cutting are kept on one page with the heading above them.
const mostTogether = 5

// cuttingOrder lists what is cut from a fabric, in order, below what belongs above it.
func (b *book) cuttingOrder(f *cutting.Fabric, above []document.Block) {
	list := document.List{Marker: document.Numbered, Items: b.order(f)}
	more := len(list.Items) - mostItems
	if more > 0 {
		list.Items = list.Items[:mostItems]
	}
	if len(list.Items) <= mostTogether {
		b.keep(append(above, list)...)
	} else {
		b.keep(above...)
		b.add(list)
	}
	if more > 0 {
		b.add(para("Another %s of this list %s left out here for want of room; the cutting plan beside this pattern has them.", count(more, "step"), verb(more, "is", "are")))
	}
}

// chains says which strips are sewn end to end, and what is cut from each long strip.
func (b *book) chains(f *cutting.Fabric) {
	var items []document.Item
	for i := range f.Chains {
		items = append(items, item(document.Plain(sentence(b.Cuts.ChainWords(&f.Chains[i], b.length)))))
	}
	if len(items) > 0 {
		b.keep(para("Sewn end to end, strip by strip as it says here and no others:"), document.List{Items: items})
	}
}

// order is what is cut from a fabric.
func (b *book) order(f *cutting.Fabric) []document.Item {
	var items []document.Item
	for i := range f.Blocks {
		items = append(items, item(b.blockOfCloth(&f.Blocks[i])))
	}
	strips := f.AsCut()
	for i := range strips {
		items = append(items, item(b.stripText(&strips[i])))
	}
	return items
}

// blockOfCloth is a piece of cloth from which long pieces are cut along it.
func (b *book) blockOfCloth(k *cutting.Block) document.Text {
	var cuts []string
	for i := 0; i < len(k.Columns); {
		n := i
		for n < len(k.Columns) && k.Columns[n] == k.Columns[i] {
			n++
		}
		c := &k.Columns[i]
		cuts = append(cuts, b.counted(n-i, &b.Cuts.Lines[c.Line])+", "+b.size(c.WidthCut, c.LengthCut))
		i = n
	}
	return lead("A length of "+b.noLess(k.LengthCut)+",", "the whole width of the cloth. Along the selvage cut %s.", joinedBy(cuts, "; then "))
}

// stripText is a strip and what is cut from it.
func (b *book) stripText(s *cutting.Strip) document.Text {
	head := count(s.Times, "strip") + " " + b.length(s.WidthCut) + " wide,"
	across := "from selvage to selvage."
	if s.InBlock >= 0 {
		across = "from the cloth beside the pieces cut along it, " + b.length(s.LengthCut) + " long."
	}
	if len(s.Cuts) == 1 && s.Cuts[0].Use != cutting.ForPieces && s.Cuts[0].Units == 1 && s.Cuts[0].AlongCut == s.LengthCut {
		return lead(head, "%s, whole, %s.", strings.TrimSuffix(across, "."), b.forUse(&s.Cuts[0]))
	}
	var cuts []string
	for i := range s.Cuts {
		cuts = append(cuts, b.cutText(&s.Cuts[i], s))
	}
	of := "It gives"
	if s.Times > 1 {
		of = "Each gives"
	}
	return lead(head, "%s %s %s.", across, of, joinedBy(cuts, "; then "))
}

// joinedBy joins the parts of a sentence.
func joinedBy(parts []string, with string) string {
	text := ""
	for i, p := range parts {
		if i > 0 {
			text += with
		}
		text += p
	}
	return text
}

// cutText is a stretch of a strip.
func (b *book) cutText(c *cutting.Cut, s *cutting.Strip) string {
	narrow := rowsText(c)
	if c.AcrossCut < s.WidthCut {
		narrow += ", cut down to " + b.length(c.AcrossCut) + " wide"
	}
	if c.Use != cutting.ForPieces {
		return fmt.Sprintf("%s %s long %s%s", count(c.Units, "strip"), b.noLess(c.AlongCut), b.forUse(c), narrow)
	}
	if b.Cuts.Lines[c.Lines[0]].Piece.Method == cutting.Nested {
		return b.piecesText(c) + narrow
	}
	return b.piecesText(c) + rowsText(c)
}

// rowsText says that pieces lie in several rows of a strip.
func rowsText(c *cutting.Cut) string {
	if c.Rows < 2 {
		return ""
	}
	return ", in " + count(c.Rows, "row")
}

// forUse says what a stretch of strip is for that is no piece yet.
func (b *book) forUse(c *cutting.Cut) string {
	switch c.Use {
	case cutting.ForSet:
		return "for " + b.setName(c.Set)
	case cutting.ForBinding:
		return "for the binding"
	}
	line := &b.Cuts.Lines[c.Lines[0]]
	if _, of := b.pieceNoun(line); of != "" {
		return "to be sewn end to end" + of
	}
	return "to be sewn end to end for the " + b.pieces(line)
}

// piecesText is like pieces side by side.
func (b *book) piecesText(c *cutting.Cut) string {
	line := &b.Cuts.Lines[c.Lines[0]]
	switch line.Piece.Method {
	case cutting.Nested:
		return b.counted(c.Units, line) + verb(c.Units, "", ", every other one turned round")
	case cutting.OnceOnDiagonal:
		return count(c.Units, "square") + " " + b.length(c.AcrossCut) + each(c.Units) + "cut once for " + b.pieces(line)
	case cutting.TwiceOnDiagonal:
		return count(c.Units, "square") + " " + b.length(c.AcrossCut) + each(c.Units) + "cut twice for " + b.pieces(line)
	case cutting.EndPairs:
		return count(c.Units, "rectangle") + " " + b.size(c.AcrossCut, c.AlongCut) + each(c.Units) + "cut in two for " + line.Piece.Hand.String() + "-hand " + b.pieces(line)
	}
	return b.counted(c.Units, line) + ", " + b.size(c.AcrossCut, c.AlongCut)
}
