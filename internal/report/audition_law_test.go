package report_test

import (
	"strings"
	"testing"

	"eighthturn/internal/plan/audition"
	"eighthturn/internal/plan/contrast"
	"eighthturn/internal/quilt"
	"eighthturn/internal/quilttest/judges"
	"eighthturn/internal/render"
	"eighthturn/internal/report"
	"eighthturn/layout"
	"eighthturn/samples"
)

// TestAuditionsSayWhatStudiesSay: the verdict on an alternative is the first sentence of a study of the fabric in that color.
func TestAuditionsSayWhatStudiesSay(t *testing.T) {
	for _, sample := range judges.Some(samples.All(), 4) {
		reading := layout.Inspect(sample.Text, nil)
		top := quilt.Lay(reading.Design)
		for _, f := range reading.Design.Fabrics[:min(len(reading.Design.Fabrics), judges.Of(2, 3))] {
			trials, err := reading.Auditions(layout.AuditionOf{Role: f.Name}, []string{"#121212", "#f4f0e8", "#8f8577"})
			if err != nil {
				t.Fatal(err)
			}
			plan, err := audition.Build(top, trials, nil, audition.Options{})
			if err != nil {
				t.Fatal(err)
			}
			for i := range plan.Alternatives {
				try, err := contrast.ParseTry(top, trials[i].Try)
				if err != nil {
					t.Fatal(err)
				}
				study := render.Text(report.Values(&report.Plans{Top: top, Tries: []contrast.Try{try}}))
				if says := report.AuditionVerdict(&plan.Alternatives[i]); !strings.Contains(oneLine(study), " "+oneLine(says)) {
					t.Errorf("%s, %s: the audition says %q, the study\n%s", sample.Name, trials[i].Try, says, study)
				}
			}
		}
	}
}

func oneLine(text string) string { return strings.Join(strings.Fields(text), " ") }
