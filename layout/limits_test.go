package layout_test

import (
	"fmt"
	"runtime"
	"strings"
	"testing"

	"eighthturn/internal/measure"
	"eighthturn/layout"
)

// bound is a limit from both sides: a layout that just keeps it, and one that just does not
// and is told so.
type bound struct {
	name     string
	keeps    string
	oversees string
	message  string
}

// numbered is so many lines, each made of a format and its number.
func numbered(count int, format string) string {
	var b strings.Builder
	for i := range count {
		fmt.Fprintf(&b, format, i)
	}
	return b.String()
}

// gridOf is a grid of one label.
func gridOf(columns, rows int, label string) string {
	return "grid\n" + strings.Repeat("  "+strings.Repeat(label+" ", columns)+"\n", rows)
}

// filled is a text with a comment behind it that makes it so many bytes.
func filled(text string, bytes int) string {
	const line = "# aaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaa\n"
	fill := strings.Repeat(line, (bytes-len(text))/len(line)+1)
	return text + fill[:bytes-len(text)]
}

func bounds() []bound {
	const one = "side 6\nfabric navy #1f3350\nblock P plain piece navy\n"
	const grid = "grid\n  P P\n"
	title := func(n int) string { return "title \"" + strings.Repeat("é", n) + "\"\n" + one + grid }
	named := func(n int) string {
		name := strings.Repeat("é", n)
		return "side 6\nfabric " + name + " #1f3350\nblock P plain piece " + name + "\n" + grid
	}
	seams := func(length string) string { return "seam " + length + "\n" + one + grid }
	fromPrecuts := func(count string) string { return swap(one, "#1f3350", "#1f3350 from "+count+" squares 10") + grid }
	sided := func(length string) string { return strings.Replace(one, "side 6", "side "+length, 1) + grid }
	strip := func(length string) string { return swap(small, "strip 4", "strip "+length) }
	cloth := func(length string) string { return "usable-width " + length + "\n" + one + grid }
	bordered := func(length string) string { return one + grid + "border " + length + " navy\n" }
	bound60 := func(width string) string { return one + grid + "binding " + width + " navy\n" }
	bands := func(n int) string {
		return swap(banded, "shore rust 1 3/4 cream 1 1/2 navy 1 3/4", "shore"+strings.Repeat(" rust 1", n-1)+" cream rest",
			"strip 4", "strip 60", "fabric navy #1f3350\n", "")
	}
	narrow := func(width string) string {
		return swap(banded, "shore rust 1 3/4 cream 1 1/2 navy 1 3/4", "shore rust "+width+" cream rest navy 1 3/4")
	}
	rings := func(columns, rows int) string {
		return "side 6\nfabric navy #1f3350\nblock R ring wedges navy corners navy\n" + gridOf(columns, rows, "R")
	}
	columns := func(rows int) string {
		return "side 4\nfabric navy #1f3350\nblock T tumblers pieces navy about 4\n" + gridOf(1, rows, "T")
	}
	borders := func(n int) string { return one + grid + strings.Repeat("border 1 navy\n", n) }
	colorways := func(n int) string { return one + grid + numbered(n, "colorway c%d navy teal\n") }
	onHand := func(n int) string { return small + strings.Repeat("on-hand wedges navy 1\n", n) }
	sizes := func(n int) string { return one + grid + "border 1 navy\n" + numbered(n, "size s%d border 2\n") }
	long := func(bytes int) string { return one + grid + "# " + strings.Repeat("a", bytes-2) + "\n" }
	lines := func(n int) string { return one + grid + strings.Repeat("\n", n-5) }
	names := func(n int) string { return one + numbered(n-1, "fabric f%d #123\n") + grid }
	stripes := func(n int) string {
		return one + grid + "fabric many stripes" + strings.Repeat(" navy 1/4 teal 1/4", n/2) + strings.Repeat(" navy 1/4", n%2) + "\n"
	}
	setsOf := func(n int) string {
		return one + grid + numbered(n, "strip-set s%d navy rest"+strings.Repeat(" navy 0.6", layout.MaxBands-1)+"\n")
	}
	pools := func(n int) string {
		var fabrics strings.Builder
		for i := range 400 {
			fmt.Fprintf(&fabrics, " f%d", i)
		}
		return one + grid + numbered(400, "fabric f%d #123\n") + numbered(n, "scraps p%d"+fabrics.String()+"\n")
	}
	labels := func(n int) string { return one + numbered(n-1, "block b%d plain piece navy\n") + grid }
	wide := func(borders int, last string) string {
		return one + grid + strings.Repeat("border 100 navy\n", borders) + "border " + last + " navy\n"
	}
	return []bound{
		{"bytes", filled(one+grid, layout.MaxBytes), filled(one+grid, layout.MaxBytes+1), "this file has 4194305 bytes, a layout may have at most 4194304"},
		{"bytes of a line", long(layout.MaxLineBytes), long(layout.MaxLineBytes + 1), "this line has 65537 bytes; the limit is 65536"},
		{"lines", lines(layout.MaxLines), lines(layout.MaxLines + 1), "a layout may have at most 100000 lines"},
		{"cells", one + gridOf(400, 100, "P"), one + gridOf(400, 101, "P"), "the grid has 40400 places; the limit is 40000"},
		{"cells that repeat", one + "repeat across 200 down 100\n" + grid, one + "repeat across 999999 down 999999\n" + grid, "the grid has 1999996000002 places; the limit is 40000"},
		{"patches", rings(124, 100), rings(124, 101), "this quilt has up to 150288 pieces; the limit is 150000"},
		{"patches of sashes", rings(105, 105) + "sash 1 navy\n", rings(105, 105) + "sash 1 navy posts navy\n", "this quilt has up to 166008 pieces; the limit is 150000"},
		{"pieces in a column", columns(399), columns(400), "this column has 401 pieces; the limit is 400"},
		{"borders", borders(layout.MaxBorders), borders(layout.MaxBorders + 2), "a layout may have at most 200 borders"},
		{"letters of a name", named(layout.MaxNameChars), named(layout.MaxNameChars + 1), "this name has 61 characters; the limit is 60"},
		{"letters of a text", title(layout.MaxTextChars), title(layout.MaxTextChars + 1), "this text has 1001 characters; the limit is 1000"},
		{"stripes", stripes(layout.MaxStripes), stripes(layout.MaxStripes + 1), "a fabric may have at most 40 stripes"},
		{"bands", bands(layout.MaxBands), bands(layout.MaxBands + 1), "a strip set may have at most 40 strips"},
		{"fabrics of all pools", pools(12), pools(13), "the pools of a layout may have at most 5000 fabrics in all"},
		{"bands of all sets", setsOf(125), setsOf(126), "the strip sets of a layout may have at most 5000 strips in all"},
		{"names", names(layout.MaxDefined), names(layout.MaxDefined + 3), "a layout may define at most 1000 names"},
		{"blocks", labels(layout.MaxBlocks), labels(layout.MaxBlocks + 3), "a layout may define at most 500 blocks"},
		{"colorways", colorways(layout.MaxColorways), colorways(layout.MaxColorways + 3), "a layout may have at most 40 colorways"},
		{"sizes", sizes(layout.MaxSizes), sizes(layout.MaxSizes + 3), "a layout may have at most 20 sizes"},
		{"lines of pieces on hand", onHand(layout.MaxOnHand), onHand(layout.MaxOnHand + 3), "a layout may have at most 100 lines of pieces on hand"},
		{"precuts", fromPrecuts("1000"), fromPrecuts("1001"), "a fabric may be cut from at most 1000 precuts, found 1001"},
		{"seam", seams("1"), seams("1 1/64"), "a seam allowance of 1 1/64 in is too wide; the limit is 1 in"},
		{"seam above nothing", seams("1/1000 mm"), seams("0"), "a seam allowance must be above 0"},
		{"side, the least", sided("1/4"), sided("15/64"), "this makes blocks of 15/64 in, but a block must be 1/4 in to 120 in"},
		{"side, the most", sided("120"), sided("120 1/64"), "this makes blocks of 120 1/64 in, but a block must be 1/4 in to 120 in"},
		{"strip", strip("72"), strip("120 1/64"), "the strip is 120 1/64 in, but must be 120 in or less"},
		{"strip of its seams", strip("11/16"), strip("1/2"), "a strip of 1/2 in leaves nothing when two seam allowances of 1/4 in are taken"},
		{"cloth, the least", cloth("1"), cloth("63/64"), "the usable width of fabric is 63/64 in, but must be 1 in or more"},
		{"cloth, the most", cloth("400"), cloth("400 1/64"), "the usable width of fabric is 400 1/64 in, but must be 400 in or less"},
		{"border", bordered("120"), bordered("120 1/64"), "a border's width is 120 1/64 in, but must be 120 in or less"},
		{"border above nothing", bordered("1/1000"), bordered("0"), "a border's width must be above 0"},
		{"binding, the least", bound60("1/4"), bound60("15/64"), "the binding's cut width is 15/64 in, but must be 1/4 in or more"},
		{"binding, the most", bound60("20"), bound60("20 1/64"), "the binding's cut width is 20 1/64 in, but must be 20 in or less"},
		{"band", narrow("12,8 mm"), narrow("12,79 mm"), "a strip of 0.5035 in vanishes in its two seam allowances of 1/4 in"},
		{"top", wide(49, "94"), wide(49, "94 1/64"), "this top is 10000 1/32 in long; the limit is 10000 in"},
		{"digits", sided("0.123456 yd"), sided("0.1234567 yd"), "a number may have at most 6 digits"},
		{"numbers below the line", sided("6 1/1000"), sided("6 1/1001"), "the bottom number of a fraction may be at most 1000"},
	}
}

