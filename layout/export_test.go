package layout

// What the tests of the language look at from inside.
var (
	Example     = example
	OtherWord   = otherWord
	Windows1252 = windows1252
	Likeness    = likeness
	NearestWord = nearest
	OwnWords    = reservedWords
)
