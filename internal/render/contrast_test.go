package render

import (
	"regexp"
	"sync"
	"testing"

	"eighthturn/palettes"
)

// Text stands off from its ground by a ratio of at least 7, headings and links by 4.5, on paper
// and on the screen, light and dark (WCAG 2.1, success criteria 1.4.6 and 1.4.3).
func TestContrast(t *testing.T) {
	white := palettes.Colour{R: 255, G: 255, B: 255}
	for name, c := range map[string]palettes.Colour{"ink": ink(), "grey": grey(), "accent": accent()} {
		if got := palettes.ContrastRatio(c, white); got < 7 {
			t.Errorf("%s on paper has a contrast of %.1f", name, got)
		}
	}
	themes := regexp.MustCompile(`:root \{[^}]*\}`).FindAllString(stylesheet+darkStylesheet, -1)
	if len(themes) != 3 {
		t.Fatalf("%d themes, want light, dark and print", len(themes))
	}
	for _, theme := range themes {
		colours := map[string]palettes.Colour{}
		for _, m := range regexp.MustCompile(`--([a-z]+): (#[0-9a-f]+);`).FindAllStringSubmatch(theme, -1) {
			colours[m[1]] = rgb(m[2])
		}
		for _, ground := range []string{"paper", "note", "care"} {
			for name, least := range map[string]float64{"ink": 7, "grey": 7, "accent": 4.5} {
				if got := palettes.ContrastRatio(colours[name], colours[ground]); got < least {
					t.Errorf("%s on %s has a contrast of %.1f in %s", name, ground, got, theme)
				}
			}
		}
	}
}

// Documents are written at the same time without regard to each other.
func TestAtOnce(t *testing.T) {
	want, err := PDF(sample(), Options{})
	if err != nil {
		t.Fatal(err)
	}
	var wait sync.WaitGroup
	for range 4 {
		wait.Go(func() {
			got, err := PDF(sample(), Options{})
			if err != nil || string(got.File) != string(want.File) {
				t.Errorf("files written at once differ, or %v", err)
			}
		})
	}
	wait.Wait()
}
