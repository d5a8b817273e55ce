package preview

import (
	"bytes"
	"fmt"
	"strings"
	"testing"

	"eighthturn/internal/quilttest/lay"
	pictures "eighthturn/internal/render/picture"
	"eighthturn/svgout"
)

// deckchairs is a layout whose wedges are striped.
const deckchairs = `title "Deckchairs"
strip 4 1/2
fabric sand #e8d9b0
fabric awning stripes navy 3/4 white 1/4 crimson 1/2
motif mill awning across 3/8 down 0 pointing 45
block M ring wedges mill corners sand
block O ring wedges awning lengthwise from 0 corners sand
grid
  M O
  O M
`

// TestPrintsAreWhatIsDrawn: the picture of prints that a page gets is that of draw --prints, to the byte, in the sizes that there are and
// in no other; it is kept for the next that asks, and another layout has another.
func TestPrintsAreWhatIsDrawn(t *testing.T) {
	t.Parallel()
	scene, err := svgout.NewScene(lay.Top(t, deckchairs), svgout.Options{ByFabric: true, Prints: true, SeamLines: svgout.SeamsLeftOut})
	must(t, err)
	var want bytes.Buffer
	must(t, pictures.PNG(&want, scene, pictures.Frame{Pixels: 1000, Clear: true}))
	s := aSite(t, Options{})
	publishing(t, s, deckchairs)
	got := func(of string) string { return body(ask(s, "/prints.png", query(of))) }
	if got("pixels=1000") != want.String() || got("") != want.String() {
		t.Error("the page gets another picture than is drawn")
	}
	scene, err = svgout.NewScene(lay.Top(t, deckchairs), svgout.Options{View: svgout.Value, ByFabric: true, Prints: true, SeamLines: svgout.SeamsLeftOut})
	must(t, err)
	var gray bytes.Buffer
	must(t, pictures.PNG(&gray, scene, pictures.Frame{Pixels: 1000, Clear: true}))
	if got("pixels=1000&view=value") != gray.String() || bytes.Equal(gray.Bytes(), want.Bytes()) {
		t.Error("by value the page gets another picture than is drawn")
	}
	kept, made := s.studies.now.prints[0].Made()
	if !made || !bytes.Equal(kept.png, want.Bytes()) {
		t.Error("the picture is not kept")
	}
	for _, size := range []string{"999", "100000", "-1", "x"} {
		if r := ask(s, "/prints.png", query("pixels="+size)); r.StatusCode != 404 {
			t.Errorf("%s pixels: %d", size, r.StatusCode)
		}
	}
	if !strings.Contains(string(s.state.current().picture.fabrics), `"patterned":true`) {
		t.Error("the page is not told which fabrics are striped")
	}
	publishing(t, s, strings.Replace(deckchairs, "navy 3/4", "navy 1/2", 1))
	if got("pixels=1000") == want.String() {
		t.Error("other stripes leave the picture as it was")
	}
	if picture := body(ask(s, "/picture.svg", query("view=colour&prints=1"))); !strings.Contains(picture, "patternTransform") {
		t.Error(fmt.Sprintf("the saved picture shows no prints: %.200s", picture))
	}
}

// TestFilesShowPrints: pictures that are saved show prints where the page asks for them, as draw --prints does, and else plain colors.
func TestFilesShowPrints(t *testing.T) {
	t.Parallel()
	s := aSite(t, Options{})
	publishing(t, s, deckchairs)
	for _, path := range []string{"/save/picture.svg", "/save/picture.png", "/save/picture.jpg", "/save/picture.pdf"} {
		plain, printed := body(ask(s, path, nil)), body(ask(s, path, query("prints=1")))
		if plain == printed || len(printed) < 1000 {
			t.Errorf("%s is the same with prints", path)
		}
		if strings.HasSuffix(path, ".svg") && (strings.Contains(plain, "patternTransform") || !strings.Contains(printed, "patternTransform")) {
			t.Errorf("%s shows other prints", path)
		}
	}
	if body(ask(s, "/save/cutting.csv", nil)) != body(ask(s, "/save/cutting.csv", query("prints=1"))) {
		t.Error("a table is another with prints")
	}
}
