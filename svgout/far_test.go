package svgout_test

import (
	"testing"

	"eighthturn/internal/measure"
	"eighthturn/internal/quilttest/lay"
	"eighthturn/samples"
	"eighthturn/svgout"
)

// TestLegendReadFarOff: where it is read from far off each name in a legend is at least 1/24 of the top's width high, 16 pixels of the 390
// that phones commonly count across; the usual one is not.
func TestLegendReadFarOff(t *testing.T) {
	for _, s := range samples.All() {
		top := lay.Top(t, s.Text)
		least := func(far bool) float64 {
			scene, err := svgout.NewScene(top, svgout.Options{Legend: true, FarOff: far, ByFabric: true})
			if err != nil {
				t.Fatal(err)
			}
			least := 1e9
			for _, l := range scene.Layers {
				if l.ID != "legend" {
					continue
				}
				for i := range l.Items {
					if text := l.Items[i].Text; text != nil {
						least = min(least, text.Size)
					}
				}
			}
			return least / (float64(top.Outer.Width()) / float64(measure.Inch) * svgout.PixelsPerInch)
		}
		if far, usual := least(true), least(false); far < 1.0/24.001 || usual > 1.0/40 {
			t.Errorf("%s: letters of 1/%.0f of the width from far off, 1/%.0f else", s.Name, 1/far, 1/usual)
		}
	}
}
