package booklet

import (
	"bytes"
	"eighthturn/internal/quilttest/lay"
	"regexp"
	"slices"
	"strings"
	"testing"

	"eighthturn/internal/document"
	"eighthturn/internal/plan/cutting"
	"eighthturn/internal/quilttest/invent"
	"eighthturn/internal/quilttest/judges"
	"eighthturn/internal/render"
	"eighthturn/samples"
)

func sampleText(t testing.TB, name string) string {
	for _, s := range samples.All() {
		if s.Name == name {
			return s.Text
		}
	}
	t.Fatalf("there is no sample %q", name)
	return ""
}

// odd are layouts at the ends of what may be asked for.
func odd() map[string]string {
	fabrics := "fabric a #204060\nfabric b #f0e8d8\n"
	many := "strip 4\n"
	for i := range 40 {
		many += "fabric f" + numeral(i) + " #" + []string{"203040", "f0e0d0", "a04030", "408070"}[i%4] + "\n"
	}
	pool := "scraps all"
	for i := range 40 {
		pool += " f" + numeral(i)
	}
	many += pool + " by piece deal 7\nblock W web wedges all kites f1\ngrid\n W W W W W W W W\nrepeat down 8\n"
	return map[string]string{
		"one cell":     "strip 4\n" + fabrics + "block A ring wedges a b corners b\ngrid\n A\n",
		"plain cell":   "side 6\n" + fabrics + "block A plain piece a\ngrid\n A\n",
		"all tumblers": "strip 5\n" + fabrics + "block A tumblers pieces a b line 6 1/2\ngrid\n A A A\nrepeat down 5\n",
		"metric":       "units cm\nstrip 10\n" + fabrics + "block W web wedges a kites b\ngrid\n W W\n W W\nborder 5 a\nbinding 6 cut b\nbacking b\nbatting\n",
		"unicode":      "title \"Žluťoučký kůň — 夜の海 & <b>\"\ndesigner \"Ångström\"\nstrip 4\n" + fabrics + "block W web wedges a kites b\ngrid\n W W\n W W\n",
		"no title":     "strip 4\n" + fabrics + "block W web wedges a kites b\ngrid\n W W\n W W\nnote \"see Figure 99\"\n",
		"forty":        many,
		"hundred":      "strip 2\n" + fabrics + "block W web wedges a kites b\ngrid\n W W\n W W\nrepeat across 50 down 50\n",
		"tiny seams":   "seam 1/32 in\nstrip 3\n" + fabrics + "block W web wedges a kites b\ngrid\n W W\n W W\nborder 1 a\n",
	}
}

// judgedDocuments hands on the patterns of the samples, of odd layouts and of some invented ones.
func judgedDocuments(t *testing.T, with func(t *testing.T, r Reports, d document.Document)) {
	judgedLayouts(t, func(t *testing.T, text string) { with(t, study(t, text, cutting.Options{}), pattern(t, text)) })
}

// judgedLayouts hands on the layouts of those.
func judgedLayouts(t *testing.T, with func(t *testing.T, text string)) {
	run := func(name, text string) {
		t.Run(name, func(t *testing.T) { with(t, text) })
	}
	for _, s := range samples.All() {
		run(s.Name, s.Text)
	}
	for name, text := range odd() {
		run(name, text)
	}
	for seed := range uint64(judges.Of(12, 16)) {
		run("invented "+numeral(int(seed)), invent.Layout(seed))
	}
}

func TestAnEditorFindsNothing(t *testing.T) {
	printed := 0
	judgedDocuments(t, func(t *testing.T, r Reports, d document.Document) {
		if len(r.Cuts.Faults) > 0 {
			t.Skip("it cannot be cut, which the command refuses: " + r.Cuts.Faults[0].Message)
		}
		printed++
		for _, wrong := range edited(d, r) {
			t.Error(wrong)
		}
	})
	if printed < judges.Of(20, 24) {
		t.Errorf("only %d patterns were judged", printed)
	}
}

// replaced is a document with the first match of a pattern in its texts replaced.
func replaced(d document.Document, pattern, by string) document.Document {
	re := regexp.MustCompile(pattern)
	done := false
	return mapped(d, func(text string) string {
		if done || !re.MatchString(text) {
			return text
		}
		done = true
		at := re.FindStringIndex(text)
		return text[:at[0]] + re.ReplaceAllString(text[at[0]:at[1]], by) + text[at[1]:]
	})
}

