package files

// Reason is why a file is not written.
type Reason uint8

const (
	None        Reason = iota
	IsLink             // a symbolic link stands there
	IsFolder           // a folder stands there
	IsDevice           // a device, a pipe or a socket stands there
	IsSource           // it is among Options.Never
	IsReadOnly         // its owner may not write it
	NotOurs            // a file stands there that may not be replaced
	NoFolder           // the folder is not there
	NotFolder          // what should be the folder is a file
	IsOthers           // another user's file in a folder where only its owner may replace it (sticky)
	NotFileName        // it names a device or a stream on Windows
)

var sentences = [...]string{
	"nothing is wrong with it",
	"it is a link to another file",
	"it is a folder",
	"it is not a file but a device or a pipe",
	"it is the very file that is being read",
	"it may only be read",
	"a file that was not made here has this name already",
	"there is no such folder",
	"it is a file, not a folder",
	"it belongs to another user",
	"it names a device or a stream",
}

// String says the reason in a few words.
func (r Reason) String() string { return sentences[r] }

// Refusal is a file that is not written, since something there must stay.
type Refusal struct {
	Path   string // of the file, or of its folder where that is the reason
	Reason Reason
}

// Error gives the path as it was, control characters and all; whoever shows it makes them visible.
func (r *Refusal) Error() string { return r.Path + ": " + r.Reason.String() }
