package layout_test

// printCases are faults of stripes, motifs and repeats.
func printCases() []testCase {
	const awning = "fabric awning stripes navy 3/4 cream 1/2 rust 1 1/4\nfabric rust #b5532a\n"
	with := func(line, use string) string {
		return swap(small, "block P", line+"\nblock P", "piece cream", "piece "+use)
	}
	return []testCase{
		{
			"stripes of nothing", swap(small, "#1f3350", "stripes⟦⟧"), refused,
			says("expected the colors of the stripes and their widths, found the end of the line", "for example fabric navy stripes navy 3/4 cream 1/2"),
		},
		{
			"stripes without a width", swap(small, "#1f3350", "stripes teal ⟦cream⟧ 1/2"), refused,
			says(`expected the width of the stripe of "teal", found "cream"`, `for example fabric navy #1f3350 "night sky" on-hand 1 1/2 yd`),
		},
		{
			"a width before its color", swap(small, "#1f3350", "stripes ⟦3/4⟧ teal"), refused,
			says(`expected the color of a stripe, found "3/4"`, "the color comes first, then the width of its stripe"),
		},
		{
			"a stripe of no width", swap(small, "#1f3350", "stripes teal ⟦0⟧ cream 1/2"), refused,
			says("the width of a stripe must be above 0", ""),
		},
		{
			"stripes wider than the fabric", swap(small, "#1f3350", "⟦stripes teal 20 cream 21⟧"), refused,
			says(`the stripes of "navy" repeat every 41 in, more than the width of fabric, 40 in`, "write the stripes of one repeat"),
		},
		{
			"stripes of a color that is none", swap(small, "#1f3350", "stripes teal 1 ⟦craem⟧ 1"), refused,
			says(`no color and no fabric of this layout is called "craem"`, `did you mean "cream"?`),
		},
		{
			"stripes of a striped fabric", with("fabric a stripes teal 1 ⟦b⟧ 1\nfabric ⟨b⟩ stripes navy 1 white 1", "a"), refused,
			says(`a stripe has one color, and "b" is a striped fabric`, "write a color, as in navy or #1f3350", "defined here"),
		},
		{
			"a motif of no place", with("motif rose navy across 4⟦⟧", "rose"), refused,
			says(`expected how far across and down "rose" lies, found the end of the line`, "for example motif rose navy across 4 down 6 1/2"),
		},
		{
			"a motif on one color", swap(small, "fabric navy", "fabric ⟨navy⟩", "block P", "motif rose ⟦navy⟧ across 4 down 4\nblock P", "piece cream", "piece rose"), refused,
			says(`a motif is a place on a print, and "navy" is one color`, "write a fabric that has a photo (swatch) or stripes", "defined here"),
		},
		{
			"a motif turned round more than once", with(awning+"motif rose awning across 1 down 1 pointing ⟦360⟧", "rose"), refused,
			says("a motif points by 0 to 359 degrees, found 360", ""),
		},
		{
			"a motif mirrored twice", with(awning+"motif rose awning across 1 down 1 ⟨mirrored⟩ ⟦mirrored⟧", "rose"), refused,
			says(`"mirrored" is already on this line`, "keep one of the two", "first given here"),
		},
		{
			"a motif in a border", with(awning+"motif ⟨rose⟩ awning across 1 down 1\nborder 2 ⟦rose⟧", "rose"), refused,
			says(`a border is cut from one fabric, and "rose" is a motif`, "write a fabric, for example cream", "defined here"),
		},
		{
			"one color that goes one way", swap(small, "#1f3350", "#1f3350 ⟦one-way⟧"), refused,
			says(`only a print has a head and a foot, and "navy" is one color`, "leave out one-way"),
		},
		{
			"strips of a fabric without stripes", swap(small, "fabric cream", "fabric ⟨cream⟩", "piece cream", "piece ⟦cream lengthwise⟧"), refused,
			says(`only a striped fabric is cut along or across its stripes, and "cream" is a fabric without stripes`, "leave out lengthwise", "defined here"),
		},
		{
			"stripes that begin behind their repeat", with(awning, "awning lengthwise from ⟦2 1/2⟧"), refused,
			says(`the stripes of "awning" repeat every 2 1/2 in, and they would begin at 2 1/2 in`, ""),
		},
		{
			"a repeat without lengths", swap(small, "#1f3350", `swatch "navy.png" repeat ⟦12⟧ by 24`), refused,
			says(`expected after how much fabric the print repeats, across and down, found "12"`, "for example repeat across 24 down 12"),
		},
	}
}
