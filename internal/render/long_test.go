package render

import (
	"errors"
	"testing"

	"eighthturn/internal/document"
)

// A document of too many pages is refused, and no more of it is built than shows that.
func TestTooManyPages(t *testing.T) {
	o := Options{Paper: HalfLetter(), Large: true}
	const most = 20
	built := func(paragraphs int) (*builder, error) {
		list := make([]document.Block, paragraphs)
		for i := range list {
			list[i] = document.Paragraph{Text: document.Plain("Sew.")}
		}
		b := newBuilder(o.look())
		b.most = most
		_, err := b.pages(document.Document{Title: "Long", Sections: []document.Section{{ID: "all", Title: "All", Blocks: list}}}, o)
		return b, err
	}
	var long *TooLong
	b, err := built(5000)
	lines := int(most*(b.bottom-b.top)/(b.body*leading)) + 1 // that need more pages however they lie
	if !errors.As(err, &long) || len(b.list) > lines {
		t.Errorf("got %v after %d lines, wanted the fault after %d at the most", err, len(b.list), lines)
	}
	if b, err := built(lines - 20); !errors.As(err, &long) || len(b.list) < lines-20 { // with the space between them
		t.Errorf("%d lines of %d: got %v", len(b.list), lines-20, err)
	}
	if _, err := built(lines / 4); err != nil {
		t.Error(err)
	}
}

// Pictures count for as much room as they take at the least.
func TestTooManyPictures(t *testing.T) {
	o := Options{Paper: HalfLetter()}
	list := make([]document.Block, 200)
	for i := range list {
		list[i] = shown(top(1, 1, false), "", "a block")
	}
	b := newBuilder(o.look())
	b.most = 4
	var long *TooLong
	if _, err := b.pages(document.Document{Title: "Long", Sections: []document.Section{{Blocks: list}}}, o); !errors.As(err, &long) || len(b.list) > 100 {
		t.Errorf("got %v after %d pictures", err, len(b.list))
	}
	b = newBuilder(o.look())
	b.most = 4
	if _, err := b.pages(document.Document{Title: "Short", Sections: []document.Section{{Blocks: list[:2]}}}, o); err != nil {
		t.Error(err)
	}
}
