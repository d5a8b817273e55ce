package booklet

import (
	"fmt"
	"regexp"
	"testing"

	"eighthturn/internal/quilttest/alone"
	"eighthturn/internal/quilttest/judges"
	"eighthturn/internal/render"
	"eighthturn/samples"
)

var (
	oneFigure = regexp.MustCompile(`(?s)<figure>(.*?)</figure>`)
	titled    = regexp.MustCompile(`(?s)<svg[^>]*>.*?<(?:title|desc)[^>]*>[^<]+</`)
)

// The page loads nothing from anywhere, and every picture has words for those who cannot see it.
func TestThePageStandsAlone(t *testing.T) {
	for _, s := range judges.Some(samples.All(), 4) {
		page, err := render.HTML(pattern(t, s.Text))
		if err != nil {
			t.Fatal(err)
		}
		figures := oneFigure.FindAllStringSubmatch(string(page), -1)
		if len(figures) < 8 {
			t.Errorf("%s: only %d pictures", s.Name, len(figures))
		}
		for _, f := range figures {
			if !titled.MatchString(f[1]) {
				t.Errorf("%s: a picture has no words: %s", s.Name, fmt.Sprintf("%.200s", f[1]))
			}
		}
		for _, wrong := range alone.Requests(page) {
			t.Errorf("%s: the page does not stand alone: %s", s.Name, wrong)
		}
	}
}
