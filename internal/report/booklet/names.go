package booklet

import (
	"reflect"
	"slices"
	"strings"

	"eighthturn/internal/diagram"
	"eighthturn/internal/report"
	"eighthturn/internal/templates"
)

// fabricLetters are the letters that stand for the fabrics, by index of the top's: first those that the quilt shows, in their
// order, and behind them those that only colorways use.
func fabricLetters(r Reports) []string {
	list, n := make([]string, len(r.Top.Fabrics)), 0
	for _, unused := range []bool{false, true} {
		for i := range list {
			if slices.Contains(r.Top.CutFacts.Unused, i) == unused {
				list[i] = lettersOf(n)
				n++
			}
		}
	}
	return list
}

// lettersOf is A to Z, then AA, AB and so on.
func lettersOf(n int) string {
	const alphabet = 26
	letter := string(rune('A' + n%alphabet))
	if n < alphabet {
		return letter
	}
	return lettersOf(n/alphabet-1) + letter
}

// nameTemplates puts a letter and a number in place of each template's letter, since letters alone are the fabrics. Known are the
// templates of other sizes, whose names stand for the same pieces.
func (b *patternBuilder) nameTemplates(known []templates.Template) {
	b.Templates = slices.Clone(b.Templates)
	named := map[string]string{} // by the letters of this top
	taken := map[string]bool{}
	for i := range known {
		taken[known[i].Letter] = true
	}
	for i := range b.Templates {
		t := &b.Templates[i]
		if named[t.Letter] == "" {
			same := slices.IndexFunc(known, func(k templates.Template) bool { return k.Hand == t.Hand && reflect.DeepEqual(k.Cut, t.Cut) })
			if same >= 0 {
				named[t.Letter] = known[same].Letter
			} else {
				named[t.Letter] = b.templateSign() + numeral(len(taken)+1)
				taken[named[t.Letter]] = true
			}
		}
		t.Letter = named[t.Letter]
	}
}

// templateSign is the letter before the number of a template: T, or one with which no block's name begins.
func (b *patternBuilder) templateSign() string {
	for _, sign := range []string{"T", "P", "Q", "X", "Y", "Z"} {
		if !b.begins(sign) {
			return sign
		}
	}
	return "T"
}

// begins says whether the label of a block begins with a sign.
func (b *patternBuilder) begins(sign string) bool {
	for i := range b.Sewing.Blocks {
		if strings.HasPrefix(b.Sewing.Blocks[i].Label, sign) {
			return true
		}
	}
	return false
}

// plainly is a figure with blocks named as the layout names them.
func (b *patternBuilder) plainly(f diagram.Figure) diagram.Figure {
	names := b.plainNames()
	f.Marks = slices.Clone(f.Marks)
	for i, m := range f.Marks {
		if m.Words == nil || names[m.Words.Text] == "" {
			continue
		}
		words := *m.Words
		words.Text = names[words.Text]
		f.Marks[i].Words = &words
	}
	return f
}

// plainNames are the labels of blocks whose colourings are too many to be told apart in the layout, by the colourings' names.
func (b *patternBuilder) plainNames() map[string]string {
	names := map[string]string{}
	for i := range b.Sewing.Blocks {
		k := &b.Sewing.Blocks[i]
		if report.HasNumber(k) {
			continue
		}
		for n := range k.Variants {
			names[k.VariantName(n+1)] = k.Label
		}
	}
	return names
}
