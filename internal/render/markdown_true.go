package render

import "eighthturn/internal/document"

// TrueSizeFile is the file of pages at true size that stands beside Markdown: a picture would be scaled by whatever shows it.
const TrueSizeFile = "templates.pdf"

// trueSize is what of a document belongs to its figures at true size: the chapters with such figures, without other
// illustrations, and what is to be known of them; false if there are none.
func trueSize(d document.Document) (document.Document, bool) {
	var kept []document.Section
	any := false
	for _, s := range d.Sections {
		blocks, found := trueBlocks(s.Blocks)
		if found || s.ID == document.AboutTrueSize {
			s.Blocks, s.NewPage = blocks, false
			kept = append(kept, s)
		}
		any = any || found
	}
	d.Cover, d.Sections = nil, kept
	return d, any
}

// trueBlocks are blocks without the illustrations that may be scaled, and whether others are among them.
func trueBlocks(list []document.Block) (kept []document.Block, found bool) {
	for _, b := range list {
		switch v := b.(type) {
		case document.Figure:
			if !v.Of.TrueSize {
				continue
			}
			found = true
		case document.Picture, document.Gallery:
			continue
		case document.Together:
			inner, some := trueBlocks(v.Blocks)
			found, b = found || some, document.Together{Blocks: inner}
		}
		kept = append(kept, b)
	}
	return kept, found
}
