package layout

import "strings"

// exampleHints gives the messages from the one numbered on that have no hint of their own a
// statement of that sort as one could type it, but for messages about limits.
func (p *parser) exampleHints(from int, word string) {
	for i := from; i < len(p.list); i++ {
		f := &p.list[i]
		if f.Hint == "" && f.Severity == Error && !strings.Contains(f.Message, " the most") {
			f.Hint = "for example " + example(word)
			if word == "grid" {
				f.Hint = "put the labels on the lines below, with blanks before them"
			}
		}
	}
}

// example is a statement as one could type it.
func example(word string) string {
	switch word {
	case "title":
		return `title "Harbour lanterns"`
	case "designer":
		return `designer "Anna Miller"`
	case "level":
		return `level "for beginners"`
	case "copyright":
		return `copyright "2026 Anna Miller"`
	case "note":
		return `note cutting "leave the kites large"`
	case "units":
		return "units cm"
	case "seam":
		return "seam 1/4 in"
	case "strip":
		return "strip 4"
	case "side":
		return "side 7"
	case "usable-width":
		return "usable-width 42"
	case "palette":
		return "palette tidewater"
	case "fabric":
		return `fabric navy #1f3350 "night sky" on-hand 1 1/2 yd`
	case "strip-set":
		return "strip-set shore rust 1 3/4 cream 1 1/2 teal rest"
	case "scraps":
		return "scraps blues navy teal sky by block"
	case "webs":
		return "webs navy / teal"
	case "top-left":
		return "top-left star"
	case "block":
		return "block W web wedges navy kites cream"
	case "repeat":
		return "repeat across 3 down 4"
	case "sash":
		return "sash 1 1/2 navy"
	case "border":
		return "border 4 navy"
	case "binding":
		return "binding 2 1/2 navy"
	case "backing":
		return "backing navy"
	case "on-hand":
		return "on-hand 1 1/2 yd"
	case "line":
		return "line 10"
	case "about":
		return "about 4"
	case "contrast":
		return "contrast 10 25"
	}
	return word
}
