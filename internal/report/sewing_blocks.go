package report

import (
	"fmt"
	"slices"
	"strings"

	"eighthturn/internal/blocks"
	"eighthturn/internal/document"
	"eighthturn/internal/measure"
	"eighthturn/internal/plan/sewing"
)

// SewingBlock is the id of the section of a block, by index, and of a part of it: "steps", "pressing" or "fabrics"; "" for the
// whole.
func SewingBlock(n int, part string) string {
	id := fmt.Sprintf("block-%d", n+1)
	if part != "" {
		id += "-" + part
	}
	return id
}

// block is how the blocks of one label are made.
func (s *sewer) block(n int) document.Section {
	b := &s.Blocks[n]
	whole := s.wholeBlock(b)
	made := document.Paragraph{Text: document.Plain(s.makes(b)), About: document.About{Patches: whole}}
	out := document.Section{ID: SewingBlock(n, ""), Title: "Block " + b.Label + ": " + strings.ReplaceAll(b.Kind, "-", " "), Depth: document.Detail, Blocks: []document.Block{made}}
	if len(b.Steps) == 0 {
		out.Blocks = append(out.Blocks, para("This block is a single piece; no sewing is needed."))
	}
	out.Blocks = append(out.Blocks, s.stripWays(b)...)
	add := func(part string, blocks []document.Block) {
		if len(blocks) > 0 {
			out.Blocks = append(out.Blocks, document.Section{ID: SewingBlock(n, part), Blocks: blocks})
		}
	}
	add("units", s.overview(n))
	add("steps", s.steps(n))
	add("pressing", s.pressed(b))
	add("fabrics", append(s.fabrics(b), s.placements(n)...))
	return out
}

// makes is how many blocks there are, and how large they are.
func (s *sewer) makes(b *sewing.Block) string {
	finished, raw := s.units.Size(b.Finished.Across, b.Finished.Down), s.units.Size(b.Unfinished.Across, b.Unfinished.Down)
	what := "Each " + noun(b)
	if b.Column && !s.sameLength(b) {
		what = "The longest"
	}
	return fmt.Sprintf("Make %s%s. %s finishes at %s, %s unfinished.", measure.Count(b.Count, noun(b)), s.forEach(), what, finished, raw)
}

// noun is what blocks of a label are called.
func noun(b *sewing.Block) string {
	if b.Column {
		return "column"
	}
	return "block"
}

// steps is the steps of a block: what to do in each, and its picture.
func (s *sewer) steps(n int) []document.Block {
	b := &s.Blocks[n]
	if len(b.Steps) == 0 {
		return nil
	}
	list := document.List{Marker: document.Numbered}
	for i := range b.Steps {
		step := &b.Steps[i]
		item := document.Item{Text: document.Bold(s.stepHead(b, step)), About: document.About{Patches: s.stepPatches(b, step)}}
		for _, line := range s.stepLines(b, step) {
			item.Blocks = append(item.Blocks, document.Paragraph{Text: line})
		}
		item.Blocks = append(item.Blocks, s.stepFigure(n, i))
		list.Items = append(list.Items, item)
	}
	return []document.Block{list}
}

// halfOfEach says of which units a block is made whose two halves are not alike.
const halfOfEach = "use one half of each kind."

// stepHead is what units a step makes, and how many.
func (s *sewer) stepHead(b *sewing.Block, step *sewing.Step) string {
	text := fmt.Sprintf("%s: make %d%s", step.Name, step.Make, s.forEach())
	if step.PerBlock > 1 {
		text += fmt.Sprintf(", %d for each block", step.PerBlock)
	}
	return text
}

