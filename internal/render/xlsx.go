package render

import (
	"archive/zip"
	"bytes"
	"cmp"
	"encoding/xml"
	"fmt"
	"strings"
	"time"
	"unicode/utf16"

	"eighthturn/internal/document"
	"eighthturn/layout"
)

// XLSXMark stands near the beginning of every workbook that is written, in a part that is not compressed.
const XLSXMark = "<Application>eighthturn</Application>"

// maxSheetName is how many characters the name of a sheet may have.
const maxSheetName = 31

// workSheet is the tables of one section.
type workSheet struct {
	name   string
	tables []document.Table
}

// XLSX writes the tables of a document as a workbook, a sheet for each section that has any (ECMA-376, Office Open XML: the
// parts that a workbook cannot be without, and the document's title and author). Cells that have a number are numbers; sums and
// products are formulas with their values; text is never one. The error is a sentence: of a text that no cell holds.
//
// The parts are written here, since the libraries that do it set up tables of their own before main: 1.9 ms, where the whole
// program has less.
func XLSX(d document.Document) ([]byte, error) {
	sheets := sheetsOf(d)
	parts := []part{
		{"docProps/app.xml", xml.Header + `<Properties xmlns="http://schemas.openxmlformats.org/officeDocument/2006/extended-properties">` + XLSXMark + `</Properties>`},
		{"[Content_Types].xml", contentTypes(len(sheets))},
		{"_rels/.rels", relationships([]relationship{
			{"http://schemas.openxmlformats.org/officeDocument/2006/relationships/officeDocument", "xl/workbook.xml"},
			{"http://schemas.openxmlformats.org/package/2006/relationships/metadata/core-properties", "docProps/core.xml"},
			{"http://schemas.openxmlformats.org/officeDocument/2006/relationships/extended-properties", "docProps/app.xml"},
		})},
		{"docProps/core.xml", coreProperties(d)},
		{"xl/workbook.xml", workbook(sheets)},
		{"xl/_rels/workbook.xml.rels", workbookRelationships(len(sheets))},
		{"xl/styles.xml", xml.Header + sheetStyles()},
	}
	for i, s := range sheets {
		text, err := s.xml()
		if err != nil {
			return nil, err
		}
		parts = append(parts, part{sheetPart(i), text})
	}
	return packed(parts)
}

type part struct{ name, text string }

// packed is parts as one file; the first is not compressed, and all have the first day that such files know.
func packed(parts []part) ([]byte, error) {
	var b bytes.Buffer
	z := zip.NewWriter(&b)
	for i, p := range parts {
		method := zip.Deflate
		if i == 0 {
			method = zip.Store
		}
		w, err := z.CreateHeader(&zip.FileHeader{Name: p.name, Method: method, Modified: time.Date(1980, 1, 1, 0, 0, 0, 0, time.UTC)})
		if err != nil {
			return nil, err
		}
		if _, err := w.Write([]byte(p.text)); err != nil {
			return nil, err
		}
	}
	err := z.Close()
	return b.Bytes(), err
}

// sheetsOf are the sheets of a document, named by their sections or else by it; a document without tables has one with its title.
func sheetsOf(d document.Document) []workSheet {
	var list []workSheet
	taken := map[string]bool{}
	for _, s := range d.Print().Sections {
		of := workSheet{}
		for _, b := range s.Blocks {
			if t, ok := b.(document.Table); ok {
				of.tables = append(of.tables, t)
			}
		}
		if len(of.tables) > 0 {
			of.name = sheetName(cmp.Or(s.Title, d.Title), len(list)+1, taken)
			list = append(list, of)
		}
	}
	if len(list) == 0 {
		list = []workSheet{{sheetName("", 1, taken), []document.Table{{Columns: []document.Column{{Title: d.Title}}}}}}
	}
	return list
}

