package preview

import (
	"encoding/json"
	"regexp"
	"strings"
	"testing"
)

// TestBundles: a page's script holds each module once, behind those that it imports, and nothing that only a module may say; its sheet
// holds all of the page's styles.
func TestBundles(t *testing.T) {
	page := string(bundles()["main.js"]) + string(bundles()["page.css"])
	for _, name := range assets() {
		switch module, isScript := strings.CutSuffix(name, ".js"); {
		case isScript && name != "gallery.js":
			if n := strings.Count(page, "const $"+module+" = (() => {\n"); n != 1 {
				t.Errorf("%s is %d times in the page's script", name, n)
			}
		case strings.HasSuffix(name, ".css") && name != "gallery.css":
			if !strings.Contains(page, string(asset(name))) {
				t.Errorf("%s is not in the page's sheet", name)
			}
		}
	}
	for name, file := range bundles() {
		if left := regexp.MustCompile(`(?m)^(import|export)\b.*`).Find(file); left != nil {
			t.Errorf("%s says %q", name, left)
		}
		for _, use := range regexp.MustCompile(`const \{ [\w, ]+ \} = (\$\w+);`).FindAllSubmatchIndex(file, -1) {
			if module := string(file[use[2]:use[3]]); !strings.Contains(string(file[:use[0]]), "\nconst "+module+" = ") && !strings.HasPrefix(string(file), "const "+module+" = ") {
				t.Errorf("%s uses %s before it is there", name, module)
			}
		}
	}
}

// TestFirstMessage: the page holds the newest message as it is fetched, whatever the layout says.
func TestFirstMessage(t *testing.T) {
	for _, title := range []string{"Plain", "{{first}} {{tabs}}", "<!-- <script> </script>"} {
		s := newSite("/x/a.quilt", Options{})
		s.state.publish(reading{text: titled(title)}, draw(titled(title), drawing{}))
		page, state := body(ask(s, "/", nil)), body(ask(s, "/state", nil))
		_, rest, _ := strings.Cut(page, `<script type="application/json" id="first">`)
		first, _, _ := strings.Cut(rest, "</script>")
		if first != state || !json.Valid([]byte(first)) {
			t.Errorf("%q: the page holds %q, fetched is %q", title, first, state)
		}
	}
	if page := body(ask(newSite("/x/a.quilt", Options{}), "/", nil)); !strings.Contains(page, `"revision":0,"picture":0,"base":0,"faults":[],`) {
		t.Error("before there is anything to show, the page is told something else")
	}
}