// TestLimits holds every limit from both sides: what keeps it has no errors, what oversees
// it has one message.
func TestLimits(t *testing.T) {
	for _, b := range bounds() {
		t.Run(b.name, func(t *testing.T) {
			_, source, list := layout.Read(b.keeps)
			if errors, _ := layout.Count(list); errors > 0 {
				var report strings.Builder
				t.Error(layout.Report(&report, "a.quilt", source, list), report.String())
			}
			_, _, list = layout.Read(b.oversees)
			var errors []string
			for _, f := range list {
				if f.Severity == layout.Error {
					errors = append(errors, f.Message)
				}
			}
			if len(errors) != 1 || errors[0] != b.message {
				t.Errorf("got %q\nwant %q", errors, b.message)
			}
		})
	}
}

// allocated is how many bytes a call takes from the heap.
func allocated(call func()) uint64 {
	var before, after runtime.MemStats
	runtime.ReadMemStats(&before)
	call()
	runtime.ReadMemStats(&after)
	return after.TotalAlloc - before.TotalAlloc
}

// TestLimitsComeFirst wants what is far too large refused before anything is made of it.
func TestLimitsComeFirst(t *testing.T) {
	const one = "side 6\nfabric navy #1f3350\nblock P plain piece navy\n"
	const grid = "grid\n  P P\n"
	for _, c := range []struct {
		name, text string
		most       uint64 // bytes
	}{
		{"bytes", strings.Repeat("\n", 64<<20), 100 << 10},
		{"lines", strings.Repeat("\n", layout.MaxBytes), 10 << 20},
		{"one line", strings.Repeat("strip 4 ", layout.MaxBytes/8), 100 << 10},
		{"cells that repeat", one + "repeat across 999999 down 999999\n" + grid, 100 << 10},
		{"a picture", "\x89PNG" + strings.Repeat("\n", layout.MaxBytes-4), 10 << 20},
	} {
		if took := allocated(func() { layout.Read(c.text) }); took > c.most {
			t.Errorf("%s: refusing it took %d bytes; the limit is %d", c.name, took, c.most)
		}
	}
}

// TestLimitsAreHeldByTheDesign looks at limits that a design promises to those behind it.
func TestLimitsAreHeldByTheDesign(t *testing.T) {
	eachCase(t, func(t *testing.T, c testCase) {
		d, _, _ := layout.Read(c.text())
		if d.SideFinished%2 != 0 {
			t.Errorf("the side is an odd number of nanometres: %d", d.SideFinished)
		}
		if len(d.Cells) != d.Columns*d.Rows || len(d.Cells) == 0 || len(d.Cells) > layout.MaxCells {
			t.Errorf("%d cells of %d by %d", len(d.Cells), d.Columns, d.Rows)
		}
		for _, s := range d.StripSets {
			for _, band := range s.Bands {
				for _, cut := range band.Cut {
					if cut != 0 && cut-2*d.Seam < layout.MinFinished-1 || cut > measure.NM(layout.MaxStrip) {
						t.Errorf("a band of %s is cut %d", s.Name, cut)
					}
				}
			}
		}
	}, accepted, warned)
}
