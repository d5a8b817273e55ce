package alone

import "testing"

const alone = `<!DOCTYPE html>
<html lang="en"><head><meta charset="utf-8"><meta http-equiv="Content-Security-Policy" content="default-src 'none'; img-src data:"><title>A &amp; B</title><style>p { color: #123; }</style></head>
<body><p><a href="#part-1">there</a>, and https://example.org as mere words &mdash; url(x)<br></p>
<img src="data:image/png;base64,AAAA" alt="x">
<svg xmlns="http://www.w3.org/2000/svg"><use href="#a"/><path fill="url(#dots)" d="M0 0"/></svg></body></html>`

func TestRequests(t *testing.T) {
	if list := Requests([]byte(alone)); len(list) != 0 {
		t.Errorf("found %q", list)
	}
	for _, more := range []string{
		`<img src="http://example.org/a.png">`, `<img src="https://example.org/a.png">`, `<img src="//example.org/a.png">`, `<img src="a.png">`,
		`<IMG SRC="http://example.org/a.png">`, `<link rel="stylesheet" href="a.css">`, `<script>1</script>`, `<p onclick="1">x</p>`,
		`<a href="http://www.w3.org/x">x</a>`, `<a href="javascript:1">x</a>`, `<p style="background: url( 'http://example.org/a')">x</p>`,
		`<style>@import "a.css";</style>`, `<style>p { background: URL(a.png) }</style>`, `<style>p { background: u\72l(a.png) }</style>`, `<iframe></iframe>`,
		`<svg xmlns="http://www.w3.org/2000/svg" xmlns:xlink="http://www.w3.org/1999/xlink"><image xlink:href="http://example.org/a.png"/></svg>`,
		`<svg><path fill="url(http://example.org/a#b)"/></svg>`, `<img srcset="a.png 2x">`, `<meta http-equiv="refresh" content="0">`, `<img src="data:text/html,x">`,
		`<meta http-equiv="Content-Security-Policy" content="default-src *">`,
		`<meta http-equiv="Content-Security-Policy" content="default-src 'none'; report-uri /seen">`,
	} {
		if len(Requests([]byte(alone[:len(alone)-len("</body></html>")]+more+"</body></html>"))) == 0 {
			t.Errorf("%s goes unseen", more)
		}
	}
	if len(Requests(nil)) == 0 || len(Requests([]byte("just words"))) == 0 {
		t.Error("a page without elements passes")
	}
}
