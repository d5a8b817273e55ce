package preview

import (
	"eighthturn/internal/plan/contrast"
	"eighthturn/internal/report"
)

// lightAndDark is the study of light and dark, with the seams that the view called vanishing marks.
func lightAndDark(p *plans) reportTab {
	r := documentTab("Light and dark", report.Values(&p.Plans))
	for _, m := range report.SeamsHardToSee(&p.Plans) {
		r.Marks = append(r.Marks, mark{Says: m.Says, Heavy: m.Band == contrast.Vanishes, Seams: m.Seams})
	}
	return r
}
