//go:build judges

package preview

import (
	"fmt"
	"os"
	"strings"
	"testing"

	"github.com/chromedp/chromedp"
	"github.com/chromedp/chromedp/kb"
)

const (
	typedText = `document.getElementById('typed').value`
	saved     = `document.getElementById('text-state').textContent === 'saved'`
)

// openText opens the pane to type in.
func (p *tab) openText() {
	p.t.Helper()
	p.press("text")
	p.until(`!document.getElementById('text-pane').hidden && ` + saved + ` && document.querySelector('#typed-layer .keyword')`)
}

// caret puts the caret behind the first place of a text.
func (p *tab) caret(behind string) {
	p.t.Helper()
	eval[bool](p, fmt.Sprintf(`((f, t) => { f.focus(); const at = f.value.indexOf(t) + t.length; f.setSelectionRange(at, at); return true; })(document.getElementById('typed'), %q)`, behind))
}

// TestTypingOnThePage: what is typed is saved after a pause, with the editor's saves in other lines merged in; in the same lines it is
// kept and asked about. Words are offered, faults underlined, and both undoings work.
func TestTypingOnThePage(t *testing.T) {
	text := starfish(t)
	r, p := start(t, text, Options{Edit: true}), newTab(t)
	says := func() string {
		b, err := os.ReadFile(r.file)
		must(t, err)
		return string(b)
	}
	p.load(r.address)
	p.watching()
	p.openText()
	if got := eval[string](p, typedText); got != text {
		t.Fatalf("the pane has\n%s", got)
	}
	if got := eval[string](p, `[...document.querySelectorAll('#typed-layer div')].map((e) => e.textContent.replace('\u200b', '')).join('\n')`); got != text {
		t.Errorf("behind the field stands\n%s", got)
	}
	p.caret("title")
	p.key("x")
	p.until(`document.querySelector('#typed-layer .wrong')?.textContent === 'titlex' && document.getElementById('text-fault').textContent.includes('titlex')`)
	p.until(saved)
	if want := strings.Replace(text, "title", "titlex", 1); says() != want {
		t.Errorf("saved is\n%s", says())
	}
	p.picture("text-fault")
	p.key(kb.Backspace)
	p.until(`!document.querySelector('#typed-layer .wrong') && ` + saved)
	if says() != text {
		t.Errorf("saved again is\n%s", says())
	}

	// Words by place: a statement's at the beginning of a line.
	p.caret("\n")
	p.key("bor")
	p.until(`!document.getElementById('words').hidden && document.querySelector('#words b').textContent === 'border'`)
	p.picture("text-words")
	p.key("\t")
	if got := eval[string](p, typedText); !strings.Contains(got, "\nborder") {
		t.Errorf("taken is\n%s", got)
	}
	eval[bool](p, `(document.execCommand('undo'), document.execCommand('undo'), document.execCommand('undo'), document.execCommand('undo'), true)`)
	p.until(typedText + ` === ` + fmt.Sprintf("%q", text))
	p.until(saved)

	// An editor saves another line while a line is typed in.
	p.caret("title")
	p.key(" ")
	put(t, r.file, text+"# theirs\n")
	both := strings.Replace(text, "title", "title ", 1) + "# theirs\n"
	p.until(typedText + ` === ` + fmt.Sprintf("%q", both) + ` && ` + saved)
	if says() != both {
		t.Errorf("merged is\n%s", says())
	}

	// And the same line.
	p.key("y")
	theirs := strings.Replace(both, "title ", "title Z", 1)
	put(t, r.file, theirs)
	p.until(`!document.getElementById('conflict').hidden`)
	p.picture("text-conflict")
	if got := eval[string](p, typedText); got != strings.Replace(both, "title ", "title y", 1) || says() != theirs {
		t.Errorf("in conflict the pane has\n%s\nthe file\n%s", got, says())
	}
	eval[bool](p, `(document.getElementById('take-theirs').click(), true)`)
	p.until(typedText + ` === ` + fmt.Sprintf("%q", theirs) + ` && document.getElementById('conflict').hidden`)
	p.key("q")
	put(t, r.file, both)
	p.until(`!document.getElementById('conflict').hidden`)
	mine := eval[string](p, typedText)
	eval[bool](p, `(document.getElementById('keep-mine').click(), true)`)
	p.until(saved)
	if says() != mine {
		t.Errorf("mine is\n%s\nthe file has\n%s", mine, says())
	}
	eval[bool](p, `(document.getElementById('text-undo').click(), true)`)
	p.until(typedText + ` === ` + fmt.Sprintf("%q", both))

	// A file that cannot be written: it says why and keeps the text, for the next loading of the page too, until it can be saved.
	must(t, os.Remove(r.file))
	p.caret("title")
	p.key("k")
	p.until(`document.getElementById('text-state').className === 'wrong' && document.getElementById('text-state').textContent.includes('not exist')`)
	kept := strings.Replace(both, "title", "titlek", 1)
	eval[bool](p, `(dispatchEvent(new PageTransitionEvent('pagehide')), true)`)
	if draft := eval[string](p, `JSON.parse(sessionStorage.getItem('eighthturn-draft/')).text`); draft != kept || eval[string](p, typedText) != kept {
		t.Errorf("kept is\n%s", draft)
	}
	put(t, r.file, both+"# back\n")
	eval[bool](p, `(dispatchEvent(new PageTransitionEvent('pageshow', { persisted: true })), true)`)
	p.until(saved + ` && ` + typedText + ` === ` + fmt.Sprintf("%q", kept+"# back\n"))
	if says() != kept+"# back\n" {
		t.Errorf("back again, the file says\n%s", says())
	}
	p.load(r.address)
	draft := string(encoded(map[string]string{"base": kept + "# back\n", "text": kept + "# back\n# draft\n"}))
	eval[bool](p, fmt.Sprintf(`(sessionStorage.setItem('eighthturn-draft/', %q), true)`, draft))
	p.openText()
	p.until(typedText + `.endsWith('# draft\n') && ` + saved)
	if says() != kept+"# back\n# draft\n" {
		t.Errorf("with the draft the file says\n%s", says())
	}
}

