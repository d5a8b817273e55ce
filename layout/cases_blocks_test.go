package layout_test

import "strings"

// blockCases are faults and warnings of blocks.
func blockCases() []testCase {
	return []testCase{
		{
			"a kind misspelt", swap(small, "plain piece cream\n", "⟦plian⟧ piece cream\n"), refused,
			says(`expected a kind of block, found "plian"`, `did you mean "plain"?`),
		},
		{
			"a kind that is none", swap(small, "plain piece cream\n", "⟦square⟧ piece cream\n"), refused,
			says(`expected a kind of block, found "square"`, "kinds are: web, star, floating, floating-star, ring, tumblers, plain, halves"),
		},
		{
			"a block without a kind", swap(small, "P plain piece cream\n", "P⟦⟧\n"), refused,
			says("expected a kind of block, found the end of the line", "kinds are: web, star, floating, floating-star, ring, tumblers, plain, halves"),
		},
		{
			"a block without a label", swap(small, "block P plain piece cream\n", "block⟦⟧\n"), refused,
			says("expected a block's label, found the end of the line", "for example block W web wedges navy kites cream"),
		},
		{
			"a label with signs", swap(small, "P plain piece cream\n", "⟦P!⟧ plain piece cream\n"), refused,
			says(`"P!" is not a block's label: names begin with a letter and continue with letters, digits, - and _`, "write P"),
		},
		{
			"a statement as a label", swap(small, "piece cream\n", "piece cream\nblock ⟦border⟧ plain piece cream\n"), refused,
			says(`"border" is one of the language's own words and cannot be a name`, "call it my-border"),
		},
		{
			"a label too long", swap(small, "piece cream\n", "piece cream\nblock ⟦"+strings.Repeat("b", 61)+"⟧ plain piece cream\n"), refused,
			says("this name has 61 characters; the limit is 60", ""),
		},
		{
			"a block twice", swap(small, "P plain piece cream\n", "⟨P⟩ plain piece cream\nblock ⟦p⟧ plain piece navy\n"), refused,
			says(`block "p" is already defined`, "give this one another label", "first defined here"),
		},
		{
			"a block that stands nowhere", swap(small, "piece cream\n", "piece cream\nblock ⟦Q⟧ plain piece navy\n"), warned,
			says(`warning: the block "Q" is not used in the grid`, ""),
		},
		{
			"a role missing", swap(small, "W web wedges navy kites cream\n", "⟦W⟧ web wedges navy\n"), refused,
			says(`block "W" has no kites`, "add kites cream"),
		},
		{
			"all roles missing", swap(small, "W web wedges navy kites cream\n", "⟦W⟧ web\n"), refused,
			says(`block "W" has no wedges and no kites`, "add wedges cream kites navy"),
		},
		{
			"the wedges missing", swap(small, "W web wedges navy kites cream\n", "⟦W⟧ web kites cream\n"), refused,
			says(`block "W" has no wedges`, "add wedges cream"),
		},
		{
			"a role of another kind", swap(small, "kites cream\n", "⟦corners⟧ cream\n"), refused,
			says("web blocks have no corners", "its roles are: wedges, kites, edge"),
		},
		{
			"a role misspelt", swap(small, "wedges navy kites cream\n", "⟦wegdes⟧ navy kites cream\n"), refused,
			says(`expected a role of the web block, found "wegdes"`, `did you mean "wedges"?`),
		},
		{
			"a role left out before its value", swap(small, "piece cream\n", "⟦cream⟧\n"), refused,
			says(`expected a role of the plain block, found "cream"`, "the roles of plain are: piece, edge"),
		},
		{
			"a role twice", swap(small, "wedges navy kites cream\n", "⟨wedges⟩ navy kites cream ⟦wedges⟧ cream\n"), refused,
			says(`"wedges" is already on this line`, "keep one of the two", "first given here"),
		},
		{
			"a role without a value", swap(small, "piece cream\n", "piece⟦⟧\n"), refused,
			says("expected a fabric for the piece, found the end of the line", "for example piece navy"),
		},
		{
			"a role without a value before another", swap(small, "navy kites cream\n", "⟦kites⟧ cream\n"), refused,
			says(`expected a fabric for the wedges, found "kites"`, "for example wedges navy"),
		},
		{
			"a number for a role", swap(small, "piece cream\n", "piece ⟦4⟧\n"), refused,
			says(`expected a fabric for the piece, found "4"`, "for example piece navy"),
		},
		{
			"a value in quotes", swap(small, "piece cream\n", "piece ⟦\"cream\"⟧\n"), refused,
			says("expected a fabric for the piece, found text in quotes", "write cream"),
		},
		{
			"two values for a square", swap(small, "piece cream\n", "piece ⟦cream navy⟧\n"), refused,
			says("the piece of a plain block takes one fabric, found 2", "leave out all but one"),
		},
		{
			"three wedges", swap(small, "navy kites cream\n", "⟦navy cream navy⟧ kites cream\n"), refused,
			says("the wedges of a web block take one, two or four fabrics, found 3", "two: upper end, lower end; four: clockwise around the upper end's center, then the lower's"),
		},
		{
			"nine wedges", swap(small, "strip 4\n", "side 7\n", "plain piece cream\n", "ring wedges ⟦navy cream navy cream navy cream navy cream navy⟧ corners cream\n"), refused,
			says("the wedges of a ring block take one, two, four or eight fabrics, found 9", "clockwise from the top one, over and over"),
		},
		{
			"three corners", swap(small, "strip 4\n", "side 7\n", "plain piece cream\n", "ring wedges navy cream corners ⟦cream navy cream⟧\n"), refused,
			says("the corners of a ring block take one, two or four fabrics, found 3", "clockwise from the upper left one, over and over"),
		},
		{
			"two backgrounds", swap(small, "plain piece cream\n", "floating-star kites navy wedges navy background ⟦cream navy⟧\n", "W W P\n  W P W\n  W W W\n", "P P\n  P P\n"), refused,
			says("the background of a floating-star block takes one fabric, found 2", "leave out all but one"),
		},
		{
			"like nothing", swap(small, "piece cream\n", "piece cream\nblock Q like⟦⟧\n", "P W\n", "P Q\n"), refused,
			says(`expected the label of the block that "Q" is like, found the end of the line`, "for example block W web wedges navy kites cream"),
		},
		{
			"like a block that is not there", swap(small, "piece cream\n", "piece cream\nblock Q like ⟦V⟧ piece navy\n", "P W\n", "P Q\n"), refused,
			says(`no block is called "V"`, "blocks are: W, P"),
		},
		{
			"like itself", swap(small, "piece cream\n", "piece cream\nblock Q like ⟦Q⟧\n", "P W\n", "P Q\n"), refused,
			says(`block "Q" is like "Q", which leads back to itself`, "give one of them its kind"),
		},
		{
			"like each other", swap(small, "piece cream\n", "piece cream\nblock Q like R\nblock R like ⟦Q⟧\n", "W P W\n", "Q P R\n"), refused,
			says(`block "R" is like "Q", which leads back to itself`, "give one of them its kind"),
		},
		{
			"like with a role of another kind", swap(small, "piece cream\n", "piece cream\nblock Q like P ⟦kites⟧ navy\n", "P W\n", "P Q\n"), refused,
			says("plain blocks have no kites", "its roles are: piece, edge"),
		},
		{
			"like with a word that is no role", swap(small, "piece cream\n", "piece cream\nblock Q like P ⟦peice⟧ navy\n", "P W\n", "P Q\n"), refused,
			says(`expected a role, found "peice"`, `did you mean "piece"?`),
		},
		{
			"like a block at fault", swap(small, "piece cream\n", "piece ⟦creme⟧\nblock Q like P\n", "P W\n", "P Q\n"), refused,
			says(`no fabric, pool or strip set is called "creme"`, "define it: fabric creme and its color"),
		},
		{
			"like a block that is broken", swap(small, "plain piece cream\n", "⟦plian⟧ piece cream\nblock Q like P\n", "P W\n", "P Q\n"), refused,
			says(`expected a kind of block, found "plian"`, `did you mean "plain"?`),
		},
		{
			"tumblers without line or about", swap(small, "strip 4\n", "side 7\n", "P plain piece cream\n", "⟦P⟧ tumblers pieces cream\n"), refused,
			says(`block "P" says neither the line of the wedge ruler nor about how long its pieces are`, "for example about 5 1/2"),
		},
		{
			"tumblers with line and about", swap(small, "strip 4\n", "side 7\n", "plain piece cream\n", "tumblers pieces cream line ⟨10⟩ about ⟦4⟧\n"), refused,
			says("line and about cannot both be given, since each follows from the other", "keep one of the two", "the other one"),
		},
		{
			"tumblers about twice", swap(small, "strip 4\n", "side 7\n", "plain piece cream\n", "tumblers pieces cream ⟨about⟩ 4 ⟦about⟧ 5\n"), refused,
			says(`"about" is already on this line`, "keep one of the two", "first given here"),
		},
		{
			"tumblers too short", swap(small, "strip 4\n", "side 7\n", "plain piece cream\n", "tumblers pieces cream about ⟦1⟧\n"), refused,
			says("in columns 7 in wide such pieces have no narrow side left: their mean length must be more than 2.8995 in", "line 8 1/8 or more, or about 3 1/2 or more"),
		},
		{
			"tumblers of a line too small", swap(small, "strip 4\n", "side 7\n", "plain piece cream\n", "tumblers pieces cream line ⟦4⟧\n"), refused,
			says("in columns 7 in wide such pieces have no narrow side left: their mean length must be more than 2.8995 in", "line 8 1/8 or more, or about 3 1/2 or more"),
		},
		{
			"tumblers of a line too large", swap(small, "strip 4\n", "side 7\n", "plain piece cream\n", "tumblers pieces cream line 30\n"), accepted,
			nil,
		},
		{
			"tumblers of nothing", swap(small, "strip 4\n", "side 7\n", "plain piece cream\n", "tumblers pieces cream about ⟦1/2 cut⟧\n"), refused,
			says("pieces of 0 in cannot be cut", "write a longer length"),
		},
		{
			"tumblers without a length", swap(small, "strip 4\n", "side 7\n", "plain piece cream\n", "tumblers pieces cream line⟦⟧\n"), refused,
			says("expected the line of the wedge ruler, found the end of the line", "for example line 10"),
		},
		{
			"tumblers of a line finished", swap(small, "strip 4\n", "side 7\n", "plain piece cream\n", "tumblers pieces cream line ⟦10 finished⟧\n"), refused,
			says("the line of the wedge ruler is neither cut nor finished", "leave out finished"),
		},
		{
			"tumblers of a line cut", swap(small, "strip 4\n", "side 7\n", "plain piece cream\n", "tumblers pieces cream line ⟦10 cut⟧\n"), refused,
			says("the line of the wedge ruler is neither cut nor finished", "leave out cut"),
		},
		{
			"line for a square", swap(small, "piece cream\n", "piece cream ⟦line⟧ 10\n"), refused,
			says(`expected a role of the plain block, found "line"`, "the roles of plain are: piece, edge"),
		},
		{
			"a role misspelt behind another", swap(small, "kites cream\n", "⟦kits⟧ cream\n"), refused,
			says(`expected a role of the web block, found "kits"`, `did you mean "kites"?`),
		},
		{
			"a role misspelt behind another, and like it", swap(small, "kites cream\n", "⟦kits⟧ cream\nblock Q like W\n", "P W\n", "P Q\n"), refused,
			says(`expected a role of the web block, found "kits"`, `did you mean "kites"?`),
		},
		{
			"tumblers about nothing", swap(small, "strip 4\n", "side 7\n", "plain piece cream\n", "tumblers pieces cream about⟦⟧\n"), refused,
			says("expected the mean length of a piece, found the end of the line", "for example about 4"),
		},
		{
			"no fabrics", "strip 4\nblock ⟦W⟧ web\ngrid\n  W\n", refused,
			says(`block "W" has no wedges and no kites`, "add wedges navy kites cream"),
		},
		{
			"a kind without a label", swap(small, "P plain piece cream\n", "⟦plain⟧ piece cream\n"), refused,
			says(`expected a block's label, found "plain"`, "write the label in front of it"),
		},
		{
			"a role word left out", swap(small, "P plain piece cream\n", "F floating-star kites cream wedges ⟦navy cream navy⟧\n", "W W P\n  W P W\n  W W W\n", "F F\n  F F\n"), refused,
			says("the wedges of a floating-star block take one or two fabrics, found 3", "two: upper wedge, lower wedge"),
		},
		{
			"a label misspelt where it is defined", swap(small, "P plain piece cream\n", "Px plain piece cream\n", "P\n  W P W\n", "⟦P⟧\n  W Px W\n"), refused,
			says(`no block is called "P"`, "blocks are: W, Px"),
		},
	}
}