// stepLines is what is to be known of a step, line by line: what to do, the ends of its seams, trimming, size and check. What
// is true of several seams is said once.
func (s *sewer) stepLines(b *sewing.Block, step *sewing.Step) []document.Text {
	list := []document.Text{document.Plain(s.named(b, step))}
	if b.Column && alikeEnds(b) {
		list = append(list, document.Plain(capital(columnPieces(&b.Variants[0]))+"."))
	}
	if len(b.Variants) == 1 {
		if made := s.made(b, &b.Variants[0], step); made != "" {
			list = append(list, document.Plain("Make "+made+"."))
		}
	}
	if s.unlikeHalves(b, step) {
		list = append(list, document.Plain(capital(halfOfEach)))
	}
	said := map[string]bool{}
	for _, text := range s.seamLines(b, step) {
		if !said[text.String()] {
			said[text.String()] = true
			list = append(list, text)
		}
	}
	if step.Before != nil {
		list = append(list, lead("Trim:", "%s You will trim %s.", step.Trim, atMost(s.units.Nearest(step.StandsOut))))
	}
	if !b.Column && len(step.Joins) > 0 {
		list = append(list, lead("Unfinished size:", "%s.", s.unfinished(b, step)))
	}
	half := s.units.Nearest(b.FromCenter) + " from the center"
	return append(list, lead("Check:", "%s.", strings.ReplaceAll(step.Check, blocks.HalfBlock, half)))
}

// named is what to do in a step, with fabrics by name where that tells pieces apart in all blocks of the label.
func (s *sewer) named(b *sewing.Block, step *sewing.Step) string {
	text := step.Do
	for _, n := range step.Named {
		if fabric := s.onlyCloth(b, n.Pieces, n.Others); fabric != "" {
			text = strings.Replace(text, n.Words, fmt.Sprintf(n.By, fabric), 1)
		}
	}
	return text
}

// onlyCloth is what some pieces of a block are all cut from, in whatever variant, and others are not; "" if there is none.
func (s *sewer) onlyCloth(b *sewing.Block, pieces, others []int) string {
	cloth := b.Variants[0].Cloths[pieces[0]]
	for i := range b.Variants {
		of := b.Variants[i].Cloths
		if slices.ContainsFunc(pieces, func(n int) bool { return of[n] != cloth }) || slices.ContainsFunc(others, func(n int) bool { return of[n] == cloth }) {
			return ""
		}
	}
	return s.clothNames([]int{cloth})[0]
}

// unfinished is the size of a step's unit, also before it is trimmed.
func (s *sewer) unfinished(b *sewing.Block, step *sewing.Step) string {
	text := s.unitSize(b, step)
	if step.Before == nil {
		return text
	}
	before := s.units.Nearest(step.CheckBefore)
	sameSquare := measure.Nearest(step.Before.Across, s.units.Mark()) == measure.Nearest(step.Unfinished.Across, s.units.Mark())
	switch square := s.units.Nearest(step.Before.Across) == s.units.Nearest(step.Before.Down); {
	case strings.TrimPrefix(before, "about ") == strings.TrimPrefix(s.units.Nearest(step.CheckSizes[0].Length), "about "):
		return text
	case step.Form == sewing.Rectangle && sameSquare:
		return text // a ruler shows no difference
	case step.Form == sewing.Rectangle:
		before = s.size(*step.Before)
	case square:
		before = "short sides " + before
	default:
		before += " along the longer of them"
	}
	return text + "; before trimming " + before
}

// unitSize is what a ruler measures of a step's unit: of a triangle the raw edges of its short sides, of a square corner its
// two raw edges, of what has none a raw edge and what lies between opposite ones.
func (s *sewer) unitSize(b *sewing.Block, step *sewing.Step) string {
	if step.Form == sewing.Rectangle {
		return s.size(step.Unfinished)
	}
	first, second := step.CheckSizes[0], step.CheckSizes[1]
	longer, shorter := s.units.Nearest(first.Length), s.units.Nearest(second.Length)
	same := longer == shorter
	switch {
	case step.Form == sewing.Triangle && same:
		return "short sides " + longer
	case step.Form == sewing.Triangle:
		return "short sides " + longer + " and " + shorter
	case len(first.Of) == 1:
		return "free raw edge of the " + s.Shape(b, first.Of[0]).String() + " " + longer
	case second.Length == 0:
		return "longest raw edge " + longer
	case first.Opposite && second.Opposite && same:
		return longer + " between opposite raw edges"
	case first.Opposite && second.Opposite:
		return longer + " and " + shorter + " between opposite raw edges"
	case first.Opposite:
		return "raw edge " + shorter + ", and " + longer + " between opposite raw edges"
	case second.Opposite:
		return "raw edge " + longer + ", and " + shorter + " from it to the opposite one"
	case same:
		return "straight raw edges " + longer
	}
	return "straight raw edges " + longer + " and " + shorter
}

