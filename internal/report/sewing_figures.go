package report

import (
	"fmt"
	"sync"

	"eighthturn/internal/diagram"
	"eighthturn/internal/document"
)

// Picture is a picture of a step, or of the top as it is put together.
type Picture struct {
	Name   string // of a file, without its ending: names sort in the order of the work
	Figure *diagram.Figure
}

// SewingPictures are the pictures in Sewing, in the colors of the layout. Marks are lit by the patches of the first block of
// each label.
func SewingPictures(p *Plans) []Picture {
	s := newSewer(p)
	var list []Picture
	for b := range s.Blocks {
		for n := range s.Blocks[b].Steps {
			f := s.stepFigure(b, n)
			list = append(list, Picture{fmt.Sprintf("block-%02d-%s-step-%d", b+1, fileName(s.Blocks[b].Label), n+1), f.Diagram()})
		}
	}
	for i, f := range s.drawTop() {
		list = append(list, Picture{fmt.Sprintf("top-%d", i+1), f})
	}
	return list
}

// fileName is a label as part of a file's name: what is no letter or digit of ASCII is written by its number.
func fileName(label string) string {
	name := ""
	for _, r := range label {
		if r >= 'a' && r <= 'z' || r >= 'A' && r <= 'Z' || r >= '0' && r <= '9' {
			name += string(r)
		} else {
			name += fmt.Sprintf("u%x", r)
		}
	}
	return name
}

// stepFigure is the picture of a step.
func (s *sewer) stepFigure(block, n int) document.Figure {
	step := &s.Blocks[block].Steps[n]
	size := s.unitSize(&s.Blocks[block], step) + ", unfinished"
	if s.Blocks[block].Column {
		size = "pieces sewn into a column"
	}
	return document.Figure{Draw: sync.OnceValue(func() *diagram.Figure { return s.drawStep(block, n, size) })}
}

// linesFigure is the picture of the rows or columns, the first time that it is asked for.
func (s *sewer) linesFigure() []document.Block {
	if s.lined {
		return nil
	}
	s.lined = true
	return []document.Block{document.Figure{Draw: sync.OnceValue(func() *diagram.Figure { return s.drawLines(s.wholeGrid()) })}}
}

// bordersFigure is the picture of the borders, the first time that it is asked for.
func (s *sewer) bordersFigure() []document.Block {
	if s.bordered {
		return nil
	}
	s.bordered = true
	return []document.Block{document.Figure{Draw: sync.OnceValue(s.drawBorders)}}
}
