package booklet

import (
	"fmt"
	"math/big"
	"regexp"
	"slices"
	"strconv"
	"strings"

	"eighthturn/internal/document"
	"eighthturn/internal/measure"
	"eighthturn/internal/plan/cutting"
)

// tables are the tables of a part, by the title of their first column.
func tables(d document.Document, part, first string) []document.Table {
	var list []document.Table
	var look func(blocks []document.Block)
	look = func(blocks []document.Block) {
		for _, b := range blocks {
			switch v := b.(type) {
			case document.Table:
				if v.Columns[0].Title == first {
					list = append(list, v)
				}
			case document.Together:
				look(v.Blocks)
			}
		}
	}
	for _, p := range d.Sections {
		if p.Title == part {
			look(p.Blocks)
		}
	}
	return list
}

// wrongShopping compares the fabric table with the plan, row by row.
func wrongShopping(d document.Document, r Reports) []string {
	list := tables(d, "Fabric requirements", "Fabric")
	chosen := 0 // rows for a backing that the layout does not name
	if r.Cuts.BackingOf < 0 && r.Cuts.Backing != nil {
		chosen = 1
	}
	if len(list) == 0 || len(list[0].Rows) != len(r.Cuts.Fabrics)+chosen {
		return []string{"the fabric table has not a row for each fabric"}
	}
	var wrong []string
	if chosen > 0 {
		cells := list[0].Rows[len(r.Cuts.Fabrics)].Cells
		if buy := lengthsIn(cells[1].Text.String()); len(buy) != 1 || buy[0].nm.Cmp(new(big.Rat).SetInt64(int64(r.Cuts.BackingBuy.Buy))) != 0 {
			wrong = append(wrong, "a backing of your choice is to be bought as "+cells[1].Text.String())
		}
	}
	if k := r.Cuts.Binding; k != nil {
		said := ""
		for _, b := range under(d, "Fabric requirements")["For finishing"] {
			said += strings.Join(joinedRuns(b), "\n")
		}
		if !regexp.MustCompile(`Binding[a-z, ]*: ` + strconv.Itoa(k.Strips) + ` strips? `).MatchString(said) {
			wrong = append(wrong, fmt.Sprintf("the binding is not said to take %d strips", k.Strips))
		}
	}
	for i, row := range list[0].Rows[:len(r.Cuts.Fabrics)] {
		f := &r.Cuts.Fabrics[i]
		if !strings.HasPrefix(row.Cells[0].Text.String(), f.Name) {
			wrong = append(wrong, "the row of "+f.Name+" names another fabric")
		}
		if f.Purchase.Buy == 0 && row.Cells[1].Text.String() == "none" { // all that is cut from it is on hand
			continue
		}
		buy := lengthsIn(row.Cells[1].Text.String())
		if len(buy) != 1 || buy[0].nm.Cmp(new(big.Rat).SetInt64(int64(f.Purchase.Buy))) != 0 {
			wrong = append(wrong, f.Name+" is to be bought as "+row.Cells[1].Text.String()+", but the plan says "+measure.Text(f.Purchase.Buy, r.Cuts.Units))
		}
	}
	return wrong
}

// groupsOf are the fabrics that each part of the cutting lists is about, by their letters and names.
func groupsOf(d document.Document, r Reports) map[string][]int {
	groups, letters := map[string][]int{}, fabricLetters(r)
	for _, title := range headings(d, "Cutting") {
		names, several := strings.CutPrefix(title, "Fabrics ")
		if !several {
			names, _, _ = strings.Cut(title, ": ")
		}
		for i := range r.Cuts.Fabrics {
			f := &r.Cuts.Fabrics[i]
			full := letters[f.Index] + " " + f.Name
			for _, n := range strings.Split(strings.ReplaceAll(names, " and ", ", "), ", ") {
				if n == full {
					groups[title] = append(groups[title], i)
				}
			}
		}
	}
	return groups
}

func headings(d document.Document, part string) []string {
	var list []string
	for _, p := range d.Sections {
		if p.Title == part {
			for _, b := range flat(p.Blocks) {
				if h, ok := b.(document.Heading); ok {
					list = append(list, h.Text)
				}
			}
		}
	}
	return list
}

// flat is blocks without what only keeps them together.
func flat(list []document.Block) []document.Block {
	var out []document.Block
	for _, b := range list {
		if t, ok := b.(document.Together); ok {
			out = append(out, flat(t.Blocks)...)
		} else {
			out = append(out, b)
		}
	}
	return out
}

