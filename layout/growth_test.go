package layout_test

import (
	"fmt"
	"maps"
	"math"
	"slices"
	"strings"
	"testing"

	"eighthturn/internal/quilttest/judges"
	"eighthturn/layout"
)

// heaviest is layouts of about so many bytes, each of a sort that a careless reader would
// take more than its size in time or memory for.
func heaviest(bytes int) map[string]string {
	times := func(s string, n int) string { return strings.Repeat(s, max(1, n/len(s))) }
	lines := func(line string) string { return times(line+"\n", bytes) }
	const head = "side 6\nfabric navy #1f3350\nfabric cream #f4ead7\nblock P plain piece navy\n"
	wide := min(bytes, layout.MaxLineBytes-20)
	return map[string]string{
		"quotes without an end":     lines(`title "`),
		"quotes on one line":        `title ` + times(`"`, wide),
		"quotes and blanks":         `title ` + times(`" `, wide),
		"quotes and options":        `fabric navy #123 ` + times(`" on-hand `, wide),
		"one word":                  times("a", wide),
		"one name":                  "fabric " + times("a", wide),
		"one number":                "strip " + times("1", wide),
		"numbers":                   "strip " + times("1 ", wide),
		"fractions":                 "strip 1" + times(" 1/2", wide),
		"hyphens":                   "strip " + times("-", wide),
		"hashes":                    "strip 4 " + times("#", wide),
		"combining marks":           "fabric a" + times("\u0301", wide),
		"glued labels":              head + "grid\n" + times(times("P", 500)+"\n", bytes),
		"one glued label":           head + "grid\n  " + times("P", wide),
		"colons":                    head + "grid\n  " + times("P:", wide),
		"labels unknown":            head + "grid\n" + numbered(bytes/9, "  Q%d\n"),
		"rows of unlike length":     head + "grid\n" + times("  P\n", bytes/3) + times("  P P\n", bytes/3) + times("  P P P\n", bytes/2),
		"a wide row and many short": head + "grid\n  " + times("P ", min(bytes/2, wide)) + "\n" + times("  P\n", bytes/2),
		"rows and comments":         head + "grid\n" + times("  P\n#\n\n", bytes),
		"comments":                  head + "grid\n  P\n" + lines("#") + "  P\n",
		"blank lines":               lines(""),
		"statements unknown":        numbered(bytes/16, "wibble%d navy 4\n"),
		"names unknown":             head + numbered(bytes/20, "border 1 wibble%d\n"),
		"names unknown among many":  numbered(min(2000, bytes/60), "fabric wobble%d #123\n") + numbered(bytes/30, "border 1 wibble%d\n"),
		"one name unknown":          head + lines("border 1 wibble"),
		"colours unknown":           numbered(bytes/20, "fabric f%d wibblet\n"),
		"fabrics":                   numbered(bytes/20, "fabric f%d #123456\n"),
		"blocks":                    numbered(bytes/28, "block b%d plain piece navy\n"),
		"blocks like each other":    "block b0 plain piece navy\n" + likes(bytes/24),
		"blocks like nothing":       numbered(bytes/24, "block b%d like wibble\n"),
		"one block often":           lines("block b plain piece navy"),
		"sets of one name":          head + lines("strip-set s navy 1 navy rest"),
		"sets":                      head + numbered(bytes/30, "strip-set s%d navy 1 navy rest\n"),
		"one pool":                  head + lines("scraps s navy cream"),
		"one long pool":             head + "scraps s " + times("navy ", wide),
		"long roles":                head + "block Q tumblers about 5 pieces " + times("navy ", wide),
		"a table of webs":           head + "webs\n" + lines("  navy"),
		"values":                    head + "webs " + times("navy / ", wide),
		"byte order marks":          times("\ufeff", wide),
		"control characters":        lines("\x01"),
		"bytes that are no text":    times("\xff", bytes),
		"long lines":                times(times("a ", 70_000)+"\n", bytes),
		"notes for no part":         head + lines(`note wibble "a"`),
		"statements twice":          lines("strip 4"),
		"grids twice":               head + lines("grid\n  P"),
		"rows under nothing":        head + lines("  P P"),
		"borders":                   head + "grid\n  P\n" + lines("border 1 navy"),
		"words behind the end":      head + lines("strip 4 4 4 4 4 4 4 4"),
		"a chequered quilt of webs": draughtboard(side(bytes)),
		"a quilt":                   harbor(side(bytes)),
	}
}

