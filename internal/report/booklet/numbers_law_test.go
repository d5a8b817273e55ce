package booklet

import (
	"fmt"
	"regexp"
	"slices"
	"strconv"
	"strings"
	"testing"

	"golang.org/x/text/unicode/norm"

	"eighthturn/internal/blocks"
	"eighthturn/internal/document"
	"eighthturn/internal/measure"
	"eighthturn/internal/plan/cutting"
	"eighthturn/internal/quilt"
	"eighthturn/internal/quilttest/invent"
	"eighthturn/internal/render"
	"eighthturn/internal/report"
	"eighthturn/samples"
)

// These laws read the finished text and compare its numbers with the cutting plan line by line; no word of theirs comes
// from the package.

// textOf is a document as its Markdown, unescaped.
func textOf(t *testing.T, d document.Document) string {
	t.Helper()
	files, err := render.Markdown(d, "pattern", render.Options{})
	if err != nil {
		t.Fatal(err)
	}
	return strings.ReplaceAll(string(files["pattern.md"]), `\`, "")
}

// rowsBelow are the rows of the tables with a first line like head, by the last heading above them.
func rowsBelow(text string, head *regexp.Regexp) map[string][][]string {
	rows := map[string][][]string{}
	title, inside := "", false
	for _, line := range strings.Split(text, "\n") {
		switch {
		case strings.HasPrefix(line, "#"):
			title = strings.TrimLeft(line, "# ")
		case !strings.HasPrefix(line, "|"):
			inside = false
		case head.MatchString(line):
			inside = true
		case inside && strings.Trim(line, "|-: ") != "":
			var cells []string
			for _, c := range strings.Split(strings.Trim(line, "|"), "|") {
				cells = append(cells, strings.TrimSpace(c))
			}
			rows[title] = append(rows[title], cells)
		}
	}
	return rows
}

// lineName is what the pieces of a line are called where they are listed.
func lineName(top *quilt.Top, line *cutting.Line) string {
	edging, square := top.Patches[line.Patches[0]].Cell < 0, line.Piece.Shape == blocks.Square
	switch only := len(top.CutFacts.Borders) == 1; {
	case line.Border >= 0 && square && only:
		return "border corner square"
	case line.Border >= 0 && only:
		return "border strip"
	case line.Border >= 0 && square:
		return fmt.Sprintf("corner square for border %d", line.Border+1)
	case line.Border >= 0:
		return fmt.Sprintf("strip for border %d", line.Border+1)
	case edging && square:
		return "post"
	case edging:
		return "sash"
	case line.Piece.Hand != cutting.Either:
		return line.Piece.Hand.String() + " " + line.Piece.Shape.String()
	case line.PrintPlace >= 0:
		return report.CutAs(&top.Cuts[line.PrintPlace]) + " " + line.Piece.Shape.String()
	}
	return line.Piece.Shape.String()
}

var pluralWords = regexp.MustCompile(`^(?:\d+ )?(.*?)(es|s)?( for border \d+)?(?:, \d.*)?$`)

// singular is a name in a row, as lineName has it.
func singular(cell string) string {
	m := pluralWords.FindStringSubmatch(strings.ToLower(cell))
	if m[2] == "es" && !strings.HasSuffix(m[1], "ash") {
		m[1] += "e"
	}
	return m[1] + m[3]
}

// different says how two lists differ, "" where they hold the same in any order.
func different(what string, got, want []string) []string {
	slices.Sort(got)
	slices.Sort(want)
	if slices.Equal(got, want) {
		return nil
	}
	return []string{fmt.Sprintf("%s: the text has %q, the plan %q", what, got, want)}
}

// wrongCuttingTables compares every line of the table of pieces with the plan: what it is, of which fabric, how many, left
// and right.
func wrongCuttingTables(text string, r Reports) (wrong []string, lines int) {
	var got, want []string
	for _, list := range rowsBelow(text, regexp.MustCompile(`^\| Line \| Piece \| From `)) {
		for _, row := range list {
			cloth := row[2][strings.LastIndex(row[2], ")")+1:] // behind the letter and the color
			number, hands := row[len(row)-2], row[len(row)-1]
			if _, err := strconv.Atoi(hands); err == nil { // no piece of the quilt has a hand
				number, hands = hands, ""
			}
			got = append(got, row[0]+strings.TrimRight(cloth, " ")+" "+row[1]+": "+number+" "+hands)
		}
	}
	for i := range r.Cuts.Lines {
		line := &r.Cuts.Lines[i]
		cloth := ""
		if line.Fabric >= 0 {
			f := &r.Cuts.Fabrics[line.Fabric]
			cloth = " " + norm.NFC.String(f.Name)
		} else {
			cloth = " strip set " + norm.NFC.String(r.Cuts.SetName(line.Set)) + map[bool]string{true: " reversed"}[line.Reversed]
		}
		hands := ""
		if line.Left+line.Right > 0 && line.Piece.Hand == cutting.Either {
			hands = fmt.Sprintf("%d + %d", line.Left, line.Right)
		}
		want = append(want, fmt.Sprintf("%d%s %s: %d %s", i+1, cloth, lineName(r.Top, line), line.Pieces, hands))
	}
	return different("the table of pieces", got, want), len(want)
}

// wrongBorderTables compares the pieces of each border, where they are sewn on, with the plan.
func wrongBorderTables(text string, r Reports) (wrong []string, lines int) {
	rows := rowsBelow(text, regexp.MustCompile(`^\| Pieces \| Cut to \|`))
	want := map[string][]string{}
	for i := range r.Cuts.Lines {
		if line := &r.Cuts.Lines[i]; line.Border >= 0 {
			title := "Border"
			if len(r.Top.CutFacts.Borders) > 1 {
				title = fmt.Sprintf("Border %d", line.Border+1)
			}
			want[title] = append(want[title], fmt.Sprintf("%d %s", line.Pieces, borderName(r.Top, line)))
			lines++
		}
	}
	got := map[string][]string{}
	for title, list := range rows {
		for _, row := range list {
			n, _, _ := strings.Cut(row[0], " ")
			got[title] = append(got[title], n+" "+singular(row[0]))
		}
	}
	for title := range want {
		wrong = append(wrong, different(title, got[title], want[title])...)
	}
	if len(got) > len(want) {
		wrong = append(wrong, fmt.Sprintf("borders are sewn on that the plan has not: %q", got))
	}
	return wrong, lines
}

// borderName is what the pieces of a border are called where they are sewn on: strips by their sides.
func borderName(top *quilt.Top, line *cutting.Line) string {
	if line.Piece.Shape == blocks.Square {
		return lineName(top, line)
	}
	beside := map[bool]int{}
	for _, n := range line.Patches {
		var x []measure.NM
		for _, p := range top.Patches[n].Outline {
			x = append(x, p.X)
		}
		beside[slices.Max(x) <= top.Field.Min.X || slices.Min(x) >= top.Field.Max.X]++
	}
	switch len(line.Patches) {
	case beside[true]:
		return "side strip"
	case beside[false]:
		return "top and bottom strip"
	}
	return "strip"
}

// wrongKits compares every line of a kit with the plan of one quilt.
func wrongKits(text string, one *cutting.Plan, top *quilt.Top) (wrong []string, lines int) {
	var got, want []string
	for _, row := range rowsBelow(text, regexp.MustCompile(`^\| Fabric \| Pieces \| Number \|`))["In each kit"] {
		fabric := strings.Fields(row[0])[2] // behind the letter and the colour
		switch {
		case strings.HasPrefix(row[1], "strips for the binding"):
			row[1] = "binding"
		case strings.HasPrefix(row[1], "fabric for the backing"):
			row[1] = "backing"
		}
		name := singular(row[1])
		if of, ok := strings.CutPrefix(row[1], "strips for strip set "); ok {
			name, _, _ = strings.Cut(of, ",")
		}
		got = append(got, fabric+" "+name+": "+row[2])
	}
	add := func(fabric, name string, n int) {
		if n > 0 {
			want = append(want, fmt.Sprintf("%s %s: %d", fabric, name, n))
		}
	}
	for i := range one.Fabrics {
		f := &one.Fabrics[i]
		for _, n := range f.Lines {
			add(f.Name, lineName(top, &one.Lines[n]), one.Lines[n].Pieces)
		}
		if top.CutFacts.Binding != nil && one.Binding != nil && top.CutFacts.Binding.Fabric == f.Index {
			add(f.Name, "binding", one.Binding.Strips)
		}
		if one.Backing != nil && one.BackingOf == f.Index {
			add(f.Name, "backing", 1)
		}
	}
	for i := range one.Sets { // sewn in class, of strips
		for _, band := range one.Sets[i].Bands {
			for _, run := range one.Sets[i].Runs {
				add(one.Fabrics[band.Fabric].Name, one.SetName(i), run.Sets)
			}
		}
	}
	return different("a kit", got, want), len(want)
}

// numberLayouts are the samples and some invented layouts that can be cut.
func numberLayouts() []string {
	var list []string
	for _, s := range samples.All() {
		list = append(list, s.Text)
	}
	for seed := range uint64(4) {
		list = append(list, invent.Layout(seed))
	}
	return list
}

func TestNumbersAreThePlans(t *testing.T) {
	pieces, borders := 0, 0
	for _, layout := range numberLayouts() {
		r := study(t, layout, cutting.Options{})
		text := patternText(t, layout)
		wrong, n := wrongCuttingTables(text, r)
		more, m := wrongBorderTables(text, r)
		pieces, borders = pieces+n, borders+m
		for _, w := range append(wrong, more...) {
			t.Errorf("%s: %s", r.Top.Title, w)
		}
	}
	if pieces < 60 || borders < 10 {
		t.Errorf("only %d lines of pieces and %d of borders were compared", pieces, borders)
	}
}

func TestKitsAreThePlans(t *testing.T) {
	lines := 0
	for _, s := range samples.All() {
		r := study(t, s.Text, cutting.Options{Copies: 3})
		wrong, n := wrongKits(textOf(t, Handout(r, Options{})), study(t, s.Text, cutting.Options{}).Cuts, r.Top)
		for _, w := range wrong {
			t.Errorf("%s: %s", s.Name, w)
		}
		lines += n
	}
	if lines < 50 {
		t.Errorf("only %d lines of kits were compared", lines)
	}
}

// A number in the text that is one more is found.
func TestNumbersCatch(t *testing.T) {
	lanterns, shutters := sampleText(t, "lanterns"), sampleText(t, "shutters")
	for what, c := range map[string]struct {
		layout, pattern, by string
	}{
		"a piece too many":        {lanterns, `(\| kite \|.*\| )96( \|)`, "${1}97$2"},
		"a left one too many":     {lanterns, `(\d+)( \+ \d+)`, "9$1$2"},
		"another piece":           {lanterns, `\| kite \|`, "| square |"},
		"another fabric's piece":  {lanterns, `(\| kite \|.*\) )\S+`, "${1}another"},
		"a line that is gone":     {lanterns, `\n.*\| kite \|.*\n`, "\n"},
		"a border strip too many": {shutters, `(\| border strip \|.*\| )2( \|)`, "${1}3$2"},
		"one to be sewn on":       {shutters, `\| 2 (side strips \|)`, "| 3 $1"},
		"strips for other sides":  {shutters, `\| 2 side strips \|`, "| 2 top and bottom strips |"},
		"a sash too many":         {shutters, `(\| sash \|.*\| )82( \|)`, "${1}83$2"},
	} {
		text, r := patternText(t, c.layout), study(t, c.layout, cutting.Options{})
		at := regexp.MustCompile(c.pattern).FindStringIndex(text)
		if at == nil {
			t.Errorf("%s: nothing is like %s", what, c.pattern)
			continue
		}
		text = text[:at[0]] + regexp.MustCompile(c.pattern).ReplaceAllString(text[at[0]:at[1]], c.by) + text[at[1]:]
		pieces, _ := wrongCuttingTables(text, r)
		borders, _ := wrongBorderTables(text, r)
		if len(pieces)+len(borders) == 0 {
			t.Errorf("%s goes unseen", what)
		}
	}
	r := study(t, lanterns, cutting.Options{Copies: 3})
	kit := strings.Replace(textOf(t, Handout(r, Options{})), "| kites | 96 |", "| kites | 97 |", 1)
	if wrong, _ := wrongKits(kit, study(t, lanterns, cutting.Options{}).Cuts, r.Top); len(wrong) == 0 {
		t.Error("a kit with a piece too many goes unseen")
	}
}
