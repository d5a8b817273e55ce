package preview

import (
	"errors"
	"fmt"
	"net/http"
	"net/url"
	"path/filepath"
	"regexp"
	"slices"
	"strconv"
	"strings"

	"eighthturn/layout"
)

// What stands in an editor's address for the layout's file and for the line.
const (
	editorFile = "{file}"
	editorLine = "{line}"
)

// runs are schemes of addresses that a browser itself runs, shows or fetches. None of them opens an editor.
var runs = []string{"javascript", "data", "vbscript", "blob", "about", "file", "filesystem", "view-source", "http", "https", "ws", "wss", "ftp", "chrome", "resource"}

// CheckEditor says why an address does not open a layout in an editor: one is a scheme of an editor's own (RFC 3986, section 3.1),
// "://", and somewhere behind it {file}; {line} may stand in it too.
func CheckEditor(address string) error {
	scheme, rest, ok := strings.Cut(address, "://")
	scheme = strings.ToLower(scheme)
	switch {
	case !ok || !regexp.MustCompile(`^[a-z][a-z0-9+.-]*$`).MatchString(scheme):
		return errors.New("it does not begin with an editor's own scheme and ://")
	case slices.Contains(runs, scheme):
		return fmt.Errorf("%s:// opens no editor", scheme)
	case !strings.Contains(rest, editorFile):
		return errors.New("it has no " + editorFile)
	case !regexp.MustCompile(`^[!-~]*$`).MatchString(rest) || strings.ContainsAny(rest, "<>\"`\\"):
		return errors.New("it has characters that no address may have")
	}
	return nil
}

// editorAddress is an editor's address with the path of a file in it, escaped; {line} still stands in it. It is "" where no address
// was given, or none that may be followed.
func editorAddress(address, path string) string {
	if CheckEditor(address) != nil {
		return ""
	}
	path = (&url.URL{Path: filepath.ToSlash(path)}).EscapedPath()
	path = strings.NewReplacer("&", "%26", "+", "%2B", "{", "%7B", "}", "%7D").Replace(path) // it may stand in a query
	if strings.HasPrefix(path, "/") {
		address = regexp.MustCompile(`([^/])/\{file\}`).ReplaceAllString(address, "$1"+editorFile) // the slash is the path's own
	}
	return strings.ReplaceAll(address, editorFile, path)
}

// serveLine answers with a line of the layout of the newest picture, the first if none is named.
func (s *site) serveLine(w http.ResponseWriter, r *http.Request) {
	n := 1
	if text := r.URL.Query().Get("line"); text != "" {
		n, _ = strconv.Atoi(text) // what is no number is no line
	}
	p := s.state.current().picture
	if p == nil || !s.asksFor(p, r) {
		status, why := statusOf(errOvertaken)
		if p == nil {
			status, why = statusOf(errNoPicture)
		}
		http.Error(w, why, status)
		return
	}
	lines := append(layout.TextLines(p.source.Text), "")
	if n < 1 || n > len(lines) {
		status, why := statusOf(errNothing)
		http.Error(w, why, status)
		return
	}
	respond(w, []byte(lines[n-1]))
}
