package render

import (
	"regexp"

	"eighthturn/internal/document"
	"eighthturn/internal/measure"
)

// figureName is a figure's name as captions begin with it and texts refer to it.
func figureName() *regexp.Regexp { return regexp.MustCompile(`Figure [0-9]+`) }

// linkedRun is a run of text that leads to a figure, or to none.
type linkedRun struct {
	document.Run
	to string
}

// linked parts a text at the names of figures that it leads to. The name at the head of a caption leads nowhere.
func (s *setter) linked(t document.Text) []linkedRun {
	list := make([]linkedRun, 0, len(t))
	for i, r := range t {
		rest := r
		at := 0
		for _, span := range s.names(r.Text) {
			label := r.Text[span[0]:span[1]]
			caption := i == 0 && span[0] == 0 && span[1] < len(r.Text) && r.Text[span[1]] == '.'
			if caption || !s.figures[label] {
				continue
			}
			if span[0] > at {
				rest.Text = r.Text[at:span[0]]
				list = append(list, linkedRun{Run: rest})
			}
			rest.Text = label
			list = append(list, linkedRun{rest, label})
			at = span[1]
		}
		if at < len(r.Text) {
			rest.Text = r.Text[at:]
			list = append(list, linkedRun{Run: rest})
		}
	}
	return list
}

// names are where names of figures stand in a text; none is looked for where there are no figures.
func (s *setter) names(text string) [][]int {
	if len(s.figures) == 0 || len(text) < len("Figure 1") {
		return nil
	}
	return s.pattern.FindAllStringIndex(text, -1)
}

// captioned is the name of the figure with a caption, "" for none.
func (s *setter) captioned(caption document.Text) string {
	text := caption.String()
	if span := s.pattern.FindStringIndex(text); span != nil && span[0] == 0 && span[1] < len(text) && text[span[1]] == '.' {
		return text[:span[1]]
	}
	return ""
}

// name notes the figures among blocks that have names.
func (s *setter) name(list []document.Block) {
	for _, block := range list {
		switch v := block.(type) {
		case document.Figure:
			s.figures[s.captioned(v.Caption)] = true
		case document.Picture:
			s.figures[s.captioned(v.Caption)] = true
		case document.Gallery:
			for _, p := range v.Pictures {
				s.name([]document.Block{p})
			}
		case document.Box:
			s.name(v.Blocks)
		case document.Together:
			s.name(v.Blocks)
		case document.List:
			for _, item := range v.Items {
				s.name(item.Blocks)
			}
		}
	}
}

// link makes a piece of text lead to its figure.
func (p *painter) link(t text, x, y float64) {
	of := t.extent()
	p.Link(t.of, t.to, measure.Vec{X: x + of.x, Y: y + of.y}, measure.Vec{X: of.w, Y: of.h})
}