// under are the blocks below each heading of a part.
func under(d document.Document, part string) map[string][]document.Block {
	found := map[string][]document.Block{}
	for _, p := range d.Sections {
		title := ""
		if p.Title != part {
			continue
		}
		for _, b := range flat(p.Blocks) {
			if h, ok := b.(document.Heading); ok {
				title = h.Text
				continue
			}
			found[title] = append(found[title], b)
		}
	}
	return found
}

// emptyColumns are the heads of columns that are empty in all rows.
func emptyColumns(d document.Document, _ Reports) []string {
	var wrong []string
	for _, p := range d.Sections {
		for _, b := range flat(p.Blocks) {
			t, ok := b.(document.Table)
			for i, c := range t.Columns {
				if ok && !slices.ContainsFunc(t.Rows, func(r document.Row) bool {
					return len(r.Cells) > i && (r.Cells[i].Text.String() != "" || len(r.Cells[i].Swatches) > 0)
				}) {
					wrong = append(wrong, p.Title+": the column "+c.Title+" is empty in all rows")
				}
			}
		}
	}
	return wrong
}

// piecesInShort is what a table of few columns says of pieces: how many, what, and how many are left and right.
var piecesInShort = regexp.MustCompile(`^(\d+) (.*?)(?:, (\d+) left and (\d+) right)?$`)

// pieceRows are the rows of the tables of pieces by the heads of their columns; what stands above rows is their cloth.
func pieceRows(d document.Document) []map[string]string {
	var rows []map[string]string
	for _, t := range tables(d, "Cutting", "Line") {
		cloth := ""
		for _, r := range t.Rows {
			if len(r.Cells) == 1 {
				cloth = r.Cells[0].Text.String()
				continue
			}
			row := map[string]string{"From": cloth}
			for i, c := range r.Cells {
				row[t.Columns[i].Title] = c.Text.String()
			}
			if m := piecesInShort.FindStringSubmatch(row["Pieces"]); m != nil {
				row["Pieces"], row["Piece"] = m[1], strings.NewReplacer("strips", "strip").Replace(m[2])
				if m[3] != "" {
					row["Left/right"] = m[3] + " + " + m[4]
				}
			}
			rows = append(rows, row)
		}
	}
	return rows
}

// wrongPieces compares the table of pieces with the plan's lines, row by row, and the fabrics of the cutting lists with the plan's.
func wrongPieces(d document.Document, r Reports) []string {
	var wrong []string
	rows := pieceRows(d)
	if len(rows) != len(r.Cuts.Lines) {
		return []string{"there is not a row for each line of the plan"}
	}
	before := 0
	for i, row := range rows {
		line, hands, cloth := &r.Cuts.Lines[i], "", ""
		if line.Left+line.Right > 0 && line.Piece.Hand == cutting.Either {
			hands = fmt.Sprintf("%d + %d", line.Left, line.Right)
		}
		if line.Fabric >= 0 {
			cloth = r.Cuts.Fabrics[line.Fabric].Name
		} else {
			cloth = r.Cuts.SetName(line.Set)
		}
		if row["Line"] != strconv.Itoa(i+1) || row["Pieces"] != strconv.Itoa(line.Pieces) || row["Left/right"] != hands || !strings.Contains(row["From"], cloth) {
			wrong = append(wrong, fmt.Sprintf("line %d: %q; the plan has %d, %s, from %s", i+1, row, line.Pieces, hands, cloth))
		}
		place := line.Fabric
		if line.Set >= 0 {
			place = len(r.Cuts.Fabrics) + line.Set
		}
		if place < before {
			wrong = append(wrong, fmt.Sprintf("line %d of %s stands behind those of another fabric", i+1, cloth))
		}
		before = place
	}
	seen := 0
	for _, group := range groupsOf(d, r) {
		seen += len(group)
	}
	cut := 0
	for i := range r.Cuts.Fabrics {
		if f := &r.Cuts.Fabrics[i]; len(f.Strips)+len(f.Blocks)+len(f.FromPrint) > 0 {
			cut++
		}
	}
	if seen != cut {
		wrong = append(wrong, fmt.Sprintf("cutting lists name %d fabrics, the plan cuts %d", seen, cut))
	}
	return wrong
}

var (
	firstNumber = regexp.MustCompile(`^([0-9]+) `)
	anyCount    = regexp.MustCompile(`(?:^|, | and )([0-9]+) `)
)

