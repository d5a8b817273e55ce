package layout_test

import "strings"

// fabricCases are faults and warnings of fabrics.
func fabricCases() []testCase {
	return []testCase{
		{
			"a name of two words", swap(small, "navy #1f3350\nblock W web wedges navy kites cream\n", "⟦light blue⟧ #9ab\nblock W web wedges light kites cream\n"), refused,
			says(`a fabric's name is one word, found "light blue" before the color #9ab`, "leave out blue"),
		},
		{
			"a name of three words", swap(small, "navy #1f3350\nblock W web wedges navy kites cream\n", "⟦deep sea  blue⟧ #9ab \"print\" on-hand 3\nblock W web wedges deep kites cream\n"), refused,
			says(`a fabric's name is one word, found "deep sea  blue" before the color #9ab`, "leave out sea blue"),
		},
		{
			"a name of two words with a colour by name", swap(small, "navy #1f3350\nblock W web wedges navy kites cream\n", "⟦old rose⟧ pink\nblock W web wedges old kites cream\n"), refused,
			says(`a fabric's name is one word, found "old rose" before the color pink`, "leave out rose"),
		},
		{
			"a name of two words, not used yet", swap(small, "#1f3350\n", "#1f3350\nfabric ⟦old rose⟧ pink\n"), refused,
			says(`a fabric's name is one word, found "old rose" before the color pink`, "write old-rose pink"),
		},
		{
			"a name twice", swap(small, "navy #1f3350", "⟦navy navy⟧ #1f3350"), refused,
			says(`a fabric's name is one word, found "navy navy" before the color #1f3350`, "leave out navy"),
		},
		{
			"an equals sign before the color", swap(small, "cream #f4ead7", "cream ⟦=⟧ #f4ead7"), refused,
			says(`"=" is not a color; expected #rgb, #rrggbb or a CSS color name, as in #1f3350 or navy`, "leave out the equals sign"),
		},
		{
			"a color of two words behind a name", swap(small, "navy #1f3350", "navy navy ⟦blue⟧"), refused,
			says(`a fabric has one color, and "navy" is here already`, "leave out blue"),
		},
		{
			"a color's name in two words", swap(small, "cream #f4ead7", "cream ⟦light blue⟧"), refused,
			says(`a color's name is one word, found "light blue"`, "write lightblue"),
		},
		{
			"on hand in two words", swap(small, "#1f3350", "#1f3350 ⟦on⟧ hand 1 yd"), refused,
			says(`expected a print name in quotes, "on-hand", "usable-width" or "from", found "on"`, "write on-hand"),
		},
		{
			"no precuts", swap(small, "#1f3350", "#1f3350 from ⟦0⟧ fat-quarters"), refused,
			says("a fabric cannot be cut from 0 precuts", "write how many there are, or leave from out"),
		},
		{
			"precuts without a number", swap(small, "#1f3350", "#1f3350 from ⟦fat-quarters⟧"), refused,
			says(`expected how many precuts there are, a whole number, found "fat-quarters"`, "for example from 3 fat-quarters"),
		},
		{
			"precuts of no sort", swap(small, "#1f3350", "#1f3350 from 3 ⟦fat-quaters⟧"), refused,
			says(`expected fat-quarters, fat-eighths, squares or strips, found "fat-quaters"`, `did you mean "fat-quarters"?`),
		},
		{
			"precuts in two words", swap(small, "#1f3350", "#1f3350 from 3 ⟦quarters⟧"), refused,
			says(`expected fat-quarters, fat-eighths, squares or strips, found "quarters"`, "for example from 3 fat-quarters"),
		},
		{
			"squares without their side", swap(small, "navy #1f3350", "navy #1f3350 from 3 squares⟦⟧"), refused,
			says("expected the side of the squares, found the end of the line", "for example squares 10 in"),
		},
		{
			"precuts of a pool", swap(small, "#1f3350\n", "#1f3350\nscraps darks navy cream from ⟦3 fat-quarters⟧\n"), refused,
			says("a pool is not cut from precuts, but its fabrics may be", "write from 3 fat-quarters on the line of each fabric"),
		},
		{
			"a name of two words, used as two", "strip 4\nfabric cream #f4ead7\nfabric ⟦light blue⟧ #9ab\nblock W web wedges cream kites cream\nblock P plain piece light blue\ngrid\n  W W P\n  W P W\n  W W W\n", refused,
			says(`a fabric's name is one word, found "light blue" before the color #9ab`, "write light-blue #9ab"),
		},
		{
			"a colour of two words", swap(small, "navy #1f3350\n", "⟦navy⟧ blue\n"), warned,
			says(`warning: the fabric "navy" is drawn in blue, #0000ff`, "if navy blue is one name, write navy-blue and then its color"),
		},
		{
			"a colour of two words that CSS has as one", swap(small, "navy #1f3350\nblock W web wedges navy kites cream\n", "⟦light⟧ Blue\nblock W web wedges light kites cream\n"), warned,
			says(`warning: the fabric "light" is drawn in blue, #0000ff`, "if light Blue is one name, write light-Blue and then its color"),
		},
		{
			"no name", swap(small, "fabric navy #1f3350\nblock W web wedges navy kites cream\n", "fabric⟦⟧\nblock W web wedges cream kites cream\n"), refused,
			says("expected a fabric's name, found the end of the line", `for example fabric navy #1f3350 "night sky" on-hand 1 1/2 yd`),
		},
		{
			"no colour", swap(small, "navy #1f3350\n", "navy⟦⟧\n"), refused,
			says(`expected the color of "navy", found the end of the line`, "for example fabric navy #1f3350"),
		},
		{
			"a colour misspelt", swap(small, "#1f3350", "⟦nayv⟧"), refused,
			says(`"nayv" is not a color; expected #rgb, #rrggbb or a CSS color name, as in #1f3350 or navy`, `did you mean "navy"?`),
		},
		{
			"a colour that is none", swap(small, "#1f3350", "⟦wibble⟧"), refused,
			says(`"wibble" is not a color; expected #rgb, #rrggbb or a CSS color name, as in #1f3350 or navy`, "write # and six digits, or a name such as navy"),
		},
		{
			"a colour without its #", swap(small, "#1f3350", "⟦1f3350⟧"), refused,
			says(`"1f3350" has no # before it, expected #1f3350`, "write #1f3350"),
		},
		{
			"a colour of five digits", swap(small, "#1f3350", "⟦#1f335⟧"), refused,
			says(`"#1f335" has 5 digits after #, expected 3 or 6, as in #1f3350`, "write # and six digits, or a name such as navy"),
		},
		{
			"a colour with a letter too far", swap(small, "#1f3350", "⟦#1g3350⟧"), refused,
			says(`"#1g3350" is not a color: after # come only the digits 0 to 9 and a to f, 3 or 6 of them, as in #1f3350`, "write # and six digits, or a name such as navy"),
		},
		{
			"a colour that is see-through", swap(small, "#1f3350", "⟦#1f335080⟧"), refused,
			says(`"#1f335080" gives a see-through color, but a fabric is not see-through; expected #rgb or #rrggbb`, "write # and six digits, or a name such as navy"),
		},
		{
			"no colour at all", swap(small, "#1f3350", "⟦transparent⟧"), refused,
			says(`"transparent" gives a see-through color, but a fabric is not see-through; expected #rgb or #rrggbb`, "write # and six digits, or a name such as navy"),
		},
		{
			"the color of the page", swap(small, "#1f3350", "⟦currentColor⟧"), refused,
			says(`"currentColor" takes its color from a web page; expected #rgb, #rrggbb or a CSS color name, as in #1f3350 or navy`, "write # and six digits, or a name such as navy"),
		},
		{
			"a colour with a semicolon", swap(small, "#1f3350", "⟦#1f3350;⟧"), refused,
			says(`"#1f3350;" is not a color: after # come only the digits 0 to 9 and a to f, 3 or 6 of them, as in #1f3350`, "write #1f3350"),
		},
		{
			"a name in quotes", swap(small, "navy #1f3350\n", "⟦\"navy\"⟧ #1f3350\n"), refused,
			says(`a fabric's name takes no quotes, found "navy"`, "write navy"),
		},
		{
			"a name with a comma", swap(small, "navy #1f3350\n", "⟦navy,⟧ #1f3350\n"), refused,
			says(`"navy," is not a fabric's name: names begin with a letter and continue with letters, digits, - and _`, "write navy"),
		},
		{
			"a name that begins with a digit", swap(small, "navy #1f3350\n", "⟦2navy⟧ #1f3350\n"), refused,
			says(`"2navy" is not a fabric's name: names begin with a letter and continue with letters, digits, - and _`, "write navy"),
		},
		{
			"a name of signs", swap(small, "#1f3350", "#1f3350\nfabric ⟦***⟧ #1f3350"), refused,
			says(`"***" is not a fabric's name: names begin with a letter and continue with letters, digits, - and _`, `for example fabric navy #1f3350 "night sky" on-hand 1 1/2 yd`),
		},
		{
			"a reserved word as a name", swap(small, "navy #1f3350\nblock W web wedges navy kites cream\n", "⟦border⟧ #1f3350\nblock W web wedges cream kites cream\n"), refused,
			says(`"border" is one of the language's own words and cannot be a name`, "call it my-border"),
		},
		{
			"an option as a name", swap(small, "navy #1f3350\nblock W web wedges navy kites cream\n", "⟦Cut⟧ #1f3350\nblock W web wedges cream kites cream\n"), refused,
			says(`"Cut" is one of the language's own words and cannot be a name`, "call it my-Cut"),
		},
		{
			"a name too long", swap(small, "#1f3350", "#1f3350\nfabric ⟦"+strings.Repeat("n", 61)+"⟧ #000"), refused,
			says("this name has 61 characters; the limit is 60", ""),
		},
		{
			"a fabric twice", swap(small, "navy #1f3350\n", "⟨navy⟩ #1f3350\nfabric ⟦NAVY⟧ red\n"), refused,
			says(`fabric "NAVY" is already defined`, "give this one another name", "first defined here"),
		},
		{
			"a fabric never used", swap(small, "#1f3350", "#1f3350\nfabric ⟦sky⟧ #8ab"), warned,
			says(`warning: the fabric "sky" is never used`, ""),
		},
		{
			"a print without quotes", swap(small, "#1f3350", "#1f3350 ⟦night⟧ sky"), refused,
			says(`expected a print name in quotes, "on-hand", "usable-width" or "from", found "night"`, `for example fabric navy #1f3350 "night sky" on-hand 1 1/2 yd`),
		},
		{
			"a print without its end", swap(small, "#1f3350", `#1f3350 ⟦"night sky⟧`), refused,
			says("the text that begins here has no quotation mark at its end", `end it with "`),
		},
		{
			"nothing on hand", swap(small, "#1f3350", "#1f3350 on-hand⟦⟧"), refused,
			says("expected the length on hand, found the end of the line", "for example on-hand 1 1/2 yd"),
		},
		{
			"yards on hand without their unit", swap(small, "#1f3350", "#1f3350 on-hand ⟦1 1/2⟧"), warned,
			says(`warning: only 1 1/2 in of "navy" is on hand`, "if yards are meant, write 1 1/2 yd"),
		},
		{
			"none on hand", swap(small, "#1f3350", "#1f3350 on-hand ⟦0⟧"), refused,
			says("the length on hand must be above 0", ""),
		},
		{
			"too much on hand", swap(small, "#1f3350", "#1f3350 on-hand ⟦2000 yd⟧"), refused,
			says("the length on hand is 72000 in, but must be 36000 in or less", ""),
		},
		{
			"a length on hand that is cut", swap(small, "#1f3350", "#1f3350 on-hand ⟦1 yd cut⟧"), refused,
			says("the length on hand is neither cut nor finished", "leave out cut"),
		},
		{
			"on hand twice", swap(small, "#1f3350", "#1f3350 ⟨on-hand⟩ 1 yd ⟦on-hand⟧ 2 yd"), refused,
			says(`"on-hand" is already on this line`, "keep one of the two", "first given here"),
		},
		{
			"a fabric too narrow", swap(small, "#1f3350", "#1f3350 usable-width ⟦1/2⟧"), refused,
			says("the usable width of fabric is 1/2 in, but must be 1 in or more", ""),
		},
		{
			"a fabric too wide", swap(small, "#1f3350", "#1f3350 usable-width ⟦500⟧"), refused,
			says("the usable width of fabric is 500 in, but must be 400 in or less", ""),
		},
		{
			"a fabric with a width finished", swap(small, "#1f3350", "#1f3350 usable-width ⟦42 finished⟧"), refused,
			says("the usable width of fabric is neither cut nor finished", "leave out finished"),
		},
		{
			"a photo where none can be read", swap(small, "#1f3350", `swatch ⟦"navy.png"⟧`), refused,
			says(`"navy.png": no photo can be read here`, "or give a color, as in #1f3350"),
		},
		{
			"a photo without its name", swap(small, "#1f3350", "swatch⟦⟧"), refused,
			says("expected the name of a photo in quotes, found the end of the line", `put the text in quotes: "…"`),
		},
		{
			"a photo not in quotes", swap(small, "#1f3350", "swatch ⟦navy.png⟧"), refused,
			says(`expected the name of a photo in quotes, found "navy.png"`, `write "navy.png"`),
		},
		{
			"a photo elsewhere", swap(small, "#1f3350", `swatch ⟦"../navy.png"⟧`), refused,
			says(`a photo must be in the layout's folder or in one below it, found "../navy.png"`, "put the photo beside the layout and write its name alone"),
		},
		{
			"a photo with the folders of another system", swap(small, "#1f3350", `swatch ⟦"cloth\navy.png"⟧`), refused,
			says(`folders in the name of a photo are separated by /, found "cloth\navy.png"`, "write cloth/navy.png"),
		},
		{
			"a photo of another sort", swap(small, "#1f3350", `swatch ⟦"navy.heic"⟧`), refused,
			says(`a photo is a JPEG or PNG file, found "navy.heic"`, `for example fabric navy swatch "photo.jpg"`),
		},
		{
			"a photo of no cloth", swap(small, "#1f3350", `swatch ⟦"navy.png"⟧ across ⟦1/8⟧`), refused,
			[]message{say(`"navy.png": no photo can be read here`, "or give a color, as in #1f3350"), say("how much fabric the photo shows across is 1/8 in, but must be 1/4 in or more", "")},
		},
		{
			"a colour across", swap(small, "#1f3350", `#1f3350 ⟦across⟧ 3`), refused,
			says(`expected a print name in quotes, "on-hand", "usable-width" or "from", found "across"`, `for example fabric navy #1f3350 "night sky" on-hand 1 1/2 yd`),
		},
		{
			"a fabric misspelt", swap(small, "navy kites cream\n", "⟦nayv⟧ kites cream\n"), refused,
			says(`no fabric, pool or strip set is called "nayv"`, `did you mean "navy"?`),
		},
		{
			"a fabric misspelt in three places", swap(small, "navy kites cream\nblock P plain piece cream\n", "⟦nvay⟧ kites ⟨nvay⟩\nblock P plain piece ⟨nvay⟩\n"), refused,
			says(`no fabric, pool or strip set is called "nvay"`, `did you mean "navy"?`, "here too", "here too"),
		},
		{
			"a fabric that is not there", swap(small, "navy kites cream\n", "⟦moss⟧ kites cream\n"), refused,
			says(`no fabric, pool or strip set is called "moss"`, "define it: fabric moss and its color"),
		},
		{
			"a colour used as a fabric", swap(small, "navy kites cream\n", "⟦teal⟧ kites cream\n"), refused,
			says(`no fabric, pool or strip set is called "teal"`, "define it: fabric teal teal"),
		},
		{
			"a colour in digits used as a fabric", swap(small, "navy kites cream\n", "⟦#1f3350⟧ kites cream\n"), refused,
			says(`no fabric, pool or strip set is called "#1f3350"`, "define a fabric of this color, as in fabric cream #1f3350, and write its name here"),
		},
		{
			"a fabric that is not there and cannot be", swap(small, "navy kites cream\n", "⟦na+vy⟧ kites cream\n"), refused,
			says(`no fabric, pool or strip set is called "na+vy"`, `did you mean "navy"?`),
		},
		{
			"a name of many letters that is wrong", swap(small, "#1f3350", "#1f3350\nfabric ⟦n.n.n.n.n.n.n.n.n.n.n.n.n.n.n.n.n.n.n.n.n.n.n.n.n.n.n.n.n.n.⟧ #000"), refused,
			says(`"n.n.n.n.n.n.n.n.n.n.n.n.n.n.n.n.n.n.n.n.…" is not a fabric's name: names begin with a letter and continue with letters, digits, - and _`, "write nnnnnnnnnnnnnnnnnnnnnnnnnnnnnn"),
		},
		{
			"a colour without a name", swap(small, "navy #1f3350\n", "⟦#1f3350⟧\n"), refused,
			says(`expected a fabric's name, found "#1f3350"`, "write the name in front of it"),
		},
	}
}
