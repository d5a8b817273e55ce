package svgout

import (
	"fmt"
	"strings"
	"testing"
	"unicode/utf8"

	"eighthturn/internal/quilt"
)

// nastyTexts are texts that could break out of where they stand, or that XML cannot hold.
func nastyTexts() []string {
	list := []string{
		`</title><script>alert(1)</script>`, `"><image href="http://x.invalid/"/>`, `a' onload='x`, "&lt;", "]]>", "<![CDATA[", "-->", "<!--", "&#1;", "&nbsp;",
		"tab\there", "line\nbreak", "\r\n", "\xff", "\xed\xa0\x80", "\xc0\x80", "\xe2\x80", "\uFFFE", "\uFFFF", "\u0085", "\u2028", "\u202e right", "e\u0301", "👩‍👩‍👧", strings.Repeat("赤い", 2000),
		strings.Repeat("W", 400), "",
	}
	for c := range 0x21 {
		list = append(list, fmt.Sprintf("c%c!", rune(c)))
	}
	for c := rune(0x7f); c < 0xa0; c++ {
		list = append(list, fmt.Sprintf("c%c!", c))
	}
	return list
}

// held is a text as an XML document can hold it: what is no character of XML 1.0 (fifth
// edition, production 2) becomes U+FFFD.
func held(text string) string {
	var b strings.Builder
	for len(text) > 0 {
		r, n := utf8.DecodeRuneInString(text)
		text = text[n:]
		if r == '\t' || r == '\n' || r == '\r' || 0x20 <= r && r <= 0xd7ff || 0xe000 <= r && r <= 0xfffd || r >= 0x10000 {
			b.WriteRune(r)
		} else {
			b.WriteRune(utf8.RuneError)
		}
	}
	return b.String()
}

// texted is a top whose every text is the one given.
func texted(t *testing.T, text string) *quilt.Top {
	top := lay(t, layouts()["one"])
	top.Title, top.Credits.Designer, top.Credits.Copyright = text, text, text
	for i := range top.Fabrics {
		top.Fabrics[i].Name, top.Fabrics[i].Print = text, text
	}
	return top
}

// lawText says that a picture is well-formed and that a text stands in it as it was: as
// the title, in the metadata, as the name of each fabric's layer and, cut short or not, in the legend.
func lawText(text string, o Options, svg []byte) error {
	root, err := parse(svg)
	if err != nil {
		return err
	}
	want := held(text)
	title := want
	if title == "" {
		title = "Quilt top"
	}
	if got := root.children[0]; got.name != "title" || got.text != title {
		return fmt.Errorf("the title is %q, expected %q", got.text, title)
	}
	labels, titles, lines, credits := 0, 0, 0, 0
	for n := range root.all() {
		switch {
		case strings.HasPrefix(n.attr("id"), "fabric-"):
			if got := n.attr("inkscape:label"); got != want {
				return fmt.Errorf("the layer is called %q, expected %q", got, want)
			}
			labels++
		case n.name == "rdf:li" && n.text == want:
			credits++
		case n.name == "path" && len(n.children) > 0 && strings.HasPrefix(n.children[0].text, want+", "):
			titles++
		case n.name == "text" && (n.text == want || strings.HasPrefix(want, strings.TrimSuffix(n.text, "…"))):
			lines++
		}
	}
	if text != "" && credits != 3 {
		return fmt.Errorf("%d of title, author and rights are in the metadata", credits)
	}
	if o.View != Line && labels == 0 || !o.ByFabric && titles == 0 || o.Legend && o.View != Line && lines == 0 {
		return fmt.Errorf("%q names %d layers, %d patches and %d lines of the legend", want, labels, titles, lines)
	}
	return nil
}

func TestTextStaysText(t *testing.T) {
	for _, text := range nastyTexts() {
		top := texted(t, text)
		for _, o := range allOptions() {
			svg := drawn(t, top, o)
			for _, law := range []func([]byte) error{lawNames, lawNumbers, func(svg []byte) error { return lawText(text, o, svg) }} {
				if err := law(svg); err != nil {
					t.Errorf("%q, %+v: %v", text, o, err)
				}
			}
		}
	}
}

func TestTextThatGoesWrongIsCaught(t *testing.T) {
	o := Options{Legend: true}
	svg := drawn(t, texted(t, "a<b"), o)
	law := func(bad []byte) error { return lawText("a<b", o, bad) }
	if err := law(svg); err != nil {
		t.Fatal(err)
	}
	for _, bad := range []string{"a<b", "a&amp;lt;b", "ab", "a\x01b", "a\xffb", "a&#1;b", "a&nbsp;b"} {
		broken(t, law, svg, `<title>a&lt;b`, "<title>"+bad)
		broken(t, law, svg, `label="a&lt;b`, `label="`+bad)
	}
	broken(t, law, svg, `</svg>`, "")
	broken(t, law, svg, `</svg>`, "</svg><svg></svg>")
	broken(t, law, svg, `</svg>`, "</svg>x")
}

func TestLongNamesAreCutToFit(t *testing.T) {
	for _, text := range nastyTexts() {
		for _, widest := range []float64{0, 3, longestText} {
			cut := fitted(text, widest, boldWidth)
			if cut != text && !strings.HasSuffix(cut, "…") || cut == text && boldWidth(text) > widest {
				t.Errorf("%.20q in %g comes to %q", text, widest, cut)
			}
			if widest > 1 && boldWidth(cut) > widest {
				t.Errorf("%.20q is cut to %q, which is %g wide, not %g", text, cut, boldWidth(cut), widest)
			}
		}
	}
}

// TestAsMuchIsKeptAsFits: a name that is cut keeps as many letters as there is room for before the dots, without a blank before them.
func TestAsMuchIsKeptAsFits(t *testing.T) {
	const text = "midnight navy crackle on linen"
	for widest := 2.0; widest < textWidth(text); widest += 0.3 {
		most := 0
		for most < len(text) && textWidth(text[:most+1]+"…") <= widest {
			most++
		}
		if got, want := fitted(text, widest, textWidth), strings.TrimRight(text[:most], " ")+"…"; got != want {
			t.Errorf("in %g %q is cut to %q, expected %q", widest, text, got, want)
		}
	}
}