// size is across by down of something with four square corners.
func (s *sewer) size(size sewing.Size) string {
	if s.units.Nearest(size.Across) == s.units.Nearest(size.Down) {
		size.Down = size.Across
	}
	return s.units.Size(size.Across, size.Down)
}

// atMost is a length that may be less; "under 1/16 in" says so itself.
func atMost(length string) string {
	if strings.HasPrefix(length, "under ") {
		return length
	}
	return "up to " + length
}

// lead is a text that begins with words in bold type.
func lead(bold, format string, args ...any) document.Text {
	return document.Text{{Text: bold, Bold: true}, {Text: " " + fmt.Sprintf(format, args...)}}
}

// fabrics is what blocks are sewn of, and where they go.
func (s *sewer) fabrics(b *sewing.Block) []document.Block {
	var blocks []document.Block
	if n := len(b.Variants); n > maxListed {
		many := fmt.Sprintf("There are %d fabric placements.", n)
		if n == b.Count {
			many = "No two " + measure.Plural(noun(b)) + " are alike."
		}
		if !b.Column {
			many += " Each block has " + s.shapeCounts(b) + "."
		}
		blocks = append(blocks, para("%s Arrange the fabrics to match the picture of the quilt or at random; just keep like fabrics apart.", many), para("The first %d:", maxListed))
	}
	var list document.List
	for i := range b.Variants[:min(len(b.Variants), maxListed)] {
		list.Items = append(list.Items, s.variant(b, &b.Variants[i]))
	}
	return append(blocks, list)
}

// variant is blocks of one variant: their pieces, units that are made in several orders, and their places.
func (s *sewer) variant(b *sewing.Block, v *sewing.FabricVariant) document.Item {
	item := document.Item{Text: document.Text{{Text: b.VariantName(v.Number) + ":", Bold: true}, {Text: " " + s.pieces(b, v) + "."}}, About: document.About{Patches: placedPatches(v.Cells)}}
	if n := len(b.Variants); n > 1 && n <= maxListed {
		for i := range b.Steps {
			if made := s.made(b, v, &b.Steps[i]); made != "" {
				item.Blocks = append(item.Blocks, document.Paragraph{Text: lead(fmt.Sprintf("Step %d, %s:", i+1, b.Steps[i].Name), "make %s.", made)})
			}
			if s.unlikeIn(b, v, &b.Steps[i]) && !s.unlikeHalves(b, &b.Steps[i]) {
				item.Blocks = append(item.Blocks, document.Paragraph{Text: lead(fmt.Sprintf("Step %d, %s:", i+1, b.Steps[i].Name), halfOfEach)})
			}
		}
	}
	var places document.Together
	for _, at := range s.places(b, v) {
		places.Blocks = append(places.Blocks, document.Paragraph{Text: document.Plain(capital(at.text) + "."), About: document.About{Patches: s.cellPatches(at.cells)}})
	}
	item.Blocks = append(item.Blocks, places)
	return item
}

// WithoutPlaces is the section of a block's fabrics without where its blocks go, for those who show the layout.
func WithoutPlaces(fabrics document.Section) document.Section {
	fabrics.Blocks = slices.Clone(fabrics.Blocks)
	for i, b := range fabrics.Blocks {
		list, ok := b.(document.List)
		if !ok {
			continue
		}
		list.Items = slices.Clone(list.Items)
		for n := range list.Items {
			list.Items[n].Blocks = slices.DeleteFunc(slices.Clone(list.Items[n].Blocks), func(b document.Block) bool {
				_, places := b.(document.Together)
				return places
			})
		}
		fabrics.Blocks[i] = list
	}
	return fabrics
}

// clothNames are cloths by name.
func (s *sewer) clothNames(cloths []int) []string {
	names := make([]string, len(cloths))
	for i, n := range cloths {
		c := &s.Cloths[n]
		names[i] = c.Name
		if len(c.Bands) > 0 {
			names[i] += " of " + measure.List(c.Bands)
		}
		if c.Reversed {
			names[i] += " reversed"
		}
	}
	return names
}
