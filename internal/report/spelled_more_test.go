package report

import (
	"os"
	"path/filepath"
	"regexp"
	"strings"
	"testing"

	"eighthturn/internal/blocks"
	"eighthturn/internal/document"
	"eighthturn/internal/measure"
	"eighthturn/internal/plan/audition"
	"eighthturn/internal/plan/fit"
	"eighthturn/internal/plan/motifs"
	"eighthturn/internal/plan/sizes"
	"eighthturn/internal/plan/supplies"
	"eighthturn/internal/quilt"
	"eighthturn/internal/quilttest/golden"
	"eighthturn/internal/quilttest/lay"
	"eighthturn/internal/quilttest/spelled"
	"eighthturn/layout"
	"eighthturn/palettes"
	"eighthturn/samples"
)

// keep compares a page with its file.
func keep(t *testing.T, b *spelled.Book, name string) {
	t.Helper()
	golden.Text(t, filepath.Join("testdata", "told", name+".txt"), []byte(b.Page()))
}

// TestSpelledStudies: the answers to whether a layout reads, of layouts that people have judged.
func TestSpelledStudies(t *testing.T) {
	files, err := filepath.Glob("../../testdata/values/layouts/*.quilt")
	if err != nil || len(files) < 20 {
		t.Fatalf("%d layouts: %v", len(files), err)
	}
	b := spelled.New()
	for _, file := range files {
		text, err := os.ReadFile(file)
		if err != nil {
			t.Fatal(err)
		}
		p := &Plans{Top: lay.Top(t, string(text)), Name: filepath.Base(file)}
		b.Document(Values(p).Down(document.Answer))
		for _, h := range SeamsHardToSee(p) {
			b.Line("%s: %d seams", h.Says, len(h.Seams))
		}
	}
	keep(t, b, "studies")
}

// TestSpelledCharts: what strips, sides and lines of a ruler give, in inches and in centimeters, as text and for spreadsheets.
func TestSpelledCharts(t *testing.T) {
	b := spelled.New()
	for _, o := range []sizes.Options{{From: 3 * measure.Inch, To: 5 * measure.Inch, Step: measure.Inch}, {Units: measure.Centimetres, From: 9 * measure.Centimetre, To: 10 * measure.Centimetre, Step: measure.Centimetre / 2, UsableWidth: 110 * measure.Centimetre}} {
		strips, err := sizes.Strips(o)
		if err != nil {
			t.Fatal(err)
		}
		sides, err := sizes.Sides(o)
		if err != nil {
			t.Fatal(err)
		}
		tumblers, err := sizes.Tumblers(sizes.Options{Units: o.Units, StripCut: o.From, From: 3 * o.From / 2, To: 3 * o.To / 2, Step: o.Step})
		if err != nil {
			t.Fatal(err)
		}
		for _, d := range []document.Document{StripChart(strips), SideChart(sides), TumblerChart(tumblers), StripTable(strips), SideTable(sides), TumblerTable(tumblers)} {
			b.Document(d)
		}
	}
	keep(t, b, "charts")
}

// TestSpelledFits: what comes nearest to a size, and what to write for it.
func TestSpelledFits(t *testing.T) {
	b := spelled.New()
	bed, _ := supplies.FindBed("queen")
	sample := func(name string) string {
		for _, s := range samples.All() {
			if s.Name == name {
				return s.Text
			}
		}
		t.Fatalf("no sample %s", name)
		return ""
	}
	frame := "strip 4\n" + sixFabrics + "block W web wedges navy kites cream\nblock F floating wedges navy background cream\ngrid\n F F F F\n F W W F\n F W W F\n F F F F\nborder 1 1/2 rust\nborder 4 cream\n"
	tiled := "units cm\nside 15\n" + sixFabrics + "block R ring wedges rust corners cream\nblock P plain piece navy\ngrid\n R P\n P R\nrepeat across 4 down 5\n"
	for _, c := range []struct {
		text   string
		o      fit.Options
		number int
	}{
		{frame, fit.Options{Wanted: fit.ForBed(bed)}, 1},
		{frame, fit.Options{Wanted: fit.ForDrop(bed, 12*measure.Inch), Size: "queen", Nearest: 2}, 2},
		{frame + "size lap across 8 down 10\n", fit.Options{Wanted: fit.Wanted{Finished: supplies.Size{Width: 50 * measure.Inch, Height: 60 * measure.Inch}}, Size: "lap", Nearest: 1}, 1},
		{tiled, fit.Options{Wanted: fit.Wanted{Finished: supplies.Size{Width: 150 * measure.Centimetre, Height: 200 * measure.Centimetre}}, Nearest: 3}, 9},
		{tiled, fit.Options{Wanted: fit.Wanted{Finished: supplies.Size{Width: 60 * measure.Centimetre, Height: 75 * measure.Centimetre}}, From: 15 * measure.Centimetre, To: 16 * measure.Centimetre}, 1},
		{"strip 4\nfabric a #111\nfabric b #eee\nblock W web wedges a kites b\ngrid\n W\n", fit.Options{Wanted: fit.Wanted{Finished: supplies.Size{Width: measure.Inch, Height: measure.Inch}}, Nearest: 2}, 1},
		{sample("lanterns"), fit.Options{Wanted: fit.ForBed(bed), Nearest: 3}, 2},
	} {
		r, err := fit.Fit(c.text, c.o)
		if err != nil {
			t.Fatal(err)
		}
		b.Document(Fit("quilt", r, c.number))
	}
	keep(t, b, "fits")
}