func TestTheEditorCatches(t *testing.T) {
	r := study(t, sampleText(t, "lanterns"), cutting.Options{})
	d := Pattern(r, Options{})
	if wrong := edited(d, r); len(wrong) > 0 {
		t.Fatalf("the whole document has faults: %q", wrong)
	}
	for _, c := range []struct {
		name, pattern, by, want string
	}{
		{"a length that no report has", `squares of 3 1/2 in`, "squares of 3 21/64 in", "no report has"},
		{"a cut size that is gone", `.*2 1/2.*`, "", "is not in the text"},
		{"another purchase", `^[0-9/ ]+ yd$`, "7 1/8 yd", "is to be bought as"},
		{"a piece too many", `^([0-9]+) \+ ([0-9]+)$`, "999 + $2", "the plan has"},
		{"a column that is empty", `^[0-9]+ \+ [0-9]+$`, "", "is empty in all rows"},
		{"a thing too many from a strip", `^([0-9]+) squares of ([0-9/ ]+ in)`, "9$1 squares of $2", "the list has"},
		{"another binding", `^Binding: ([0-9]+) strips`, "Binding: 9$1 strips", "the binding"},
		{"sizes that do not add up", `finishes 1 in wide`, "finishes 3 in wide", "add up"},
		{"a block of another size", `Each block finishes at about [0-9/ ]+ in`, "Each block finishes at 4 in", "is said to finish"},
		{"an abbreviation that nobody knows", `Quilt as desired`, "Quilt 3 pcs as you like", "used and not explained"},
		{"capitals that nobody knows", `Quilt as desired`, "Quilt the LOF as desired", "is not explained"},
		{"an abbreviation that is not used", `^yd$`, "cm", "explained and not used"},
		{"a figure that is not there", `See Figure [0-9]+`, "See Figure 99", "referred to and not there"},
		{"a figure that nothing refers to", `Copy Figure ([0-9]+) and`, "Copy this page and", "nothing refers to"},
		{"a caption that is gone", `^Figure 3\.`, "Picture.", "follows Figure"},
		{"a wrong plural", `Make ([0-9]+) blocks`, "Make $1 block", "wrong number"},
		{"a border strip of another length", `^3 by 56 1/8 in$`, "3 by 56 in", "is sewn on as"},
		{"a triangle that is said to be square", `^ *short sides.*$`, " about 6 in square.", "of what is said"},
		{"a word that nobody explains", `^Kite$`, "Cat", "the word kite is used and not explained"},
		{"a word that is explained and not used", `^Kite$`, "Pinwheel", "the word pinwheel is explained and not used"},
		{"another word for the same piece", `[Bb]ackground pieces`, "stop pieces", "another word is used here"},
		{"an offset of another size", `extend a generous 3/16 in`, "extend a generous 1/4 in", "and not 2: Offset"},
		{"an offset that is not more but less", `extend a generous 3/16 in`, "extend a scant 3/16 in", "and not 2: Offset"},
		{"a seam that is pressed another way", `Press the seams of the block clockwise`, "Press the seams of the block counterclockwise", "and not 2: Press the seams of the block"},
		{"a row that is pressed another way", `to the right in (odd )?rows`, "to the left in rows", "and not 1: Press the seams between"},
		{"one of several", `([0-9]+) blocks across`, "1 blocks across", "wrong number"},
	} {
		broken := replaced(d, c.pattern, c.by)
		if c.name == "a cut size that is gone" {
			broken = mapped(d, func(text string) string { return strings.ReplaceAll(text, "2 1/2", "2 3/4") })
		}
		found := edited(broken, r)
		if !strings.Contains(strings.Join(found, "\n"), c.want) {
			t.Errorf("%s is not found: %q", c.name, found)
		}
	}
}

// TestPiecesOnNarrowPages: where what pieces are cut from stands above their rows, each stands below its own.
func TestPiecesOnNarrowPages(t *testing.T) {
	for _, s := range samples.All() {
		r := study(t, s.Text, cutting.Options{})
		for _, o := range []Options{{Paper: render.HalfLetter()}, {Large: true}} {
			d := Pattern(r, o)
			list := tables(d, "Cutting", "Line")
			if slices.ContainsFunc(list[0].Columns, func(c document.Column) bool { return c.Title == "From" }) {
				t.Errorf("%s: what pieces are cut from is a column where there is little room", s.Name)
			}
			for _, wrong := range append(wrongPieces(d, r), emptyColumns(d, r)...) {
				t.Errorf("%s, large %v: %s", s.Name, o.Large, wrong)
			}
		}
	}
}

func TestTheEditorCatchesPicturesWithoutWords(t *testing.T) {
	d := document.Document{Sections: []document.Section{{Blocks: []document.Block{document.Together{Blocks: []document.Block{document.Figure{}, document.Picture{}}}}}}}
	if wrong := wrongAlternatives(d, Reports{}); len(wrong) != 2 {
		t.Errorf("of two pictures without words %d are found", len(wrong))
	}
}

func TestTheSameBytes(t *testing.T) {
	text := sampleText(t, "flotsam")
	var last []byte
	for range 2 {
		printed, err := render.PDF(Pattern(Study(lay.Top(t, text), cutting.Options{}), Options{}), render.Options{})
		if err != nil {
			t.Fatal(err)
		}
		if last != nil && !bytes.Equal(last, printed.File) {
			t.Error("the same layout gave two patterns")
		}
		last = printed.File
	}
}

func TestNotesStandAtTheirPlaces(t *testing.T) {
	text := strings.Replace(sampleText(t, "starfish"), "grid\n", "note \"on the whole\"\nnote cover \"on the cover\"\nnote fabric \"on fabric\"\nnote cutting \"on cutting\"\nnote sewing \"on sewing\"\nnote grid \"on the grid\"\nnote border \"on the border\"\nnote finishing \"on finishing\"\nnote F \"on block F\"\n\ngrid\n", 1)
	d := pattern(t, text)
	for part, note := range map[string]string{
		"Before you begin": "on the whole", "Fabric requirements": "on fabric", "Cutting": "on cutting", "The blocks": "on sewing", "Laying out the blocks": "on the grid",
		"Joining the blocks": "on the border", "Finishing": "on finishing",
	} {
		if !hasNote(partOf(d, part), note) {
			t.Errorf("%s has not the note %q", part, note)
		}
	}
	if !hasNote(partOf(d, "The blocks"), "on block F") {
		t.Error("block F has not its note")
	}
	if !strings.Contains(d.Cover.Lines[len(d.Cover.Lines)-1].String(), "on the cover") {
		t.Error("the cover has not its note")
	}
}

func hasNote(list []document.Block, note string) bool {
	for _, b := range flat(list) {
		if isNote(b) && strings.Contains(strings.Join(joinedRuns(b), " "), note) {
			return true
		}
	}
	return false
}