// sheetName is a title as the name of a sheet: at most 31 characters, none that formulas have for themselves, and no name twice,
// whatever the case of its letters.
func sheetName(title string, number int, taken map[string]bool) string {
	clean := strings.Map(func(r rune) rune {
		if strings.ContainsRune(`[]:*?/\`, r) {
			return '-'
		}
		return r
	}, layout.Visible(title))
	name := strings.Trim(shortened(clean, maxSheetName), "' ")
	if name == "" || taken[strings.ToLower(name)] {
		tail := fmt.Sprint(" ", number)
		name = strings.TrimSpace(strings.Trim(shortened(name, maxSheetName-len(tail)), "' ") + tail)
	}
	taken[strings.ToLower(name)] = true
	return name
}

// shortened is the beginning of a text, as spreadsheets count its characters: in UTF-16.
func shortened(text string, most int) string {
	for at, r := range text {
		if most -= utf16.RuneLen(r); most < 0 {
			return text[:at]
		}
	}
	return text
}

// xmlText is text within a part.
func xmlText(text string) string {
	var b bytes.Buffer
	_ = xml.EscapeText(&b, []byte(text)) // writing to memory cannot fail
	return b.String()
}

func sheetPart(i int) string { return fmt.Sprintf("xl/worksheets/sheet%d.xml", i+1) }

func contentTypes(sheets int) string {
	var b strings.Builder
	const of = "application/vnd.openxmlformats-"
	b.WriteString(xml.Header + `<Types xmlns="http://schemas.openxmlformats.org/package/2006/content-types">` +
		`<Default Extension="rels" ContentType="` + of + `package.relationships+xml"/><Default Extension="xml" ContentType="application/xml"/>`)
	is := func(name, kind string) {
		fmt.Fprintf(&b, `<Override PartName="/%s" ContentType="%s%s+xml"/>`, name, of, kind)
	}
	is("docProps/app.xml", "officedocument.extended-properties")
	is("docProps/core.xml", "package.core-properties")
	is("xl/workbook.xml", "officedocument.spreadsheetml.sheet.main")
	is("xl/styles.xml", "officedocument.spreadsheetml.styles")
	for i := range sheets {
		is(sheetPart(i), "officedocument.spreadsheetml.worksheet")
	}
	b.WriteString(`</Types>`)
	return b.String()
}

// relationship is what a part is to another.
type relationship struct{ kind, target string }

func relationships(list []relationship) string {
	var b strings.Builder
	b.WriteString(xml.Header + `<Relationships xmlns="http://schemas.openxmlformats.org/package/2006/relationships">`)
	for i, r := range list {
		fmt.Fprintf(&b, `<Relationship Id="rId%d" Type="%s" Target="%s"/>`, i+1, r.kind, r.target)
	}
	b.WriteString(`</Relationships>`)
	return b.String()
}

func workbookRelationships(sheets int) string {
	const of = "http://schemas.openxmlformats.org/officeDocument/2006/relationships/"
	var list []relationship
	for i := range sheets {
		list = append(list, relationship{of + "worksheet", strings.TrimPrefix(sheetPart(i), "xl/")})
	}
	return relationships(append(list, relationship{of + "styles", "styles.xml"}))
}

func coreProperties(d document.Document) string {
	return xml.Header + `<cp:coreProperties xmlns:cp="http://schemas.openxmlformats.org/package/2006/metadata/core-properties" xmlns:dc="http://purl.org/dc/elements/1.1/">` +
		`<dc:title>` + xmlText(layout.Visible(d.Title)) + `</dc:title><dc:creator>` + xmlText(layout.Visible(d.Author)) + `</dc:creator></cp:coreProperties>`
}

func workbook(sheets []workSheet) string {
	var b strings.Builder
	b.WriteString(xml.Header + `<workbook xmlns="http://schemas.openxmlformats.org/spreadsheetml/2006/main" xmlns:r="http://schemas.openxmlformats.org/officeDocument/2006/relationships"><sheets>`)
	for i, s := range sheets {
		fmt.Fprintf(&b, `<sheet name="%s" sheetId="%d" r:id="rId%d"/>`, xmlText(s.name), i+1, i+1)
	}
	b.WriteString(`</sheets><definedNames>`)
	for i, s := range sheets {
		name := xmlText(strings.ReplaceAll(s.name, "'", "''"))
		fmt.Fprintf(&b, `<definedName name="_xlnm.Print_Titles" localSheetId="%d">'%s'!$A:$A,'%s'!$1:$1</definedName>`, i, name, name)
	}
	b.WriteString(`</definedNames></workbook>`)
	return b.String()
}
