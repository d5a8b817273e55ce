package preview

import (
	"bytes"
	"testing"

	"eighthturn/internal/render"
	"eighthturn/internal/report"
)

// TestCuttingTable: the table that is saved is the report's own.
func TestCuttingTable(t *testing.T) {
	for name, top := range everyTop(t) {
		var b bytes.Buffer
		must(t, fileAt("/save/cutting.csv").write(plansOf(top), &b))
		if want := render.CSV(report.CuttingTable(&report.Plans{Top: top})); b.String() != want {
			t.Errorf("%s: %.200q is saved, wanted %.200q", name, b.String(), want)
		}
		if render.CSV(report.CuttingTable(&report.Plans{Top: everyTop(t)["seafarers"]})) == b.String() && name != "seafarers" {
			t.Errorf("%s: another top's table passes", name)
		}
	}
}

// fileAt is the file of an address.
func fileAt(path string) savedFile {
	for _, f := range savedFiles() {
		if f.path == path {
			return f
		}
	}
	return savedFile{}
}
