package main

import (
	"os"
	"path/filepath"
	"strings"
	"testing"

	"eighthturn/internal/quilttest/judges"
	"eighthturn/internal/quilttest/lay"
	"eighthturn/internal/render"
	"eighthturn/internal/report"
)

// TestQuiltingIsOnePage: of every sample and of invented layouts the page for the quilter is one, on either paper, and says the sizes.
func TestQuiltingIsOnePage(t *testing.T) {
	for i, n := range judges.Some(append(lay.Samples(), lay.Invented(9100, 12, 40)...), 5) {
		p := &report.Plans{Top: n.Top, Name: n.Name}
		d := report.Quilting(p)
		page := render.Letter()
		if i%2 == 1 {
			page = render.A4()
		}
		made, err := render.PDF(d.Print(), render.Options{Paper: page})
		if err != nil || made.Pages != 1 {
			t.Errorf("%s: %d pages, %v", n.Name, made.Pages, err)
		}
		text, u, o := render.Text(d), n.Top.Units, n.Top.Outer
		wants := []string{u.Nearest(o.Width() + 2*n.Top.Seam), u.Nearest(o.Height()), "Bias edges", "Needed by"}
		if k := p.Cuts().Backing; k != nil {
			wants = append(wants, u.AtLeast(k.WidthCut), u.AtLeast(k.HeightCut))
		}
		for _, want := range wants {
			if !strings.Contains(text, want) {
				t.Errorf("%s: %q is not said: %s", n.Name, want, text)
			}
		}
	}
}

// TestQuiltingFiles: what `quilting` makes, again over its own file, and what it refuses.
func TestQuiltingFiles(t *testing.T) {
	for _, name := range []string{"a.pdf", "a.svg", "a.DXF"} {
		folder := t.TempDir()
		for range 2 {
			code, out, complaints := asked(t, folder, "quilting", "small.quilt", "-o", name)
			if code != done || !strings.HasPrefix(out, "made: "+name) {
				t.Errorf("%s: code %d, %q, %s", name, code, out, complaints)
			}
		}
		if err := os.WriteFile(filepath.Join(folder, name), []byte("somebody else's"), 0o600); err != nil {
			t.Fatal(err)
		}
		if code, _, complaints := asked(t, folder, "quilting", "small.quilt", "-o", name); code != faulty || !strings.Contains(complaints, "--force") {
			t.Errorf("%s: code %d, %s", name, code, complaints)
		}
	}
	for arguments, says := range map[string]string{"-o a.dwg": "names end in .pdf, .svg or .dxf", "-o a.svg --paper a4": "name a PDF", "--paper a4": "name a PDF"} {
		code, out, complaints := asked(t, t.TempDir(), append([]string{"quilting", "small.quilt"}, strings.Fields(arguments)...)...)
		if code != misusing || out != "" || !strings.Contains(complaints, says) {
			t.Errorf("%s: code %d, %q, %q", arguments, code, out, complaints)
		}
	}
}
