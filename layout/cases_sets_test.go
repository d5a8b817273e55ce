package layout_test

// setCases are faults and warnings of strip sets and webs.
func setCases() []testCase {
	return []testCase{
		{
			"a set that comes to more", swap(banded, "shore rust 1 3/4 cream 1 1/2 navy 1 3/4\n", "⟦shore rust 1 3/4 cream 1 1/2 navy 2⟧\n"), refused,
			says(`sewn together, "shore" comes to 4 1/4 in, 1/4 in more than the strip of 4 in that web blocks need`, "write navy rest, which makes it 1 3/4 in"),
		},
		{
			"a set that comes to less", swap(banded, "shore rust 1 3/4 cream 1 1/2 navy 1 3/4\n", "⟦shore rust 1 3/4 cream 1 1/2 navy 1⟧\n"), refused,
			says(`sewn together, "shore" comes to 3 1/4 in, 3/4 in less than the strip of 4 in that web blocks need`, "write navy rest, which makes it 1 3/4 in"),
		},
		{
			"a set that comes to much more", swap(banded, "shore rust 1 3/4 cream 1 1/2 navy 1 3/4\n", "⟦shore rust 3 3/4 cream 1 1/2 navy 1 3/4⟧\n"), refused,
			says(`sewn together, "shore" comes to 6 in, 2 in more than the strip of 4 in that web blocks need`, "write rest for one of the widths"),
		},
		{
			"a set in centimetres", swap(banded, "strip 4\n", "units cm\nstrip 10\n", "shore rust 1 3/4 cream 1 1/2 navy 1 3/4\n", "⟦shore rust 4,5 cream 4 navy 5⟧\n"), refused,
			says(`sewn together, "shore" comes to 10.5 cm, 0.5 cm more than the strip of 10 cm that web blocks need`, "write navy rest, which makes it 4.5 cm"),
		},
		{
			"a set for a given side", swap(banded, "strip 4\n", "side 6\n", "shore rust 1 3/4 cream 1 1/2 navy 1 3/4\n", "⟦shore rust 1 3/4 cream 1 1/2 navy 1 3/4⟧\n"), refused,
			says(`sewn together, "shore" comes to 4 in, 0.4197 in less than the strip of 4.4197 in that web blocks need`, "write rest for one of the widths"),
		},
		{
			"a set without fabrics", swap(banded, "shore rust 1 3/4 cream 1 1/2 navy 1 3/4\n", "shore⟦⟧\n"), refused,
			says(`expected the fabrics of "shore" and their cut widths, found the end of the line`, "for example strip-set shore navy 1 3/4 cream rest"),
		},
		{
			"a set without its name", swap(small, "#1f3350", "#1f3350\nfabric rust #b5532a\nstrip-set⟦⟧", "block P plain piece cream\n", "", "W P\n  W P W\n  W W W\n", "W\n  W W\nborder 1 rust\n"), refused,
			says("expected a strip set's name, found the end of the line", "for example strip-set shore rust 1 3/4 cream 1 1/2 teal rest"),
		},
		{
			"a set without the last width", swap(banded, "navy 1 3/4\n", "navy⟦⟧\n"), refused,
			says(`expected the cut width of "navy", or the word rest or equal, found the end of the line`, "for example strip-set shore rust 1 3/4 cream 1 1/2 teal rest"),
		},
		{
			"a width before its fabric", swap(banded, "rust 1 3/4 cream 1 1/2 navy 1 3/4\n", "⟦1⟧ 3/4 rust 1 1/2 cream 1 3/4 navy\n"), refused,
			says(`expected a fabric's name, found "1"`, "the set's name comes first, then each fabric with its width"),
		},
		{
			"two rests", swap(banded, "1 3/4 cream 1 1/2 navy 1 3/4\n", "rest cream 1 1/2 ⟦navy rest⟧\n"), refused,
			says(`a strip set may have one rest, "shore" has two`, "write equal for each strip that takes an equal share of the rest"),
		},
		{"equal strips that a ruler shows", swap(banded, "strip 4\n", "strip 4 1/4\n", "1 3/4 cream 1 1/2 navy 1 3/4\n", "equal cream equal navy equal\n"), accepted, nil},
		{"equal strips beside one of its own width", swap(banded, "1 3/4 cream 1 1/2 navy 1 3/4\n", "equal cream 2 navy equal\n"), accepted, nil},
		{
			"equal strips that no ruler shows", swap(banded, "strip-set shore rust 1 3/4 cream 1 1/2 navy 1 3/4\n", "⟦strip-set shore rust equal cream equal navy equal⟧\n"), warned,
			says(`warning: the equal strips of "shore" are about 1 11/16 in wide, which no ruler shows`, "strip 3 1/2 makes them 1 1/2 in, and strip 4 1/4 makes them 1 3/4 in"),
		},
		{
			"equal strips so narrow that none are narrower", swap(banded, "strip 4\n", "strip 1\n", "strip-set shore rust 1 3/4 cream 1 1/2 navy 1 3/4\n", "⟦strip-set shore rust equal cream equal navy equal⟧\n"), warned,
			says(`warning: the equal strips of "shore" are about 11/16 in wide, which no ruler shows`, "strip 1 1/4 makes them 3/4 in"),
		},
		{
			"equal strips for a given side", swap(banded, "strip 4\n", "side 6\n", "strip-set shore rust 1 3/4 cream 1 1/2 navy 1 3/4\n", "⟦strip-set shore rust equal cream equal navy equal⟧\n"), warned,
			says(`warning: the equal strips of "shore" are about 1 13/16 in wide, which no ruler shows`, "give all but one a width that a ruler shows, and write rest for the last"),
		},
		{
			"equal strips and a rest", swap(banded, "1 3/4 cream 1 1/2 navy 1 3/4\n", "equal cream equal ⟦navy rest⟧\n"), refused,
			says(`the equal strips of "shore" share what the others leave, so there is no rest`, "write equal for each strip that takes an equal share of the rest"),
		},
		{
			"equal strips of nothing", swap(banded, "1 3/4 cream 1 1/2 navy 1 3/4\n", "4 ⟦cream equal⟧ navy equal\n"), refused,
			says("the other strips leave 1/2 in of the 4 in that web blocks need, no more than its two seam allowances", "make the other strips narrower"),
		},
		{
			"a rest of nothing", swap(banded, "1 3/4 cream 1 1/2 navy 1 3/4\n", "4 ⟦cream rest⟧\n"), refused,
			says("the other strips leave 1/2 in of the 4 in that web blocks need, no more than its two seam allowances", "make the other strips narrower"),
		},
		{
			"a rest below nothing", swap(banded, "1 3/4 cream 1 1/2 navy 1 3/4\n", "5 ⟦cream rest⟧\n"), refused,
			says("the other strips leave nothing of the 4 in that web blocks need", "make the other strips narrower"),
		},
		{
			"a band that vanishes", swap(banded, "rust 1 3/4 cream 1 1/2 navy 1 3/4\n", "⟦rust 1/2⟧ cream rest\n"), refused,
			says("a strip of 1/2 in vanishes in its two seam allowances of 1/4 in", "write a width above 1/2 in"),
		},
		{
			"a band finished", swap(banded, "1 3/4 cream 1 1/2 navy 1 3/4\n", "⟦1 1/4 finished⟧ cream rest\n"), refused,
			says("the widths of a strip set are cut, not finished", "1 1/4 in finished is cut 1 3/4 in wide"),
		},
		{
			"a set in a set", swap(banded, "shore rust 1 3/4 cream 1 1/2 navy 1 3/4\nblock W web wedges shore kites cream\n", "⟨shore⟩ rust 1 3/4 cream 1 1/2 navy 1 3/4\nstrip-set deep ⟦shore⟧ 1 3/4 navy rest\nblock W web wedges deep kites cream\n"), refused,
			says(`a strip set is sewn from fabrics, and "shore" is a strip set`, "write a fabric, for example cream", "defined here"),
		},
		{
			"a fabric in quotes in a set", swap(banded, "rust 1 3/4 cream 1 1/2 navy 1 3/4\n", "⟦\"rust\"⟧ 1 3/4 cream 1 1/2 navy 1 3/4\n"), refused,
			says("expected a fabric's name, found text in quotes", "write rust"),
		},
		{
			"a fabric misspelt in a set", swap(banded, "rust 1 3/4 cream 1 1/2 navy 1 3/4\n", "⟦rist⟧ 1 3/4 cream 1 1/2 navy 1 3/4\n"), refused,
			says(`no fabric, pool or strip set is called "rist"`, `did you mean "rust"?`),
		},
		{
			"a set of a fabric's name", "strip 4\nfabric cream #f4ead7\nfabric ⟨navy⟩ #1f3350\nfabric rust #b5532a\nstrip-set ⟦navy⟧ rust 1 3/4 cream 1 1/2 navy 1 3/4\nblock W web wedges navy kites cream\ngrid\n  W W\n  W W\nborder 1 rust\n", refused,
			says(`"navy" is already defined as a fabric`, "give this one another name", "first defined here"),
		},
		{
			"a set twice", swap(banded, "shore rust 1 3/4 cream 1 1/2 navy 1 3/4\n", "⟨shore⟩ rust 1 3/4 cream 1 1/2 navy 1 3/4\nstrip-set ⟦Shore⟧ rust 2 navy rest\n"), refused,
			says(`strip set "Shore" is already defined`, "give this one another name", "first defined here"),
		},
		{
			"a set never used", swap(banded, "shore rust 1 3/4 cream 1 1/2 navy 1 3/4\nblock W web wedges shore kites cream\n", "⟦shore⟧ rust 1 3/4 cream 1 1/2 navy 1 3/4\nblock W web wedges navy kites cream\n"), warned,
			says(`warning: the strip set "shore" is never used`, ""),
		},
		{
			"a set for kites", swap(banded, "shore rust 1 3/4 cream 1 1/2 navy 1 3/4\nblock W web wedges shore kites cream\n", "⟨shore⟩ rust 1 3/4 cream 1 1/2 navy 1 3/4\nblock W web wedges shore kites ⟦shore⟧\n"), refused,
			says(`the kites are cut from fabric, and "shore" is a strip set`, "write a fabric, for example cream", "defined here"),
		},
		{
			"a set for the background", "strip 4\nfabric cream #f4ead7\nfabric navy #1f3350\nfabric rust #b5532a\nstrip-set ⟨shore⟩ rust 1 3/4 cream 1 1/2 navy 1 3/4\nblock W web wedges shore kites cream\nblock F floating wedges shore background ⟦shore⟧\ngrid\n  F W\n  W W\nborder 1 rust\n", refused,
			says(`the background is cut from fabric, and "shore" is a strip set`, "write a fabric, for example cream", "defined here"),
		},
		{
			"a set for a border", swap(banded, "shore rust 1 3/4 cream 1 1/2 navy 1 3/4\n", "⟨shore⟩ rust 1 3/4 cream 1 1/2 navy 1 3/4\n", "rust\n", "⟦shore⟧\n"), refused,
			says(`a border is cut from one fabric, and "shore" is a strip set`, "write a fabric, for example cream", "defined here"),
		},
		{
			"a fabric reversed", swap(banded, "navy #1f3350\n", "⟨navy⟩ #1f3350\n", "shore kites cream\n", "⟦reversed navy⟧ shore kites cream\n"), refused,
			says(`only strip sets can be reversed, and "navy" is a fabric`, "leave out reversed", "defined here"),
		},
		{
			"reversed and nothing", swap(banded, "shore kites cream\n", "reversed ⟦kites⟧ cream\n"), refused,
			says(`expected a fabric for the wedges, found "kites"`, "for example wedges navy"),
		},
		{
			"webs without values", swap(banded, "wedges shore kites cream\n", "kites cream\n⟦webs⟧\n"), refused,
			says("webs has neither values nor a table below it", "for example webs navy / teal"),
		},
		{
			"webs by a number", swap(banded, "wedges shore kites cream\n", "kites cream\nwebs ⟦4⟧\n"), refused,
			says(`expected a fabric or a strip set, found "4"`, "for example webs navy / teal"),
		},
		{
			"webs of three", swap(banded, "wedges shore kites cream\n", "kites cream\nwebs navy / rust ⟦/⟧ shore\n"), refused,
			says("webs takes two values at most, found a third", "for more than two write a table in rows below"),
		},
		{
			"webs without the stroke", swap(banded, "wedges shore kites cream\n", "kites cream\nwebs shore ⟦rust⟧\n"), refused,
			says(`expected / and a second value, found "rust"`, "write webs shore / rust"),
		},
		{
			"webs with a stroke too many", swap(banded, "wedges shore kites cream\n", "kites cream\nwebs shore /⟦⟧\n"), refused,
			says("expected a fabric or a strip set, found the end of the line", "for example webs navy / teal"),
		},
		{
			"webs and wedges", swap(banded, "wedges shore kites cream\n", "⟦wedges shore⟧ kites cream\nwebs shore\n"), warned,
			says("warning: these wedges are not used: webs gives every web its fabric", "leave them out here, or leave out webs"),
		},
		{
			"webs and wedges of two kinds", "strip 4\nfabric cream #f4ead7\nfabric navy #1f3350\nfabric rust #b5532a\nstrip-set shore rust 1 3/4 cream 1 1/2 navy 1 3/4\nblock W web ⟦wedges shore⟧ kites cream\nblock F floating ⟨wedges navy rust⟩ background cream\nwebs shore\ngrid\n  W W\n  W F\nborder 1 rust\n", warned,
			says("warning: these wedges are not used: webs gives every web its fabric", "leave them out here, or leave out webs", "nor are these"),
		},
		{
			"a web of two sets", swap(banded, "3/4\n", "3/4\nblock V web wedges reversed shore kites cream\n", "W W\n  W W\n", "⟦V⟧ W\n  W V\n"), warned,
			says("warning: the web between rows 1 and 2, columns 1 and 2 mixes 4 wedges of reversed shore and 4 of shore", "webs gives every web its fabric, in place of the blocks: for example webs navy"),
		},
		{
			"a web of a pool and a fabric", swap(small, "piece cream\n", "piece cream\nscraps blues navy cream\nblock V web wedges blues kites cream\n", "W W P\n  W P W\n  W W W\n", "⟦V⟧ W P\n  W V P\n"), warned,
			says("warning: the web between rows 1 and 2, columns 1 and 2 mixes 4 wedges of blues and 4 of navy", "webs gives every web its fabric, in place of the blocks: for example webs navy"),
		},
		{
			"a set without a name but with its strips", swap(banded, "shore rust 1 3/4 cream 1 1/2 navy 1 3/4\n", "rust ⟦1⟧ 3/4 cream 1 1/2 navy 1 3/4\n"), refused,
			says(`expected a fabric's name, found "1"`, "the set's name comes first, then each fabric with its width"),
		},
		{
			"reversed misspelt", swap(banded, "wedges shore kites cream\n", "kites cream\nwebs shore / ⟦reversd⟧ shore\n"), refused,
			says(`no fabric, pool or strip set is called "reversd"`, `did you mean "reversed"?`),
		},
	}
}
