package preview

import (
	"encoding/json"
	"net/http"
	"os"
	"path/filepath"
	"strings"
	"testing"

	"eighthturn/internal/quilttest/judges"
)

// FuzzAsked asks a preview for any address with any question, and posts anything to it: nothing breaks, what is said to be JSON is, and
// what is refused writes nothing.
func FuzzAsked(f *testing.F) {
	queries := []string{"", "tab=1&number=0&size=queen", "colorway=dusk&try=0-123456&key=x", "view=value&seams=1&pixels=-1&line=99999999999999999999"}
	for i, r := range judges.Some(routes(), 12) {
		f.Add(r.path, queries[i%len(queries)], "")
	}
	f.Add("/audition", "role=kites&of=A&alternative=slate", "")
	for _, do := range []string{"tidy", "color", "hint", "undo", "redo", "text", "audition"} {
		f.Add("/edit", "", `{"do":"`+do+`","fabric":"rust","color":"#010203","fault":-1,"role":"kites","of":"A","alternative":"slate","text":"side 6\n"}`)
	}
	f.Add("/typed", "", `{"text":"side 6\nfab","line":1,"character":3}`)
	f.Fuzz(func(t *testing.T, path, query, content string) {
		if len(path)+len(query)+len(content) > 3000 || path == "/events" {
			return // which has no end
		}
		s := edit(t, inSizes)
		var change func(*http.Request)
		if content != "" {
			var q map[string]any
			if json.Unmarshal([]byte(content), &q) == nil && q["seen"] == nil && path == "/edit" {
				q["seen"] = s.mark() // what a page saw, which no fuzzer guesses
				content = string(encoded(q))
			}
			change = posted(s.site, content)
		}
		r := ask(s.site, path+"?"+query, change)
		said := body(r)
		if r.StatusCode >= http.StatusInternalServerError || r.StatusCode < http.StatusOK {
			t.Errorf("%s?%s, %q: %d %.200s", path, query, content, r.StatusCode, said)
		}
		if r.StatusCode == http.StatusOK && strings.HasPrefix(r.Header.Get("Content-Type"), "application/json") && !json.Valid([]byte(said)) {
			t.Errorf("%s?%s, %q says %.200s", path, query, content, said)
		}
		if (content == "" || r.StatusCode >= http.StatusBadRequest) && s.says() != inSizes {
			t.Errorf("%s?%s, %q: %d, and the file says %q", path, query, content, r.StatusCode, s.says())
		}
		if there, err := os.ReadDir(filepath.Dir(s.file)); err != nil || len(there) != 1 {
			t.Errorf("%s?%s, %q: %d files lie there, %v", path, query, content, len(there), err)
		}
	})
}
