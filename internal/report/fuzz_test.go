package report

import (
	"bytes"
	"encoding/json"
	"fmt"
	"html"
	"maps"
	"regexp"
	"slices"
	"strconv"
	"strings"
	"testing"

	"golang.org/x/text/unicode/norm"

	"eighthturn/internal/document"
	"eighthturn/internal/measure"
	"eighthturn/internal/plan/cutting"
	"eighthturn/internal/quilt"
	"eighthturn/internal/quilttest/invent"
	"eighthturn/internal/quilttest/judges"
	"eighthturn/internal/render"
	"eighthturn/layout"
	"eighthturn/samples"
)

// FuzzPlans asks every plan and every report of any text that the language accepts, in its sizes and colorways, and holds them to the
// laws: what is cut covers what is sewn, what is bought covers what is cut, columns add up, a length reads the same in every form, and
// no form can fail.
func FuzzPlans(f *testing.F) {
	for _, s := range judges.Some(samples.All(), 1) {
		f.Add(s.Text, uint8(0))
	}
	for seed := range uint64(judges.Of(1, 40)) {
		f.Add(invent.Layout(seed), uint8(seed))
	}
	for _, text := range append(fuzzedTexts(), judges.Some(invent.Printed(), 1)...) {
		f.Add(text, uint8(3))
	}
	f.Fuzz(func(t *testing.T, text string, choice uint8) {
		if len(text) > 6000 {
			return
		}
		design, _, _ := layout.ReadWith(text, invent.Photo)
		if design == nil || design.Columns*design.Rows > 150 {
			return
		}
		for _, top := range variants(quilt.Lay(design)) {
			if len(top.Patches) > 1200 {
				continue // as many as a test has time for
			}
			p := &Plans{Top: top, Cutting: fuzzedOptions(choice), Exact: choice&16 > 0, BothShop: choice&32 > 0}
			for _, wrong := range wrongReports(p) {
				t.Errorf("%q, %q: %s\n%s", top.Size, top.Colorway, wrong, text)
			}
		}
	})
}

// fuzzedTexts are layouts that go where invented ones seldom do.
func fuzzedTexts() []string {
	const fabrics = "fabric a #204060\nfabric b #f0e8d8\n"
	return []string{
		sizesLayout,
		"units cm\nstrip 10\n" + fabrics + "block W web wedges a kites b\ngrid\n W W\n W W\nborder 5 a\nbinding 6 cut b\nbacking b\nbatting\ncolorway dusk a #802010\nsize lap\nsize big across 3 border 7\n",
		"seam 1/32 in\nstrip 3\n" + fabrics + "block W web wedges a kites b\ngrid\n W W\nborder 1 a\n",
		"strip 5\n" + fabrics + "block A tumblers pieces a b line 6 1/2\ngrid\n A . A\nrepeat down 5\n",
	}
}

// fuzzedOptions are ways to cut by number.
func fuzzedOptions(choice uint8) cutting.Options {
	o := cutting.Options{LeastCloth: choice&1 > 0, CornersByCustom: choice&2 > 0, NoSpare: choice&4 > 0, DiagonalBorders: choice&64 > 0, Quarters: choice&128 > 0}
	if choice&8 > 0 {
		o.Copies = 3
	}
	return o
}

// variants are a top, its sizes and both in its colorways; no more than a test has time for.
func variants(top *quilt.Top) []*quilt.Top {
	list := []*quilt.Top{top}
	for i := range top.Sizes[:min(2, len(top.Sizes))] {
		list = append(list, top.Sizes[i].Top(nil))
	}
	for i := range top.Colorways[:min(2, len(top.Colorways))] {
		list = append(list, top.In(i))
	}
	return list
}

// wrongReports is which law the plans and reports of a top break.
func wrongReports(p *Plans) (list []string) {
	for _, err := range []error{uncovered(p.Top, p.Cuts()), wrongRows(newCuts(p), newCuts(p).table()), likeNames(newCuts(p), newCuts(p).SetName)} {
		if err != nil {
			list = append(list, err.Error())
		}
	}
	list = append(list, wrongSteps(p)...)
	for _, r := range Reports() {
		for _, wrong := range append(wrongForms(r.Make(p)), wrongJSON(r.Plan(p), p.Top.Units)...) {
			list = append(list, r.Name+": "+wrong)
		}
	}
	for _, s := range CuttingSheets(p).Sections {
		if sheet := s.Blocks[0].(document.Table); !slices.Contains(sizeSheets(), s.Title) {
			if err := wrongSheet(&sheet); err != nil {
				list = append(list, s.Title+": "+err.Error())
			}
		}
	}
	return list
}

