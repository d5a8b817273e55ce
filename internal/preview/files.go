package preview

import (
	"bytes"
	"fmt"
	"io"
	"mime"
	"net/http"
	"strings"

	"eighthturn/internal/document"
	"eighthturn/internal/render"
	pictures "eighthturn/internal/render/picture"
	"eighthturn/internal/report"
	"eighthturn/internal/report/booklet"
	"eighthturn/internal/stop"
	"eighthturn/svgout"
)

// savedFile is a kind of file that can be saved: what it is, and how it is written of the plans of the newest top. It is made
// when somebody asks for it, and not kept.
type savedFile struct {
	path        string // address
	contentType string
	suffix      string // of its name, behind the layout's
	name        string
	about       string
	write       func(*plans, io.Writer) error
}

// savedFiles are all kinds of files, in the order in which they are offered.
func savedFiles() []savedFile {
	const pdf = "application/pdf"
	return []savedFile{
		{"/save/picture.svg", "image/svg+xml; charset=utf-8", ".svg", "picture, SVG", "the quilt as a drawing that is sharp at any size", savePictureSVG},
		{"/save/picture.png", "image/png", ".png", "picture, PNG", "the quilt in pixels, 2,100 on its longer side: for a screen or a show's entry form", savePNG},
		{"/save/picture.jpg", "image/jpeg", ".jpg", "picture, JPEG", "the same, for email and for shops that do not take PNG", saveJPEG},
		{"/save/picture.pdf", pdf, "-picture.pdf", "picture, PDF", "the quilt at true size, to print large", savePicturePDF},
		{"/save/cutting.csv", "text/csv; charset=utf-8", "-cutting.csv", "cutting table, CSV", "what to buy and cut, line by line, for a spreadsheet", asCSV(report.CuttingTable)},
		{"/save/cutting.xlsx", "application/vnd.openxmlformats-officedocument.spreadsheetml.sheet", "-cutting.xlsx", "cutting workbook, XLSX", "what to buy and cut, the pieces and kits, with sums, for a spreadsheet", asXLSX(report.CuttingSheets)},
		{"/save/cutting-maps.pdf", pdf, "-cutting-maps.pdf", "cutting maps, PDF", "how to lay out the cuts on each fabric, to print", asPDF(report.CuttingMapBook)},
		{"/save/sewing.pdf", pdf, "-sewing.pdf", "sewing steps, PDF", "each step with its picture, to print", asPDF(report.Sewing)},
		{"/save/templates.pdf", pdf, "-templates.pdf", "templates, PDF", "each piece at true size: print at 100%", saveTemplates},
		{"/save/pattern.pdf", pdf, "-pattern.pdf", "pattern, PDF", "the printed pattern: print at 100%", savePatternPDF},
		{"/save/pattern-booklet.pdf", pdf, "-booklet.pdf", "pattern to fold, PDF", "half-size pages, two to a sheet: print on both sides, flip on the short edge, fold and staple; print the templates from their own file", saveFolded},
		{"/save/pattern-crop-marks.pdf", pdf, "-crop-marks.pdf", "pattern for a print shop, PDF", "the printed pattern with crop marks and a bleed", saveCropMarks},
		{"/save/pattern.html", "text/html; charset=utf-8", "-pattern.html", "pattern, web page", "the same as one page for a browser", savePatternHTML},
	}
}

// asPDF writes a report as pages, as far as the one who cuts or sews needs it.
func asPDF(of func(*report.Plans) document.Document) func(*plans, io.Writer) error {
	return func(p *plans, w io.Writer) error { return p.print(w, of(p.Plans).Down(document.Detail).Print()) }
}

// asCSV writes a report's tables for a spreadsheet.
func asCSV(of func(*report.Plans) document.Document) func(*plans, io.Writer) error {
	return func(p *plans, w io.Writer) error {
		_, err := io.WriteString(w, render.CSV(of(p.Plans)))
		return err
	}
}

// asXLSX writes a report's tables as a workbook.
func asXLSX(of func(*report.Plans) document.Document) func(*plans, io.Writer) error {
	return func(p *plans, w io.Writer) error {
		made, err := render.XLSX(of(p.Plans))
		if err != nil {
			return unlessTooLarge(err)
		}
		_, err = w.Write(made)
		return err
	}
}

