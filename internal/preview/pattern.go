package preview

import (
	"crypto/sha256"
	"encoding/hex"
	"fmt"
	"net/http"

	"eighthturn/internal/document"
	"eighthturn/internal/render"
	"eighthturn/internal/report/booklet"
	"eighthturn/internal/stop"
	"eighthturn/layout"
)

// patternPage is the address of the pages of the printed pattern.
const patternPage = "/pattern.html"

// patternPolicy lets the pattern's page be framed by the preview's own, have its own style and
// pictures within it, and nothing else. It runs no script.
const patternPolicy = "default-src 'none'; style-src 'unsafe-inline'; img-src data:; base-uri 'none'; form-action 'none'; frame-ancestors 'self'; sandbox allow-same-origin"

// patterns are the printed pattern of a top, as far as it was asked for.
type patterns struct {
	document stop.Once[document.Document]
	html     stop.Once[patternHTML]
}

// patternHTML is the pattern as one page, or why there is none.
type patternHTML struct {
	page []byte
	err  error
}

// uncut is why there is no pattern, nil if there is one: one that leaves pieces out is none.
func (p *plans) uncut() error {
	faults := p.Cuts().Faults
	if len(faults) == 0 {
		return nil
	}
	line, _ := p.source.Position(faults[0].Place.Start)
	return &cannotBeMade{fmt.Sprintf("The pattern cannot be made yet: in line %d, %s.", line, layout.Visible(faults[0].Message))}
}

// printed is the pattern as a document.
func (p *plans) printed() (document.Document, error) {
	if err := p.uncut(); err != nil {
		return document.Document{}, err
	}
	return p.document.Get(p.Sign(), func() document.Document { return p.patternOn(p.paper()) }), nil
}

// patternOn is the pattern for a size of page, without some of its parts.
func (p *plans) patternOn(paper render.Paper, without ...string) document.Document {
	of := p.Plans.Until(p.Sign())
	of.Name, of.Line = "", nil
	return booklet.Pattern(booklet.Of(of), booklet.Options{Name: p.name, Paper: paper, Without: without})
}

// paper is the usual size of page for the layout's units.
func (p *plans) paper() render.Paper { return render.UsualPaper(p.Top.Units) }

// page is the pattern as one page for a browser.
func (p *plans) page() ([]byte, error) {
	d, err := p.printed()
	if err != nil {
		return nil, err
	}
	made := p.html.Get(p.Sign(), func() patternHTML {
		p.Sign().Look()
		page, err := render.PaperHTML(d)
		if err != nil {
			err = &cannotBeMade{fmt.Sprintf("The pattern cannot be laid out: %v.", err)}
		}
		return patternHTML{page, err}
	})
	return made.page, made.err
}

// patternTab is the printed pattern beside the picture, as it would be printed now.
func patternTab(p *plans) reportTab {
	r := reportTab{Name: "Pattern", Intro: "The pattern as it prints now."}
	page, err := p.page()
	if err != nil {
		r.Placed = true
		r.add(tabSection{Title: "No pattern yet", Rows: []tabRow{{Cells: []string{err.Error()}, Tone: wrong}}})
		return r
	}
	sum := sha256.Sum256(page)
	r.Page = p.addressOf(patternPage, "content="+hex.EncodeToString(sum[:8]))
	return r
}

// servePattern answers with the pattern's page.
func (s *site) servePattern(w http.ResponseWriter, r *http.Request) {
	w.Header().Set("Content-Security-Policy", patternPolicy)
	w.Header().Set("X-Frame-Options", "SAMEORIGIN")
	s.serveOf(w, r, func(of *study, sign *stop.Sign) ([]byte, error) { return of.plans.until(sign).page() })
}
