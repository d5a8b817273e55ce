package report

import (
	"fmt"
	"strings"

	"eighthturn/internal/blocks"
	"eighthturn/internal/document"
	"eighthturn/layout"
	"eighthturn/palettes"
)

// Vocabulary is words of the layout language, all of them or some.
type Vocabulary struct {
	Kinds      []*blocks.Kind
	Statements []layout.Statement
	Palettes   []palettes.Palette
}

// WordList is every word with a line of its own.
func WordList(v Vocabulary) document.Document {
	kinds, statements, sets := table(words(""), words("")), table(words(""), words("")), table(words(""), words(""))
	for _, k := range v.Kinds {
		kinds.Rows = append(kinds.Rows, row(k.Name, k.Summary))
	}
	for _, s := range v.Statements {
		statements.Rows = append(statements.Rows, row(s.Word, s.Summary))
	}
	for _, p := range v.Palettes {
		sets.Rows = append(sets.Rows, row(p.Name, p.About))
	}
	return document.Document{Title: "The words of the layout language", Sections: []document.Section{
		with(section("kinds", "Kinds of block", document.Answer), kinds),
		with(section("statements", "Statements, the first words of lines", document.Answer), statements),
		with(section("palettes", "Palettes", document.Answer), sets),
		with(section("more", "", document.Answer), paragraph("\"eighthturn words kinds\" draws the blocks; \"eighthturn words statements\" shows how lines are written; "+
			"\"eighthturn words palettes\" lists the fabrics; \"eighthturn words border\", or any other word, explains that word.")),
	}}
}

// Words is what there is to say of some words.
func Words(v Vocabulary) document.Document {
	d := document.Document{Title: "The words of the layout language"}
	for _, k := range v.Kinds {
		d.Sections = append(d.Sections, kindSection(k))
	}
	if len(v.Kinds) > 0 {
		d.Sections = append(d.Sections, with(section("drawings", "", document.Answer), paragraph(kindsLegend(v.Kinds))))
	}
	for _, s := range v.Statements {
		summary := s.Summary
		if s.Once {
			summary += "; once in a layout"
		}
		d.Sections = append(d.Sections, with(section("statement-"+s.Word, s.Form, document.Answer), paragraph(summary)))
	}
	for _, p := range v.Palettes {
		d.Sections = append(d.Sections, paletteSection(p))
	}
	return d
}

// kindSection is a kind's drawing with what it asks for below it.
func kindSection(k *blocks.Kind) document.Section {
	var roles []string
	for i := range k.Roles {
		if k.Roles[i].Sides == 0 {
			roles = append(roles, roleText(&k.Roles[i])+sidesText(k, k.Roles[i].Name))
		}
	}
	s := with(section("kind-"+k.Name, k.Name, document.Answer), paragraph(k.Summary), document.Source{Lines: k.Picture()})
	s = with(s, bullets(roles...)...)
	return with(s, paragraph(TurningText(k.Turning)), document.Source{Lines: []string{"block A " + k.Name + " " + exampleRoles(k)}})
}

// paletteSection is a palette's fabrics from dark to light.
func paletteSection(p palettes.Palette) document.Section {
	t := table(words("fabric"), words("color"), counts("L*"))
	for _, s := range p.Fabrics {
		r := row(s.Name, s.Colour.Hex(), fmt.Sprintf("%.0f", s.Colour.Lightness()))
		r.Cells[0].Swatches = []document.Swatch{{Colour: s.Colour}}
		t.Rows = append(t.Rows, r)
	}
	return with(section("palette-"+p.Name, p.Name+": "+p.About, document.Answer), t)
}

// roleText says what a role is for, how many values it takes and how they are dealt.
func roleText(r *blocks.Role) string {
	text := r.Letter + " " + r.Name + ": " + r.Summary + "; " + together(howMany(r.Counts))
	if r.Banded {
		text += ", strip sets too"
	}
	if r.Order != "" {
		text += "; " + r.Order
	}
	if r.Outer {
		text += "; may be omitted"
	}
	return text
}

// sidesText says which roles of a kind are for one side of the quilt alone, in place of one for all.
func sidesText(k *blocks.Kind, shown string) string {
	var names []string
	for i := range k.Roles {
		if r := &k.Roles[i]; r.Sides != 0 && r.Shown() == shown {
			names = append(names, r.Name)
		}
	}
	if len(names) == 0 {
		return ""
	}
	return "; for one side alone: " + strings.Join(names, ", ")
}

// howMany says how many values there may be.
func howMany(counts []int) string {
	if len(counts) == 0 {
		return "one fabric or more"
	}
	var list []string
	for _, n := range counts {
		list = append(list, numberWord(n))
	}
	last := len(list) - 1
	if last == 0 {
		return list[0] + " fabric"
	}
	return strings.Join(list[:last], ", ") + " or " + list[last] + " fabrics"
}

// numberWord is a small number in letters.
func numberWord(n int) string {
	if list := strings.Fields("no one two three four five six seven eight nine ten"); n >= 0 && n < len(list) {
		return list[n]
	}
	return fmt.Sprint(n)
}

// TurningText says how a block finds its place.
func TurningText(t blocks.Turning) string {
	switch t {
	case blocks.AsWritten:
		return "Rotated only where its label says so, as with :ne."
	case blocks.OnWebCentres:
		return "Rotates automatically so that the centers of webs meet."
	case blocks.OnStarCentres:
		return "Rotates automatically so that the points of stars meet."
	case blocks.ToWebCentre:
		return "Rotates automatically, its wedges toward a complete web; :nw and the like override it."
	case blocks.ToStarCentre:
		return "Rotates automatically, its point toward a complete star; :nw and the like override it."
	}
	return "Never rotated."
}

// exampleRoles is what stands behind the kind in a block's line.
func exampleRoles(k *blocks.Kind) string {
	var list []string
	fabrics := []string{"navy", "cream", "rust"}
	for i, r := range k.Roles {
		if !r.Outer {
			list = append(list, together(r.Name+" "+fabrics[i%len(fabrics)]))
		}
	}
	if k.Column {
		list = append(list, together("about 4"))
	}
	return strings.Join(list, " ")
}

// kindsLegend explains the marks in the drawings of kinds.
func kindsLegend(kinds []*blocks.Kind) string {
	text := "Letters stand for the parts of a block, as in the line view."
	for _, mark := range []struct {
		is   rune
		says string
	}{
		{blocks.WebMark, "is the center of a web, where eight wedges meet"},
		{blocks.StarMark, "is the center of a star, where four kites meet"},
	} {
		for _, k := range kinds {
			if strings.ContainsRune(k.Drawing, mark.is) {
				text += " " + string(mark.is) + " " + mark.says + "."
				break
			}
		}
	}
	return text
}
