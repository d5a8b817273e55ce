package render

import (
	"encoding/xml"
	"fmt"
	"math/big"
	"slices"
	"strings"
	"unicode/utf16"

	"eighthturn/internal/document"
	"eighthturn/layout"
)

// maxColumn is how many characters wide a column begins; who wants more pulls it wider.
const maxColumn = 80

// pageColumn is how many characters a printed page across is wide at the most: 11 points are printed at no less than some 7.
const pageColumn = 200

// pagesAcross is how many pages beside each other hold columns that are so many characters wide.
func pagesAcross(characters int) int { return max(1, (characters+pageColumn-1)/pageColumn) }

// maxCellText is how many characters a cell holds.
const maxCellText = 32767

// Looks of cells, by their places in the styles.
const (
	lookText = iota
	lookHead
	lookLength
	lookCount
	lookTotal
	lookTotalLength
	lookTotalCount
	lookQuoted // text that would be a formula, if it were typed anew
	lookNumberHead
)

// sheetStyles are the looks in their order: heads and totals bold, numbers with the decimals that they have.
func sheetStyles() string {
	const plain, bold = `<xf numFmtId="%d" fontId="0" fillId="0" borderId="0" xfId="0" applyNumberFormat="1"%s`, `<xf numFmtId="%d" fontId="1" fillId="0" borderId="%d" xfId="0" applyNumberFormat="1" applyFont="1" applyBorder="1"%s`
	const indented = ` applyAlignment="1"><alignment horizontal="left" indent="1"/></xf>`
	const general, whole, decimals = 0, 1, 164
	return `<styleSheet xmlns="http://schemas.openxmlformats.org/spreadsheetml/2006/main"><numFmts count="1"><numFmt numFmtId="164" formatCode="0.0###"/></numFmts>` +
		`<fonts count="2"><font><sz val="11"/><name val="Calibri"/><family val="2"/></font><font><b/><sz val="11"/><name val="Calibri"/><family val="2"/></font></fonts>` +
		`<fills count="2"><fill><patternFill patternType="none"/></fill><fill><patternFill patternType="gray125"/></fill></fills>` +
		`<borders count="3"><border><left/><right/><top/><bottom/><diagonal/></border><border><left/><right/><top/><bottom style="thin"/><diagonal/></border>` +
		`<border><left/><right/><top style="thin"/><bottom/><diagonal/></border></borders>` +
		`<cellStyleXfs count="1"><xf numFmtId="0" fontId="0" fillId="0" borderId="0"/></cellStyleXfs><cellXfs count="9">` +
		fmt.Sprintf(plain, general, indented) + fmt.Sprintf(bold, general, 1, indented) +
		fmt.Sprintf(plain, decimals, "/>") + fmt.Sprintf(plain, whole, "/>") +
		fmt.Sprintf(bold, general, 2, indented) + fmt.Sprintf(bold, decimals, 2, "/>") + fmt.Sprintf(bold, whole, 2, "/>") +
		fmt.Sprintf(plain, general, ` quotePrefix="1"`+indented) + fmt.Sprintf(bold, general, 1, ` applyAlignment="1"><alignment horizontal="right"/></xf>`) +
		`</cellXfs><cellStyles count="1"><cellStyle name="Normal" xfId="0" builtinId="0"/></cellStyles></styleSheet>`
}

// xml is the sheet's part: the head of the first table stays in sight and is printed on every page, and with it the first column where
// a page cannot hold all of them in letters that can be read.
func (s workSheet) xml() (string, error) {
	w := sheetWriter{}
	for _, t := range s.tables {
		if w.row > 0 {
			w.row++
		}
		w.table(&t)
	}
	var b strings.Builder
	b.WriteString(xml.Header + `<worksheet xmlns="http://schemas.openxmlformats.org/spreadsheetml/2006/main"><sheetPr><pageSetUpPr fitToPage="1"/></sheetPr>` +
		`<sheetViews><sheetView workbookViewId="0"><pane ySplit="1" topLeftCell="A2" activePane="bottomLeft" state="frozen"/></sheetView></sheetViews><cols>`)
	whole := 0
	for i, width := range w.widths {
		wide := min(width, maxColumn) + 3
		whole += wide
		fmt.Fprintf(&b, `<col min="%d" max="%d" width="%d" customWidth="1"/>`, i+1, i+1, wide)
	}
	fmt.Fprintf(&b, `</cols><sheetData>%s</sheetData><pageSetup orientation="landscape" fitToWidth="%d" fitToHeight="0"/></worksheet>`, w.String(), pagesAcross(whole))
	return b.String(), w.err
}

