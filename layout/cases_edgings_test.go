package layout_test

// edgingCases are faults and warnings of what goes round the blocks, and of the value study.
func edgingCases() []testCase {
	return []testCase{
		{
			"a border before its width", swap(small, "W W\n", "W W\nborder ⟦navy⟧ 4 # dark\n"), refused,
			says(`expected the width of the border, found "navy"`, "the width comes first: border 4 navy"),
		},
		{
			"a binding before its width", swap(small, "W W\n", "W W\nbinding ⟦navy⟧ 2 1/2\n"), refused,
			says(`expected the width of the binding, found "navy"`, "the width comes first: binding 2 1/2 navy"),
		},
		{
			"a border without a fabric", swap(small, "W W\n", "W W\nborder 4⟦⟧\n"), refused,
			says("expected the fabric of the border, found the end of the line", "for example border 4 navy"),
		},
		{
			"a border with nothing", swap(small, "W W\n", "W W\nborder⟦⟧\n"), refused,
			says("expected the width of the border, found the end of the line", "for example border 4 navy"),
		},
		{
			"a border of text", swap(small, "W W\n", "W W\nborder 4 ⟦\"navy\"⟧\n"), refused,
			says("expected the fabric of the border, found text in quotes", "write navy"),
		},
		{
			"a border of a word of the language", swap(small, "W W\n", "W W\nborder 4 ⟦binding⟧\n"), refused,
			says(`expected the fabric of the border, found "binding"`, "for example border 4 navy"),
		},
		{
			"a border of a fabric misspelt", swap(small, "W W\n", "W W\nborder 4 ⟦nvy⟧\n"), refused,
			says(`no fabric, pool or strip set is called "nvy"`, `did you mean "navy"?`),
		},
		{
			"a border of two fabrics", swap(small, "W W\n", "W W\nborder 4 navy ⟦cream⟧\n"), refused,
			says(`expected "corners" or "lengthwise", found "cream"`, "for example border 4 navy"),
		},
		{
			"a border of nothing when it is cut", swap(small, "W W\n", "W W\nborder ⟦0 cut⟧ navy\n"), refused,
			says("a border's width must be above 0", ""),
		},
		{
			"a border of nothing", swap(small, "W W\n", "W W\nborder ⟦0⟧ navy\n"), refused,
			says("a border's width must be above 0", ""),
		},
		{
			"a border cut away", swap(small, "W W\n", "W W\nborder ⟦1/2 cut⟧ navy\n"), refused,
			says("a border's width of 1/2 in cut leaves nothing when two seam allowances of 1/4 in are taken", "without cut it finishes at 1/2 in, and is cut 1 in wide"),
		},
		{
			"a border too wide", swap(small, "W W\n", "W W\nborder ⟦121⟧ navy\n"), refused,
			says("a border's width is 121 in, but must be 120 in or less", ""),
		},
		{
			"corners of nothing", swap(small, "W W\n", "W W\nborder 4 navy corners⟦⟧\n"), refused,
			says("expected the fabric of the corners, found the end of the line", "for example border 4 navy"),
		},
		{
			"corners twice", swap(small, "W W\n", "W W\nborder 4 navy ⟨corners⟩ cream ⟦corners⟧ navy\n"), refused,
			says(`"corners" is already on this line`, "keep one of the two", "first given here"),
		},
		{
			"posts for a border", swap(small, "W W\n", "W W\nborder 4 navy ⟦posts⟧ cream\n"), refused,
			says(`expected "corners" or "lengthwise", found "posts"`, "for example border 4 navy"),
		},
		{
			"a binding finished", swap(small, "W W\n", "W W\nbinding ⟦1/2 finished⟧ navy\n"), refused,
			says("a binding's width is cut, not finished", "for example binding 2 1/2 navy"),
		},
		{
			"a binding too narrow", swap(small, "W W\n", "W W\nbinding ⟦1/8⟧ navy\n"), refused,
			says("the binding's cut width is 1/8 in, but must be 1/4 in or more", ""),
		},
		{
			"a binding too wide", swap(small, "W W\n", "W W\nbinding ⟦21⟧ navy\n"), refused,
			says("the binding's cut width is 21 in, but must be 20 in or less", ""),
		},
		{
			"two bindings", swap(small, "W W\n", "W W\n⟨binding⟩ 2 navy\n⟦binding⟧ 2 cream\n"), refused,
			says(`"binding" is already in this layout`, "keep one of the two", "first given here"),
		},
		{
			"a backing of a number", swap(small, "W W\n", "W W\nbacking ⟦4⟧\n"), refused,
			says(`expected the fabric of the backing, found "4"`, "for example backing navy"),
		},
		{
			"a backing misspelt", swap(small, "W W\n", "W W\nbacking ⟦nayv⟧\n"), refused,
			says(`no fabric, pool or strip set is called "nayv"`, `did you mean "navy"?`),
		},
		{
			"a backing of a set", swap(banded, "shore rust 1 3/4 cream 1 1/2 navy 1 3/4\n", "⟨shore⟩ rust 1 3/4 cream 1 1/2 navy 1 3/4\n", "rust\n", "rust\nbacking ⟦shore⟧\n"), refused,
			says(`a backing is cut from one fabric, and "shore" is a strip set`, "write a fabric, for example cream", "defined here"),
		},
		{
			"corners of a set", swap(banded, "shore rust 1 3/4 cream 1 1/2 navy 1 3/4\n", "⟨shore⟩ rust 1 3/4 cream 1 1/2 navy 1 3/4\n", "rust\n", "rust corners ⟦shore⟧\n"), refused,
			says(`a square is cut from one fabric or motif, and "shore" is a strip set`, "write a fabric, for example cream", "defined here"),
		},
		{
			"sashes part webs", swap(small, "block P plain piece cream\n", "⟦sash 1 cream⟧\n", "W P\n  W P W\n  W W W\n", "W\n  W W\n"), warned,
			says("warning: sashes separate every web: its pieces no longer meet", "leave the sashes out where webs should close"),
		},
		{
			"sashes part stars", "strip 4\nfabric cream #f4ead7\nfabric navy #1f3350\nblock S floating-star wedges navy kites cream background navy\n⟦sash 1 cream⟧\ngrid\n  S S\n  S S\n", warned,
			says("warning: sashes separate every star: its pieces no longer meet", "leave the sashes out where webs should close"),
		},
		{
			"a sash of nothing", swap(small, "piece cream\n", "piece cream\nsash ⟦0⟧ cream\n"), refused,
			says("a sash's width must be above 0", ""),
		},
		{
			"posts without a fabric", swap(small, "piece cream\n", "piece cream\nsash 1 cream posts⟦⟧\n"), refused,
			says("expected the fabric of the posts, found the end of the line", "for example sash 1 1/2 navy"),
		},
		{
			"a spare length of a word", swap(small, "piece cream\n", "piece cream\nspare ⟦lots⟧\n"), refused,
			says(`expected the spare length, found "lots"`, "for example spare 4 1/2"),
		},
		{
			"a spare length finished", swap(small, "piece cream\n", "piece cream\nspare ⟦9 finished⟧\n"), refused,
			says("the spare length is neither cut nor finished", "leave out finished"),
		},
		{
			"too much for squaring up", swap(small, "piece cream\n", "piece cream\nsquare-up ⟦101⟧\n"), refused,
			says("the length for squaring up is 101 in, but must be 100 in or less", ""),
		},
		{
			"a step of value of nothing", swap(small, "piece cream\n", "piece cream\ncontrast ⟦0⟧ 20\n"), refused,
			says("a step of value is a number from 1 to 99, found 0", "for example contrast 10 25"),
		},
		{
			"one step of value", swap(small, "piece cream\n", "piece cream\ncontrast 10⟦⟧\n"), refused,
			says("expected a step of value from 1 to 99, a whole number, found the end of the line", "for example contrast 10 25"),
		},
		{
			"steps of value in the wrong order", swap(small, "piece cream\n", "piece cream\n⟦contrast 30 12⟧\n"), refused,
			says("below the first step seams vanish, from the second on they are clear, so the first must be the smaller", "the smaller number first"),
		},
		{
			"a broken step of value", swap(small, "piece cream\n", "piece cream\ncontrast ⟦1/2⟧ 12\n"), refused,
			says(`expected a step of value from 1 to 99, a whole number, found "1/2"`, "for example contrast 10 25"),
		},
	}
}

