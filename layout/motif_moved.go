package layout

import (
	"fmt"
	"slices"
	"strings"

	"eighthturn/internal/measure"
)

// MotifAt is where a motif is to lie on its fabric.
type MotifAt struct {
	Name, Fabric string
	Across, Down measure.NM
	Pointing     int // degrees clockwise, 0 to 359
}

// Line is the statement of a motif.
func (m *MotifAt) Line(units measure.System) string {
	line := fmt.Sprintf("motif %s %s across %s down %s", m.Name, m.Fabric, units.ExactNumber(m.Across), units.ExactNumber(m.Down))
	if m.Pointing != 0 {
		line += " " + pointing(m.Pointing)
	}
	return line
}

// Sound says whether a layout may say such a place of some fabric.
func (m *MotifAt) Sound() bool {
	on := func(nm measure.NM) bool { return nm >= 0 && nm <= MaxCloth }
	return m.Name != "" && on(m.Across) && on(m.Down) && m.Pointing >= 0 && m.Pointing < fullTurn
}

func pointing(degrees int) string { return fmt.Sprint("pointing ", degrees) }

// Moved is what to type so that a motif lies somewhere: its statement says that place anew and all else stays as it is written. A motif
// that the layout lacks gets a line of its own, behind the motifs of its fabric. It is nil where the layout has errors, or has no such
// fabric, or has another thing of the motif's name; empty where the motif lies there already.
func (r *Reading) Moved(m MotifAt) []Edit {
	if r.Design == nil {
		return nil
	}
	behind := 0
	for _, n := range r.Tree.Fabrics {
		if n.Name.key() == foldName(m.Fabric) {
			behind = n.End
		}
	}
	if behind == 0 {
		return nil
	}
	for _, n := range r.Tree.Motifs {
		of := n.Fabric.key() == foldName(m.Fabric)
		if n.Name.key() == foldName(m.Name) {
			if !of {
				return nil
			}
			return n.moved(m, r)
		}
		if of {
			behind = n.End
		}
	}
	if r.isTaken(m.Name) {
		return nil
	}
	return []Edit{r.lineBehind(behind, m.Line(r.Design.Units))}
}

// MotifLine is the line of a motif as Moved leaves it, "" where that is nil.
func (r *Reading) MotifLine(m MotifAt) string {
	edits := r.Moved(m)
	if edits == nil {
		return ""
	}
	for _, n := range r.Tree.Motifs {
		if n.Name.key() == foldName(m.Name) {
			moved := NewSource(Apply(r.Source.Text, edits))
			line := moved.LineSpan(r.Source.Line(n.Start))
			return moved.Text[line.Start:line.End]
		}
	}
	return m.Line(r.Design.Units)
}

// isTaken says whether a fabric, a strip set, a pool or a motif has a name.
func (r *Reading) isTaken(name string) bool {
	return slices.ContainsFunc(r.Tree.Mentions(), func(m Mention) bool { return m.Scope == Cloths && m.Defines != "" && m.Key() == foldName(name) }) ||
		slices.ContainsFunc(r.Design.Fabrics, func(f Fabric) bool { return foldName(f.Name) == foldName(name) })
}

// moved is what to type in a motif's statement.
func (n *motifNode) moved(m MotifAt, r *Reading) []Edit {
	units, edits := r.Design.Units, []Edit{}
	for _, l := range []struct {
		node *LengthNode
		nm   measure.NM
	}{{n.Across, m.Across}, {n.Down, m.Down}} {
		if l.node.In(units).NM() != l.nm {
			edits = append(edits, Edit{l.node.Span, units.ExactNumber(l.nm)})
		}
	}
	switch {
	case n.Pointing == nil && m.Pointing != 0:
		edits = append(edits, Edit{Span{n.End, n.End}, " " + pointing(m.Pointing)})
	case n.Pointing != nil && n.Pointing.Count != m.Pointing && m.Pointing != 0:
		edits = append(edits, Edit{n.Pointing.Span, fmt.Sprint(m.Pointing)})
	case n.Pointing != nil && n.Pointing.Count != m.Pointing:
		edits = append(edits, Edit{Span{r.beginOfOption(n.Pointing.Start), n.Pointing.End}, ""})
	}
	slices.SortFunc(edits, func(a, b Edit) int { return a.Span.Start - b.Span.Start })
	return edits
}

// beginOfOption is where the option begins whose value begins at a place, with the blanks before it.
func (r *Reading) beginOfOption(value int) int {
	word := strings.TrimRightFunc(r.Source.Text[:value], measure.IsSpace)
	before := strings.TrimRightFunc(word, func(c rune) bool { return !measure.IsSpace(c) })
	return len(strings.TrimRightFunc(before, measure.IsSpace))
}

// lineBehind is what to type for a new line behind that of a place, which ends as that one does.
func (r *Reading) lineBehind(place int, line string) Edit {
	there := r.Source.LineSpan(r.Source.Line(place))
	return Edit{Span{there.End, there.End}, r.Source.endOf(there) + line}
}
