package main

import (
	"fmt"
	"strings"

	"eighthturn/internal/blocks"
	"eighthturn/internal/render"
	"eighthturn/layout"
	"eighthturn/palettes"
)

// overview is every word with a line of its own.
func (v vocabulary) overview() string {
	kinds := mapped(v.kinds, func(k *blocks.Kind) [2]string { return [2]string{k.Name, k.Summary} })
	statements := mapped(v.statements, func(s layout.Statement) [2]string { return [2]string{s.Word, s.Summary} })
	sets := mapped(v.palettes, func(p palettes.Palette) [2]string { return [2]string{p.Name, p.About} })
	return "Kinds of block\n" + render.Labeled(kinds, "  ") +
		"\nStatements, the first words of lines\n" + render.Labeled(statements, "  ") +
		"\nPalettes\n" + render.Labeled(sets, "  ") +
		"\n" + render.Wrapped("\"eighthturn words kinds\" draws the blocks; \"eighthturn words statements\" shows how lines are written; "+
		"\"eighthturn words palettes\" lists the fabrics; \"eighthturn words border\", or any other word, tells about that word.", "")
}

// text is what there is to say of the words.
func (v vocabulary) text() string {
	var parts []string
	for _, k := range v.kinds {
		parts = append(parts, kindText(k))
	}
	if len(v.kinds) > 0 {
		parts = append(parts, kindsLegend(v.kinds))
	}
	if len(v.statements) > 0 {
		parts = append(parts, strings.Join(mapped(v.statements, statementText), ""))
	}
	for _, p := range v.palettes {
		parts = append(parts, paletteText(p))
	}
	return strings.Join(parts, "\n")
}

// kindText is a kind's drawing with what it asks for beside it.
func kindText(k *blocks.Kind) string {
	picture := k.Picture()
	column := 2 + len(picture[0]) + 3
	indent := strings.Repeat(" ", column)
	text := render.Wrapped(k.Summary, indent) + "\n"
	for _, r := range k.Roles {
		text += indent + render.Wrapped(roleText(&r), indent+hanging)[len(indent+hanging):]
	}
	text += "\n" + render.Wrapped(turningText(k.Turning), indent) + render.Wrapped(unbroken("block A "+k.Name)+" "+exampleRoles(k), indent)
	lines := strings.Split(strings.TrimSuffix(text, "\n"), "\n")
	var b strings.Builder
	fmt.Fprintf(&b, "%s\n", k.Name)
	for i := range max(len(lines), len(picture)) {
		left, right := "", ""
		if i < len(picture) {
			left = picture[i]
		}
		if i < len(lines) && len(lines[i]) > column {
			right = lines[i][column:]
		}
		b.WriteString(strings.TrimRight(fmt.Sprintf("  %-*s   %s", len(picture[0]), left, right), " ") + "\n")
	}
	return b.String()
}

// hanging is how far the lines behind the first are set in.
const hanging = "   "

// roleText says what a role is for, how many values it takes and how they are dealt.
func roleText(r *blocks.Role) string {
	text := r.Letter + " " + r.Name + ": " + r.Summary + "; " + unbroken(howMany(r.Counts))
	if r.Banded {
		text += ", strip sets too"
	}
	if r.Order != "" {
		text += "; " + r.Order
	}
	if r.Outer {
		text += "; may be left out"
	}
	return text
}

// howMany says how many values there may be.
func howMany(counts []int) string {
	if len(counts) == 0 {
		return "one fabric or more"
	}
	words := mapped(counts, func(n int) string { return numberWord(n) })
	last := len(words) - 1
	if last == 0 {
		return words[0] + " fabric"
	}
	return strings.Join(words[:last], ", ") + " or " + words[last] + " fabrics"
}

// numberWord is a small number in letters.
func numberWord(n int) string {
	if words := strings.Fields("no one two three four five six seven eight nine ten"); n >= 0 && n < len(words) {
		return words[n]
	}
	return fmt.Sprint(n)
}

// turningText says how a block finds its place.
func turningText(t blocks.Turning) string {
	switch t {
	case blocks.AsWritten:
		return "Turned only where its label says so, as with :ne."
	case blocks.OnWebCentres:
		return "Turns by itself so that the middles of webs meet."
	case blocks.OnStarCentres:
		return "Turns by itself so that the points of stars meet."
	case blocks.ToWebCentre:
		return "Turns by itself, its wedges towards a whole web; :nw and the like overrule it."
	case blocks.ToStarCentre:
		return "Turns by itself, its point towards a whole star; :nw and the like overrule it."
	}
	return "Never turned."
}

// exampleRoles is what stands behind the kind in a block's line.
func exampleRoles(k *blocks.Kind) string {
	var words []string
	fabrics := []string{"navy", "cream", "rust"}
	for i, r := range k.Roles {
		if !r.Outer {
			words = append(words, unbroken(r.Name+" "+fabrics[i%len(fabrics)]))
		}
	}
	if k.Column {
		words = append(words, unbroken("about 4"))
	}
	return strings.Join(words, " ")
}

// kindsLegend explains the marks in the drawings of kinds.
func kindsLegend(kinds []*blocks.Kind) string {
	text := "Letters stand for the parts of a block, as in the line view."
	for _, mark := range []struct {
		is   rune
		says string
	}{
		{blocks.WebMark, "is the middle of a web, where eight wedges meet"},
		{blocks.StarMark, "is the middle of a star, where four kites meet"},
	} {
		for _, k := range kinds {
			if strings.ContainsRune(k.Drawing, mark.is) {
				text += " " + string(mark.is) + " " + mark.says + "."
				break
			}
		}
	}
	return render.Wrapped(text, "")
}

// statementText is how a statement is written and what it means.
func statementText(s layout.Statement) string {
	summary := s.Summary
	if s.Once {
		summary += "; once in a layout"
	}
	return render.Wrapped(s.Form, "") + render.Wrapped(summary, "    ")
}

// paletteText is a palette's fabrics from dark to light.
func paletteText(p palettes.Palette) string {
	rows := mapped(p.Fabrics, func(s palettes.Swatch) []string {
		return []string{s.Name, s.Colour.Hex(), fmt.Sprintf(" %.0f", s.Colour.Lightness())}
	})
	return render.Wrapped(p.Name+": "+p.About, "") + render.Aligned(append([][]string{{"fabric", "colour", " L*"}}, rows...), "  ")
}
