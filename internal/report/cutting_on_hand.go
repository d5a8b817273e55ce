package report

import (
	"fmt"

	"eighthturn/internal/blocks"
	"eighthturn/internal/document"
	"eighthturn/internal/measure"
	"eighthturn/internal/plan/cutting"
)

// useFirst says which pieces on hand the quilt takes.
func (c *cuts) useFirst() document.Section {
	var list []string
	for i := range c.OnHand {
		list = append(list, c.handWords(&c.OnHand[i]))
	}
	return document.Section{ID: UseFirstID, Title: "Already cut", Blocks: bullets(list...)}
}

// handWords says how many of some pieces on hand are used.
func (c *cuts) handWords(h *cutting.OnHandPieces) string {
	name := c.handName(h)
	switch {
	case h.Used == 0:
		return fmt.Sprintf("The %s you have are not used.", measure.Count(h.Pieces, name))
	case h.Left() > 0:
		return fmt.Sprintf("Use %d of the %s you have.", h.Used, measure.Count(h.Pieces, name))
	}
	return fmt.Sprintf("Use the %s you have.", measure.Count(h.Pieces, name))
}

// handName is what one of some pieces on hand is.
func (c *cuts) handName(h *cutting.OnHandPieces) string {
	return handCloth(h.Cloth, h.Reversed) + " " + handPieces(h.Role)
}

// handCloth is what pieces on hand are cut from.
func handCloth(cloth string, reversed bool) string {
	if reversed {
		return cloth + " reversed"
	}
	return cloth
}

// handPieces is one piece of a role that may be on hand.
func handPieces(role string) string {
	for _, k := range blocks.KeptRoles(blocks.Kinds()) {
		if k.Role == role {
			return k.Shape.String()
		}
	}
	return role
}

// handSet says how many wedges of a strip set are on hand, "" for none.
func (c *cuts) handSet(n int) string {
	var list []string
	for way, count := range c.Sets[n].OnHand {
		if count > 0 {
			list = append(list, measure.Count(count, c.wedgesName(n, way > 0)+" wedge"))
		}
	}
	if len(list) == 0 {
		return ""
	}
	return "Use the " + measure.List(list) + " you have, too: the sets are for the others."
}

// onHandCount is how many of a line's pieces are on hand, "" for none.
func onHandCount(line *cutting.Line) string {
	if line.OnHand == 0 {
		return ""
	}
	return number(line.OnHand)
}
