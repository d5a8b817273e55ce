package render

import (
	"strings"
	"testing"

	"eighthturn/internal/document"
)

// An ampersand in Markdown begins no character reference (CommonMark 0.31, section 2.5), wherever the text stands.
func TestAmpersandsStayAsTheyAre(t *testing.T) {
	const name = "Salt &copy; Rope &#65; & Tar"
	d := document.Document{Title: name, Maker: name, Copyright: name, Cover: &document.Cover{Subtitle: name, Lines: []document.Text{document.Plain(name)}}, Sections: []document.Section{
		{Title: name, Blocks: []document.Block{
			document.Heading{Level: 1, Text: name}, document.Paragraph{Text: document.Plain(name)},
			document.List{Items: []document.Item{{Text: document.Plain(name)}}},
			document.Paragraph{Text: document.Text{{Text: name, Bold: true}}},
		}},
	}}
	files, err := Markdown(d, "law", Options{})
	if err != nil {
		t.Fatal(err)
	}
	text := string(files["law.md"])
	if n, escaped := strings.Count(text, "&"), strings.Count(text, `\&`); n != escaped || n < 9*3 {
		t.Errorf("%d of %d ampersands are escaped:\n%s", escaped, n, text)
	}
}
