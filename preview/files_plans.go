package preview

import (
	"encoding/csv"
	"fmt"
	"io"
	"strings"

	"eighthturn/cutting"
	"eighthturn/figure"
	"eighthturn/measure"
	"eighthturn/pages"
)

// saveMaps prints the cutting maps, and what is to be minded with a cutter.
func saveMaps(p *plans, w io.Writer) error {
	d := p.paged("cutting maps")
	plan := p.cutting()
	for _, m := range plan.Maps() {
		d.Parts = append(d.Parts, pages.Part{Blocks: []pages.Block{pages.Figure{Of: *m.Figure}}})
	}
	d.Parts = append(d.Parts, pages.Part{Title: "Mind your fingers", Blocks: []pages.Block{caution(cutting.Cautions())}})
	return p.print(w, d)
}

// saveSteps prints the sewing report: its sections, rows and diagrams.
func saveSteps(p *plans, w io.Writer) error {
	d := p.paged("how it goes together")
	r, drawn := sewingReport(p), map[*figure.Figure]bool{}
	d.Parts = append(d.Parts, pages.Part{Blocks: []pages.Block{paragraph(sentence(r.Says))}})
	for _, s := range r.Sections {
		part := pages.Part{Title: s.Title}
		for _, w := range s.Rows {
			part.Blocks = append(part.Blocks, onPaper(&w)...)
			if w.Diagram == nil {
				continue
			}
			if f := r.diagrams[*w.Diagram](); !drawn[f] {
				drawn[f] = true // several rows may be about one picture
				part.Blocks = append(part.Blocks, pages.Figure{Of: *f})
			}
		}
		d.Parts = append(d.Parts, part)
	}
	return p.print(w, d)
}

// onPaper is what a row says.
func onPaper(w *row) []pages.Block {
	var list []pages.Block
	text := strings.Join(w.Cells, ", ")
	if w.Head {
		list = append(list, pages.Heading{Text: text})
	} else {
		list = append(list, paragraph(text))
	}
	for _, under := range w.Under {
		list = append(list, paragraph(under))
	}
	return list
}

// paged is a document that has the quilt's title and nothing in it yet.
func (p *plans) paged(what string) pages.Document {
	title := p.top.Title
	if title == "" {
		title = p.name
	}
	return pages.Document{Title: title + ": " + what}
}

func paragraph(text string) pages.Block { return pages.Paragraph{Text: pages.Plain(text)} }

func caution(list []string) pages.Block {
	box := pages.Box{Caution: true}
	for _, text := range list {
		box.Blocks = append(box.Blocks, paragraph(text))
	}
	return box
}

func sentence(text string) string { return strings.ToUpper(text[:1]) + text[1:] + "." }

// saveTable writes the cutting plan as a table: a row for everything that is bought, for every
// piece, and for every stretch of every strip, in the order to cut. Lengths are decimals of
// the layout's unit.
func saveTable(p *plans, w io.Writer) error {
	t := &table{cutWords{p.cutting()}, csv.NewWriter(w)}
	unit := unitName(t.Units)
	t.write("row", "fabric", "line", "what", "count", "across_finished_"+unit, "along_finished_"+unit, "across_cut_"+unit, "along_cut_"+unit, "strip_width_cut_"+unit, "strips", "pieces")
	for i := range t.Fabrics {
		f := &t.Fabrics[i]
		t.write("buy", f.Name, "", t.shop(f.Purchase.Buy), "1", "", "", t.number(f.UsableWidth), t.number(f.Purchase.Buy), "", fmt.Sprint(f.StripCount), "")
	}
	for i := range t.Lines {
		l := &t.Lines[i]
		t.write("piece", t.cloth(l), fmt.Sprint(i+1), t.piece(l), fmt.Sprint(l.Units), t.number(l.Piece.SideFinished), t.number(l.Piece.LengthFinished),
			t.number(l.Piece.AcrossCut), t.number(l.Piece.AlongCut), "", "", fmt.Sprint(l.Pieces))
	}
	for i := range t.Sets {
		t.set(i)
	}
	for i := range t.Fabrics {
		t.strips(&t.Fabrics[i])
	}
	t.Flush()
	return t.Error()
}

// table is a cutting plan being written as a table.
type table struct {
	cutWords
	*csv.Writer
}

// write writes a row. Words that a spreadsheet would take for a sum are kept from it by an
// apostrophe, as spreadsheets themselves write them.
func (t *table) write(cells ...string) {
	for i, c := range cells {
		if c != "" && strings.ContainsRune("=+-@\t\r", rune(c[0])) {
			cells[i] = "'" + c
		}
	}
	_ = t.Write(visible(cells...)) // Error tells of it in the end
}

// number is a length, "" for none.
func (t *table) number(nm measure.NM) string {
	if nm == 0 {
		return ""
	}
	return measure.Decimal(nm, t.Units, 4)
}

func (t *table) set(n int) {
	set := &t.Sets[n]
	for _, r := range set.Runs {
		for _, b := range set.Bands {
			t.write("strip set", t.Fabrics[b.Fabric].Name, "", t.SetName(n), fmt.Sprint(r.Sets), t.number(b.WidthFinished), "", t.number(b.WidthCut), t.number(r.LengthCut), t.number(set.WidthCut), "", fmt.Sprint(r.Wedges))
		}
	}
}

func (t *table) strips(f *cutting.Fabric) {
	for _, b := range f.Blocks {
		for _, c := range b.Columns {
			t.write("lengthwise", f.Name, fmt.Sprint(c.Line+1), t.EdgingName(&t.Lines[c.Line]), "1", "", "", t.number(c.WidthCut), t.number(c.LengthCut), "", "", "")
		}
	}
	for i := range f.Strips {
		s := &f.Strips[i]
		for j := range s.Cuts {
			c := &s.Cuts[j]
			t.write("cut", f.Name, lineNumbers(c.Lines), t.CutWords(c), fmt.Sprint(c.Units), "", "", t.number(c.AcrossCut), t.number(c.AlongCut), t.number(s.WidthCut), fmt.Sprint(s.Times), "")
		}
	}
}
