package main

import (
	"eighthturn/internal/plan/cutting"
	"eighthturn/internal/plan/supplies"
)

// cutsJSON is a plan for other programs.
func cutsJSON(name string, plan *cutting.Plan) string {
	w := cutsWriter{plan}
	return prettyJSON(jsonCuts{
		Format: formatCuts, File: name, Units: plan.Units.String(), SeamAllowance: w.length(plan.Seam), Copies: plan.Copies,
		Fabrics:   mapped(plan.Fabrics, w.fabric),
		Lines:     mapped(plan.Lines, w.line),
		StripSets: w.sets(),
		Binding:   w.binding(), Backing: w.backing(), Batting: w.batting(),
		Advice: cutting.Advice(), Cautions: cutting.Cautions(),
	})
}

func (w cutsWriter) fabric(f cutting.Fabric) jsonCutFabric {
	return jsonCutFabric{
		Name: f.Name, Print: f.Print, UsableWidth: w.length(f.UsableWidth), StripCount: f.StripCount, StripRows: f.StripRows, StripBound: f.StripBound,
		ClothCut: w.atLeast(f.LengthCut), ClothBound: w.atLeast(f.LengthBound), BackingCut: w.atLeast(f.BackingCut),
		ExactCut: w.atLeast(f.Purchase.ExactCut), Need: w.atLeast(f.Purchase.Need), Buy: w.shop(f.Purchase.Buy),
		OnHand:  w.onHand(f.OnHand),
		Precuts: mapped(f.Precuts, func(c cutting.Precut) jsonPrecut { return jsonPrecut{c.Name, c.Count} }),
		Blocks: mapped(f.Blocks, func(b cutting.Block) jsonBlockCut {
			return jsonBlockCut{w.atLeast(b.LengthCut), w.length(b.LeftWidthCut), mapped(b.Columns, func(c cutting.Column) jsonColumnCut {
				return jsonColumnCut{c.Line + 1, w.length(c.WidthCut), w.length(c.LengthCut)}
			})}
		}),
		Strips: mapped(f.Strips, w.strip),
		Joined: mapped(f.Chains, w.joined),
		LeftOver: mapped(f.LeftOver, func(l cutting.LeftOver) jsonLeftOver {
			return jsonLeftOver{l.Times, w.atMost(l.AcrossCut), w.atMost(l.AlongCut)}
		}),
	}
}

func (w cutsWriter) joined(c cutting.Chain) jsonJoined {
	return jsonJoined{
		Times: c.Times, Words: cutting.Words(w).ChainSentence(&c), Loss: w.length(c.LossCut), Spare: w.length(c.SpareCut), Scant: c.Scant,
		Least: w.maybe(c.LeastCut), Short: c.Short,
		Strips: mapped(c.Strips, func(s cutting.Stretch) jsonStripLong { return jsonStripLong{s.Count, w.length(s.LengthCut)} }),
		Pieces: mapped(c.Pieces, func(s cutting.Share) jsonPiecesOf {
			return jsonPiecesOf{s.Line + 1, s.Count, w.length(w.Lines[s.Line].Piece.AlongCut)}
		}),
	}
}

func (w cutsWriter) onHand(h *cutting.OnHand) *jsonOnHand {
	if h == nil {
		return nil
	}
	return &jsonOnHand{w.shop(h.HaveCut), h.Enough, w.atLeast(h.ShortCut), mapped(h.WaysToFit, func(y cutting.Way) jsonWayToGo {
		return jsonWayToGo{y.Border + 1, w.maybe(y.WidthFinished), w.maybe(y.SideFinished), w.maybe(y.StripCut), w.atLeast(y.NeedCut)}
	})}
}

func (w cutsWriter) strip(s cutting.Strip) jsonStripCut {
	return jsonStripCut{s.Times, w.length(s.WidthCut), w.length(s.LengthCut), s.InBlock + 1, mapped(s.Cuts, func(c cutting.Cut) jsonCutOff {
		return jsonCutOff{mapped(c.Lines, func(n int) int { return n + 1 }), c.Set + 1, w.CutWords(&c), c.Units, c.Rows, w.length(c.AcrossCut), w.length(c.AlongCut)}
	}), w.atMost(s.EndLeftCut)}
}