// poolCases are faults and warnings of pools, palettes and notes.
func poolCases() []testCase {
	return []testCase{
		{
			"scraps without a name", swap(small, "piece cream\n", "piece cream\nscraps⟦⟧\n"), refused,
			says("expected a pool's name, found the end of the line", "for example scraps blues navy teal sky by block"),
		},
		{
			"scraps of nothing", swap(small, "piece cream\n", "piece cream\nscraps blues⟦⟧\n"), refused,
			says(`expected the fabrics of "blues", found the end of the line`, "for example scraps blues navy teal rust"),
		},
		{
			"scraps of a number", swap(small, "piece cream\n", "piece cream\nscraps blues navy ⟦4⟧\n"), refused,
			says(`expected a fabric's name, found "4"`, "for example scraps blues navy teal sky by block"),
		},
		{
			"scraps dealt by row", swap(small, "navy kites cream\n", "blues kites cream\n", "piece cream\n", "piece cream\nscraps blues navy cream by ⟦row⟧\n"), refused,
			says(`expected how the pool is dealt, piece or block or web or set, found "row"`, "for example scraps blues navy teal sky by block"),
		},
		{
			"scraps dealt by block twice", swap(small, "navy kites cream\n", "blues kites cream\n", "piece cream\n", "piece cream\nscraps blues navy cream ⟨by⟩ block ⟦by⟧ block\n"), refused,
			says(`"by" is already on this line`, "keep one of the two", "first given here"),
		},
		{
			"scraps dealt a broken number of times", swap(small, "navy kites cream\n", "blues kites cream\n", "piece cream\n", "piece cream\nscraps blues navy cream deal ⟦1.5⟧\n"), refused,
			says(`expected the number of the deal, a whole number, found "1.5"`, "for example scraps blues navy teal sky by block"),
		},
		{
			"scraps named behind the deal", swap(small, "navy kites cream\n", "blues kites cream\n", "piece cream\n", "piece cream\nscraps blues navy deal 3 ⟦cream⟧\n"), refused,
			says(`expected by, deal, from, to or the end of the line, found "cream"`, "name all fabrics before by, deal, from and to"),
		},
		{
			"a pool held to a value beyond white", swap(small, "navy kites cream\n", "blues kites cream\n", "piece cream\n", "piece cream\nscraps blues navy cream from ⟦180⟧\n"), refused,
			says(`a value is a number from 0 (black) to 100 (white), found 180`, "for example scraps blues navy teal sky by block"),
		},
		{
			"a pool held to no value", swap(small, "navy kites cream\n", "blues kites cream\n", "piece cream\n", "piece cream\n⟦scraps blues navy cream from 80 to 45⟧\n"), refused,
			says(`no fabric is as light as 80 and as dark as 45`, "the darker value behind from, the lighter one behind to"),
		},
		{
			"a dark among the lights", swap(small, "navy kites cream\n", "lights kites cream\n", "piece cream\n", "piece cream\nscraps lights ⟦navy⟧ cream from 80\n"), warned,
			says(`warning: "navy" is too dark for "lights": its value is L* 21, and the pool begins at 80`, "take it out of lights"),
		},
		{
			"a light among the darks", swap(small, "navy kites cream\n", "darks kites cream\n", "piece cream\n", "piece cream\nscraps darks navy ⟦cream⟧ to 45\n"), warned,
			says(`warning: "cream" is too light for "darks": its value is L* 93, and the pool ends at 45`, "take it out of darks"),
		},
		{
			"a scrap twice", swap(small, "navy kites cream\n", "blues kites cream\n", "piece cream\n", "piece cream\nscraps blues navy cream ⟦navy⟧\n"), warned,
			says(`warning: "navy" is already in the pool "blues"`, ""),
		},
		{
			"scraps of scraps", swap(small, "navy kites cream\n", "more kites cream\n", "piece cream\n", "piece cream\nscraps ⟨blues⟩ navy cream\nscraps more ⟦blues⟧ navy\n"), refused,
			says(`a pool is made of fabrics, and "blues" is a pool of scraps`, "write a fabric, for example cream", "defined here"),
		},
		{
			"scraps of a fabric's name", swap(small, "navy #1f3350\n", "⟨navy⟩ #1f3350\n", "piece cream\n", "piece cream\nscraps ⟦navy⟧ navy cream\n"), refused,
			says(`"navy" is already defined as a fabric`, "give this one another name", "first defined here"),
		},
		{
			"scraps reversed", swap(small, "navy kites cream\n", "⟦reversed blues⟧ kites cream\n", "piece cream\n", "piece cream\nscraps ⟨blues⟩ navy cream\n"), refused,
			says(`only strip sets can be reversed, and "blues" is a pool of scraps`, "leave out reversed", "defined here"),
		},
		{
			"scraps for a border", swap(small, "piece cream\n", "piece cream\nscraps ⟨blues⟩ navy cream\n", "W W\n", "W W\nborder 2 ⟦blues⟧\n"), refused,
			says(`a border is cut from one fabric, and "blues" is a pool of scraps`, "write a fabric, for example cream", "defined here"),
		},
		{
			"scraps never used", swap(small, "piece cream\n", "piece cream\nscraps ⟦blues⟧ navy cream\n"), warned,
			says(`warning: the pool of scraps "blues" is never used`, ""),
		},
		{
			"no palette", swap(small, "piece cream\n", "piece cream\npalette⟦⟧\n"), refused,
			says("expected the name of a palette, found the end of the line", "palettes are: cellarglass, duskmere, frostgate, kilnyard, nettlewick, quincecourt, strawloft, tidewater, washline"),
		},
		{
			"a palette that is not there", swap(small, "piece cream\n", "piece cream\npalette ⟦wibblewobble⟧\n"), refused,
			says(`no palette is called "wibblewobble"`, "palettes are: cellarglass, duskmere, frostgate, kilnyard, nettlewick, quincecourt, strawloft, tidewater, washline"),
		},
		{
			"a note without text", swap(small, "piece cream\n", "piece cream\nnote⟦⟧\n"), refused,
			says("expected the note in quotes, found the end of the line", `put the text in quotes: "…"`),
		},
		{
			"a note of words", swap(small, "piece cream\n", "piece cream\nnote press ⟦the⟧ kites\n"), refused,
			says(`expected the note in quotes, found "the"`, `write "the kites"`),
		},
		{
			"a note for no part", swap(small, "piece cream\n", "piece cream\nnote ⟦wibble⟧ \"Press the kites.\"\n"), refused,
			says(`"wibble" is neither a block nor a part of the pattern`, "parts are: cover, fabric, cutting, sewing, grid, border, finishing"),
		},
		{
			"a fabric of the palette's name", swap(small, "#f4ead7", "#f4ead7\npalette tidewater", "block W web wedges navy kites cream\n", "fabric ⟦Kelp⟧ #335577\nblock W web wedges navy kelp kites cream\n"), warned,
			says(`warning: this fabric "kelp" replaces the one of the palette "tidewater"`, ""),
		},
		{
			"a binding without a fabric", swap(small, "W W\n", "W W\nbinding 2⟦⟧\n"), refused,
			says("expected the fabric of the binding, found the end of the line", "for example binding 2 1/2 navy"),
		},
		{
			"cut misspelt", swap(small, "W W\n", "W W\nborder 4 ⟦ctu⟧ navy\n"), refused,
			says(`no fabric, pool or strip set is called "ctu"`, `did you mean "cut"?`),
		},
	}
}
