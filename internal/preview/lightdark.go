package preview

import (
	"eighthturn/internal/plan/contrast"
	"eighthturn/internal/report"
)

// seamMarks are the seams that the view called vanishing marks.
func seamMarks(p *plans) []mark {
	var list []mark
	for _, m := range report.SeamsHardToSee(&p.Plans) {
		list = append(list, mark{Says: m.Says, Heavy: m.Band == contrast.Vanishes, Seams: m.Seams})
	}
	return list
}
