package layout

import (
	"fmt"
	"strings"
	"testing"

	"eighthturn/internal/measure"
	"eighthturn/palettes"
)

// bounded is a length or a number of a layout, which stands where the text has a §, and what it may be, from the least to the most.
type bounded struct {
	name        string
	text        string
	least, most string
	below, over string // as near to those as can be written; "" where there is no bound
}

// finest is the step by which long lengths can be written: a thousandth of a millimeter.
const finest = measure.Millimetre / 1000

// inMillimetres writes a length that lies on that step.
func inMillimetres(nm measure.NM) string {
	whole, part := nm/measure.Millimetre, nm%measure.Millimetre/finest
	if part == 0 {
		return fmt.Sprintf("%d mm", whole)
	}
	return fmt.Sprintf("%d %d/1000 mm", whole, part)
}

// between is a length that may be so short and so long.
func between(name, text string, least, most measure.NM) bounded {
	return bounded{name, text, inMillimetres(least), inMillimetres(most), inMillimetres(least - finest), inMillimetres(most + finest)}
}

// counted is a number that may be so small and so large.
func counted(name, text string, least, most int) bounded {
	return bounded{name, text, fmt.Sprint(least), fmt.Sprint(most), fmt.Sprint(least - 1), fmt.Sprint(most + 1)}
}

// bounds are those of lengths and numbers, as the table of limits in the reference has them and as the things themselves have: cut lengths
// hold two seams of 1/4 in, a motif lies on its photo, a full turn has 360 degrees, a value is L* from 0 to 100.
func bounds() []bounded {
	const (
		head   = "fabric cream #f4ead7\nfabric navy #1f3350\n"
		plain  = "block P plain piece navy\ngrid\n  P P\n  P P\n"
		quilt  = "side 12\n" + head + plain
		small  = "side 1/4\n" + head + plain
		photo  = "side 12\nfabric navy #1f3350\nfabric cream swatch \"a.png\" across 400 "
		in     = measure.Inch
		stripe = "side 12\nfabric navy #1f3350\nfabric cream stripes navy "
	)
	seams := 2 * in / 4
	list := []bounded{
		between("seam", "seam §\n"+quilt, finest, MaxSeam),
		between("side", "side §\n"+head+plain, MinSide, MaxSide),
		between("side cut", "side § cut\n"+head+plain, MinSide+seams, MaxSide+seams),
		between("side finished", "side § finished\n"+head+plain, MinSide, MaxSide),
		between("strip", "strip §\n"+head+"block T tumblers pieces navy about 30 yd\ngrid\n  T T\n", MinSide+seams, MaxStrip),
		between("usable width", "usable-width §\n"+quilt, in, MaxCloth),
		between("usable width of a fabric", "fabric rust red usable-width §\n"+quilt, in, MaxCloth),
		between("length on hand", "fabric rust red on-hand §\n"+quilt, finest, 1000*measure.Yard),
		between("squares", "fabric rust red from 3 squares §\n"+quilt, in/2, MaxCloth),
		between("strips", "fabric rust red from 3 strips §\n"+quilt, in/2, MaxCloth),
		between("repeat across", photo+"repeat across § down 2\n"+plain, in/8, 40*in),
		between("repeat down", strings.Replace(photo, "a.png", "square.png", 1)+"repeat across 2 down §\n"+plain, in/8, MaxCloth),
		{"stripe", stripe + "§ white 1/2 crosswise\n" + plain, "1/64", inMillimetres(MaxCloth), "1/65", inMillimetres(MaxCloth + finest)},
		{"stripes of a repeat", stripe + "§ white 10\n" + plain, "1/64", "30", "1/65", inMillimetres(30*in + finest)},
		{"motif across", photo + "\nmotif bud cream across § down 0\n" + plain, "0", inMillimetres(400 * in), "", inMillimetres(400*in + finest)},
		{"motif down", photo + "\nmotif bud cream across 0 down §\n" + plain, "0", inMillimetres(300 * in), "", inMillimetres(300*in + finest)},
		{"beginning of stripes", stripe + "1 white 1\nblock Q plain piece cream from §\n" + plain, "0", inMillimetres(2*in - finest), "", inMillimetres(2 * in)},
		between("border", "border § navy\n"+quilt, finest, MaxSide),
		between("border cut", "border § cut navy\n"+quilt, seams+finest, MaxSide),
		between("sash", "sash § navy\n"+quilt, finest, MaxSide),
		between("sash cut", "sash § cut navy\n"+quilt, seams+finest, MaxSide),
		between("border of a wide top", "side 120\n"+head+"block P plain piece navy\ngrid\n "+strings.Repeat(" P", 82)+"\nsash 1 cream\nborder § navy\n", finest, (MaxTop-82*120*in-83*in)/2),
		between("border of a long top", "side 120\n"+head+"block P plain piece navy\ngrid\n"+strings.Repeat("  P\n", 82)+"border 1/2 navy\nborder § navy\n", finest, (MaxTop-82*120*in-in)/2),
		between("binding", "binding § navy\n"+quilt, in/4, 20*in),
		between("squaring up", "square-up §\n"+quilt, finest, MaxExtraCloth),
		between("spare", "spare §\n"+quilt, finest, MaxExtraCloth),
		{"width of a strip set", "strip 4\n" + head + "strip-set glow navy § cream rest\nblock W web wedges glow kites cream\ngrid\n  W W\n  W W\n",
			inMillimetres(seams + MinFinished), inMillimetres(4*in - MinFinished), inMillimetres(seams + MinFinished - finest), ""},
		counted("degrees", photo+"\nmotif bud cream across 0 down 0 pointing §\n"+plain, 0, 359),
		counted("precuts", "fabric rust red from § fat-quarters\n"+quilt, 1, MaxPrecuts),
		counted("first step of value", "contrast § 99\n"+quilt, 1, 98),
		counted("second step of value", "contrast 1 §\n"+quilt, 2, 99),
		counted("sets", "scraps darks navy rust by set\nstrip-set glow darks 2 cream rest sets §\nstrip 4\n"+head+"fabric rust red\nblock W web wedges glow kites cream\ngrid\n  W W\n  W W\n", 1, MaxDealt),
		counted("pieces on hand", quilt+"on-hand kites navy §\n", 1, MaxPatches),
		counted("rows", "scraps p navy cream\nswap row § column 1 with row 1 column 2\n"+strings.Replace(quilt, "piece navy", "piece p", 1), 1, 2),
		counted("columns", "scraps p navy cream\nswap row 2 column 1 with row 1 column §\n"+strings.Replace(quilt, "piece navy", "piece p", 1), 1, 2),
		counted("value of a pool", "scraps p navy cream from § to 100\n"+quilt, 0, 99),
		counted("other value of a pool", "scraps p navy cream to §\n"+quilt, 1, 100),
		counted("blocks of a size", "size lap across §\n"+small, 1, MaxCells/2-2),
		counted("blocks down of a size", "size lap down §\n"+small, 1, MaxCells/2-2),
		counted("times across", "repeat across § down 1\n"+small, 1, MaxCells/4),
		counted("times down", "repeat down §\n"+small, 1, MaxCells/4),
	}
	for i := range list {
		if strings.HasPrefix(list[i].below, "-") {
			list[i].below = ""
		}
	}
	return list
}

