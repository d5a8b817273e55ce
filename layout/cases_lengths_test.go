package layout_test

// lengthCases are faults of lengths and of the statements that take one.
func lengthCases() []testCase {
	return []testCase{
		{
			"a fraction above one", swap(small, "4\n", "3 ⟦5/4⟧\n"), refused,
			says(`the fraction "5/4" is not below one`, "write 4 1/4"),
		},
		{
			"a binding that covers nothing", swap(small, "W W W\n", "W W W\nbinding ⟦1/2⟧ navy\n"), warned,
			says("warning: a binding of 1/2 in cut does not reach over a seam of 1/4 in on both sides", "bindings are often 2 1/4 or 2 1/2 in cut"),
		},
		{
			"a fraction of one", swap(small, "4\n", "⟦4/4⟧\n"), refused,
			says(`the fraction "4/4" is not below one`, "write 1"),
		},
		{
			"a fraction over nothing", swap(small, "4\n", "3 ⟦1/0⟧\n"), refused,
			says(`the fraction "1/0" has 0 below its line`, "write a length as 3 1/2 or 3.5"),
		},
		{
			"a fraction too fine", swap(small, "4\n", "3 ⟦1/1001⟧\n"), refused,
			says("the bottom number of a fraction may be at most 1000", "write a length as 3 1/2 or 3.5"),
		},
		{
			"two numbers that may be a fraction", swap(small, "4\n", "⟦1 3⟧\n"), refused,
			says(`"1 3" is not one length`, "for example strip 4"), // a strip of 1/3 leaves nothing
		},
		{
			"two numbers", swap(small, "4\n", "⟦5 3⟧\n"), refused,
			says(`"5 3" is not one length`, "a length is a number, or a number and a fraction: 3 1/2"),
		},
		{
			"three numbers", swap(small, "4\n", "⟦3 1⟧ 2\n"), refused,
			says(`"3 1" is not one length`, "a length is a number, or a number and a fraction: 3 1/2"),
		},
		{
			"two fractions", swap(small, "4\n", "⟦3½½⟧\n"), refused,
			says(`"3½½" is not one length`, "write a length as 3 1/2 or 3.5"),
		},
		{
			"a decimal and a fraction", swap(small, "4\n", "⟦3.5 1/2⟧\n"), refused,
			says(`"3.5 1/2" is not one length`, "write a length as 3 1/2 or 3.5"),
		},
		{
			"decimals of decimals", swap(small, "4\n", "⟦3.5.1⟧\n"), refused,
			says(`"3.5.1" is not one length`, "write a length as 3 1/2 or 3.5"),
		},
		{
			"a point without decimals", swap(small, "4\n", "⟦3.⟧\n"), refused,
			says(`expected digits after ".", found "3."`, "write a length as 3 1/2 or 3.5"),
		},
		{
			"no digit before the point", swap(small, "4\n", "⟦.5⟧\n"), refused,
			says(`expected a length, found ".5"`, "write a length as 3 1/2 or 0.5"),
		},
		{
			"a sign before it", swap(small, "4\n", "⟦+4⟧\n"), refused,
			says(`expected a length, found "+4"`, "write a length as 3 1/2 or 0.5"),
		},
		{
			"below nothing", swap(small, "4\n", "⟦-4⟧\n"), refused,
			says(`a length cannot be below 0, found "-4"`, "write 4"),
		},
		{
			"below nothing, with a true minus", swap(small, "4\n", "⟦−4⟧\n"), refused,
			says(`a length cannot be below 0, found "−4"`, "write 4"),
		},
		{
			"a number too long", swap(small, "4\n", "⟦4000000⟧\n"), refused,
			says("a number may have at most 6 digits", "write a length as 3 1/2 or 3.5"),
		},
		{
			"a number with an exponent", swap(small, "4\n", "⟦1e3⟧\n"), refused,
			says(`"1e3" is not a length`, "units are in, cm, mm, m and yd"),
		},
		{
			"not a number", swap(small, "4\n", "⟦NaN⟧\n"), refused,
			says(`expected the width of the cut strip, found "NaN"`, "for example strip 4"),
		},
		{
			"an underscore", swap(small, "4\n", "⟦1_000⟧\n"), refused,
			says(`"1_000" is not a length`, "units are in, cm, mm, m and yd"),
		},
		{
			"feet", swap(small, "4\n", "⟦4'⟧\n"), refused,
			says(`"4'" is not a length`, "feet are not used; write inches or yards"),
		},
		{
			"an unknown unit", swap(small, "4\n", "⟦4ins⟧\n"), refused,
			says(`"4ins" is not a length`, "units are in, cm, mm, m and yd"),
		},
		{
			"an unknown unit apart", swap(small, "4\n", "4 ⟦thumbs⟧\n"), refused,
			says(`nothing more belongs on this line, found "thumbs"`, "leave out thumbs"),
		},
		{
			"a multiplication sign", swap(small, "4\n", "⟦4×5⟧\n"), refused,
			says(`"4×5" is not a length`, "one length is wanted here, not two"),
		},
		{
			"an x between numbers", swap(small, "4\n", "⟦4x5⟧\n"), refused,
			says(`"4x5" is not a length`, "one length is wanted here, not two"),
		},
		{
			"an x apart", swap(small, "4\n", "4 ⟦x⟧ 5\n"), refused,
			says(`nothing more belongs on this line, found "x"`, "one length is wanted here, not two"),
		},
		{
			"a multiplication sign apart", swap(small, "4\n", "4 ⟦×⟧ 5\n"), refused,
			says(`nothing more belongs on this line, found "×"`, "one length is wanted here, not two"),
		},
		{
			"by between numbers", swap(small, "4\n", "4 ⟦by⟧ 5\n"), refused,
			says(`nothing more belongs on this line, found "by"`, "one length is wanted here, not two"),
		},
		{
			"a dash for a hyphen", swap(small, "4\n", "⟦3–1/2⟧\n"), refused,
			says(`"3–1/2" is not a length`, "write 3-1/2 with a hyphen, or with a blank in its place"),
		},
		{
			"a dash for a range", swap(small, "4\n", "⟦4–5⟧\n"), refused,
			says(`"4–5" is not a length`, "one length is wanted here, without a dash"),
		},
		{
			"a length in words", swap(small, "4\n", "⟦four⟧\n"), refused,
			says(`expected the width of the cut strip, found "four"`, "for example strip 4"),
		},
		{
			"a sign of equality", swap(small, "4\n", "⟦=⟧ 4\n"), refused,
			says(`expected the width of the cut strip, found "="`, "leave out the equals sign"),
		},
		{
			"no length", swap(small, "strip 4\n", "strip⟦⟧\n"), refused,
			says("expected the width of the cut strip, found the end of the line", "for example strip 4"),
		},
		{
			"a strip of nothing", swap(small, "4\n", "⟦0⟧\n"), refused,
			says("a strip of 0 in leaves nothing when two seam allowances of 1/4 in are taken", "write a strip wider than 1/2 in"),
		},
		{
			"a strip of its seams", swap(small, "4\n", "⟦1/2⟧\n"), refused,
			says("a strip of 1/2 in leaves nothing when two seam allowances of 1/4 in are taken", "write a strip wider than 1/2 in"),
		},
		{
			"a strip too wide", swap(small, "4\n", "⟦121⟧\n"), refused,
			says("the strip is 121 in, but must be 120 in or less", ""),
		},
		{
			"a strip finished", swap(small, "4\n", "⟦3 1/2 finished⟧\n"), refused,
			says("a strip's width is cut, not finished", "wedges that finish at 3 1/2 in are cut from strips of 4 in"),
		},
		{
			"a side too small", swap(small, "strip 4\n", "side ⟦1/8⟧\n"), refused,
			says("this makes blocks of 1/8 in, but a block must be 1/4 in to 120 in", ""),
		},
		{
			"a side too large", swap(small, "strip 4\n", "side ⟦10 yd⟧\n"), refused,
			says("this makes blocks of 360 in, but a block must be 1/4 in to 120 in", ""),
		},
		{
			"a side cut that leaves nothing", swap(small, "strip 4\n", "side ⟦1/2 cut⟧\n"), refused,
			says("a side of 1/2 in cut leaves nothing when two seam allowances of 1/4 in are taken", "without cut it finishes at 1/2 in, and is cut 1 in wide"),
		},
		{
			"neither strip nor side", swap(small, "strip 4\n", "", "grid", "⟦grid⟧"), refused,
			says("this layout says neither the cut strip nor the finished side of its blocks", "for example strip 4"),
		},
		{
			"neither strip nor side, and no wedges", swap(small, "strip 4\n", "", "web wedges navy kites cream\n", "plain piece navy\n", "grid", "⟦grid⟧"), refused,
			says("this layout says neither the cut strip nor the finished side of its blocks", "for example side 7"),
		},
		{
			"strip and side", swap(small, "strip 4\n", "side ⟨7⟩\nstrip ⟦4⟧\n"), refused,
			says("strip and side cannot both be given, since each follows from the other", "keep one of the two", "the other one"),
		},
		{
			"a strip for no wedges", swap(small, "4\n", "⟦4⟧\n", "web wedges navy kites cream\n", "plain piece navy\n"), refused,
			says("no block of the grid has wedges, so no side follows from a strip", "write side and the finished side of a block instead"),
		},
		{
			"a seam cut", swap(small, "strip 4\n", "seam ⟦1/4 cut⟧\nstrip 4\n"), refused,
			says("a seam allowance is neither cut nor finished", "leave out cut"),
		},
		{
			"a seam finished", swap(small, "strip 4\n", "seam ⟦1/4 finished⟧\nstrip 4\n"), refused,
			says("a seam allowance is neither cut nor finished", "leave out finished"),
		},
		{
			"a seam of nothing", swap(small, "strip 4\n", "seam ⟦0⟧\nstrip 4\n"), refused,
			says("a seam allowance must be above 0", "1/4 in is usual"),
		},
		{
			"a seam in whole centimetres", swap(small, "strip 4\n", "units cm\nseam ⟦6⟧\nstrip 10\n"), refused,
			says("a seam allowance of 6 cm is too wide; the limit is 2.54 cm", "did you mean 6 mm?"),
		},
		{
			"a seam too wide", swap(small, "strip 4\n", "seam ⟦1 1/4⟧\nstrip 4\n"), refused,
			says("a seam allowance of 1 1/4 in is too wide; the limit is 1 in", "1/4 in is usual"),
		},
		{
			"units misspelt", swap(small, "strip 4\n", "units ⟦inchs⟧\nstrip 4\n"), refused,
			says(`expected the units, inches or cm, found "inchs"`, `did you mean "inches"?`),
		},
		{
			"units of another sort", swap(small, "strip 4\n", "units ⟦metres⟧\nstrip 4\n"), refused,
			says(`expected the units, inches or cm, found "metres"`, "for example units cm"),
		},
		{
			"no units", swap(small, "strip 4\n", "units⟦⟧\nstrip 4\n"), refused,
			says("expected the units, inches or cm, found the end of the line", "for example units cm"),
		},
		{
			"cloth too narrow", swap(small, "strip 4\n", "usable-width ⟦1/2⟧\nstrip 4\n"), refused,
			says("the usable width of fabric is 1/2 in, but must be 1 in or more", ""),
		},
		{
			"cloth too wide", swap(small, "strip 4\n", "usable-width ⟦12 yd⟧\nstrip 4\n"), refused,
			says("the usable width of fabric is 432 in, but must be 400 in or less", ""),
		},
		{
			"cloth cut", swap(small, "strip 4\n", "usable-width ⟦42 cut⟧\nstrip 4\n"), refused,
			says("the usable width of fabric is neither cut nor finished", "leave out cut"),
		},
		{
			"upper left of another sort", swap(small, "strip 4\n", "top-left ⟦kite⟧\nstrip 4\n"), refused,
			says(`expected the center at the upper left, web or star, found "kite"`, "for example top-left star"),
		},
		{
			"no length before a comment", swap(small, "strip 4\n", "strip⟦⟧   # four\n"), refused,
			says("expected the width of the cut strip, found the end of the line", "for example strip 4"),
		},
		{
			"a number that ends in a letter of another", swap(small, "4\n", "⟦4о⟧\n"), refused,
			says(`"4о" is not a length`, "units are in, cm, mm, m and yd"),
		},
		{
			"a range of numbers with a dash apart", swap(small, "4\n", "4 ⟦–⟧ 5\n"), refused,
			says(`nothing more belongs on this line, found "–"`, "one length is wanted here, without a dash"),
		},
		{
			"a length and its twin in centimetres", swap(small, "4\n", "4 in ⟦10⟧ cm\n"), refused,
			says(`nothing more belongs on this line, found "10"`, "leave out 10 cm"),
		},
		{
			"a length of text", swap(small, "4\n", "⟦\"4\"⟧\n"), refused,
			says("expected the width of the cut strip, found text in quotes", "for example strip 4"),
		},
		{
			"a word of a side", swap(small, "strip 4\n", "side ⟦wide⟧\n"), refused,
			says(`expected the finished side of a block, found "wide"`, "for example side 7"),
		},
		{
			"a word of a seam", swap(small, "strip 4\n", "seam ⟦narrow⟧\nstrip 4\n"), refused,
			says(`expected the seam allowance, found "narrow"`, "for example seam 1/4 in"),
		},
		{
			"a word of cloth", swap(small, "strip 4\n", "usable-width ⟦wide⟧\nstrip 4\n"), refused,
			says(`expected the usable width of fabric, found "wide"`, "for example usable-width 42"),
		},
	}
}
