package render

import (
	"archive/zip"
	"bytes"
	"encoding/xml"
	"errors"
	"fmt"
	"io"
	"math"
	"regexp"
	"strconv"
	"strings"
	"testing"

	"eighthturn/internal/document"
)

// readCell is a cell as another program reads it.
type readCell struct {
	At      string `xml:"r,attr"`
	Look    int    `xml:"s,attr"`
	Kind    string `xml:"t,attr"`
	Formula string `xml:"f"`
	Value   string `xml:"v"`
	Text    string `xml:"is>t"`
}

// readSheets reads a workbook: its sheets' names, and their cells by their places.
func readSheets(made []byte) (names []string, sheets []map[string]readCell, err error) {
	z, err := zip.NewReader(bytes.NewReader(made), int64(len(made)))
	if err != nil {
		return nil, nil, err
	}
	part := func(name string, to any) {
		f, failed := z.Open(name)
		if failed == nil {
			var text []byte
			if text, failed = io.ReadAll(f); failed == nil {
				failed = xml.Unmarshal(text, to)
			}
		}
		err = errors.Join(err, failed)
	}
	for _, f := range z.File {
		part(f.Name, new(struct{})) // every part is well-formed
	}
	var book struct {
		Sheets []struct {
			Name string `xml:"name,attr"`
		} `xml:"sheets>sheet"`
	}
	part("xl/workbook.xml", &book)
	for i, s := range book.Sheets {
		var of struct {
			Cells []readCell `xml:"sheetData>row>c"`
		}
		part(sheetPart(i), &of)
		cells := map[string]readCell{}
		for _, c := range of.Cells {
			cells[c.At] = c
		}
		names, sheets = append(names, s.Name), append(sheets, cells)
	}
	return names, sheets, err
}

// wrongFormula says which formula of a sheet gives another number than stands beside it.
func wrongFormula(cells map[string]readCell) error {
	number := func(at string) float64 { n, _ := strconv.ParseFloat(cells[at].Value, 64); return n }
	for at, c := range cells {
		var want float64
		if sum := regexp.MustCompile(`^SUM\(([A-Z]+)(\d+):[A-Z]+(\d+)\)$`).FindStringSubmatch(c.Formula); sum != nil {
			first, _ := strconv.Atoi(sum[2])
			last, _ := strconv.Atoi(sum[3])
			for row := first; row <= last; row++ {
				want += number(fmt.Sprint(sum[1], row))
			}
		} else if c.Formula != "" {
			want = 1
			for factor := range strings.SplitSeq(c.Formula, "*") {
				want *= number(factor)
			}
		} else {
			continue
		}
		if math.Abs(number(at)-want) > 1e-9*math.Max(1, want) {
			return fmt.Errorf("%s: =%s is %g, %s stands there", at, c.Formula, want, c.Value)
		}
	}
	return nil
}

// reckoned is a document with a table whose columns are added up and multiplied, and whose texts a spreadsheet would reckon with.
func reckoned() document.Document {
	t := document.Table{Columns: []document.Column{
		{Title: "what"}, {Title: "each", Kind: document.Counts}, {Title: "times", Kind: document.Counts},
		{Title: "all", Kind: document.Counts, Sum: true, Factors: []string{"each", "times"}}, {Title: "long_in", Kind: document.Lengths, Sum: true}}}
	n := 0
	for text := range armed() {
		n++
		cell := func(n int) document.Cell { return document.Cell{Number: strconv.Itoa(n)} }
		t.Rows = append(t.Rows, document.Row{Cells: []document.Cell{{Text: document.Plain(text)}, cell(n), cell(3), cell(3 * n), {Number: fmt.Sprintf("%d.1250", n)}}})
	}
	t.Rows = append(t.Rows, document.Row{Cells: []document.Cell{{Text: document.Plain("a heading across")}}})
	other := document.Table{Columns: []document.Column{{Title: "alone"}}}
	return document.Document{Title: "<t> & more", Sections: []document.Section{
		{Title: "Buy: [all]/2", Blocks: []document.Block{t, other}}, {Title: "words alone", Blocks: []document.Block{document.Paragraph{}}},
		{Title: strings.Repeat("long ", 9), Blocks: []document.Block{other}}, {Title: strings.Repeat("LONG ", 9), Blocks: []document.Block{other}}, {Blocks: []document.Block{other}}}}
}

