package layout

import (
	"slices"

	"eighthturn/palettes"
)

// Scope is one of the two sets of names of a layout.
type Scope uint8

const (
	Cloths Scope = iota // fabrics, strip sets, pools and motifs
	Labels              // blocks
)

// Mention is a place where a layout writes a name.
type Mention struct {
	Span    Span
	Scope   Scope
	Defines string // the statement's word where the name is defined here, "" where it is used
	// In is the statement's word; Block and Role say where in a block.
	In, Block, Role string
	text            string
}

// Key is what names are compared by; see Name.
func (m Mention) Key() string { return foldName(m.text) }

// Name is the name as it is written here.
func (m Mention) Name() string { return m.text }

// Mentions are all places of names, by statements and not by places.
func (t *Tree) Mentions() []Mention {
	var list []Mention
	if t.Grid != nil {
		cells := 0
		for _, row := range t.Grid.Rows {
			cells += len(row.Cells)
		}
		list = make([]Mention, 0, cells+16)
	}
	add := func(n NameNode, m Mention) {
		if n.Text != "" && !n.Span.Empty() {
			m.Span, m.text = n.Span, n.Text
			list = append(list, m)
		}
	}
	for _, f := range t.Fabrics {
		add(f.Name, Mention{Defines: "fabric", In: "fabric"})
		for _, s := range f.stripeList() {
			if !s.coloured || t.isAnothers(s.Name, f) {
				add(s.Name, Mention{In: "fabric", Block: f.Name.Text})
			}
		}
	}
	for _, m := range t.Motifs {
		add(m.Name, Mention{Defines: "motif", In: "motif"})
		add(m.Fabric, Mention{In: "motif", Block: m.Name.Text})
	}
	for _, s := range t.StripSets {
		add(s.Name, Mention{Defines: "strip-set", In: "strip-set"})
		for _, b := range s.Bands {
			add(b.Fabric, Mention{In: "strip-set", Block: s.Name.Text})
		}
	}
	pools := map[string]bool{}
	for _, s := range t.Scraps {
		m := Mention{In: "scraps"}
		if !pools[s.Name.key()] { // a second one adds to the first
			m.Defines, pools[s.Name.key()] = "scraps", true
		}
		add(s.Name, m)
		for _, n := range s.Fabrics {
			add(n, Mention{In: "scraps", Block: s.Name.Text})
		}
	}
	t.addWebs(add)
	for _, b := range t.Blocks {
		add(b.Label, Mention{Scope: Labels, Defines: "block", In: "block"})
		if b.Like != nil {
			add(*b.Like, Mention{Scope: Labels, In: "block", Block: b.Label.Text})
		}
		for _, r := range b.Roles {
			for _, v := range r.Values {
				add(v.Name, Mention{In: "block", Block: b.Label.Text, Role: r.Word.Text})
			}
		}
	}
	t.addEdges(add)
	for _, w := range t.Colorways {
		for _, m := range w.Changes {
			add(m.From, Mention{In: "colorway", Block: w.Name.Text})
			if !m.coloured || t.hasFabric(m.To) {
				add(m.To, Mention{In: "colorway", Block: w.Name.Text})
			}
		}
	}
	if t.Grid != nil {
		for _, row := range t.Grid.Rows {
			for _, c := range row.Cells {
				if c.Label.Text != "." {
					add(c.Label, Mention{Scope: Labels, In: "grid"})
				}
			}
		}
	}
	return list
}

// hasFabric says whether a fabric of a name is written, and not brought in by a palette.
func (t *Tree) hasFabric(n NameNode) bool {
	return slices.ContainsFunc(t.Fabrics, func(f *fabricNode) bool { return f.Name.key() == n.key() })
}

// isAnothers says whether a color in a fabric's stripes is another fabric's.
func (t *Tree) isAnothers(n NameNode, f *fabricNode) bool {
	return t.hasFabric(n) && n.key() != f.Name.key()
}

// stripeList is a fabric's stripes, none where it has none.
func (f *fabricNode) stripeList() []stripeNode {
	if f.Stripes == nil {
		return nil
	}
	return f.Stripes.List
}

func (t *Tree) addWebs(add func(NameNode, Mention)) {
	if t.Webs == nil {
		return
	}
	for _, v := range t.Webs.Values {
		add(v.Name, Mention{In: "webs"})
	}
	for _, row := range t.Webs.Rows {
		for _, v := range row.Values {
			if !v.Own {
				add(v.Value.Name, Mention{In: "webs"})
			}
		}
	}
}

// addEdges adds the names of what lies between and round the blocks, and of notes.
func (t *Tree) addEdges(add func(NameNode, Mention)) {
	edging := func(e *edgingNode, in string) {
		if e == nil {
			return
		}
		add(e.Fabric, Mention{In: in})
		if e.Corners != nil {
			add(*e.Corners, Mention{In: in})
		}
	}
	edging(t.Sash, "sash")
	for _, b := range t.Borders {
		edging(b, "border")
	}
	edging(t.Binding, "binding")
	if t.Backing != nil {
		add(*t.Backing, Mention{In: "backing"})
	}
	for _, h := range t.OnHand {
		add(h.Value.Name, Mention{In: "on-hand"})
	}
	labels := map[string]bool{}
	for _, b := range t.Blocks {
		labels[b.Label.key()] = true
	}
	for _, n := range t.Notes {
		if n.Place != nil && labels[n.Place.key()] {
			add(*n.Place, Mention{Scope: Labels, In: "note"})
		}
	}
}

// PlaceOfColor is where a fabric's color is written, empty where a photo gives it or it could not be read.
func (f *fabricNode) PlaceOfColor() Span {
	if f.colourWord == "" {
		return Span{}
	}
	return f.colourAt
}

// WrittenColor is a color where it is written.
type WrittenColor struct {
	At     Span
	Colour palettes.Colour
}

// Colors are the colors of fabrics, stripes and colorways, where they are written.
func (t *Tree) Colors() []WrittenColor {
	list := []WrittenColor{}
	for _, f := range t.Fabrics {
		if at := f.PlaceOfColor(); !at.Empty() {
			list = append(list, WrittenColor{at, f.Colour})
		}
		for _, s := range f.stripeList() {
			if s.coloured && !t.isAnothers(s.Name, f) {
				list = append(list, WrittenColor{s.Name.Span, s.colour})
			}
		}
	}
	for _, w := range t.Colorways {
		for _, m := range w.Changes {
			if m.coloured && !t.hasFabric(m.To) {
				list = append(list, WrittenColor{m.To.Span, m.colour})
			}
		}
	}
	return list
}

// IsFree says whether a word may be the name of something in a scope, as far as the language goes.
func IsFree(word string, s Scope) bool {
	l := theLanguage()
	if len([]rune(word)) > MaxNameChars {
		return false
	}
	if s == Labels {
		return (isName(word) || isDigits(word)) && l.statement(word) == nil
	}
	return isName(word) && !l.isReserved(word)
}

// IsOwn says whether a word is one of the language's own.
func IsOwn(word string) bool { return theLanguage().isReserved(word) }

// FoldName is what names are compared by.
func FoldName(name string) string { return foldName(name) }

// PatternParts are the parts of the pattern that a note may name.
func PatternParts() []string { return noteParts() }

// Reading is all that is known of a layout. The design is nil if there are errors.
type Reading struct {
	Source *Source
	Tree   *Tree
	Design *Design
	Faults []Fault
}