// TestTheTextPaneIsLaidOut: at every width, light and dark, the pane moves nothing, and all its words can be read.
func TestTheTextPaneIsLaidOut(t *testing.T) {
	r, p := start(t, starfish(t)+"# a comment\nnonsense\n", Options{Edit: true}), newTab(t)
	for _, size := range pageSizes {
		p.do(chromedp.EmulateViewport(size[0], size[1]))
		p.load(r.address)
		p.until(`!document.querySelector('[data-action=text]').hidden`)
		for _, dark := range []bool{false, true} {
			p.dark(dark)
			before := eval[string](p, quiltAt)
			p.openText()
			p.until(`document.querySelector('#typed-layer .wrong') && !document.getElementById('text-fault').hidden`)
			what := fmt.Sprintf("%d wide, dark %v, text", size[0], dark)
			for _, wrong := range append(eval[[]string](p, laidOut), eval[[]string](p, focusSeen+`('#text-pane')`)...) {
				t.Errorf("%s: %s", what, wrong)
			}
			if wrong := eval[string](p, textLaidOut); wrong != "" {
				t.Errorf("%s: %s", what, wrong)
			}
			p.picture(fmt.Sprintf("text-%d-%v", size[0], dark))
			p.press("text")
			p.until(`document.getElementById('text-pane').hidden`)
			if after := eval[string](p, quiltAt); after != before {
				t.Errorf("%s: the quilt moved from %s to %s", what, before, after)
			}
		}
	}
	p.openText()
	for _, broken := range []string{`document.getElementById('typed').style.fontSize = '14px'`, `document.getElementById('typed-layer').style.padding = '0'`} {
		eval[bool](p, `(`+broken+`, true)`)
		if eval[string](p, textLaidOut) == "" {
			t.Errorf("not noticed: %s", broken)
		}
		eval[bool](p, `(document.getElementById('typed').removeAttribute('style'), document.getElementById('typed-layer').style.padding = '', true)`)
	}
}

// textLaidOut says where the field and what stands behind it do not lie upon each other: by their fonts and by how far they reach.
const textLaidOut = `(() => {
	const field = document.getElementById('typed'), layer = document.getElementById('typed-layer');
	for (const key of ['fontFamily', 'fontSize', 'lineHeight', 'letterSpacing', 'tabSize', 'paddingLeft', 'paddingTop']) {
		if (getComputedStyle(field)[key] !== getComputedStyle(layer)[key]) return key + ' of the field is ' + getComputedStyle(field)[key] + ', behind it ' + getComputedStyle(layer)[key];
	}
	if (Math.abs(field.scrollHeight - Math.max(field.clientHeight, layer.offsetHeight)) > 2) return 'the field is ' + field.scrollHeight + ' high, behind it ' + layer.offsetHeight;
	return '';
})()`

// TestLongLinesAreWhole: behind the field a line is as long as it is in it, whatever signs it holds, and however it came to be.
func TestLongLinesAreWhole(t *testing.T) {
	for _, line := range []string{strings.Repeat("W ", 200), strings.Repeat("\t", 150) + "W", strings.Repeat("\u5bbd", 400)} {
		r, p := start(t, "# "+line+"\n"+starfish(t), Options{Edit: true}), newTab(t)
		p.load(r.address)
		p.openText()
		p.caret("# ")
		p.key(strings.Repeat("x", 100))
		p.until(`document.getElementById('typed-layer').textContent.startsWith('# ` + strings.Repeat("x", 100) + `')`)
		if over := eval[float64](p, `((e) => e.scrollWidth - e.clientWidth)(document.querySelector('#typed-layer div'))`); over > 0 {
			t.Errorf("of line %.10q %.0f pixels are cut off", line, over)
		}
	}
}
