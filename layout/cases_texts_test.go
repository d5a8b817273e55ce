package layout_test

import "strings"

// textCases are faults of text in quotes and of characters that cannot be seen.
func textCases() []testCase {
	return []testCase{
		{
			"a title without quotes", swap(small, "strip 4\n", "title ⟦Harbor⟧ lanterns\nstrip 4\n"), refused,
			says(`expected the quilt's title in quotes, found "Harbor"`, `write "Harbor lanterns"`),
		},
		{
			"a title without its end", swap(small, "strip 4\n", "title ⟦\"Harbor lanterns⟧\nstrip 4\n"), refused,
			says("the text that begins here has no quotation mark at its end", `end it with "`),
		},
		{
			"a title that is one quotation mark", swap(small, "strip 4\n", "title ⟦\"⟧\nstrip 4\n"), refused,
			says("the text that begins here has no quotation mark at its end", `end it with "`),
		},
		{
			"a title with nothing", swap(small, "strip 4\n", "title⟦⟧\nstrip 4\n"), refused,
			says("expected the quilt's title in quotes, found the end of the line", `put the text in quotes: "…"`),
		},
		{
			"a title and more", swap(small, "strip 4\n", "title \"Harbor\" ⟦lanterns⟧\nstrip 4\n"), refused,
			says(`nothing more belongs on this line, found "lanterns"`, "leave out lanterns"),
		},
		{
			"a title too long", swap(small, "strip 4\n", "title ⟦\""+strings.Repeat("a", 1001)+"\"⟧\nstrip 4\n"), refused,
			says("this text has 1001 characters; the limit is 1000", ""),
		},
		{
			"a title with a control character", swap(small, "strip 4\n", "title ⟦\"Harbor\x1b[2J\"⟧\nstrip 4\n"), refused,
			says("this text holds a control character: Harbor<U+001B>[2J", "type the text anew"),
		},
		{
			"a title that changes direction", swap(small, "strip 4\n", "title ⟦\"Harbor\u202elanterns\"⟧\nstrip 4\n"), warned,
			says("warning: this text holds marks that change the order in which it is read: Harbor<U+202E>lanterns", "type the text anew if they are not meant"),
		},
		{
			"a title in single quotes", swap(small, "strip 4\n", "title ⟦'Harbor'⟧\nstrip 4\n"), refused,
			says(`expected the quilt's title in quotes, found "'Harbor'"`, `write "Harbor"`),
		},
		{
			"a designer without quotes", swap(small, "strip 4\n", "designer ⟦Ines⟧\nstrip 4\n"), refused,
			says(`expected the designer's name in quotes, found "Ines"`, `write "Ines"`),
		},
		{
			"a level without quotes", swap(small, "strip 4\n", "level ⟦easy⟧\nstrip 4\n"), refused,
			says(`expected the level in quotes, found "easy"`, `write "easy"`),
		},
		{
			"a copyright without quotes", swap(small, "strip 4\n", "copyright ⟦2026⟧\nstrip 4\n"), refused,
			says(`expected the copyright notice in quotes, found "2026"`, `write "2026"`),
		},
		{
			"a pattern's number without quotes", swap(small, "strip 4\n", "pattern-number ⟦7⟧\nstrip 4\n"), refused,
			says(`expected the pattern's number in quotes, found "7"`, `write "7"`),
		},
		{
			"a pattern's version without quotes", swap(small, "strip 4\n", "pattern-version ⟦1.1⟧\nstrip 4\n"), refused,
			says(`expected the pattern's version in quotes, found "1.1"`, `write "1.1"`),
		},
		{
			"a pattern's date without quotes", swap(small, "strip 4\n", "pattern-date ⟦March⟧\nstrip 4\n"), refused,
			says(`expected the pattern's date in quotes, found "March"`, `write "March"`),
		},
		{
			"an invisible character", swap(small, "strip 4\n", "strip⟦\u200b⟧4\n"), refused,
			says("there is an invisible character here: U+200B", "delete it, or type the line anew"),
		},
		{
			"an invisible character in a name", swap(small, "navy #1f3350\n", "na⟦\u00ad⟧vy #1f3350\n"), refused,
			says("there is an invisible character here: U+00AD", "delete it, or type the line anew"),
		},
		{
			"an invisible character in a row", swap(small, "W P W\n", "W⟦\u200b⟧ P W\n"), refused,
			says("there is an invisible character here: U+200B", "delete it, or type the line anew"),
		},
		{
			"a byte order mark in the middle", swap(small, "fabric navy #1f3350\n", "⟦\ufeff⟧fabric navy #1f3350\n"), refused,
			says("there is an invisible character here: U+FEFF", "delete it, or type the line anew"),
		},
		{
			"a mark of direction", swap(small, "navy #1f3350\n", "⟦\u202e⟧navy #1f3350\n"), refused,
			says("there is an invisible character here: U+202E", "delete it, or type the line anew"),
		},
		{
			"a control character", swap(small, "navy #1f3350\n", "⟦\x07⟧navy #1f3350\n"), refused,
			says("there is a control character here: U+0007", "delete it, or type the line anew"),
		},
		{
			"a control character in a row", swap(small, "W P W\n", "W⟦\x0e⟧ P W\n"), refused,
			says("there is a control character here: U+000E", "delete it, or type the line anew"),
		},
		{
			"a note without its text and with its place", swap(small, "piece cream\n", "piece cream\nnote W⟦⟧\n"), refused,
			says("expected the note in quotes, found the end of the line", `put the text in quotes: "…"`),
		},
		{
			"a line of several scripts at fault", swap(small, "navy #1f3350\n", "赤い e\u0301te\u0301 👶⟦\u200d⟧ ½ navy #1f3350\n"), refused,
			says("there is an invisible character here: U+200D", "delete it, or type the line anew"),
		},
	}
}

