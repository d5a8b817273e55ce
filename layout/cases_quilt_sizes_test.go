package layout_test

// inSizes is the small layout, with a border, in other sizes.
func inSizes(lines string) string { return small + "border 2 navy\n" + lines + "\n" }

// quiltSizeCases are faults and warnings of sizes.
func quiltSizeCases() []testCase {
	const example = "for example size queen across 14 down 16"
	framed := swap(small, "  W W P\n  W P W\n  W W W\n", "  P P P P P\n  P W W W P\n  P W W W P\n  P W W W P\n  P P P P P\n")
	table := swap(small, "  W W P\n  W P W\n  W W W\n", "  W W\n  W W\n") + "webs\n  navy\n"
	return []testCase{
		{"the size as written", inSizes("size lap"), accepted, nil},
		{"sizes of all sorts", inSizes("size lap\nsize crib border none\nsize twin across 6 down 9 strip 5 border 2 1/2 cut\nsize queen down 9 across 9 border 3"), accepted, nil},
		{"a size with the numbers of the layout", inSizes("size lap across 3 down 3"), accepted, nil},
		{"sizes of a repeated grid", small + "repeat across 2\nsize lap\nsize twin across 12\n", accepted, nil},
		{"a size that keeps its frame", framed + "size twin across 8 down 11\n", accepted, nil},
		{
			"a size without a name", inSizes("size⟦⟧"), refused,
			says("expected a size's name, found the end of the line", example),
		},
		{
			"a number of blocks that is none", inSizes("size twin across ⟦wide⟧"), refused,
			says(`expected the number of blocks across, a whole number, found "wide"`, example),
		},
		{
			"a size of no blocks", inSizes("size twin down ⟦0⟧"), refused,
			says("a quilt cannot be 0 blocks down", "write 1 or more"),
		},
		{
			"a size with a strip that is none", inSizes("size twin strip ⟦wide⟧"), refused,
			says(`expected the width of the cut strip, found "wide"`, example),
		},
		{
			"borders without widths", inSizes("size twin border⟦⟧"), refused,
			says("expected the widths of the borders or the word none, found the end of the line", example),
		},
		{
			"an option twice", inSizes("size twin ⟨across⟩ 6 ⟦across⟧ 9"), refused,
			says(`"across" is already on this line`, "keep one of the two", "first given here"),
		},
		{
			"an option that is none", inSizes("size twin ⟦acros⟧ 6"), refused,
			says(`expected "across", "down", "strip", "side", "border" or "units", found "acros"`, `did you mean "across"?`),
		},
		{
			"units that the layout has", inSizes("size metric strip 5 ⟦units inches⟧"), refused,
			says("the layout is in inches already", "leave out units inches"),
		},
		{
			"other units and no strip", inSizes("size ⟦metric⟧ units cm"), refused,
			says(`the size "metric" is in centimeters and says no strip of its own`, "write strip 10 behind it, for example"),
		},
		{
			"a size twice", inSizes("size ⟨twin⟩ across 6\nsize ⟦Twin⟧ down 6"), refused,
			says(`the size "Twin" is already defined`, "give this one another name", "first defined here"),
		},
		{
			"two sizes as written", inSizes("⟨size lap⟩\nsize ⟦crib⟧ across 3"), refused,
			says(`"lap" and "crib" are both the size as written`, "say how many blocks it has: size crib across 3 down 3", "the first"),
		},
		{
			"a number between periods", inSizes("size twin across ⟦7⟧"), refused,
			says("the grid cannot have 7 blocks across: it grows 3 at a time from 3 blocks", "write 6 or 9"),
		},
		{
			"a size that the frame leaves no room", framed + "size crib down ⟦2⟧\n", refused,
			says("the grid cannot have 2 blocks down: it grows 1 at a time from 3 blocks", "write 3"),
		},
		{
			"a table of webs that does not grow", table + "size twin across ⟦4⟧\n", refused,
			says("the grid cannot have 4 blocks across: its table of webs does not let it grow that way", "write 2"),
		},
		{
			"more places than a grid may have", inSizes("size ⟦huge⟧ across 300 down 300"), refused,
			says(`with the size "huge" the grids of all sizes have more than the 40000 places that are the limit`, ""),
		},
		{
			"widths of borders that are not there", inSizes("size twin ⟦border 2 5⟧"), refused,
			says(`the size "twin" has widths for 2 borders, but the layout has 1 border`, "leave out 5"),
		},
		{
			"a border of a layout without one", small + "size twin ⟦border 2⟧\n", refused,
			says(`the size "twin" has widths for 1 border, but the layout has no borders`, "leave out border 2"),
		},
		{
			"a side where the layout gives the strip", inSizes("size twin side ⟦6⟧"), refused,
			says("this layout gives the strip, so its sizes cannot give the side", "for example strip 4"),
		},
		{
			"a strip where the layout gives the side", swap(small, "strip 4", "side 6") + "size twin strip ⟦5⟧\n", refused,
			says("this layout gives the side, so its sizes cannot give the strip", "for example side 6"),
		},
		{
			"a border of a size that is none", inSizes("size twin border ⟦0⟧"), refused,
			says("a border's width must be above 0", ""),
		},
		{
			"a strip of a size that is none", inSizes("size twin strip ⟦1/2⟧"), refused,
			says("a strip of 1/2 in leaves nothing when two seam allowances of 1/4 in are taken", "write a strip wider than 1/2 in"),
		},
		{
			"a size that is too large", "side 100\nfabric navy #1f3350\nblock P plain piece navy\n⟨grid⟩\n  P\nsize lap\nsize ⟦huge⟧ across 101\n", refused,
			says(`in the size "huge", this top is 10100 in long; the limit is 10000 in`, "", "this place"),
		},
	}
}
