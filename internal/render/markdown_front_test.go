package render

import (
	"regexp"
	"strconv"
	"strings"
	"testing"

	"eighthturn/internal/document"
	"eighthturn/internal/measure"
)

// fronted is a document with all that stands in front of Markdown, and a back cover.
func fronted() document.Document {
	square := document.Picture{Alternative: "a square", Of: document.Drawing{Max: measure.Point{X: measure.Inch, Y: measure.Inch}}}
	return document.Document{
		Title: `Eight "points" \ of *light*: #1`, Maker: "Designed by Ada", Author: "Ada", Copyright: "2027 Ada", Subject: "a law's document",
		Cover: &document.Cover{Subtitle: "Quilt pattern", Picture: &square},
		Sections: []document.Section{
			{Title: "Begin", Blocks: []document.Block{document.Paragraph{Text: document.Plain("lead")}, square, document.Heading{Text: "Tools"}}},
			{Back: true, Blocks: []document.Block{document.Together{Blocks: []document.Block{document.Heading{Text: `Eight "points" \ of *light*: #1`}, document.Paragraph{Text: document.Plain("size")}, square,
				document.Heading{Text: "Skills"}, document.Paragraph{Text: document.Plain("Version 2 | 2027 Ada")}}}}},
		},
	}
}

// frontOf are the texts that stand in front of Markdown by their words, as YAML 1.2.2 (7.3.1) and CommonMark 0.31 (2.4) read them; nil
// where there is none, or YAML would read it in another way.
func frontOf(text string) map[string]string {
	inner, ok := strings.CutPrefix(text, "---\n")
	inner, _, end := strings.Cut(inner, "\n---\n\n")
	if !ok || !end {
		return nil
	}
	read := map[string]string{}
	for _, line := range strings.Split(inner, "\n") {
		m := regexp.MustCompile(`^([a-z]+): ("(?:[^"\\]|\\["\\abfnrtv]|\\x[0-9a-f]{2}|\\u[0-9a-f]{4}|\\U[0-9a-f]{8})*")$`).FindStringSubmatch(line)
		if m == nil {
			return nil
		}
		value, _ := strconv.Unquote(m[2])
		read[m[1]] = regexp.MustCompile(`\\([!-/:-@\[-`+"`"+`{-~])`).ReplaceAllString(value, "$1")
	}
	return read
}

// TestWhatStandsInFront: title, subtitle, author and copyright notice stand in front of Markdown, where programs that make books look for
// them, and not once more beneath but for the back cover, whose heading is another; chapters are of the first level.
func TestWhatStandsInFront(t *testing.T) {
	d := fronted()
	files, err := Markdown(d, "law", Options{})
	if err != nil {
		t.Fatal(err)
	}
	text := string(files["law.md"])
	read := frontOf(text)
	for word, want := range map[string]string{"title": d.Title, "subtitle": "Quilt pattern", "author": "Ada", "rights": "2027 Ada", "description": "a law's document", "lang": "en-US"} {
		if read[word] != want {
			t.Errorf("%s: %q, expected %q", word, read[word], want)
		}
	}
	_, body, _ := strings.Cut(text, "\n---\n\n")
	for said, most := range map[string]int{"Designed by": 0, "Quilt pattern": 1, "light": 1} { // at the back
		if strings.Count(body, said) > most {
			t.Errorf("%q is said twice: %s", said, text)
		}
	}
	if got := regexp.MustCompile(`(?m)^#+ .*`).FindAllString(body, -1); strings.Join(got, ", ") != "# Begin, ## Tools, # Eight \"points\" \\\\ of \\*light\\*: \\#1: Quilt pattern, ## Skills" {
		t.Errorf("headings: %q", got)
	}
	d.Author = ""
	if files, _ = Markdown(d, "law", Options{}); !strings.Contains(string(files["law.md"]), "\n\nDesigned by Ada\n") || frontOf(string(files["law.md"]))["author"] != "" {
		t.Error("who made it is not said where there is no bare name")
	}
	if frontOf("---\ntitle: a: b\n---\n\n") != nil || frontOf("# t\n") != nil {
		t.Error("a front that is none is not noticed")
	}
	for seed := range uint64(60) {
		d, _ := invent(seed)
		files, err := Markdown(d, "law", Options{})
		if err != nil {
			t.Fatal(err)
		}
		if got := frontOf(string(files["law.md"]))["title"]; got != line(d.Title) {
			t.Errorf("seed %d: %q, expected %q", seed, got, line(d.Title))
		}
	}
}

// TestTheBackHoldsTogether: on the back cover and on pages to be copied a picture comes next to its heading, with which programs keep it,
// and elsewhere where it stands; the copyright notice is said once where the back cover says it.
func TestTheBackHoldsTogether(t *testing.T) {
	for name, change := range map[string]func(*document.Document){
		"back":  func(*document.Document) {},
		"alone": func(d *document.Document) { d.Sections[1].Back, d.Sections[1].Alone = false, true },
		"other": func(d *document.Document) { d.Sections[1].Back = false },
	} {
		d := fronted()
		change(&d)
		files, err := Markdown(d, "law", Options{})
		if err != nil {
			t.Fatal(err)
		}
		text := string(files["law.md"])
		if next := regexp.MustCompile(`# Eight .*\n\n!\[a square\].*\n\nsize\n`).MatchString(text); next != (name != "other") {
			t.Errorf("%s: the picture is next to the heading: %v: %s", name, next, text)
		}
		if !regexp.MustCompile(`# Begin\n\nlead\n\n!\[a square\]`).MatchString(text) {
			t.Errorf("%s: a picture elsewhere has moved: %s", name, text)
		}
		want := 3 // in front, at the back, at the end
		if d.Sections[1].Back {
			want = 2
		}
		if n := strings.Count(text, "2027 Ada"); n != want {
			t.Errorf("%s: the copyright notice is said %d times, expected %d", name, n, want)
		}
	}
}
