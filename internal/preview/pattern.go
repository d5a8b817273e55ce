package preview

import (
	"crypto/sha256"
	"encoding/hex"
	"fmt"
	"net/http"

	"eighthturn/internal/document"
	"eighthturn/internal/measure"
	"eighthturn/internal/plan/cutting"
	"eighthturn/internal/render"
	"eighthturn/internal/report/booklet"
	"eighthturn/layout"
)

// patternPage is the address of the pages of the printed pattern.
const patternPage = "/pattern.html"

// patternPolicy lets the pattern's page be framed by the preview's own, have its own style and
// pictures within it, and nothing else. It runs no script.
const patternPolicy = "default-src 'none'; style-src 'unsafe-inline'; img-src data:; base-uri 'none'; form-action 'none'; frame-ancestors 'self'; sandbox allow-same-origin"

// patternFile is the printed pattern of a top.
type patternFile struct {
	document.Document
	html []byte // nil until asked for
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
func (p *plans) printed() (*patternFile, error) {
	if err := p.uncut(); err != nil {
		return nil, err
	}
	if p.pattern == nil {
		r := booklet.Study(p.Top, cutting.Options{})
		p.pattern = &patternFile{Document: booklet.Pattern(r, booklet.Options{Name: p.name, Paper: p.paper()})}
	}
	return p.pattern, nil
}

// paper is the usual size of page for the layout's units.
func (p *plans) paper() render.Paper {
	if p.Top.Units == measure.Centimetres {
		return render.A4()
	}
	return render.Letter()
}

// page is the pattern as one page for a browser.
func (p *plans) page() ([]byte, error) {
	d, err := p.printed()
	if err != nil {
		return nil, err
	}
	if d.html == nil {
		if d.html, err = render.HTML(d.Document); err != nil {
			return nil, &cannotBeMade{fmt.Sprintf("The pattern cannot be set: %v.", err)}
		}
	}
	return d.html, nil
}

// patternTab is the printed pattern beside the picture, as it would be printed now.
func patternTab(p *plans) reportTab {
	r := reportTab{Name: "Pattern", Intro: "as it prints now"}
	page, err := p.page()
	if err != nil {
		r.Placed = true
		r.add(tabSection{Title: "No pattern yet", Rows: []tabRow{{Cells: []string{err.Error()}, Tone: wrong}}})
		return r
	}
	sum := sha256.Sum256(page)
	r.Page = patternPage + "?content=" + hex.EncodeToString(sum[:8])
	return r
}

// servePattern answers with the pattern's page.
func (s *site) servePattern(w http.ResponseWriter, r *http.Request) {
	w.Header().Set("Content-Security-Policy", patternPolicy)
	w.Header().Set("X-Frame-Options", "SAMEORIGIN")
	s.inTurn(w, r, func(p *picture) ([]byte, error) { return s.resources.planned(p).page() })
}