// uncovered says which patch no line of a cutting plan supplies, which line cuts too few pieces, and which fabric is bought too short.
func uncovered(top *quilt.Top, p *cutting.Plan) error {
	supplied := make([]int, len(top.Patches))
	for i := range p.Lines {
		l := &p.Lines[i]
		for _, patch := range l.Patches {
			supplied[patch]++
		}
		if l.Pieces != len(l.Patches)*p.Copies || l.OnHand > l.Pieces || l.Left+l.Right > l.Pieces {
			return fmt.Errorf("line %d: %d pieces for %d patches of %d quilts, %d on hand", i+1, l.Pieces, len(l.Patches), p.Copies, l.OnHand)
		}
		if gives := l.Units * fromUnit(l.Piece.Method); len(p.Faults) == 0 && l.Piece.Method != cutting.Joined && gives < l.Pieces-l.OnHand {
			return fmt.Errorf("line %d: %d units give %d pieces, %d are wanted", i+1, l.Units, gives, l.Pieces-l.OnHand)
		}
	}
	for patch, lines := range supplied {
		if lines != 1 {
			return fmt.Errorf("patch %d is cut in %d lines", patch, lines)
		}
	}
	for i := range p.Fabrics {
		f := &p.Fabrics[i]
		if f.Purchase.Buy < f.Purchase.Need || f.Purchase.Need < f.LengthCut+f.BackingCut {
			return fmt.Errorf("%s: %d are cut, %d needed, %d bought", f.Name, f.LengthCut+f.BackingCut, f.Purchase.Need, f.Purchase.Buy)
		}
	}
	return nil
}

// fromUnit is how many pieces a square, a wedge or a rectangle gives that is cut off a strip.
func fromUnit(m cutting.Method) int {
	switch m {
	case cutting.TwiceOnDiagonal:
		return 4
	case cutting.OnceOnDiagonal, cutting.EndPairs:
		return 2
	}
	return 1
}

// wrongSteps is what the sewing plan says otherwise than the top: of blocks, spins and turns.
func wrongSteps(p *Plans) (list []string) {
	s := newSewer(p)
	sewn := make([]int, len(p.Top.Patches))
	for i := range s.Blocks {
		b := &s.Blocks[i]
		cells := 0
		for _, v := range b.Variants {
			for _, at := range v.Cells {
				cells++
				for _, patch := range at.Patches {
					sewn[patch]++
				}
			}
		}
		if cells != b.Count {
			list = append(list, fmt.Sprintf("block %s: %d are sewn, %d have a place", b.Label, b.Count, cells))
		}
	}
	for patch, blocks := range sewn {
		if (p.Top.Patches[patch].Cell >= 0) != (blocks == 1) {
			list = append(list, fmt.Sprintf("patch %d lies in %d blocks", patch, blocks))
		}
	}
	return append(append(list, wrongSpins(s, saidOfSpinning(s))...), turnsAmiss(s, s.turn)...)
}

var (
	blockEnd   = regexp.MustCompile(`</(?:td|th|p|li|h[1-6]|div|caption|summary|title|style|text)>|<br>`)
	anyTag     = regexp.MustCompile(`<[^>]*>`)
	fraction   = regexp.MustCompile(`([0-9])([½¼¾⅛⅜⅝⅞]|[⁰¹²³⁴⁵⁶⁷⁸⁹]+⁄)`)
	lineEnd    = regexp.MustCompile(`\n[ \x{a0}]*`)
	manyBlanks = regexp.MustCompile(`[ \x{a0}]{2,}`)
	someLength = regexp.MustCompile(`(?:(?:[0-9]+ )?[0-9]+/[0-9]+|[0-9]+\.[0-9]+) (?:in|cm|yd|m)\b`)
)

// wrongForms is which form of a document has other lengths than the others, or cannot be written.
func wrongForms(d document.Document) (list []string) {
	d = d.Without()
	forms := map[string]string{"text": render.Text(d)}
	page, err := render.HTML(d)
	if err != nil {
		return []string{err.Error()}
	}
	forms["HTML"] = html.UnescapeString(anyTag.ReplaceAllString(blockEnd.ReplaceAllString(string(page), " | "), ""))
	for _, form := range render.Forms() {
		said, err := form.Write(d, render.Locale{})
		if err != nil {
			list = append(list, form.Name+": "+err.Error())
		}
		if form.Name == render.MarkdownForm {
			forms[form.Name] = said
		}
	}
	if _, err := render.PDF(d.Print(), render.Options{}); err != nil {
		list = append(list, "PDF: "+err.Error())
	}
	want := lengthsIn(forms["HTML"])
	for _, name := range slices.Sorted(maps.Keys(forms)) {
		if wrong := otherLengths(name, forms[name], want); wrong != "" {
			list = append(list, wrong)
		}
	}
	return list
}