// filesTab lists what can be saved.
func filesTab(p *plans) reportTab {
	r := reportTab{Name: "Files", Intro: "Each file is made when you save it, from the picture you see."}
	s := tabSection{Title: "To save"}
	no := p.uncut()
	for _, f := range savedFiles() {
		w := tabRow{Cells: []string{f.name}, Under: []string{f.about}, Save: p.addressOf(f.path), As: p.name + p.dash() + f.suffix}
		if no != nil && strings.HasPrefix(f.path, "/save/pattern") {
			w.Save, w.As, w.Under, w.Tone, r.Placed = "", "", []string{no.Error()}, doubtful, true
		}
		s.Rows = append(s.Rows, w)
	}
	r.add(s)
	return r
}

// serve makes the file and hands it over as one to save.
func (f savedFile) serve(s *site, w http.ResponseWriter, r *http.Request) {
	w.Header().Set("Content-Disposition", mime.FormatMediaType("attachment", map[string]string{"filename": s.studies.name + f.suffix}))
	w.Header().Set("Content-Security-Policy", "default-src 'none'; style-src 'unsafe-inline'; img-src data:; sandbox")
	s.serveFile(w, r, func(of *study, sign *stop.Sign) ([]byte, error) {
		var b bytes.Buffer
		plans := of.plans.until(sign)
		plans.prints = r.URL.Query().Get("prints") != ""
		if err := f.write(plans, sign.Writer(&b)); err != nil {
			return nil, err
		}
		return b.Bytes(), nil
	})
}

func savePictureSVG(p *plans, w io.Writer) error {
	return svgout.Draw(w, p.Top, svgout.Options{ByFabric: true, OnePaint: true, Prints: p.prints})
}

// scene is the picture as it is printed.
func (p *plans) scene() (*svgout.Scene, error) {
	return svgout.NewScene(p.Top, svgout.Options{ByFabric: true, Prints: p.prints})
}

// defaultPixels is the longer side of a picture in pixels: what juries of shows ask for at the least
// (SAQA, digital submission guidelines: 2,100 pixels for the quilt).
const defaultPixels = 2100

func savePNG(p *plans, w io.Writer) error {
	s, err := p.scene()
	if err != nil {
		return err
	}
	return unlessTooLarge(pictures.PNG(w, s, pictures.Frame{Pixels: defaultPixels}))
}

func saveJPEG(p *plans, w io.Writer) error {
	s, err := p.scene()
	if err != nil {
		return err
	}
	return unlessTooLarge(pictures.JPEG(w, s, pictures.Frame{Pixels: defaultPixels}))
}

func savePicturePDF(p *plans, w io.Writer) error {
	s, err := p.scene()
	if err != nil {
		return err
	}
	return unlessTooLarge(pictures.PDF(w, s, pictures.Frame{}))
}

// unlessTooLarge makes a sentence of what a size of paper or of pixels forbids.
func unlessTooLarge(err error) error {
	if err == nil {
		return nil
	}
	return &cannotBeMade{fmt.Sprintf("It cannot be made: %v.", err)}
}

func saveTemplates(p *plans, w io.Writer) error {
	book, err := booklet.Templates(p.Top, p.Pieces(), booklet.Options{Name: p.name, Paper: p.paper()}, false)
	if err != nil {
		return unlessTooLarge(err)
	}
	return p.print(w, book.Document)
}

func savePatternPDF(p *plans, w io.Writer) error {
	d, err := p.printed()
	if err != nil {
		return err
	}
	return p.print(w, d)
}

// saveFolded writes the pattern as half-size pages in the order in which sheets are folded; templates would be cut by the fold.
func saveFolded(p *plans, w io.Writer) error {
	if err := p.uncut(); err != nil {
		return err
	}
	paper := render.FoldedPaper(p.Top.Units)
	d := p.patternOn(paper, booklet.Parts()[0])
	return p.put(w, d, render.Options{Paper: paper, Imposed: true})
}

func saveCropMarks(p *plans, w io.Writer) error {
	d, err := p.printed()
	if err != nil {
		return err
	}
	return p.put(w, d, render.Options{Paper: p.paper(), CropMarks: true})
}

func savePatternHTML(p *plans, w io.Writer) error {
	page, err := p.page()
	if err != nil {
		return err
	}
	_, err = w.Write(page)
	return err
}

// print writes a document as pages.
func (p *plans) print(w io.Writer, d document.Document) error {
	return p.put(w, d, render.Options{Paper: p.paper()})
}

// put writes a document as pages by options.
func (p *plans) put(w io.Writer, d document.Document, o render.Options) error {
	o.Sign = p.Sign()
	made, err := render.PDF(d, o)
	if err != nil {
		return unlessTooLarge(err)
	}
	_, err = w.Write(made.File)
	return err
}