// lookAlikeCases are characters that look like others.
func lookAlikeCases() []testCase {
	return []testCase{
		{
			"a Cyrillic letter in a statement", swap(small, "fabric navy #1f3350\n", "⟦fаbric⟧ navy #1f3350\n"), refused,
			says(`no statement is called "fаbric"`, `type fabric anew: the "а" here is a Cyrillic character`),
		},
		{
			"a Cyrillic letter in a fabric", swap(small, "navy kites cream\n", "⟦nаvy⟧ kites cream\n"), refused,
			says(`no fabric, pool or strip set is called "nаvy"`, `type navy anew: the "а" here is a Cyrillic character`),
		},
		{
			"a Cyrillic letter in a role", swap(small, "kites cream\n", "⟦kіtes⟧ cream\n"), refused,
			says(`expected a role of the web block, found "kіtes"`, `type kites anew: the "і" here is a Cyrillic character`),
		},
		{
			"a Cyrillic letter in a kind", swap(small, "plain piece cream\n", "⟦plаin⟧ piece cream\n"), refused,
			says(`expected a kind of block, found "plаin"`, `type plain anew: the "а" here is a Cyrillic character`),
		},
		{
			"a Cyrillic letter in a label", swap(small, "P W\n", "⟦Р⟧ W\n"), refused,
			says(`no block is called "Р"`, `type P anew: the "Р" here is a Cyrillic character`),
		},
		{
			"a Greek letter in a statement", swap(small, "grid", "⟦grιd⟧"), refused,
			says(`no statement is called "grιd"`, `type grid anew: the "ι" here is a Greek character`),
		},
		{
			"a Greek letter in a unit", swap(small, "strip 4\n", "units ⟦cμ⟧\nstrip 10\n"), refused,
			says(`expected the units, inches or cm, found "cμ"`, `type cm anew: the "μ" here is a Greek character`),
		},
		{
			"full-width letters in a statement", swap(small, "strip 4\n", "⟦ｓｔｒｉｐ⟧ 4\n"), refused,
			says(`no statement is called "ｓｔｒｉｐ"`, `type strip anew: the "ｓ" here is a full-width character`),
		},
		{
			"a full-width digit", swap(small, "4\n", "⟦４⟧\n"), refused,
			says(`expected a length, found "４"`, `write 4: the "４" here is a full-width character`),
		},
		{
			"a full-width digit behind another", swap(small, "4\n", "⟦3.５⟧\n"), refused,
			says(`expected digits after ".", found "3.５"`, `write 3.5: the "５" here is a full-width character`),
		},
		{
			"digits of another script", swap(small, "4\n", "⟦٤⟧\n"), refused,
			says(`expected a length, found "٤"`, "write lengths with the digits 0 to 9"),
		},
		{
			"a full-width colour", swap(small, "#1f3350", "⟦＃1f3350⟧"), refused,
			says(`"＃1f3350" is not a color; expected #rgb, #rrggbb or a CSS color name, as in #1f3350 or navy`, `write #1f3350: the "＃" here is a full-width character`),
		},
		{
			"a Cyrillic letter in a colour", swap(small, "#1f3350", "⟦nаvy⟧"), refused,
			says(`"nаvy" is not a color; expected #rgb, #rrggbb or a CSS color name, as in #1f3350 or navy`, `write navy: the "а" here is a Cyrillic character`),
		},
		{
			"an accent on a statement", swap(small, "strip 4\n", "⟦stríp⟧ 4\n"), refused,
			says(`no statement is called "stríp"`, `did you mean "strip"?`),
		},
	}
}