func (w cutsWriter) line(l cutting.Line) jsonCutLine {
	p := &l.Piece
	j := jsonCutLine{
		Line: l.Number + 1, StripSet: l.Set + 1, Reversed: l.Reversed, Piece: p.Shape.String(), Role: p.Role, Border: l.Border + 1,
		Method: p.Method.String(), Hand: p.Hand.String(), SideFinished: w.length(p.SideFinished), LengthFinished: w.maybe(p.LengthFinished),
		AcrossExact: w.length(p.AcrossExact), AcrossCut: w.length(p.AcrossCut), AlongExact: w.length(p.AlongExact), AlongCut: w.length(p.AlongCut),
		TrimCut: w.length(p.TrimCut), WideCut: w.maybe(p.WideCut), NarrowCut: w.maybe(p.NarrowCut), RuleCut: w.maybe(p.RuleCut), KitesCut: w.maybe(p.KitesCut),
		Pieces: l.Pieces, Left: l.Left, Right: l.Right, Units: l.Units, Spare: l.Spare, Patches: l.Patches,
		Rulers: mapped(p.OnRuler, func(r cutting.Ruler) jsonRuler {
			return jsonRuler{w.length(r.ExactCut), r.OnMark, w.length(r.BelowCut), w.length(r.AboveCut), w.maybe(r.BelowSideFinished), w.maybe(r.AboveSideFinished)}
		}),
	}
	if l.Fabric >= 0 {
		j.Fabric = w.Fabrics[l.Fabric].Name
	}
	return j
}

func (w cutsWriter) sets() []jsonCutSet {
	list := make([]jsonCutSet, 0, len(w.Sets))
	for i := range w.Sets {
		s := &w.Sets[i]
		list = append(list, jsonCutSet{
			Number: i + 1, Name: w.SetName(i), WidthCut: w.length(s.WidthCut), Wanted: s.Wanted, Given: s.Given, LeftOver: s.LeftOver,
			Strips: mapped(s.Bands, func(b cutting.Band) jsonSetBand {
				return jsonSetBand{w.Fabrics[b.Fabric].Name, w.length(b.WidthCut), w.length(b.WidthFinished)}
			}),
			Sets: mapped(s.Runs, func(r cutting.SetRun) jsonSetRun {
				return jsonSetRun{r.Sets, w.length(r.LengthCut), r.Wedges, r.FirstReversed}
			}),
		})
	}
	return list
}

func (w cutsWriter) binding() *jsonBindingCut {
	if b := w.Binding; b != nil {
		return &jsonBindingCut{w.length(b.StripCut), b.Strips * w.Copies, w.atLeast(b.Need), w.length(b.Comes)}
	}
	return nil
}

func (w cutsWriter) backing() *jsonBackingCut {
	b := w.Backing
	if b == nil {
		return nil
	}
	way := func(p supplies.Pieced) jsonWays {
		return jsonWays{p.Panels, w.atLeast(p.PanelCut), w.atLeast(p.LengthCut), p.Cliff.Costs}
	}
	j := &jsonBackingCut{WidthCut: w.atLeast(b.WidthCut), HeightCut: w.atLeast(b.HeightCut), Ways: [2]jsonWays{way(b.Ways[0]), way(b.Ways[1])}, Less: int(b.Less)}
	for i := range w.Fabrics {
		if w.Fabrics[i].Index == w.BackingOf {
			j.Fabric = w.Fabrics[i].Name
		}
	}
	return j
}

func (w cutsWriter) batting() *jsonBattingCut {
	if b := w.Batting; b != nil {
		return &jsonBattingCut{w.atLeast(b.WidthCut), w.atLeast(b.HeightCut)}
	}
	return nil
}
