package contrast

import (
	"cmp"
	"slices"
)

// LossOf is what is lost of a quilt.
type LossOf string

const (
	LossOfFigure LossOf = "figure" // a sort of figure in one colouring does not show, or only faintly
	LossOfRim    LossOf = "rim"    // figures lose their edge in a border
	LossOfTurns  LossOf = "turns"  // two colourings that take turns look alike
	LossOfScrap  LossOf = "scrap"  // a scrap makes holes
	LossOfFrame  LossOf = "frame"  // sashes or a border cannot be told from what lies inside them
)

// Loss is one thing that a quilt is meant to show and does not.
type Loss struct {
	Of      LossOf  `json:"of"`
	Figure  int     `json:"figure"` // index in the report's figures, -1 for a scrap
	Scrap   int     `json:"scrap"`  // index in the report's stray scraps, -1 for a figure
	Verdict Verdict `json:"verdict"`
	Part    float64 `json:"part"` // how much of what the top means to show it is: 0 to 1, of the figures of its sort
}

// losses are what a quilt is meant to show and does not: figures first, then those that look alike, scraps that make holes
// and the few figures that hardly show for that, edges lost in a border, sashes and borders. Strips are a matter of taste and no loss.
func losses(figures []Figure, strays []Stray) []Loss {
	list := []Loss{}
	of := map[Sort]int{}
	for i := range figures {
		of[figures[i].Sort] += figures[i].Count
	}
	for i := range figures {
		f := &figures[i]
		part := float64(f.Count) / float64(max(1, of[f.Sort]))
		switch {
		case f.Sort == Strips:
		case f.Verdict.Shows():
			if f.Rim != nil && !f.Rim.Verdict.Shows() {
				list = append(list, Loss{Of: LossOfRim, Figure: i, Scrap: -1, Verdict: f.Rim.Verdict, Part: float64(f.Rim.Count) / float64(f.Count)})
			}
		case f.Sort == ByTurns:
			list = append(list, Loss{Of: LossOfTurns, Figure: i, Scrap: -1, Verdict: f.Verdict, Part: 1})
		case f.Sort == Border || f.Sort == Sashes:
			list = append(list, Loss{Of: LossOfFrame, Figure: i, Scrap: -1, Verdict: f.Verdict, Part: 1})
		default:
			list = append(list, Loss{Of: LossOfFigure, Figure: i, Scrap: -1, Verdict: f.Verdict, Part: part})
		}
	}
	for i := range strays {
		list = append(list, Loss{Of: LossOfScrap, Figure: -1, Scrap: i, Verdict: Lost, Part: 1})
	}
	order := []LossOf{LossOfFigure, LossOfTurns, LossOfScrap, LossOfRim, LossOfFrame}
	rank := func(l *Loss) int {
		if l.Of == LossOfFigure && l.Part < fewFigures && figures[l.Figure].hasScrap(strays) {
			return 2*slices.Index(order, LossOfScrap) + 1
		}
		return 2 * slices.Index(order, l.Of)
	}
	slices.SortStableFunc(list, func(a, b Loss) int { return cmp.Compare(rank(&a), rank(&b)) })
	return list
}

// fewFigures is which part of the figures of a sort are so few that a scrap in them, or in what they stand against, is to blame. Ours:
// no source says how many.
const fewFigures = 1.0 / 3

// hasScrap says whether a scrap that makes holes is in a figure, or in what it stands against.
func (f *Figure) hasScrap(strays []Stray) bool {
	return slices.ContainsFunc(strays, func(s Stray) bool { return slices.Contains(f.Of, s.Fabric) || slices.Contains(f.Against, s.Fabric) })
}