// wrongStrips adds up, from each table of strips, the strips and what they give.
func wrongStrips(d document.Document, r Reports) []string {
	var wrong []string
	blocks := under(d, "Cutting")
	for title, group := range groupsOf(d, r) {
		f := &r.Cuts.Fabrics[group[0]]
		strips, units := 0, 0
		for _, b := range blocks[title] {
			if t, ok := b.(document.Table); ok && t.Columns[0].Title == "Strips" {
				s, u := stripsSaid(t)
				strips, units = strips+s, units+u
			}
		}
		wantUnits := 0
		for _, s := range f.Strips {
			for _, c := range s.Cuts {
				wantUnits += s.Times * c.Units
			}
		}
		wantStrips := f.StripCount
		for i := range f.FromPrint {
			p := &f.FromPrint[i]
			wantStrips += len(p.Strips) * p.Times
			for _, n := range p.Lines {
				wantUnits += p.Count(n) * p.Times
			}
		}
		if strips != wantStrips || units != wantUnits {
			wrong = append(wrong, fmt.Sprintf("%s: the list has %d strips that give %d things, the plan %d that give %d", title, strips, units, wantStrips, wantUnits))
		}
	}
	return wrong
}

// stripsSaid is how many strips a table names, and how many things they give.
func stripsSaid(t document.Table) (strips, units int) {
	times := 0
	for _, row := range t.Rows {
		if n, err := strconv.Atoi(row.Cells[0].Text.String()); err == nil {
			times = n
			strips += n
		}
		if t.Columns[2].Title == "Fussy-cut from each" { // of several sorts
			for _, m := range anyCount.FindAllStringSubmatch(row.Cells[2].Text.String(), -1) {
				count, _ := strconv.Atoi(m[1])
				units += times * count
			}
		} else if m := firstNumber.FindStringSubmatch(row.Cells[2].Text.String()); m != nil {
			count, _ := strconv.Atoi(m[1])
			units += times * count
		} else if strings.HasPrefix(row.Cells[2].Text.String(), "leave whole ") {
			units += times
		}
	}
	return strips, units
}

var (
	finishesAt = regexp.MustCompile(`Each block finishes at ((?:about )?[^,]*), `)
	measures   = regexp.MustCompile(`should measure ((?:about )?.*) unfinished`)
	wideBorder = regexp.MustCompile(`This border finishes (.*) wide`)
)

// sides are the width and height that a text names.
func sides(text string) (w, h *big.Rat) {
	l := lengthsIn(text)
	if len(l) == 0 {
		return new(big.Rat), new(big.Rat)
	}
	return l[0].nm, l[len(l)-1].nm
}

func alike2(a, b *big.Rat, marks int64, units measure.System) bool {
	step := int64(measure.Inch / 16)
	if units == measure.Centimetres {
		step = int64(measure.Millimetre)
	}
	off := new(big.Rat).Sub(a, b)
	return off.Abs(off).Cmp(big.NewRat(marks*step, 1)) <= 0
}

// wrongSums adds the printed sizes up: blocks and sashes to the field, borders to the top.
func wrongSums(d document.Document, r Reports) []string {
	var wrong []string
	t := r.Top
	side := new(big.Rat).SetInt64(int64(t.SideFinished))
	for _, text := range ownTexts(d) {
		if m := finishesAt.FindStringSubmatch(text); m != nil {
			if w, h := sides(m[1]); !alike2(w, side, 1, t.Units) || !alike2(h, side, 1, t.Units) {
				wrong = append(wrong, "a block is said to finish at "+m[1]+", but the grid's side is "+measure.Text(t.SideFinished, t.Units))
			}
		}
	}
	w, h := new(big.Rat).SetInt64(int64(t.Field.Width()+2*t.Seam)), new(big.Rat).SetInt64(int64(t.Field.Height()+2*t.Seam))
	for _, b := range flat(append(partOf(d, "Joining the blocks"), partOf(d, "Joining the columns")...)) {
		p, ok := b.(document.Paragraph)
		if !ok {
			continue
		}
		text := p.Text.String()
		if m := wideBorder.FindStringSubmatch(text); m != nil {
			two := new(big.Rat).Mul(lengthsIn(m[1])[0].nm, big.NewRat(2, 1))
			w, h = new(big.Rat).Add(w, two), new(big.Rat).Add(h, two)
		}
		if m := measures.FindStringSubmatch(text); m != nil {
			if sw, sh := sides(m[1]); !alike2(sw, w, 1, t.Units) || !alike2(sh, h, 1, t.Units) {
				wrong = append(wrong, "the sizes do not add up: "+text)
			}
		}
	}
	return wrong
}

func partOf(d document.Document, title string) []document.Block {
	for _, p := range d.Sections {
		if p.Title == title {
			return p.Blocks
		}
	}
	return nil
}
