package lsp

import (
	"strings"

	"eighthturn/internal/blocks"
	"eighthturn/internal/measure"
	"eighthturn/internal/report"
	"eighthturn/layout"
)

// hover is what there is to say about the word at a place, nil if there is nothing.
func (d *document) hover(p *placed) any {
	offset := d.text.offset(p.Position)
	if m, ok := d.mentionAt(offset); ok {
		if said := d.aboutName(m); said != "" {
			return hover{markup{"markdown", said}, d.span(m.Span)}
		}
		return nil
	}
	l, ok := d.lineAt(offset)
	if !ok {
		return nil
	}
	word := d.text.string[l.start:l.end]
	if said := d.aboutWord(word, len(l.words) == 0); said != "" {
		return hover{markup{"markdown", said}, d.text.span(l.start, l.end)}
	}
	return nil
}

// aboutName is what is known of a fabric, a strip set, a pool or a block.
func (d *document) aboutName(m layout.Mention) string {
	r := d.read()
	uses, count := []string{}, 0
	defined := ""
	for _, other := range d.alike(m) {
		switch {
		case other.Defines != "":
			line := r.Source.LineSpan(r.Source.Line(other.Span.Start))
			defined = strings.TrimSpace(layout.Visible(d.text.string[line.Start:line.End]))
		case other.In == "grid":
			count++
		default:
			uses = append(uses, report.UseOf(other))
		}
	}
	if m.Scope == layout.Labels {
		return report.AboutBlock(m.Name(), defined, count, r.Design)
	}
	if f := d.fabric(m); f != nil {
		return report.AboutFabric(f, defined, uses)
	}
	for _, f := range r.Tree.Fabrics {
		if layout.FoldName(f.Name.Text) == m.Key() && !f.PlaceOfColor().Empty() {
			return report.AboutFabric(&layout.Fabric{Name: f.Name.Text, Colour: f.Colour}, defined, uses)
		}
	}
	if defined == "" {
		return ""
	}
	return report.AboutCloth(defined, uses)
}

// aboutWord is the help of a word of the language: a statement, a kind, a role or an option.
func (d *document) aboutWord(word string, first bool) string {
	word = strings.ToLower(strings.TrimFunc(word, func(r rune) bool { return measure.IsSpace(r) }))
	if first {
		for _, s := range layout.Statements() {
			if s.Word == word {
				return report.AboutStatement(s, d.read().Design)
			}
		}
		return ""
	}
	if k, ok := blocks.Find(blocks.Kinds(), word); ok {
		return report.AboutKind(k)
	}
	for _, k := range blocks.Kinds() {
		if i := k.Role(word); i >= 0 && word != "" {
			return report.AboutRole(&k.Roles[i])
		}
	}
	return ""
}