// TestXLSX: each section with tables is a sheet of a name that programs take; numbers are numbers, formulas give what stands beside
// them, and text is text.
func TestXLSX(t *testing.T) {
	d := reckoned()
	made, err := XLSX(d)
	if err != nil {
		t.Fatal(err)
	}
	if again, _ := XLSX(d); !bytes.Equal(made, again) {
		t.Error("another workbook of the same document")
	}
	if !bytes.Contains(made[:1000], []byte(XLSXMark)) {
		t.Error("it does not begin with its mark")
	}
	names, sheets, err := readSheets(made)
	if err != nil {
		t.Fatal(err)
	}
	if want := []string{"Buy- -all--2", "long long long long long long l", "LONG LONG LONG LONG LONG LONG 3", "<t> & more"}; fmt.Sprint(names) != fmt.Sprint(want) {
		t.Errorf("sheets %q, expected %q", names, want)
	}
	cells := sheets[0]
	if err := wrongFormula(cells); err != nil {
		t.Error(err)
	}
	last := len(d.Sections[0].Blocks[0].(document.Table).Rows) + 2
	for at, want := range map[string]string{fmt.Sprint("D", last): fmt.Sprintf("SUM(D2:D%d)", last-1), fmt.Sprint("E", last): fmt.Sprintf("SUM(E2:E%d)", last-1), "D2": "B2*C2", "E2": "", fmt.Sprint("B", last): ""} {
		if cells[at].Formula != want {
			t.Errorf("%s: =%s, expected =%s", at, cells[at].Formula, want)
		}
	}
	if c := cells[fmt.Sprint("A", last+2)]; c.Text != "alone" {
		t.Errorf("the second table does not follow behind an empty row: %+v", c)
	}
	for at, c := range cells {
		if text := c.Kind == "inlineStr"; text == (c.Value != "") || text && (c.Look == lookQuoted) != (formulaLike(c.Text)) {
			t.Errorf("%s: %+v", at, c)
		}
	}
	total := cells[fmt.Sprint("D", last)]
	total.Value += "1"
	cells[fmt.Sprint("D", last)] = total
	if wrongFormula(cells) == nil {
		t.Error("a wrong sum is not noticed")
	}
}

// TestXLSXLimits: a text that no cell holds is refused, and a document without tables has one sheet all the same.
func TestXLSXLimits(t *testing.T) {
	one := func(text string) document.Document {
		return document.Document{Sections: []document.Section{{Blocks: []document.Block{document.Table{Columns: []document.Column{{Title: text}}}}}}}
	}
	if _, err := XLSX(one(strings.Repeat("x", maxCellText))); err != nil {
		t.Error(err)
	}
	if _, err := XLSX(one(strings.Repeat("x", maxCellText+1))); err == nil {
		t.Error("a text that is too long for a cell is written")
	}
	made, err := XLSX(document.Document{Title: "nothing"})
	if names, _, bad := readSheets(made); err != nil || bad != nil || len(names) != 1 {
		t.Errorf("%q, %v, %v", names, err, bad)
	}
	for at, want := range map[int]string{0: "A", 25: "Z", 26: "AA", 701: "ZZ", 702: "AAA"} {
		if got := columnName(at); got != want {
			t.Errorf("column %d: %s, expected %s", at, got, want)
		}
	}
}

// TestXLSXOfAnyDocument: of invented documents too every part is well-formed, and every formula gives what stands beside it.
func TestXLSXOfAnyDocument(t *testing.T) {
	for seed := range uint64(40) {
		d, _ := invent(seed)
		made, err := XLSX(d)
		if err != nil {
			t.Fatal(err)
		}
		_, sheets, err := readSheets(made)
		if err != nil {
			t.Errorf("document %d: %v", seed, err)
		}
		for _, cells := range sheets {
			if err := wrongFormula(cells); err != nil {
				t.Errorf("document %d: %v", seed, err)
			}
		}
	}
}

// TestSheetsPrintLegibly: a sheet of many columns is printed on several pages beside each other, one of few on one.
func TestSheetsPrintLegibly(t *testing.T) {
	for columns, pages := range map[int]int{1: 1, 4: 1, 30: 4} {
		table := document.Table{Rows: []document.Row{{}}}
		for range columns {
			table.Columns = append(table.Columns, document.Column{Title: strings.Repeat("x", 20)})
			table.Rows[0].Cells = append(table.Rows[0].Cells, document.Cell{Text: document.Plain("7 in")})
		}
		text, err := workSheet{name: "s", tables: []document.Table{table}}.xml()
		if want := fmt.Sprintf(`fitToWidth="%d"`, pages); err != nil || !strings.Contains(text, want) {
			t.Errorf("%d columns: not %s, %v", columns, want, err)
		}
	}
}
