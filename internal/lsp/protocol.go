package lsp

// The messages of the Language Server Protocol 3.17, as far as they are spoken here, with its own names.

type position struct {
	Line      int `json:"line"`
	Character int `json:"character"`
}

type lspRange struct {
	Start position `json:"start"`
	End   position `json:"end"`
}

type documentID struct {
	URI string `json:"uri"`
}

type location struct {
	URI   string   `json:"uri"`
	Range lspRange `json:"range"`
}

type textEdit struct {
	Range   lspRange `json:"range"`
	NewText string   `json:"newText"`
}

type workspaceEdit struct {
	Changes map[string][]textEdit `json:"changes"`
}

type contentChange struct {
	Range *lspRange `json:"range"`
	Text  string    `json:"text"`
}

// placed are the parameters of all requests about a place.
type placed struct {
	Document documentID `json:"textDocument"`
	Position position   `json:"position"`
	Range    lspRange   `json:"range"`
	NewName  string     `json:"newName"`
	Color    color      `json:"color"`
	Previous string     `json:"previousResultId"`
	Context  struct {
		IncludeDeclaration bool `json:"includeDeclaration"`
	} `json:"context"`
}

type opened struct {
	Document struct {
		documentID
		Version int    `json:"version"`
		Text    string `json:"text"`
	} `json:"textDocument"`
}

type edited struct {
	Document struct {
		documentID
		Version int `json:"version"`
	} `json:"textDocument"`
	Changes []contentChange `json:"contentChanges"`
}

type initialize struct {
	Capabilities struct {
		General struct {
			Encodings []string `json:"positionEncodings"`
		} `json:"general"`
	} `json:"capabilities"`
}

type diagnostic struct {
	Range    lspRange             `json:"range"`
	Severity int                  `json:"severity"`
	Source   string               `json:"source"`
	Message  string               `json:"message"`
	Related  []relatedInformation `json:"relatedInformation,omitempty"`
}

type relatedInformation struct {
	Location location `json:"location"`
	Message  string   `json:"message"`
}

type published struct {
	URI         string       `json:"uri"`
	Version     int          `json:"version"`
	Diagnostics []diagnostic `json:"diagnostics"`
}

type markup struct {
	Kind  string `json:"kind"`
	Value string `json:"value"`
}

type hover struct {
	Contents markup   `json:"contents"`
	Range    lspRange `json:"range"`
}

type completionItem struct {
	Label         string   `json:"label"`
	Kind          int      `json:"kind"`
	Detail        string   `json:"detail,omitempty"`
	Documentation string   `json:"documentation,omitempty"`
	TextEdit      textEdit `json:"textEdit"`
}

type color struct {
	Red   float64 `json:"red"`
	Green float64 `json:"green"`
	Blue  float64 `json:"blue"`
	Alpha float64 `json:"alpha"`
}

type colorInformation struct {
	Range lspRange `json:"range"`
	Color color    `json:"color"`
}

type colorPresentation struct {
	Label    string   `json:"label"`
	TextEdit textEdit `json:"textEdit"`
}

type prepared struct {
	Range       lspRange `json:"range"`
	Placeholder string   `json:"placeholder"`
}

type codeAction struct {
	Title       string        `json:"title"`
	Kind        string        `json:"kind"`
	Diagnostics []diagnostic  `json:"diagnostics"`
	IsPreferred bool          `json:"isPreferred"`
	Edit        workspaceEdit `json:"edit"`
}

type foldingRange struct {
	StartLine int    `json:"startLine"`
	EndLine   int    `json:"endLine"`
	Kind      string `json:"kind,omitempty"`
}

type documentSymbol struct {
	Name           string   `json:"name"`
	Detail         string   `json:"detail,omitempty"`
	Kind           int      `json:"kind"`
	Range          lspRange `json:"range"`
	SelectionRange lspRange `json:"selectionRange"`
}

type semanticTokens struct {
	ID   string `json:"resultId,omitempty"`
	Data []int  `json:"data"`
}

type changedTokens struct {
	ID    string       `json:"resultId"`
	Edits []tokensEdit `json:"edits"`
}

type tokensEdit struct {
	Start  int   `json:"start"`
	Delete int   `json:"deleteCount"`
	Data   []int `json:"data"`
}

type signatureHelp struct {
	Signatures      []signature `json:"signatures"`
	ActiveSignature int         `json:"activeSignature"`
	ActiveParameter int         `json:"activeParameter"`
}

type signature struct {
	Label         string      `json:"label"`
	Documentation string      `json:"documentation"`
	Parameters    []parameter `json:"parameters"`
}

type parameter struct {
	Label string `json:"label"`
}

// Numbers of the protocol.
const (
	severityError   = 1
	severityWarning = 2

	itemKeyword  = 14
	itemVariable = 6
	itemClass    = 7
	itemProperty = 10
	itemColor    = 16
	itemValue    = 12
	itemModule   = 9

	symbolString   = 15
	symbolVariable = 13
	symbolClass    = 5
	symbolArray    = 18
	symbolObject   = 19
)
