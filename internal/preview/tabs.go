package preview

import (
	"eighthturn/internal/plan/contrast"
	"eighthturn/internal/report"
)

// tabSource makes a tab of the plans of a top.
type tabSource struct {
	Name     string
	make     func(*plans) reportTab
	HasMarks bool // it has the seams that the view called vanishing marks
	Own      bool // the page fills it itself, of what it asks for
}

// tabSources are all tabs in their order: the reports, the printed pattern beside the picture, the files to save, and auditions.
func tabSources() []tabSource {
	var list []tabSource
	for _, r := range report.Reports() {
		t := tabSource{Name: r.Title, HasMarks: r.Name == report.LightAndDark}
		t.make = func(p *plans) reportTab {
			tab := documentTab(r.Title, r.Make(p.Plans))
			if t.HasMarks {
				tab.Marks = seamMarks(p)
			}
			return tab
		}
		list = append(list, t)
	}
	return append(list, tabSource{Name: "Pattern", make: patternTab}, tabSource{Name: "Files", make: filesTab},
		tabSource{Name: "Audition", Own: true, make: func(*plans) reportTab { return reportTab{Name: "Audition"} }})
}

// seamMarks are the seams that the view called vanishing marks.
func seamMarks(p *plans) []seamMark {
	var list []seamMark
	for _, m := range report.SeamsHardToSee(p.Plans) {
		list = append(list, seamMark{Label: m.Says, Heavy: m.Band == contrast.Vanishes, Seams: m.Seams})
	}
	return list
}
