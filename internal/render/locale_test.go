package render

import (
	"fmt"
	"strings"
	"testing"

	"golang.org/x/text/language"
	"golang.org/x/text/message"
	numbers "golang.org/x/text/number"

	"eighthturn/internal/document"
)

// wrongLocale says which locale is otherwise than the Unicode CLDR has it, by golang.org/x/text: a language, or a language with a
// country. Numbers in other digits than ours are written in ours here, with the point.
func wrongLocale(read func(string) (Locale, error)) error {
	for _, name := range strings.Fields(commaLanguages + pointLanguages) {
		for _, country := range append([]string{""}, strings.Fields(countries)...) {
			name := strings.TrimSuffix(name+"-"+country, "-")
			tag, err := language.Parse(name)
			if err != nil {
				return err
			}
			half := message.NewPrinter(tag).Sprint(numbers.Decimal(0.5))
			if l, err := read(name); err != nil || l.decimalComma != strings.Contains(half, ",") {
				return fmt.Errorf("%s: %+v, %v, where a half is %s", name, l, err, half)
			}
		}
	}
	return nil
}

// TestLocales: the decimal comma is where it is in use, and a locale that does not exist is refused.
func TestLocales(t *testing.T) {
	if err := wrongLocale(ReadLocale); err != nil {
		t.Error(err)
	}
	if wrongLocale(func(name string) (Locale, error) { return Locale{decimalComma: strings.HasPrefix(name, "d")}, nil }) == nil {
		t.Error("wrong locales are not noticed")
	}
	for name, comma := range map[string]bool{"de": true, "de_AT": true, "fr-CA": true, "pt_BR.UTF-8": true, "DE-ch": false, "EN_gb": false, "C.UTF-8": false} {
		if l, err := ReadLocale(name); l.decimalComma != comma || (err != nil) != (name[0] == 'C') {
			t.Errorf("%s: %+v, %v", name, l, err)
		}
	}
	for _, name := range []string{"", "qq", "de-XX", "klingon", "C", "de-de-de", "und", "../de", "1", strings.Repeat("de-", 1000)} {
		if _, err := ReadLocale(name); err == nil {
			t.Errorf("%.20q is taken for a locale", name)
		}
	}
}

// TestCSVFor: with the decimal comma semicolons part the cells; text with commas and semicolons stays one cell; letters beyond ASCII
// have a byte-order mark before them, and others none.
func TestCSVFor(t *testing.T) {
	of := func(text string) document.Document {
		return document.Document{Sections: []document.Section{{Blocks: []document.Block{document.Table{Columns: []document.Column{{Title: "a"}, {Title: "b"}},
			Rows: []document.Row{{Cells: []document.Cell{{Text: document.Plain(text)}, {Number: "-1.25"}}}}}}}}}
	}
	for _, c := range []struct{ text, locale, want string }{
		{"x, 1.5; y", "en", "a,b\n\"x, 1.5; y\",-1.25\n"}, {"x, 1.5; y", "de", "a;b\n\"x, 1.5; y\";-1,25\n"}, {"grün", "de", "\ufeffa;b\ngrün;-1,25\n"}, {"grün", "en", "\ufeffa,b\ngrün,-1.25\n"},
	} {
		l, err := ReadLocale(c.locale)
		if got := CSVFor(of(c.text), l); err != nil || got != c.want {
			t.Errorf("%s, %s: %q, expected %q", c.text, c.locale, got, c.want)
		}
	}
}
