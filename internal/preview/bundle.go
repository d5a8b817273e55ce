package preview

import (
	"fmt"
	"regexp"
	"slices"
	"strings"
	"sync"
)

// A page's scripts are modules, and its styles are sheets, but a browser that opens a page fetches one of each: thirty small files
// would take it longer to ask for than to run.

var (
	importLine = regexp.MustCompile(`(?m)^import \{ ([\w, ]+) \} from '\./(\w+)\.js';$`)
	exportWord = regexp.MustCompile(`(?m)^export ((?:async function|function|class|const|let) (\w+))`)
)

// sheets are the page's styles; where two say something of one element, the later one holds.
var sheets = []string{"page.css", "color.css", "text.css", "audition.css", "fussy.css"}

// bundles are the files that pages begin with: each script with all modules that it imports, and one sheet of all of the page's styles.
var bundles = sync.OnceValue(func() map[string][]byte {
	made := map[string][]byte{}
	for _, name := range []string{"main", "gallery"} {
		made[name+".js"] = bundleOf(asset, name)
	}
	for _, name := range sheets {
		made["page.css"] = slices.Concat(made["page.css"], asset(name))
	}
	return made
})

// bundleOf is a script with all modules that it imports; fileOf gives a module's file.
func bundleOf(fileOf func(string) []byte, name string) []byte {
	var b strings.Builder
	addModule(&b, fileOf, name, map[string]bool{})
	return []byte(b.String())
}

// addModule adds a module behind those that it imports, which must not import it in turn: each becomes a function that is called at once
// and gives what the module exports.
func addModule(b *strings.Builder, fileOf func(string) []byte, name string, added map[string]bool) {
	if added[name] {
		return
	}
	added[name] = true
	text := string(fileOf(name + ".js"))
	for _, line := range importLine.FindAllStringSubmatch(text, -1) {
		addModule(b, fileOf, line[2], added)
	}
	var exports []string
	for _, word := range exportWord.FindAllStringSubmatch(text, -1) {
		exports = append(exports, fmt.Sprintf("get %s() { return %[1]s; }", word[2])) // what it says may change
	}
	text = importLine.ReplaceAllString(text, "const { $1 } = $$$2;")
	text = exportWord.ReplaceAllString(text, "$1")
	fmt.Fprintf(b, "const $%s = (() => {\n%s\nreturn { %s };\n})();\n", name, text, strings.Join(exports, ", "))
}
