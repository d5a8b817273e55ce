package preview

import (
	"bytes"
	"compress/gzip"
	"crypto/sha256"
	"embed"
	"encoding/hex"
	"encoding/json"
	"errors"
	"fmt"
	"html"
	"io"
	"maps"
	"slices"
	"strings"

	"eighthturn/internal/files"
)

// What pages have, beside the page's own files, where the program runs in the browser.
//
//go:embed browser
var inBrowser embed.FS

// Engine is the program as a browser runs it, packed by gzip, and the script by which its language starts it there.
type Engine struct {
	Packed   []byte
	Start    []byte
	Licenses []byte // texts of all that it is built from; nil for none
}

// EngineName is how the packed program is called.
const EngineName = "engine.wasm.gz"

// sitePolicy is what pages may load and run that come without a server of their own; frame-ancestors cannot be said in a page.
const sitePolicy = "default-src 'none'; script-src 'self' 'wasm-unsafe-eval'; style-src 'self'; img-src 'self' blob: data:; connect-src 'self'; " +
	"worker-src 'self'; manifest-src 'self'; frame-src 'self'; base-uri 'none'; form-action 'none'"

// ServiceName is the one file that is not among those that are kept for when there is no network: it keeps them.
const ServiceName = "service.js"

// IsService says whether a file of that name was made by Static.
func IsService(content []byte) bool {
	return bytes.Contains(content, []byte("\nconst version = 'eighthturn-"))
}

// Check says why an engine is none, or none for these pages: it holds the page's files, as this program does.
func (e Engine) Check() error {
	r, err := gzip.NewReader(bytes.NewReader(e.Packed))
	var plain []byte
	if err == nil {
		plain, err = io.ReadAll(r)
	}
	if err != nil || !bytes.HasPrefix(plain, []byte("\x00asm")) {
		return errors.New("this is no engine, or only a part of one")
	}
	for _, name := range assets() {
		if !bytes.Contains(plain, asset(name)) {
			return errors.New("this engine is of another version of eighthturn")
		}
	}
	return nil
}

// LicensesName is the file with the licenses of all that the engine is built from.
const LicensesName = "licenses.txt"

// StaticNames are the names of all files that Static makes.
func StaticNames() []string {
	names := []string{ServiceName, LicensesName}
	for name := range static(Engine{}, "") {
		names = append(names, name)
	}
	return names
}

// Static is all files of the preview's pages with the program in a worker in place of a server, and with the files of the browser in place
// of a folder. Downloads is an address of the program's downloads, "" for none.
func Static(engine Engine, downloads string) []files.File {
	made := static(engine, downloads)
	if engine.Licenses != nil {
		made[LicensesName] = engine.Licenses
	}
	made[ServiceName] = serviceOf(made)
	return inOrder(made)
}

func static(engine Engine, downloads string) map[string][]byte {
	made := map[string][]byte{
		"index.html":           []byte(galleryOfBrowser()),
		"quilt.html":           []byte(layoutOfBrowser()),
		"about.html":           []byte(aboutPage(downloads)),
		"main.js":              bundleForBrowser("photo", "main"),
		"gallery.js":           bundleForBrowser("shelf", "gallery"),
		"worker.js":            slices.Concat(engine.Start, []byte("\n"), bundleOf(browserFile, "worker")),
		"page.css":             slices.Concat(bundles()["page.css"], browserFile("site.css")),
		"gallery.css":          slices.Concat(asset("gallery.css"), browserFile("site.css"), browserFile("shelf.css")),
		"manifest.webmanifest": browserFile("manifest.webmanifest"),
		EngineName:             engine.Packed,
	}
	for _, name := range assets() {
		if strings.HasSuffix(name, ".svg") {
			made[name] = asset(name)
		}
	}
	return made
}

// inOrder is files in the order of their names.
func inOrder(made map[string][]byte) []files.File {
	var list []files.File
	for _, name := range slices.Sorted(maps.Keys(made)) {
		list = append(list, files.File{Name: name, Write: func(w io.Writer) error {
			_, err := w.Write(made[name])
			return err
		}})
	}
	return list
}

