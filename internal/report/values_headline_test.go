package report

import (
	"os"
	"path/filepath"
	"strings"
	"testing"

	"eighthturn/internal/document"
	"eighthturn/internal/plan/contrast"
	"eighthturn/internal/quilttest/judges"
	"eighthturn/internal/quilttest/lay"
)

// headlineText is what the headline says, but for the distance.
func headlineText(s document.Section) string {
	var parts []string
	for _, b := range s.Blocks {
		if p, ok := b.(document.Paragraph); ok && !strings.HasPrefix(p.Text.String(), "Judged from") {
			parts = append(parts, p.Text.String())
		}
	}
	return strings.Join(parts, " ")
}

// tooLong says what is wrong with a headline's length and its first letters, "" for nothing.
func tooLong(text string) string {
	sentences := strings.Split(strings.TrimSuffix(text, "."), ". ")
	if len(sentences) > 3 {
		return "more than three sentences"
	}
	for _, s := range sentences {
		if first := s[:1]; first != strings.ToUpper(first) {
			return "a sentence begins small"
		}
	}
	return ""
}

// TestHeadlinesAreShort: one to three sentences for every layout that was judged.
func TestHeadlinesAreShort(t *testing.T) {
	files, err := filepath.Glob("../../testdata/values/*/*.quilt")
	if err != nil || len(files) < 80 {
		t.Fatalf("%d layouts: %v", len(files), err)
	}
	for _, file := range judges.Some(files, 20) {
		text, err := os.ReadFile(file)
		if err != nil {
			t.Fatal(err)
		}
		said := headlineText(newValues(&Plans{Top: lay.Top(t, string(text))}).headline())
		if fault := tooLong(said); fault != "" {
			t.Errorf("%s: %s: %s", filepath.Base(file), fault, said)
		}
		if tooLong(said+" One more. And one. And another.") == "" {
			t.Errorf("%s: three sentences too many go unnoticed", filepath.Base(file))
		}
	}
}

// TestVerdictsInWords: what a figure that does not read does, of one and of several.
func TestVerdictsInWords(t *testing.T) {
	v := &values{}
	for verdict, want := range map[contrast.Verdict][2]string{
		contrast.Faint:        {"hardly shows", "hardly show"},
		contrast.OutlineOnly:  {"shows as an outline only", "show as an outline only"},
		contrast.FromAfarOnly: {"has soft edges", "have soft edges"},
		contrast.Lost:         {"is lost", "are lost"},
	} {
		for n, says := range want {
			if got := v.becomes(&contrast.Figure{Sort: contrast.Web, Count: n + 1}, verdict); got != says {
				t.Errorf("%d that are %s: %s, want %s", n+1, verdict, got, says)
			}
		}
	}
}
