//go:build judges

package preview

import (
	"bytes"
	"os/exec"
	"path/filepath"
	"testing"

	"eighthturn/internal/quilttest/judges"
)

// TestPrintedFiles: other programs read the PDF files, and find the layout's fabrics in them.
func TestPrintedFiles(t *testing.T) {
	qpdf, pdftotext := judges.Program(t, "Debian's qpdf", "qpdf"), judges.Program(t, "Debian's poppler-utils", "pdftotext")
	s := aSite(t, Options{})
	publishing(t, s, seafarers)
	for path, holds := range map[string][]string{
		"/save/picture.pdf": {""}, "/save/templates.pdf": {"harbour"}, "/save/pattern.pdf": {"Seafarers", "harbour"}, "/save/pattern-booklet.pdf": {"Seafarers", "harbour"}, "/save/pattern-crop-marks.pdf": {"Seafarers", "harbour"},
		"/save/cutting-maps.pdf": {"Cutting map", "harbour", "Rotary-cutting safety"}, "/save/sewing.pdf": {"Block A: web", "Offset", "Safety"},
	} {
		name := filepath.Join(t.TempDir(), "a.pdf")
		put(t, name, body(ask(s, path, nil)))
		if out, err := exec.Command(qpdf, "--check", name).CombinedOutput(); err != nil {
			t.Errorf("%s: %v: %s", path, err, out)
		}
		out, err := exec.Command(pdftotext, "-layout", name, "-").Output()
		must(t, err)
		for _, text := range holds {
			if !bytes.Contains(out, []byte(text)) {
				t.Errorf("%s does not say %q: %.300s", path, text, out)
			}
		}
	}
}