// serviceOf keeps files for when there is no network, under a version that changes with any of them.
func serviceOf(made map[string][]byte) []byte {
	sum := sha256.New()
	names := slices.Sorted(maps.Keys(made))
	for _, name := range names {
		fmt.Fprintf(sum, "%s %d\n", name, len(made[name]))
		_, _ = sum.Write(made[name]) // a hash takes everything
	}
	list, err := json.Marshal(names)
	if err != nil {
		panic("preview: " + err.Error())
	}
	service := browserFile(ServiceName)
	service = bytes.ReplaceAll(service, []byte("{{version}}"), []byte(hex.EncodeToString(sum.Sum(nil)[:8])))
	return bytes.ReplaceAll(service, []byte("{{names}}"), list)
}

func browserFile(name string) []byte {
	b, err := inBrowser.ReadFile("browser/" + name)
	if err != nil {
		panic("preview: " + err.Error())
	}
	return b
}

// forBrowser is a module of the page, or the one that takes its place in the browser.
func forBrowser(name string) []byte {
	if b, err := inBrowser.ReadFile("browser/" + name); err == nil {
		return b
	}
	return asset(name)
}

// bundleForBrowser is a page's script: nothing of it runs before there is a program to ask.
func bundleForBrowser(names ...string) []byte {
	var b strings.Builder
	added := map[string]bool{}
	addModule(&b, forBrowser, "transport", added)
	b.WriteString("await $transport.begin();\n")
	for _, name := range names {
		addModule(&b, forBrowser, name, added)
	}
	return []byte(b.String())
}

// starting is what stands in place of a picture until the program runs.
const starting = `Starting … <span class="late">If nothing comes, this page was opened as a file: it must come from a web address.</span>`

// withPolicy is a page that says what it may load.
func withPolicy(page string) string {
	const charset = "<meta charset=\"utf-8\">\n"
	return strings.Replace(page, charset, charset+`<meta http-equiv="Content-Security-Policy" content="`+sitePolicy+"\">\n"+
		`<link rel="manifest" href="manifest.webmanifest">`+"\n", 1)
}

func galleryOfBrowser() string {
	page := strings.NewReplacer("{{folder}}", "this browser", "{{about}}", `<p><a href="about.html">About this page</a></p>`,
		"{{shelf}}", string(browserFile("shelf.html")), `<p id="status" role="status"></p>`, `<p id="status" role="status">`+starting+`</p>`).Replace(string(asset("gallery.html")))
	return withPolicy(page)
}

func layoutOfBrowser() string {
	const photo = `<button id="add-photo" title="Take in photos of your fabrics">Photo …</button>` +
		`<input type="file" id="photo" aria-label="Photos of fabrics" multiple accept=".jpg,.jpeg,.png" hidden>`
	page := strings.NewReplacer(
		"{{name}}", "Quilt", "{{title}}", "Quilt", "{{unscripted}}", "<p>This page needs scripts.</p>", "{{switcher}}", switcher(true),
		"{{tabs}}", tabButtons(tabSources()), "{{first}}", "", "{{photo}}", photo,
		` blocking="render"`, "", // it waits for the program, and the page is to be seen meanwhile
		"<p>Without scripts the page does not follow the file: reload it after each save.</p>", "",
		"Waiting for the first picture …", starting,
	).Replace(string(asset("index.html")))
	return withPolicy(page)
}

func aboutPage(downloads string) string {
	text := "Ask whoever gave you this page where the program can be had: it runs on Windows, macOS and Linux, and reads the layouts that you save here."
	if downloads != "" {
		text = `The <a href="` + html.EscapeString(downloads) + `">program itself</a> runs on Windows, macOS and Linux, and reads the layouts that you save here.`
	}
	return withPolicy(strings.Replace(string(browserFile("about.html")), "{{downloads}}", text, 1))
}
