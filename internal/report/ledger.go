package report

import (
	"math/big"
	"strconv"
	"strings"

	"eighthturn/internal/document"
	"eighthturn/internal/measure"
)

// ledger is a table for a spreadsheet. A length takes two columns: a decimal number, which sums can be made of, and the same
// as text with its unit, which no program takes for a date.
type ledger struct {
	units measure.System
	sized bool // its rows begin with the name of a size
	document.Table
}

func (l *ledger) columns(names ...string) {
	for _, name := range names {
		l.Columns = append(l.Columns, words(strings.ReplaceAll(name, "-", "_")))
	}
}

// numberColumn is the heading of numbers, and whether they may be added up.
func (l *ledger) numberColumn(name string, kind document.Kind, sum bool) {
	l.Columns = append(l.Columns, document.Column{Title: name, Kind: kind, Sum: sum, Factors: products()[name]})
}

// countColumn is the heading of numbers of something, which are whole.
func (l *ledger) countColumn(name string) {
	l.Columns = append(l.Columns, document.Column{Title: name, Kind: document.Counts})
}

// lengthColumns are the headings of lengths: the number's, with the unit, and the text's.
func (l *ledger) lengthColumns(names ...string) {
	for _, name := range names {
		l.columns(l.withUnit(name), name)
	}
}

func (l *ledger) withUnit(name string) string {
	if l.units == measure.Centimetres {
		return name + "_cm"
	}
	return name + "_in"
}

// row begins another row.
func (l *ledger) row() { l.Rows = append(l.Rows, document.Row{}) }

func (l *ledger) put(c document.Cell) {
	r := &l.Rows[len(l.Rows)-1]
	r.Cells = append(r.Cells, c)
}

func (l *ledger) text(text string) { l.put(cell(text)) }

func (l *ledger) count(n int) { l.put(document.Cell{Number: strconv.Itoa(n)}) }

// number is a length as a number alone, which may be below 0.
func (l *ledger) number(nm measure.NM) {
	l.put(document.Cell{Number: measure.Decimal(nm, l.units, 4)})
}

// shop is a length of cloth in a unit that shops sell by, nothing where there is none.
func (l *ledger) shop(nm, unit measure.NM) {
	if nm == 0 {
		l.text("")
		return
	}
	l.put(document.Cell{Number: big.NewRat(int64(nm), int64(unit)).FloatString(4)})
}

// lengths are lengths, each as a number and as text.
func (l *ledger) lengths(list ...measure.NM) {
	for _, nm := range list {
		l.number(nm)
		l.text(l.units.Nearest(nm))
	}
}

func (l *ledger) yes(yes bool) {
	if yes {
		l.text("yes")
		return
	}
	l.text("no")
}

// document is the table alone.
func (l *ledger) document(title string) document.Document {
	return document.Document{Title: title, Sections: []document.Section{{Blocks: []document.Block{l.Table}}}}
}