// sheetWriter writes tables one under the other.
type sheetWriter struct {
	strings.Builder
	row    int   // the last one that was written, from 1
	widths []int // of columns, in characters
	err    error
}

// columnName is a column's letters: A, B, ... Z, AA.
func columnName(at int) string {
	if at < 26 {
		return string(rune('A' + at))
	}
	return columnName(at/26-1) + columnName(at%26)
}

func (w *sheetWriter) at(column int) string { return fmt.Sprint(columnName(column), w.row) }

func (w *sheetWriter) begin() {
	w.row++
	fmt.Fprintf(w, `<row r="%d">`, w.row)
}

func (w *sheetWriter) end() { w.WriteString(`</row>`) }

// wide notes how wide a cell is.
func (w *sheetWriter) wide(column int, text string) {
	for len(w.widths) <= column {
		w.widths = append(w.widths, 0)
	}
	w.widths[column] = max(w.widths[column], Columns(text))
}

func (w *sheetWriter) text(column, look int, text string) {
	text = layout.Visible(text)
	if text == "" && look == lookText {
		return
	}
	if len(utf16.Encode([]rune(text))) > maxCellText {
		w.err = fmt.Errorf("a cell of a workbook holds %d characters, and one has more", maxCellText)
		return
	}
	if look == lookText && formulaLike(text) {
		look = lookQuoted
	}
	w.wide(column, text)
	fmt.Fprintf(w, `<c r="%s" s="%d" t="inlineStr"><is><t xml:space="preserve">%s</t></is></c>`, w.at(column), look, xmlText(text))
}

// number is a cell with a decimal number, which a formula reckons anew; "" for none.
func (w *sheetWriter) number(column, look int, number, formula string) {
	if formula != "" {
		formula = "<f>" + formula + "</f>"
	}
	w.wide(column, number)
	fmt.Fprintf(w, `<c r="%s" s="%d">%s<v>%s</v></c>`, w.at(column), look, formula, number)
}

func (w *sheetWriter) table(t *document.Table) {
	w.begin()
	for i, c := range t.Columns {
		look := lookHead
		if c.Kind.Right() {
			look = lookNumberHead
		}
		w.text(i, look, c.Title)
	}
	w.end()
	first := w.row + 1
	for _, r := range t.Rows {
		w.begin()
		for i, c := range r.Cells {
			if c.Number == "" {
				w.text(i, lookText, c.Text.String())
				continue
			}
			w.number(i, lookOf(t.Columns[i].Kind, lookCount), shortNumber(c.Number), w.product(t, &r, i))
		}
		w.end()
	}
	w.total(t, first)
}

// lookOf is the look of a number, from that of counts on down: of lengths the one before.
func lookOf(kind document.Kind, count int) int {
	if kind == document.Counts {
		return count
	}
	return count - 1
}

// product is the formula of a number that is the product of others in its row, "" if it is none.
func (w *sheetWriter) product(t *document.Table, r *document.Row, column int) string {
	var factors []string
	for _, title := range t.Columns[column].Factors {
		at := slices.IndexFunc(t.Columns, func(c document.Column) bool { return c.Title == title })
		if at < 0 || at >= len(r.Cells) || r.Cells[at].Number == "" {
			return ""
		}
		factors = append(factors, w.at(at))
	}
	return strings.Join(factors, "*")
}

// total adds up the columns that may be added up, beneath the table.
func (w *sheetWriter) total(t *document.Table, first int) {
	sums := make([]*big.Rat, len(t.Columns))
	any := false
	for i, c := range t.Columns {
		if !c.Sum {
			continue
		}
		for _, r := range t.Rows {
			if i >= len(r.Cells) || r.Cells[i].Number == "" {
				continue
			}
			if n, ok := new(big.Rat).SetString(r.Cells[i].Number); ok {
				if sums[i] == nil {
					sums[i], any = new(big.Rat), true
				}
				sums[i].Add(sums[i], n)
			}
		}
	}
	if !any {
		return
	}
	last := w.row
	w.begin()
	for i, sum := range sums {
		switch {
		case sum != nil:
			w.number(i, lookOf(t.Columns[i].Kind, lookTotalCount), shortNumber(sum.FloatString(4)), fmt.Sprintf("SUM(%s%d:%s%d)", columnName(i), first, columnName(i), last))
		case i == 0:
			w.text(i, lookTotal, "total")
		default:
			w.text(i, lookTotal, "")
		}
	}
	w.end()
}

// shortNumber is a decimal number without idle zeros.
func shortNumber(text string) string {
	if !strings.Contains(text, ".") {
		return text
	}
	return strings.TrimRight(strings.TrimRight(text, "0"), ".")
}