// TestSpelledWords: what the language's words, kinds and palettes are, in lists and for text editors.
func TestSpelledWords(t *testing.T) {
	b := spelled.New()
	statements, kinds := layout.Statements(), blocks.Kinds()
	v := Vocabulary{Kinds: kinds, Palettes: palettes.All()[:1]}
	for _, s := range statements {
		if s.Word == "grid" || s.Word == "strip" || s.Word == "border" {
			v.Statements = append(v.Statements, s)
		}
	}
	b.Document(WordList(v))
	b.Document(Words(v))
	design, _, _ := layout.Read(sizesLayout)
	for _, s := range v.Statements {
		b.Line("%s\n%s\n%s", StatementSummary(s), AboutStatement(s, nil), AboutStatement(s, design))
	}
	b.Line("%s", AboutKind(kinds[0]))
	for _, m := range []layout.Mention{{Role: "kites", Block: "W"}, {In: "strip-set", Block: "shore"}, {In: "scraps", Block: "darks"}, {In: "motif", Block: "rose"}, {In: "fabric", Block: "awning"}, {In: "border"}} {
		b.Line("%s", UseOf(m))
	}
	many := strings.Split("a b c d e f g h i j k l m n", " ")
	for _, uses := range [][]string{nil, {"border"}, {"border", "border", "wedges"}, many[:12], many[:13], many} {
		b.Line("%s\n%s", AboutFabric(&design.Fabrics[0], "", uses), AboutCloth("strip-set a", uses))
	}
	b.Line("%s\n%q\n%s\n%s", AboutFabric(&design.Fabrics[0], "fabric", nil), AboutBlock("R", "", 1, design), AboutBlock("R", "block R", 1, nil), AboutBlock("R", "block R", 4, design))
	keep(t, b, "words")
}

// TestSpelledAlternatives: auditions, and the centers that a print gives.
func TestSpelledAlternatives(t *testing.T) {
	b := spelled.New()
	b.Drawn = regexp.MustCompile("^$")
	reading := layout.Inspect("strip 4\n"+sixFabrics+"block W web wedges navy kites cream\ngrid\n W W\n W W\nborder 2 rust\nbinding 2 navy\n", nil)
	top := quilt.Lay(reading.Design)
	read := func(text string) (*layout.Design, []layout.Fault) {
		d, _, faults := layout.Read(text)
		return d, faults
	}
	for _, at := range []layout.AuditionOf{{Role: "border", Of: "1"}, {Role: "binding"}, {Role: "kites"}} {
		trials, err := reading.Auditions(at, []string{"navy", "teal", "#efe3d0"})
		if err != nil {
			t.Fatal(err)
		}
		plan, err := audition.Build(top, trials, read, audition.Options{})
		if err != nil {
			t.Fatal(err)
		}
		plan.Role, plan.Of = at.Role, at.Of
		b.Document(Audition("quilt", plan))
		b.Line("%s; %s; %q", AuditionHeading(plan), AuditionOf(plan.Role, plan.Of), AuditionSays(&plan.Alternatives[0]))
	}
	for _, c := range []struct {
		text string
		o    motifs.Options
	}{{"fabric awning stripes navy 3/4 cream 1/2 rust 1 1/4\n", motifs.Options{Count: 3}}, {"fabric awning stripes navy 3/4 cream 1/2 rust 1 1/4 crosswise\n", motifs.Options{Count: 30, Mirrored: true}}} {
		top := lay.Top(t, "strip 4\n"+sixFabrics+c.text+"block R web wedges awning kites navy\ngrid\n R R\n R R\n")
		plan, err := motifs.Build(top, len(top.Fabrics)-1, c.o)
		if err != nil {
			t.Fatal(err)
		}
		b.Document(Motifs("quilt", measure.Inches, plan))
		few := *plan
		few.Asked, few.AnyLengthwise, few.AnyCrosswise, few.Lengthwise = len(plan.Motifs)+5, false, false, []measure.NM{2 * measure.Inch, 4 * measure.Inch}[:2*c.o.Count/30]
		for _, s := range Motifs("quilt", measure.Inches, &few).Sections {
			s.Blocks = s.Blocks[max(0, len(s.Blocks)-1):]
			b.Section("", &s)
		}
		b.Line("%s; %s; %q", MotifsHeading(plan), MotifName(2, &plan.Motifs[1]), MotifSays(&plan.Motifs[1]))
	}
	for why := motifs.OneColor; why <= motifs.NoMirror; why++ {
		reason, hint := NoMotifs("garden", &motifs.Unfit{Why: why, Pixels: 7, NeededAcross: 90, NeededDown: 60})
		b.Line("%s: %s", reason, hint)
	}
	keep(t, b, "alternatives")
}

// TestSpelledMotifs: what stands out of eight like wedges, each sort in light and in dark.
func TestSpelledMotifs(t *testing.T) {
	b := spelled.New()
	for figure := motifs.Even; figure <= motifs.Mixed; figure++ {
		for n := range 4 {
			m := &motifs.Motif{Figure: figure, Light: n&1 > 0, Busy: n&2 > 0, Share: 0.345, Line: "motif a b across 1 down 2" + [...]string{"", " pointing 30", " mirrored", " pointing 30 mirrored"}[n]}
			b.Line("%s; %s; %s; %q", MotifLooks(m), MotifName(n, m), motifLight(m), MotifSays(m))
		}
	}
	keep(t, b, "motifs")
}
