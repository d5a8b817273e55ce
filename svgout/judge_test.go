//go:build judges

package svgout

import (
	"bytes"
	"os"
	"os/exec"
	"path/filepath"
	"regexp"
	"strings"
	"testing"

	"eighthturn/internal/quilttest/judges"
)

// docType names the W3C's document type definition of SVG 1.1 (second edition, 2011), which
// the catalogue of Debian's w3c-sgml-lib finds on the disk.
const docType = `<!DOCTYPE svg PUBLIC "-//W3C//DTD SVG 1.1//EN" "http://www.w3.org/Graphics/SVG/1.1/DTD/svg11.dtd">`

// forTheDefinition is a picture as SVG 1.1 knows it: the definition has no place for names
// of other vocabularies, so the attributes that make layers of groups are left out, and
// their namespace, and what the metadata hold.
func forTheDefinition(svg []byte) []byte {
	svg = regexp.MustCompile(` (inkscape|sodipodi):[a-z]+="[^"]*"|\s+xmlns:(inkscape|sodipodi)="[^"]*"`).ReplaceAll(svg, nil)
	svg = regexp.MustCompile(`<metadata>.*</metadata>`).ReplaceAll(svg, []byte("<metadata></metadata>"))
	return bytes.Replace(svg, []byte("?>\n"), []byte("?>\n"+docType+"\n"), 1)
}

// validated asks xmllint whether files follow the definition; what it says is "" if so.
func validated(t *testing.T, files ...string) string {
	t.Helper()
	xmllint := judges.Program(t, "Debian's libxml2-utils", "xmllint")
	out, err := exec.Command(xmllint, append([]string{"--nonet", "--noout", "--valid"}, files...)...).CombinedOutput()
	if bytes.Contains(out, []byte("svg11.dtd")) && bytes.Contains(out, []byte("load")) {
		t.Fatalf("xmllint finds no definition of SVG 1.1 offline: Debian's w3c-sgml-lib; it says %s", out)
	}
	if err == nil && len(out) == 0 {
		return ""
	}
	return string(out)
}

func TestTheDefinitionOfSVGHolds(t *testing.T) {
	dir := t.TempDir()
	var files []string
	for _, top := range tops(t) {
		for i, o := range allOptions() {
			name := filepath.Join(dir, strings.ReplaceAll(top.name, ".", "-")+string(rune('a'+i))+".svg")
			if err := os.WriteFile(name, forTheDefinition(drawn(t, top.Top, o)), 0o600); err != nil {
				t.Fatal(err)
			}
			files = append(files, name)
		}
	}
	if out := validated(t, files...); out != "" {
		t.Errorf("%.3000s", out)
	}
}

func TestTheDefinitionCatches(t *testing.T) {
	svg := string(forTheDefinition(drawn(t, lapTop(t), Options{Legend: true})))
	for _, bad := range []string{`<path data-x="1" `, `<path ID="x" `, `<patch `, `<path id="quilt 1" `, `<path id="r1c1p3" `} {
		name := filepath.Join(t.TempDir(), "bad.svg")
		if err := os.WriteFile(name, []byte(strings.Replace(svg, "<path ", bad, 1)), 0o600); err != nil {
			t.Fatal(err)
		}
		if out := validated(t, name); out == "" {
			t.Errorf("%s was not caught", bad)
		}
	}
}
