package main

import (
	"fmt"
	"slices"

	"eighthturn/internal/plan/cutting"
)

// section is a part of a plan on paper: words, a table under its headings, and notes.
type section struct {
	heading string
	words   []string
	rows    [][]string // the first is the headings; numbers begin with a blank, to stand at the right
	notes   []string
}

// sections is the whole plan in the order in which it is read.
func (p cutPage) sections() []section {
	list := []section{{heading: "Before you cut", words: cutting.Advice()}, p.toBuy(), p.pieces()}
	for i := range p.Sets {
		if len(p.Sets[i].Runs) > 0 {
			list = append(list, p.stripSet(i))
		}
	}
	for i := range p.Fabrics {
		f := &p.Fabrics[i]
		if f.StripCount > 0 || len(f.Blocks) > 0 {
			list = append(list, p.fabric(f))
		}
	}
	if lines := p.Rulers(); len(lines) > 0 {
		list = append(list, section{heading: "Sizes that no line of a ruler shows", words: lines})
	}
	return append(list, section{heading: "Mind your fingers", words: cutting.Cautions()})
}

// toBuy is the cloth of all fabrics.
func (p cutPage) toBuy() section {
	s := section{heading: "To buy, for " + p.Quilts()}
	s.rows = [][]string{{"", " cut from it", " exactly", " to buy", "on hand", "or instead"}}
	for i := range p.Fabrics {
		f := &p.Fabrics[i]
		name := f.Name
		if f.Print != "" {
			name += " (" + f.Print + ")"
		}
		s.rows = append(s.rows, []string{name, " " + p.AtLeast(f.Purchase.ExactCut), " " + p.Shop(f.Purchase.Need), " " + p.Shop(f.Purchase.Buy), p.OnHand(f.OnHand), p.PrecutWords(f)})
	}
	s.notes = append(s.notes, p.RoundingNote())
	for i := range p.Fabrics {
		if ways := p.WaysToFit(&p.Fabrics[i]); ways != "" {
			s.notes = append(s.notes, p.Fabrics[i].Name+": "+ways+".")
		}
	}
	s.notes = append(s.notes, p.Edges()...)
	return s
}

// pieces is every distinct piece with its sizes.
func (p cutPage) pieces() section {
	s := section{heading: "Pieces, with their sizes finished and cut"}
	s.rows = [][]string{{" line", "", "from", "finished", "cut", " exactly", " to trim", " pieces", ""}}
	for i := range p.Lines {
		line := &p.Lines[i]
		s.rows = append(s.rows, []string{
			fmt.Sprintf(" %d", line.Number+1), p.PieceName(line), p.Cloth(line), p.FinishedSize(&line.Piece), p.CutSize(line), " " + p.exact(&line.Piece), " " + p.trim(&line.Piece),
			fmt.Sprintf(" %d", line.Pieces), p.Hands(line),
		})
	}
	s.notes = append([]string{
		"Finished is from seam to seam: of wedges and tumblers the height, of triangles the short edges, of kites and stop pieces the side of their block. " + p.Units.AboutMeans() + " " +
			"Cut is what you cut. Exactly is the cut size that geometry asks for; what is cut larger is trimmed after sewing, by what stands beside it.",
	}, p.pieceNotes()...)
	return s
}

// pieceNotes explains choices that the table shows.
func (p cutPage) pieceNotes() []string {
	var list []string
	once := map[string]bool{}
	say := func(text string) {
		if !once[text] {
			once[text] = true
			list = append(list, text)
		}
	}
	for i := range p.Lines {
		line := &p.Lines[i]
		piece := &line.Piece
		switch {
		case piece.Method == cutting.TwiceOnDiagonal:
			say("Squares cut twice put the long edge of a triangle on the straight grain, and its short edges, which lie on the outside of the block, on the bias.")
		case piece.Method == cutting.OnceOnDiagonal && line.Left+line.Right == 0:
			say("Squares cut once put the short edges of a triangle, which lie on the outside of the block, on the straight grain; the long edge inside is on the bias.")
		}
		if piece.RuleCut > 0 {
			say(fmt.Sprintf("Line %d: the rule of thumb says squares of %s.", line.Number+1, p.Length(piece.RuleCut)))
		}
		if piece.KitesCut > 0 && piece.KitesCut != piece.AlongCut {
			say(fmt.Sprintf("Line %d: by custom corners are cut from squares of %s, as kites are, with more to trim.", line.Number+1, p.Length(piece.KitesCut)))
		}
	}
	for _, text := range slices.Concat(p.ShapeNotes(), p.RowNotes()) {
		say(text)
	}
	return list
}

// stripSet is one strip set.
func (p cutPage) stripSet(n int) section {
	set := &p.Sets[n]
	s := section{heading: "Strip set " + p.SetName(n)}
	s.rows = [][]string{{"strip", "cut", "finished"}}
	for _, b := range set.Bands {
		s.rows = append(s.rows, []string{p.Fabrics[b.Fabric].Name, p.Length(b.WidthCut), p.Length(b.WidthFinished)})
	}
	s.words = p.SetNotes(n)
	return s
}

// fabric is one fabric in the order to cut.
func (p cutPage) fabric(f *cutting.Fabric) section {
	s := section{heading: p.FabricTitle(f)}
	for i := range f.Blocks {
		s.words = append(s.words, p.BlockWords(f, i))
	}
	if len(f.Strips) > 0 {
		s.rows = [][]string{{" strips", "wide", "each cut into", "lines", " end left"}}
	}
	for i := range f.Strips {
		s.rows = append(s.rows, p.strip(&f.Strips[i])...)
	}
	for i := range f.Chains {
		s.notes = append(s.notes, p.ChainSentence(&f.Chains[i]))
	}
	s.notes = append(s.notes, p.FabricNotes(f)...)
	return s
}

// strip is a strip with what it is cut into, a row each.
func (p cutPage) strip(s *cutting.Strip) [][]string {
	wide := p.Length(s.WidthCut)
	if s.InBlock >= 0 {
		wide += ", " + p.Length(s.LengthCut) + " long"
	}
	rows := [][]string{{fmt.Sprintf(" %d", s.Times), wide, "", "", " " + p.EndLeft(s)}}
	for i := range s.Cuts {
		c := &s.Cuts[i]
		if i > 0 {
			rows = append(rows, []string{"", "", "", "", ""})
		}
		rows[i][2], rows[i][3] = p.CutWords(c), cutting.LineNumbers(c.Lines, ", ")
	}
	return rows
}
