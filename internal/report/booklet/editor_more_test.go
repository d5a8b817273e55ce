package booklet

import (
	"fmt"
	"regexp"
	"slices"
	"strings"

	"eighthturn/internal/document"
)

// wrongWords are words of the trade that the pattern explains and does not use, or uses and does not explain. The editor has a
// list of its own.
func wrongWords(d document.Document, _ Reports) []string {
	explained := map[string]bool{}
	for _, b := range under(d, "Before you begin")["Terms"] {
		if l, ok := b.(document.List); ok {
			for _, it := range l.Items {
				explained[strings.ToLower(it.Text[0].Text)] = true
			}
		}
	}
	rest := d
	rest.Sections = slices.Clone(d.Sections)
	for i := range rest.Sections {
		if rest.Sections[i].Title == "Before you begin" {
			rest.Sections[i].Blocks = beforeWords(rest.Sections[i].Blocks)
		}
	}
	said := strings.ToLower(strings.Join(ownTexts(rest), "\n"))
	var wrong []string
	for word := range explained {
		if stem := strings.TrimPrefix(word, "on the "); !strings.Contains(said, stem) {
			wrong = append(wrong, "the word "+word+" is explained and not used")
		}
	}
	for _, word := range []string{"wedge ruler", "kite", "background piece", "tumbler", "end piece", "strip set", "dog ear", "unfinished"} {
		if strings.Contains(said, word) && !explained[word] {
			wrong = append(wrong, "the word "+word+" is used and not explained")
		}
	}
	for _, word := range []string{"stop piece", "turned wedge", "the other way round", "cut edge", "cut corner", "wedge rule "} {
		if strings.Contains(said, word) {
			wrong = append(wrong, "another word is used here for "+word)
		}
	}
	slices.Sort(wrong)
	return wrong
}

// beforeWords are the blocks of a part that stand before the list of words.
func beforeWords(list []document.Block) []document.Block {
	for i, b := range list {
		if h, ok := b.(document.Heading); ok && h.Text == "Terms" {
			return list[:i]
		}
	}
	return list
}

// wrongBorders compares the border strips' sizes where they are cut and where they are sewn on.
func wrongBorders(d document.Document, r Reports) []string {
	if r.Cuts.Copies > 1 {
		return nil
	}
	var cut, sewn []string
	size := regexp.MustCompile(`[0-9][0-9 ./]* by [0-9 ./]+ (?:in|cm)\b`)
	for _, row := range pieceRows(d) {
		if strings.HasPrefix(row["Piece"], "strip for") || row["Piece"] == "border strip" {
			cut = append(cut, size.FindString(row["Cut"]))
		}
	}
	for _, t := range append(tables(d, "Joining the blocks", "Pieces"), tables(d, "Joining the columns", "Pieces")...) {
		for _, row := range t.Rows {
			if strings.Contains(row.Cells[0].Text.String(), "strip") {
				sewn = append(sewn, row.Cells[1].Text.String())
			}
		}
	}
	var wrong []string
	for _, text := range sewn {
		if !slices.ContainsFunc(cut, func(c string) bool { return c != "" && c == size.FindString(text) }) {
			wrong = append(wrong, fmt.Sprintf("a border strip is sewn on as %q, but is cut as one of %q", text, cut))
		}
	}
	return wrong
}

// wrongForms are steps whose unit is said to be square though it covers half a square or less, by the areas of its pieces.
func wrongForms(d document.Document, r Reports) []string {
	var said []string
	for _, text := range ownTexts(d) {
		if strings.HasPrefix(text, "Unfinished size: ") {
			said = append(said, text)
		}
	}
	b := newBook(r, Options{})
	var wrong []string
	for i := range r.Sewing.Blocks {
		k := &r.Sewing.Blocks[i]
		if b.sewnLike(i) >= 0 || k.Column {
			continue
		}
		for n := range k.Steps {
			s := &k.Steps[n]
			if len(s.Joins) == 0 || s.Finished.Across == 0 {
				continue
			}
			if len(said) == 0 {
				return append(wrong, "a step has no size")
			}
			full := 0.0
			for _, piece := range slices.Concat(s.Joins[len(s.Joins)-1].A, s.Joins[len(s.Joins)-1].B) {
				full += areaOf(r, int(k.Variants[0].Cells[0].Patches[piece]))
			}
			whole := float64(s.Finished.Across) * float64(s.Finished.Down)
			plain := !strings.Contains(said[0], "short sides") && !strings.Contains(said[0], "raw edge")
			if plain != (full > 0.999*whole) {
				wrong = append(wrong, fmt.Sprintf("block %s, step %d covers %.2f of what is said: %s", k.Label, n+1, full/whole, said[0]))
			}
			said = said[1:]
		}
	}
	return wrong
}

// areaOf is the area of a patch, by the sum of its corners' cross products.
func areaOf(r Reports, patch int) float64 {
	outline := r.Top.Patches[patch].Outline
	double := 0.0
	for i, p := range outline {
		q := outline[(i+1)%len(outline)]
		double += float64(p.X)*float64(q.Y) - float64(q.X)*float64(p.Y)
	}
	return max(double, -double) / 2
}