// otherLengths says which lengths a form lacks, or has beyond those that it is to have.
func otherLengths(form, said string, want []string) string {
	got, all := lengthsIn(said), lengthsIn(said)
	if form == "text" { // whose cells go on in the next line, beside others: that is read both ways
		apart := lengthsIn(columnsApart(said))
		all = append(all, apart...)
		got = slices.DeleteFunc(got, func(l string) bool { return !slices.Contains(apart, l) })
	}
	if lacks, more := without(want, all), without(got, want); len(lacks)+len(more) > 0 {
		return fmt.Sprintf("%s lacks the lengths %q and has others, %q", form, lacks, more)
	}
	return ""
}

// lengthsIn are the different lengths of a text that have a fraction, sorted.
func lengthsIn(text string) []string {
	text = norm.NFKC.String(fraction.ReplaceAllString(text, "$1 $2"))
	text = lineEnd.ReplaceAllString(text, " ")
	text = strings.ReplaceAll(manyBlanks.ReplaceAllString(text, " | "), "\u2044", "/") // columns stand apart
	list := someLength.FindAllString(text, -1)
	slices.Sort(list)
	return slices.Compact(list)
}

// columnsApart is a text of which no line of a table goes on in the next.
func columnsApart(text string) string {
	lines := strings.Split(text, "\n")
	for i, line := range lines {
		if manyBlanks.MatchString(strings.Trim(line, " ")) {
			lines[i] += "  |"
		}
	}
	return strings.Join(lines, "\n")
}

// without is a list without what another has.
func without(list, other []string) (rest []string) {
	for _, s := range list {
		if !slices.Contains(other, s) {
			rest = append(rest, s)
		}
	}
	return rest
}

// wrongJSON is what cannot be read of a plan's JSON, and lengths whose words are farther from their number than a mark of a ruler.
func wrongJSON(plan any, units measure.System) (list []string) {
	var b bytes.Buffer
	if err := render.JSON(&b, plan, render.JSONHead{Format: 1, Units: units}); err != nil {
		return []string{err.Error()}
	}
	var value any
	if err := json.Unmarshal(b.Bytes(), &value); err != nil {
		return []string{err.Error()}
	}
	var walk func(v any)
	walk = func(v any) {
		switch v := v.(type) {
		case map[string]any:
			nm, is := v["nm"].(float64)
			said, worded := v["text"].(string)
			if is && worded {
				if err := farOff(said, measure.NM(nm)); err != nil {
					list = append(list, err.Error())
				}
			}
			for _, inner := range v {
				walk(inner)
			}
		case []any:
			for _, inner := range v {
				walk(inner)
			}
		}
	}
	walk(value)
	return list
}

var wordedLength = regexp.MustCompile(`(-?[0-9][0-9 /.]*) (in|cm|yd|m)$`)

// farOff says that a length's words are another length.
func farOff(said string, nm measure.NM) error {
	m := wordedLength.FindStringSubmatch(said)
	if m == nil {
		if strings.HasPrefix(said, "under ") || nm == 0 {
			return nil
		}
		return fmt.Errorf("%q for %d is no length", said, nm)
	}
	value := 0.0
	for _, part := range strings.Fields(m[1]) {
		over, under, is := strings.Cut(part, "/")
		a, err := strconv.ParseFloat(over, 64)
		b := 1.0
		if is && err == nil {
			b, err = strconv.ParseFloat(under, 64)
		}
		if err != nil {
			return fmt.Errorf("%q for %d is no length: %w", said, nm, err)
		}
		value += a / b
	}
	unit := map[string]float64{"in": 25.4e6, "cm": 10e6, "yd": 914.4e6, "m": 1e9}[m[2]]
	step := map[string]float64{"in": 25.4e6 / 8, "cm": 5e6, "yd": 914.4e6 / 8, "m": 0.1e9}[m[2]]
	if off := value*unit - float64(nm); off > step || -off > step {
		return fmt.Errorf("%q for %d", said, nm)
	}
	return nil
}
