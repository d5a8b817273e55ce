package lsp

import (
	"fmt"
	"sort"

	"eighthturn/layout"
)

// mentionAt is the name at a byte, or just before it.
func (d *document) mentionAt(offset int) (layout.Mention, bool) {
	list := d.written().mentions()
	i := sort.Search(len(list), func(i int) bool { return list[i].Span.End >= offset })
	for ; i < len(list) && list[i].Span.Start <= offset; i++ {
		if offset <= list[i].Span.End {
			return list[i], true
		}
	}
	return layout.Mention{}, false
}

// alike are the places of the same name.
func (d *document) alike(m layout.Mention) []layout.Mention {
	var list []layout.Mention
	for _, other := range d.written().mentions() {
		if other.Scope == m.Scope && other.Key() == m.Key() {
			list = append(list, other)
		}
	}
	return list
}

// definition is where the name at a place is defined; that of a palette's fabric is where the palette is brought in.
func (d *document) definition(p *placed) any {
	m, ok := d.mentionAt(d.text.offset(p.Position))
	if !ok {
		return nil
	}
	for _, other := range d.alike(m) {
		if other.Defines != "" {
			return location{d.uri, d.span(other.Span)}
		}
	}
	if f := d.fabric(m); f != nil {
		return location{d.uri, d.span(f.Span)}
	}
	return nil
}

// fabric is the fabric that a name stands for, nil if it is none or the layout has errors.
func (d *document) fabric(m layout.Mention) *layout.Fabric {
	if design := d.read().Design; design != nil && m.Scope == layout.Cloths {
		for i := range design.Fabrics {
			if layout.FoldName(design.Fabrics[i].Name) == m.Key() {
				return &design.Fabrics[i]
			}
		}
	}
	return nil
}

func (d *document) references(p *placed) any {
	list := []location{}
	if m, ok := d.mentionAt(d.text.offset(p.Position)); ok {
		for _, other := range d.alike(m) {
			if other.Defines == "" || p.Context.IncludeDeclaration {
				list = append(list, location{d.uri, d.span(other.Span)})
			}
		}
	}
	return list
}

func (d *document) highlights(p *placed) any {
	type highlight struct {
		Range lspRange `json:"range"`
	}
	list := []highlight{}
	if m, ok := d.mentionAt(d.text.offset(p.Position)); ok {
		for _, other := range d.alike(m) {
			list = append(list, highlight{d.span(other.Span)})
		}
	}
	return list
}

// defined says whether a name is defined in the text itself, so that it may get another.
func (d *document) defined(m layout.Mention) bool {
	for _, other := range d.alike(m) {
		if other.Defines != "" {
			return true
		}
	}
	return false
}

func (d *document) prepareRename(p *placed) any {
	m, ok := d.mentionAt(d.text.offset(p.Position))
	if !ok || !d.defined(m) {
		return nil
	}
	return prepared{d.span(m.Span), m.Name()}
}

// rename gives what a name stands for another name, everywhere.
func (d *document) rename(p *placed) (any, error) {
	m, ok := d.mentionAt(d.text.offset(p.Position))
	switch {
	case !ok:
		return nil, fmt.Errorf("there is no name here")
	case !d.defined(m):
		return nil, fmt.Errorf("%q is not defined in this layout", m.Name())
	case !layout.IsFree(p.NewName, m.Scope):
		return nil, fmt.Errorf("%q cannot be a name", p.NewName)
	case layout.FoldName(p.NewName) != m.Key() && d.taken(p.NewName, m.Scope):
		return nil, fmt.Errorf("%q is a name already", p.NewName)
	}
	var edits []textEdit
	for _, other := range d.alike(m) {
		edits = append(edits, textEdit{d.span(other.Span), p.NewName})
	}
	return workspaceEdit{map[string][]textEdit{d.uri: edits}}, nil
}

// taken says whether a name stands for something already, in the text or by a palette.
func (d *document) taken(name string, s layout.Scope) bool {
	key := layout.FoldName(name)
	for _, m := range d.written().mentions() {
		if m.Scope == s && m.Key() == key {
			return true
		}
	}
	if s == layout.Cloths {
		for _, f := range d.paletteFabrics() {
			if layout.FoldName(f.Name) == key {
				return true
			}
		}
	}
	if s == layout.Labels {
		for _, part := range layout.PatternParts() { // a note could mean either
			if layout.FoldName(part) == key {
				return true
			}
		}
	}
	return false
}
