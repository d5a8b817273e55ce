package report

import (
	"eighthturn/internal/document"
	"eighthturn/internal/measure"
)

// Sections of Beginning.
const (
	BeginFacts = "facts"
	BeginTools = "tools"
	BeginScant = "seam-test"
)

// Beginning is what to know before anything is cut: what the whole pattern rests on, and the tools.
func Beginning(p *Plans) document.Document {
	c := newCuts(p)
	return document.Document{Title: p.named("before you begin"), Sections: []document.Section{
		{ID: BeginFacts, Blocks: []document.Block{document.List{Items: c.facts()}}},
		{ID: BeginTools, Title: "Tools", Blocks: bullets(Tools(p)...)},
		seamTest(p),
	}}
}

// seamTest is how to see whether seams take just their allowance. Three strips sewn together show it: the middle one has
// lost two allowances. Common practice, no source.
func seamTest(p *Plans) document.Section {
	u, seam := p.Top.Units, p.Top.Seam
	middle := measure.Inch
	if u == measure.Centimetres {
		middle = 3 * measure.Centimetre
	}
	strip, whole := middle+2*seam, 3*middle+2*seam
	return document.Section{ID: BeginScant, Title: "Test your seam allowance", Blocks: []document.Block{para(
		"From scraps, cut three strips %s. Sew them together along their long edges and press. The center strip should measure %s and the whole %s. "+
			"If they measure less, sew a seam one thread narrower (a scant seam allowance); if more, one thread wider. Repeat until they measure exactly.",
		u.By(strip, whole), u.Nearest(middle), u.Size(whole, whole))}}
}

// facts are what the whole pattern rests on.
func (c *cuts) facts() []document.Item {
	t := c.plans.Top
	led := func(bold, format string, args ...any) document.Item {
		return document.Item{Text: lead(bold, format, args...)}
	}
	items := []document.Item{
		led("Read all instructions", "before cutting."),
		led("Finished size:", "%s.", c.Units.Size(t.Outer.Width(), t.Outer.Height())),
		led("Seam allowance:", "use %s unless otherwise noted; it is included in all cut sizes.", c.Units.Nearest(t.Seam)),
	}
	if w, same := c.usableWidth(); same {
		backing := ""
		if c.Backing != nil && c.BackingOf < 0 && c.Backing.UsableWidth != w {
			backing = "; for the backing " + c.Units.Nearest(c.Backing.UsableWidth)
		}
		items = append(items, led("Usable width:", "%s for every fabric, selvages removed%s.", c.Units.Nearest(w), backing))
	} else {
		items = append(items, led("Usable width:", "see the fabric table; it is not the same for all fabrics."))
	}
	if t.CutFacts.StripGiven {
		return items
	}
	return append(items, led("Blocks:", "%s finished. The strip widths for wedges are worked out from this size, so cut them exactly.", c.Units.Size(t.SideFinished, t.SideFinished)))
}