// errorsAt are the errors of a layout, each with the words that it covers.
func errorsAt(text string) (list []string) {
	r := Inspect(text, func(file string) (palettes.PhotoSample, error) {
		height := map[string]int{"a.png": 300, "square.png": 400}[file]
		return palettes.PhotoSample{Width: 400, Height: height, Colour: palettes.Colour{R: 9}}, nil
	})
	for _, f := range r.Faults {
		if f.Severity == Error {
			list = append(list, fmt.Sprintf("%q: %s", text[f.Span.Start:f.Span.End], f.Message))
		}
	}
	return list
}

// TestBounds: what lies just within a bound is taken, what lies just beyond it has one error.
func TestBounds(t *testing.T) {
	for _, b := range bounds() {
		for _, taken := range []string{b.least, b.most} {
			if list := errorsAt(strings.ReplaceAll(b.text, "§", taken)); len(list) > 0 {
				t.Errorf("%s, %s: %q", b.name, taken, list)
			}
		}
		for _, refused := range []string{b.below, b.over} {
			if refused == "" {
				continue
			}
			faulty := strings.ReplaceAll(b.text, "§", refused)
			if list := errorsAt(faulty); len(list) != 1 {
				t.Errorf("%s, %s: %q, expected one error", b.name, refused, list)
			}
			if strings.Contains(b.name, "top") || b.name == "beginning of stripes" {
				continue // what is too large is the grid, or another fabric may follow
			}
			line, _, _ := strings.Cut(b.text[strings.LastIndex(b.text[:strings.Index(b.text, "§")], "\n")+1:], "\n")
			line = strings.ReplaceAll(line, "§", refused)
			if list := errorsAt(strings.Replace(faulty, line, line+" wibble", 1)); len(list) != 1 {
				t.Errorf("%s, %s, and a word more on the line: %q, expected one error", b.name, refused, list)
			}
		}
	}
}

// TestLargeGridsGrow: a grid of more places than are tried grows by what is repeated in it.
func TestLargeGridsGrow(t *testing.T) {
	const text = "side 1/4\nfabric navy #1f3350\nblock P plain piece navy\nrepeat across %d down 101\ngrid\n  P P\nsize lap across 50 down 7\nsize odd across 51\n"
	for _, across := range []int{99, 100} { // 19,998 and 20,200 places, of which 20,000 are tried with two columns more
		list := errorsAt(fmt.Sprintf(text, across))
		if want := `"51": the grid cannot have 51 blocks across: it grows 2 at a time from 2 blocks`; len(list) != 1 || list[0] != want {
			t.Errorf("%d columns: %q, expected %q", 2*across, list, want)
		}
	}
}
