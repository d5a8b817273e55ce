package report

import (
	"fmt"
	"slices"
	"strings"

	"eighthturn/internal/blocks"
	"eighthturn/internal/measure"
	"eighthturn/layout"
)

// What text editors show beside a word of a layout, as Markdown.

// StatementSummary is a statement's help in one line, with an example.
func StatementSummary(s layout.Statement) string {
	return s.Summary + ". For example: " + s.Example
}

// AboutStatement is a statement's help, with the sizes that follow from it where the layout has no errors.
func AboutStatement(s layout.Statement, d *layout.Design) string {
	text := code(s.Form) + s.Summary + "\n\nFor example `" + s.Example + "`"
	if d == nil {
		return text
	}
	switch {
	case slices.Contains([]string{"strip", "side"}, s.Word):
		text += "\n\nBlocks finish at " + d.Units.Nearest(d.SideFinished) + "."
		for _, cut := range stripsOf(d) {
			text += " Strips for wedges are cut " + d.Units.Nearest(cut) + " wide."
		}
	case s.Word == "grid":
		text += fmt.Sprintf("\n\n%s across, %d down", measure.Count(d.Columns, "block"), d.Rows)
	}
	return text
}

// stripsOf is the widths of strips that wedges are cut from, each once.
func stripsOf(d *layout.Design) []measure.NM {
	var list []measure.NM
	for _, cut := range d.StripsCut {
		if cut > 0 && !slices.Contains(list, cut) {
			list = append(list, cut)
		}
	}
	return list
}

// AboutKind is a kind of block with its drawing.
func AboutKind(k *blocks.Kind) string {
	return k.Summary + "\n\n" + code(strings.Join(k.Picture(), "\n")) + rolesOf(k)
}

func rolesOf(k *blocks.Kind) string {
	var list []string
	for i := range k.Roles {
		if r := &k.Roles[i]; r.Sides == 0 {
			list = append(list, "- "+AboutRole(r)+sidesText(k, r.Name))
		}
	}
	return strings.Join(list, "\n")
}

// AboutRole is a place for fabric in a kind of block.
func AboutRole(r *blocks.Role) string { return "`" + r.Name + "`: " + r.Summary }

// code is text as it is typed.
func code(text string) string { return "```text\n" + strings.ReplaceAll(text, "```", "") + "\n```\n" }

// UseOf says what a name is used for at a place.
func UseOf(m layout.Mention) string {
	switch {
	case m.Role != "":
		return m.Role + " of block " + m.Block
	case m.In == "strip-set":
		return "strip set " + m.Block
	case m.In == "scraps":
		return "pool " + m.Block
	case m.In == "motif":
		return "motif " + m.Block
	case m.In == "fabric":
		return "stripes of " + m.Block
	}
	return m.In
}

// AboutFabric is a fabric's color, its value and what it is used for. Defined is the line that defines it, "" where a palette
// brings it in.
func AboutFabric(f *layout.Fabric, defined string, uses []string) string {
	text := fmt.Sprintf("**%s** %s, value L* %.0f", f.Name, f.Colour.Hex(), f.Colour.Lightness())
	if defined == "" {
		text += "\n\nfrom a palette"
	}
	return text + used(uses)
}

// AboutCloth is a strip set or a pool, by the line that defines it.
func AboutCloth(defined string, uses []string) string { return code(defined) + used(uses) }

func used(uses []string) string {
	uses = slices.Compact(slices.Clone(uses))
	const most = 12
	if more := len(uses) - most; more > 0 {
		uses = append(slices.Clone(uses[:most]), measure.Count(more, "more place"))
	}
	if len(uses) == 0 {
		return ""
	}
	return "\n\nUsed for " + measure.List(uses)
}

// AboutBlock is a block by the line that defines it, and how often it stands in the grid as it is written.
func AboutBlock(label, defined string, count int, d *layout.Design) string {
	if defined == "" {
		return ""
	}
	text := code(defined) + "\n" + measure.Count(count, "time") + " in the rows of the grid"
	if d != nil {
		text += ", " + d.Units.Nearest(d.SideFinished) + " finished"
	}
	return text
}
