package main

import (
	"bytes"
	"encoding/json"
	"os"
	"path/filepath"
	"slices"
	"strings"
	"testing"
	"unicode/utf8"

	"github.com/spf13/cobra"

	"eighthturn/internal/quilttest/judges"
)

// What files of each ending begin with or hold, by their own standards; a text has no mark.
func isOfKind(ending string, file []byte) bool {
	switch strings.ToLower(ending) {
	case ".svg":
		return bytes.HasPrefix(file, []byte("<?xml")) && bytes.Contains(file, []byte("<svg"))
	case ".png":
		return bytes.HasPrefix(file, []byte("\x89PNG\r\n\x1a\n"))
	case ".jpg", ".jpeg":
		return bytes.HasPrefix(file, []byte("\xff\xd8\xff"))
	case ".webp":
		return bytes.HasPrefix(file, []byte("RIFF")) && bytes.HasPrefix(file[8:], []byte("WEBP"))
	case ".pdf":
		return bytes.HasPrefix(file, []byte("%PDF-"))
	case ".html", ".htm":
		return bytes.HasPrefix(bytes.ToLower(file), []byte("<!doctype html>"))
	case ".dxf":
		return bytes.Contains(file, []byte("SECTION")) && bytes.HasSuffix(bytes.TrimSpace(file), []byte("EOF"))
	case ".xlsx":
		return bytes.HasPrefix(file, []byte("PK\x03\x04"))
	case ".gpl":
		return bytes.HasPrefix(file, []byte("GIMP Palette"))
	case ".ase":
		return bytes.HasPrefix(file, []byte("ASEF"))
	case ".css":
		return bytes.Contains(file, []byte("{")) && bytes.Contains(file, []byte("--"))
	case ".json":
		return json.Valid(file)
	case ".quilt", ".txt", ".hex", ".csv", ".md":
		return utf8.Valid(file) && !bytes.Contains(file, []byte{0})
	}
	return false
}

// namesTried are names with the endings of everything that any command writes, as they are and in capitals, and others.
func namesTried(cmds []*cobra.Command) []string {
	list := []string{"x.ai", "x.docx", "x.heic", "x.eps", "x.svgz", "x.tif", "x.gif", "x.avif", "x", "x.", "svg", "x.svg.bak", "x.svg ", "x.pdf.", "x.mdx", "x.doc", "x.aco", ".svg", ".pdf"}
	for _, cmd := range cmds {
		for _, e := range endingsOf(cmd) {
			list = append(list, "x"+e, "X"+strings.ToUpper(e))
		}
	}
	slices.Sort(list)
	return slices.Compact(list)
}

// endingsOf are those that a command says it writes, nil where it has no option for a name.
func endingsOf(cmd *cobra.Command) []string {
	f := cmd.Flags().Lookup(outputOption)
	if f == nil {
		return nil
	}
	return mapped(f.Annotations[cobra.BashCompFilenameExt], func(e string) string { return "." + e })
}

// misnamed says what is wrong with what a command did with a name, "" for nothing.
func misnamed(endings []string, name string, r ran, file []byte) string {
	ending := filepath.Ext(name)
	switch taken := slices.Contains(endings, strings.ToLower(ending)) && name != ending; {
	case taken && r.code != 0:
		return "is refused"
	case taken && !isOfKind(ending, file):
		return "gets a file of another kind"
	case taken:
		return ""
	case r.code != 2 || file != nil:
		return "is not refused"
	case !slices.ContainsFunc(endings, func(e string) bool { return strings.Contains(r.err, " -o ") && strings.Contains(r.err, e) }):
		return "is refused without a word of what is written"
	}
	return ""
}

// TestANameMeansItsFormat: every command that writes a file under a name writes what the name's ending says, in small letters and in
// capitals, and refuses every other ending, with nothing written.
func TestANameMeansItsFormat(t *testing.T) {
	first := map[string][]string{"new": {"new", "rings"}, "palette": {"palette", "tidewater"}, "chart": {"chart", "sides"}}
	var cmds []*cobra.Command
	for _, cmd := range commands(testConsole()) {
		if f := cmd.Flags().Lookup(outputOption); f != nil {
			if cmds = append(cmds, cmd); len(endingsOf(cmd)) == 0 {
				t.Errorf("%s does not say which endings it writes", cmd.Name())
			}
		}
	}
	if len(cmds) < 6 {
		t.Fatalf("only %d commands write files", len(cmds))
	}
	layout := filepath.Join(t.TempDir(), "small.quilt")
	if err := os.WriteFile(layout, []byte("strip 4\nfabric a #203040\nfabric b #e0d0c0\nfabric c stripes a 1 b 1/2\nstrip-set s a 2 1/4 b rest\nblock W web wedges s kites b\ngrid\n W W\n W W\n"), 0o600); err != nil {
		t.Fatal(err)
	}
	tried := 0
	for _, cmd := range cmds {
		args := first[cmd.Name()]
		if args == nil {
			args = []string{cmd.Name(), layout}
		}
		switch cmd.Name() {
		case "audition":
			args = append(args, "a", "#102030", "#304050")
		case "motifs":
			args = append(args, "c", "--count", "2")
		}
		var small []string // nobody looks at them
		switch {
		case cmd.Flags().Lookup(longestOption) != nil:
			small = []string{"--" + longestOption, "2in"}
		case cmd.Flags().Lookup(canvasOption) != nil:
			small = []string{"--" + canvasOption, "400x400"}
		}
		for _, name := range namesTried(cmds) {
			if tried++; tried%judges.Of(2, 1) != 0 {
				continue
			}
			folder := t.TempDir()
			path := filepath.Join(folder, name)
			args := append(slices.Clone(args), "-o", path)
			if !strings.HasSuffix(strings.ToLower(name), ".svg") {
				args = append(args, small...)
			}
			r := runIn(t, args...)
			file, _ := os.ReadFile(path)
			if wrong := misnamed(endingsOf(cmd), name, r, file); wrong != "" {
				t.Errorf("%s -o %q %s: code %d, %s", cmd.Name(), name, wrong, r.code, r.err)
			}
			if left, _ := os.ReadDir(folder); r.code != 0 && len(left) > 0 {
				t.Errorf("%s -o %q leaves %s", cmd.Name(), name, left[0].Name())
			}
		}
	}
}

// TestMisnamedFilesAreSeen: the law sees what it is to catch.
func TestMisnamedFilesAreSeen(t *testing.T) {
	svg, says := []byte("<?xml?><svg/>"), ran{code: 2, err: "names end in .svg: for example -o x.svg"}
	for name, c := range map[string]struct {
		name string
		r    ran
		file []byte
	}{
		"another kind":       {"x.png", ran{}, svg},
		"another ending":     {"x.dxf", ran{}, svg},
		"refused":            {"x.SVG", says, nil},
		"nothing said":       {"x.dxf", ran{code: 2, err: "no"}, nil},
		"said and written":   {"x.dxf", says, svg},
		"refused as a fault": {"x.dxf", ran{code: 1, err: says.err}, nil},
		"an ending alone":    {".svg", ran{}, svg},
	} {
		if misnamed([]string{".svg", ".png"}, c.name, c.r, c.file) == "" {
			t.Errorf("it does not see: %s", name)
		}
	}
	if wrong := misnamed([]string{".svg"}, "x.svg", ran{}, svg); wrong != "" {
		t.Error(wrong)
	}
}
