package report

import (
	"fmt"
	"slices"
	"strings"
	"testing"

	"eighthturn/internal/diagram"
	"eighthturn/internal/document"
	"eighthturn/internal/measure"
	"eighthturn/internal/plan/sewing"
)

// spinSaid is what a document and its pictures say of spinning: by block the sentences of its section, the other sentences, how
// many arrows turn round a center, and whether it is a skill.
type spinSaid struct {
	blocks [][]string
	others []string
	arrows int
	skill  bool
}

func saidOfSpinning(s *sewer) spinSaid {
	var said spinSaid
	d := Sewing(s.plans).Down(document.Detail)
	for _, section := range d.Sections {
		texts := textsIn(section.Blocks)
		n := slices.IndexFunc(s.Blocks, func(b sewing.Block) bool {
			return section.Title != "" && strings.HasPrefix(section.Title, "Block "+b.Label+":")
		})
		switch {
		case n >= 0:
			said.blocks = append(said.blocks, texts)
		case section.ID != SewingSizes:
			said.others = append(said.others, texts...)
		}
	}
	for _, m := range s.drawLines(s.wholeGrid()).Marks {
		if m.Line != nil && m.Line.Stroke == diagram.Pressing && len(m.Line.Points) > 2 {
			said.arrows++
		}
	}
	said.skill = slices.ContainsFunc(Skills(s.plans), func(text string) bool { return strings.Contains(text, "spinning") })
	return said
}

func textsIn(list []document.Block) (texts []string) {
	for _, block := range list {
		switch v := block.(type) {
		case document.Section:
			texts = append(texts, textsIn(v.Blocks)...)
		case document.Paragraph:
			texts = append(texts, v.Text.String())
		case document.Together:
			texts = append(texts, textsIn(v.Blocks)...)
		case document.List:
			for _, it := range v.Items {
				texts = append(append(texts, it.Text.String()), textsIn(it.Blocks)...)
			}
		}
	}
	return texts
}

// wrongSpins is where what is said of spinning is not what the plan has: a block's center is spun, or is not to be spun, never
// both; nothing else is spun, and no point at which seams nest or a piece runs straight past is; arrows and the skill agree.
func wrongSpins(s *sewer, said spinSaid) (wrong []string) {
	spun, labelled := 0, len(s.Assembly.Parts) <= maxLabels
	for i := range s.Blocks {
		b := &s.Blocks[i]
		spin, not := 0, 0
		for _, text := range said.blocks[i] {
			if strings.Contains(text, "Spin the seams") {
				spin++
			}
			if strings.Contains(text, "Do not spin") {
				not++
			}
		}
		turns := 0
		for _, r := range b.Rounds {
			if r.Turns {
				turns++
			}
		}
		if spin != turns || not != len(b.Rounds)-turns || spin > 0 && not > 0 {
			wrong = append(wrong, fmt.Sprintf("block %s: %d points are spun of %d, said of %d, denied of %d", b.Label, turns, len(b.Rounds), spin, not))
		}
		if b.Spins() {
			spun += b.Count
		}
	}
	for _, text := range said.others {
		if strings.Contains(strings.ToLower(text), "spin") || strings.Contains(strings.ToLower(text), "spun") {
			wrong = append(wrong, "said outside of a block: "+text)
		}
	}
	if labelled && said.arrows != spun {
		wrong = append(wrong, fmt.Sprintf("%d centers are spun, %d arrows turn", spun, said.arrows))
	}
	if said.skill != (spun > 0) {
		wrong = append(wrong, "spinning is a skill, or is none, against the blocks")
	}
	return append(wrong, spunElsewhere(s)...)
}

// spunElsewhere is points that are spun and at which seams nest too, or a piece runs past.
func spunElsewhere(s *sewer) (wrong []string) {
	spun := map[measure.Point]bool{}
	for i := range s.Blocks {
		for _, r := range s.Blocks[i].Rounds {
			if r.Turns != (r.Through < 0) {
				wrong = append(wrong, fmt.Sprintf("block %s: spun is %v where piece %d runs past", s.Blocks[i].Label, r.Turns, r.Through))
			}
			for _, v := range s.Blocks[i].Variants {
				for _, at := range v.Cells {
					if r.Turns {
						spun[s.InBlock(at.Cell, r.At)] = true
					}
				}
			}
		}
	}
	for _, j := range s.Pressing.Joints {
		if spun[j.At] {
			wrong = append(wrong, "seams nest where they are spun, at "+s.where(j.At))
		}
	}
	return wrong
}

// TestSpinsAreSaidOnce: see wrongSpins, over the samples and invented layouts.
func TestSpinsAreSaidOnce(t *testing.T) {
	spins, not := 0, 0
	for name, s := range sewers() {
		said := saidOfSpinning(s)
		for _, wrong := range wrongSpins(s, said) {
			t.Errorf("%s: %s", name, wrong)
		}
		for i := range s.Blocks {
			if s.Blocks[i].Spins() {
				spins++
			} else if len(s.Blocks[i].Rounds) > 0 {
				not++
			}
		}
	}
	if spins == 0 || not == 0 {
		t.Errorf("%d blocks are spun, %d are not to be", spins, not)
	}
}

func TestSpinsCatch(t *testing.T) {
	text := "strip 4\nfabric a #112233\nfabric b #eeeeee\nblock A floating-star kites a wedges b background b\nblock W web kites a wedges b\ngrid\n A W\n W A\n"
	for name, broken := range map[string]func(s *sewer, said *spinSaid){
		"a center that cannot be spun":        func(s *sewer, said *spinSaid) { said.blocks[0] = append(said.blocks[0], "Spin the seams.") },
		"a center of which nothing is said":   func(s *sewer, said *spinSaid) { said.blocks[1] = nil },
		"a corner of blocks that is spun too": func(s *sewer, said *spinSaid) { said.others = append(said.others, "spin the seams to reduce bulk") },
		"an arrow too many":                   func(s *sewer, said *spinSaid) { said.arrows++ },
		"no skill":                            func(s *sewer, said *spinSaid) { said.skill = false },
		"a piece that runs past":              func(s *sewer, said *spinSaid) { s.Blocks[1].Rounds[0].Through = 0 },
		"a nest that is spun": func(s *sewer, said *spinSaid) {
			at := s.Blocks[1].Variants[0].Cells[0]
			s.Pressing.Joints[0].At = s.InBlock(at.Cell, s.Blocks[1].Rounds[0].At)
		},
	} {
		s := sewerOf(t, text)
		said := saidOfSpinning(s)
		if wrong := wrongSpins(s, said); len(wrong) > 0 {
			t.Fatal(wrong)
		}
		broken(s, &said)
		if len(wrongSpins(s, said)) == 0 {
			t.Errorf("%s is not caught", name)
		}
	}
}