// side is the number of blocks across of a square quilt whose text has about so many bytes.
func side(bytes int) int { return int(math.Sqrt(float64(min(bytes/2, layout.MaxPatches/8)))) }

// likes is blocks that are each like the one before.
func likes(count int) string {
	var b strings.Builder
	for i := range count {
		fmt.Fprintf(&b, "block b%d like b%d\n", i+1, i)
	}
	return b.String()
}

// TestGrowth reads, reports and tidies the heaviest layouts at one size and at sixteen times
// that size, and wants the work to grow in line: sixteenfold, where the square would be 256.
// The heap that it takes is a small multiple of the text. Work is counted in allocated bytes, and where the system tells it, in the time that the
// thread itself was at work, which other programs do not touch.
func TestGrowth(t *testing.T) {
	less := judges.Of(2, 4) << 10
	const most = 1500 // bytes taken from the heap, in all, for each byte of a text
	first, second := heaviest(less), heaviest(growth*less)
	for _, name := range slices.Sorted(maps.Keys(first)) {
		t.Run(name, func(t *testing.T) {
			small, large := effortOf(first[name]), effortOf(second[name])
			if large[0] > most*uint64(len(second[name])) {
				t.Errorf("%d bytes of text took %d bytes of the heap", len(second[name]), large[0])
			}
			for _, wrong := range outgrown(small, large) {
				t.Errorf("%d bytes of text: %s", len(second[name]), wrong)
			}
		})
	}
}

// growth is how many times as long the longer text is.
const growth = 16

// outgrown is what of an effort, bytes and nanoseconds, grows faster than the text that asks for it.
func outgrown(small, large [2]uint64) (wrong []string) {
	const slack = 5
	for i, what := range [...]string{"bytes", "nanoseconds of work"} {
		least := [...]uint64{64 << 10, 3_000_000}[i] // below it a ratio proves nothing
		if large[i] > growth*slack*max(small[i], least) {
			wrong = append(wrong, fmt.Sprintf("%d %s, %d for one %dth of it", large[i], what, small[i], growth))
		}
	}
	return wrong
}

// effortOf is the bytes taken from the heap and the nanoseconds of work that a text asks
// for, the least of two tries.
func effortOf(text string) [2]uint64 {
	try := func() (effort [2]uint64) {
		effort[1] = worked(func() { effort[0] = allocated(func() { readAll(text) }) })
		return effort
	}
	a, b := try(), try()
	return [2]uint64{min(a[0], b[0]), min(a[1], b[1])}
}

// readAll does with a text what commands do.
func readAll(text string) {
	_, source, list := layout.Read(text)
	if err := layout.Report(&strings.Builder{}, "a.quilt", source, list); err != nil {
		panic(err)
	}
	layout.Tidy(text)
}

// TestGrowthIsSeen proves that work which grows with the square is noticed: bytes as they are taken, time as it would be.
func TestGrowthIsSeen(t *testing.T) {
	taken := func(count, size int) (effort [2]uint64) {
		effort[0] = allocated(func() {
			for range count {
				_ = strings.Count(strings.Repeat("a", size), "b")
			}
		})
		return effort
	}
	took := func(steps uint64) [2]uint64 { return [2]uint64{0, 3_000_000 * steps} }
	for what, c := range map[string]struct {
		small, large [2]uint64
		seen         int
	}{
		"bytes in line":   {taken(1000, 1000), taken(growth*1000, 1000), 0},
		"bytes squared":   {taken(1000, 1000), taken(growth*1000, growth*1000), 1},
		"work in line":    {took(2), took(growth * 2), 0},
		"work squared":    {took(2), took(growth * growth * 2), 1},
		"too little work": {took(0), took(growth), 0},
	} {
		if wrong := outgrown(c.small, c.large); len(wrong) != c.seen {
			t.Errorf("%s: %q", what, wrong)
		}
	}
}

// BenchmarkHeaviest measures the heaviest layouts by their size in bytes.
func BenchmarkHeaviest(b *testing.B) {
	for name, text := range heaviest(1 << 20) {
		b.Run(strings.ReplaceAll(name, " ", "-"), func(b *testing.B) {
			b.SetBytes(int64(len(text)))
			for b.Loop() {
				readAll(text)
			}
		})
	}
}