// bytesCases are files that are no text in UTF-8.
func bytesCases() []testCase {
	return []testCase{
		{
			"a photo in PNG", "⟦⟧\x89PNG\r\n\x1a\n\x00\x00\x00\rIHDR\x00\x00\x00\x01\x00\x00\x00\x01\x08\x02\x00\x00\x00\x90wS\xde", refused,
			says("this file is a picture, a layout is a text", "give the name of the file that holds the layout"),
		},
		{
			"a photo in JPEG", "⟦⟧\xff\xd8\xff\xe0\x00\x10JFIF\x00\x01\x01\x00\x00\x01\x00\x01\x00\x00\xff\xdb", refused,
			says("this file is a picture, a layout is a text", "give the name of the file that holds the layout"),
		},
		{
			"a picture in GIF", "⟦⟧GIF89a\x01\x00\x01\x00", refused,
			says("this file is a picture, a layout is a text", "give the name of the file that holds the layout"),
		},
		{
			"a PDF", "⟦⟧%PDF-1.7\n%\xe2\xe3\n", refused,
			says("this file is a document of another program, a layout is a plain text", "save it as plain text, in UTF-8"),
		},
		{
			"a document", "⟦⟧PK\x03\x04\x14\x00", refused,
			says("this file is a document of another program, a layout is a plain text", "save it as plain text, in UTF-8"),
		},
		{
			"a letter", "⟦⟧{\\rtf1\\ansi strip 4}", refused,
			says("this file is a document of another program, a layout is a plain text", "save it as plain text, in UTF-8"),
		},
		{
			"zeros", "strip 4\n⟦\x00⟧\x00\n", refused,
			says("this file is not a text", "give the name of the file that holds the layout"),
		},
		{
			"UTF-16, little end first", "⟦⟧s\x00t\x00r\x00i\x00p\x00 \x004\x00\n\x00", refused,
			says("this file looks like UTF-16, a layout is a text in UTF-8", "save it as UTF-8"),
		},
		{
			"UTF-16 with its mark", "⟦⟧\xff\xfes\x00t\x00r\x00i\x00p\x00 \x004\x00\n\x00", refused,
			says("this file is in UTF-16, a layout is a text in UTF-8", "save it as UTF-8"),
		},
		{
			"UTF-16 with its mark, big end first", "⟦⟧\xfe\xff\x00s\x00t\x00r\x00i\x00p\x00 \x004\x00\n", refused,
			says("this file is in UTF-16, a layout is a text in UTF-8", "save it as UTF-8"),
		},
		{
			"a half in Windows-1252", "strip 3⟦\xbd⟧\nfabric cream #f4ead7\nfabric navy #1f3350\nblock W web wedges navy kites cream\nblock P plain piece cream\ngrid\n  W W P\n  W P W\n  W W W\n", refused,
			says(`this file is not a text in UTF-8: it may be in Windows-1252, where this byte is "½"`, "save it as UTF-8"),
		},
		{
			"quotes in Windows-1252", "title ⟦\x93⟧Harbor\x94\nstrip 4\nfabric cream #f4ead7\nfabric navy #1f3350\nblock W web wedges navy kites cream\nblock P plain piece cream\ngrid\n  W W P\n  W P W\n  W W W\n", refused,
			says(`this file is not a text in UTF-8: it may be in Windows-1252, where this byte is "“"`, "save it as UTF-8"),
		},
		{
			"a byte that is nothing", "strip 4\nfabric cream #f4ead7\nfabric navy #1f3350\nblock W web wedges navy kites cream\nblock P plain piece cream\ngrid\n  W W P\n  W P W\n  W W W\n# ⟦\x81⟧\n", refused,
			says("this file is not a text in UTF-8", "save it as UTF-8"),
		},
		{
			"a letter cut short", "strip 4\nfabric cream #f4ead7\nfabric navy #1f3350\nblock W web wedges navy kites cream\nblock P plain piece cream\ngrid\n  W W P\n  W P W\n  W W W\n# ⟦\xe2⟧\x82", refused,
			says(`this file is not a text in UTF-8: it may be in Windows-1252, where this byte is "â"`, "save it as UTF-8"),
		},
	}
}
