package report

import (
	"path/filepath"
	"regexp"
	"testing"

	"eighthturn/internal/document"
	"eighthturn/internal/plan/summary"
	"eighthturn/internal/quilt"
	"eighthturn/internal/quilttest/golden"
	"eighthturn/internal/quilttest/spelled"
	"eighthturn/internal/templates"
	"eighthturn/layout"
)

// spellPlans spells the reports of a top out.
func spellPlans(b *spelled.Book, p *Plans, design *layout.Design, few bool) {
	b.Document(Check("checked", summary.Build(design, p.Top)))
	for _, r := range Reports() {
		b.Document(r.Make(p))
	}
	for n := range p.Leftovers().Proposals[:min(2, len(p.Leftovers().Proposals))] {
		b.Line("%s", LeftoversLayout(p.Leftovers(), n+1))
	}
	if few {
		return
	}
	b.Document(Beginning(p))
	b.Document(Class(p))
	b.Document(Quilting(p))
	b.Document(Listing(p, 12))
	for _, form := range []ShoppingForm{ShoppingTable, ShoppingPairs, ShoppingSentence, NoShopping} {
		s := BackCover(p, form, form == ShoppingSentence)
		b.Section("", &s)
	}
	b.Blocks("", []document.Block{PiecesInShort(p)})
	spellTemplates(b, p)
}

// spellTemplates spells out what is said of templates and foundations.
func spellTemplates(b *spelled.Book, p *Plans) {
	book := TemplateBook{Top: p.Top, Templates: templates.Build(p.Top, p.Cuts()), Several: p.Cutting.Copies > 1, Parts: len(p.Letters) > 0}
	shown := func(name string) string { return "page of " + name }
	b.Blocks("", []document.Block{document.List{Items: append(append(book.About(), book.Lines()...), book.ByRuler()...)}, book.Table(book.Templates, shown, true), book.Table(book.Templates, shown, false)})
	b.Blocks("", book.Strips())
	var names []string
	for i := range book.Templates[:min(2, len(book.Templates))] {
		names = append(names, book.Templates[i].Name())
	}
	for _, room := range []int{200, 100, 40, 2} {
		b.Line("%d: %s", room, book.PlateFacts(names, room))
	}
	b.Blocks("", Foundations(templates.Foundations(p.Top), shown))
}

// TestSpelledOut: the documents and figures of small layouts are word by word, number by number and place by place what somebody has read and
// looked at.
func TestSpelledOut(t *testing.T) {
	var files []string
	b := spelled.New()
	for _, c := range spelledLayouts(t) {
		design, _, faults := layout.Read(c.text)
		if errors, _ := layout.Count(faults); errors > 0 {
			t.Fatalf("%s: %v", c.name, faults)
		}
		b.Drawn = nil
		if c.drawn != "" {
			b.Drawn = regexp.MustCompile(c.drawn)
		}
		spellPlans(b, c.laidOut(quilt.Lay(design)), design, c.few)
		files = append(files, c.name+".txt")
		golden.Text(t, filepath.Join("testdata", "spelled", c.name+".txt"), []byte(b.Page()))
	}
	golden.Unused(t, filepath.Join("testdata", "spelled"), files)
}
