package preview

import (
	"bytes"
	"encoding/json"
	"fmt"
	"net/http"
	"net/url"
	"strings"
	"testing"

	"eighthturn/internal/plan/audition"
	"eighthturn/internal/plan/contrast"
	"eighthturn/internal/quilt"
	pictures "eighthturn/internal/render/picture"
	"eighthturn/internal/report"
	"eighthturn/layout"
	"eighthturn/svgout"
)

// auditionPath is the address of an audition.
func auditionPath(role, of string, alternatives []string) string {
	return "/audition?" + url.Values{"role": {role}, "of": {of}, "alternative": alternatives}.Encode()
}

// answered is what an address answers as JSON.
func answered[T any](t *testing.T, s *site, address string) (m T) {
	t.Helper()
	r := ask(s, address, nil)
	if r.StatusCode != http.StatusOK {
		t.Fatalf("%s: %d", address, r.StatusCode)
	}
	must(t, json.Unmarshal([]byte(body(r)), &m))
	return m
}

func auditionSite(t *testing.T, text, colorway string) *site {
	t.Helper()
	s := newSite("/somewhere/quilt.quilt", Options{})
	d, err := drawWith(nil, variant{colorway: colorway})(t.Context(), text, drawing{})
	must(t, err)
	s.state.publish(reading{text: text}, d)
	return s
}

// inPools is a layout with a strip set, a pool, sashes, borders and a binding.
const inPools = `strip 4
palette tidewater
fabric rust #b5532a
fabric navy #1f3350
strip-set glow navy 2 rust rest
scraps darks navy slate kelp
block W web wedges darks kites foam
block V like W wedges glow
grid
 W W W V
 W W W V
sash 1 navy
border 2 rust
binding 2 1/2 navy
colorway dusk rust #334455
`

// TestAuditionsOfThePage: for every place that the page lists, and what it lists for it, the page is told what the command tells, picture
// and sentence, of what the layout is once the lines are written; an alternative in the picture is that very top.
func TestAuditionsOfThePage(t *testing.T) {
	t.Parallel()
	for _, colorway := range []string{"", "dusk"} {
		s := auditionSite(t, inPools, colorway)
		list := answered[auditionList](t, s, "/auditions")
		if len(list.Places) < 18 {
			t.Errorf("in %q there are %d places", colorway, len(list.Places))
		}
		for n, p := range list.Places {
			tried := []string{"rust", "foam"}
			switch {
			case p.Deal > 0:
				tried = []string{"1", "2"}
			case !p.Plain:
				tried = []string{"glow", "darks", "navy"}
			}
			m := answered[auditionMessage](t, s, auditionPath(p.Role, p.Of, tried))
			if m.Why != "" || len(m.Alternatives)+len(m.Left) != len(tried) || m.Heading != "Audition for "+p.Name {
				t.Errorf("%s in %q: %s, %d alternatives, %v left out, %s", p.Name, colorway, m.Heading, len(m.Alternatives), m.Left, m.Why)
			}
			for _, a := range m.Alternatives {
				if err := asWritten(t, s, p, &a, colorway, n%5 == 0); err != nil {
					t.Errorf("%s in %q, %s: %v", p.Name, colorway, a.Name, err)
				}
			}
		}
	}
}

// asWritten says what of an alternative is not as it is once its lines are written, with the pictures where they are wanted.
func asWritten(t *testing.T, s *site, p auditionPlace, a *alternative, colorway string, drawn bool) error {
	t.Helper()
	written, err := (&editRequest{Role: p.Role, Of: p.Of, Alternative: a.Alternative, Colorway: colorway}).auditioned(inPools, nil)
	must(t, err)
	for _, line := range a.Lines {
		if !strings.Contains(written, line+"\n") {
			return fmt.Errorf("the line %q is not written", line)
		}
	}
	d, _, faults := layout.Read(written)
	if d == nil {
		return fmt.Errorf("%v", faults)
	}
	top, err := inVariant(nil, quilt.Lay(d), variant{colorway: colorway})
	must(t, err)
	if p.Role == "binding" {
		return nil // its top has one border more
	}
	of := audition.Alternative{Top: top, Study: contrast.Study(top, contrast.Options{}), Lines: a.Lines}
	if says := report.AuditionSays(&of); a.Says != says[0] && colorway == "" { // in a colorway a fabric may be called otherwise
		return fmt.Errorf("it says %q, and written %q", a.Says, says[0])
	}
	if !drawn {
		return nil
	}
	for view, got := range map[svgout.View][]byte{svgout.Colour: a.Color, svgout.Value: a.Gray} {
		scene, err := svgout.NewScene(top, svgout.Options{View: view, ByFabric: true})
		must(t, err)
		var b bytes.Buffer
		must(t, pictures.PNG(&b, scene, pictures.Frame{Pixels: auditionPixels}))
		if !bytes.Equal(b.Bytes(), got) {
			return fmt.Errorf("view %d is another picture", view)
		}
	}
	q := url.Values{"view": {"colour"}, "role": {p.Role}, "of": {p.Of}, "alternative": {a.Alternative}}
	var want bytes.Buffer
	must(t, drawView(&want, top, "colour", svgout.Options{ByFabric: true, SeamLines: svgout.SeamsLeftOut}))
	if got := body(ask(s, "/picture.svg?"+q.Encode(), nil)); got != want.String() {
		return fmt.Errorf("the picture is another than that of the layout")
	}
	return nil
}

// TestAuditionsThatThePageCannotHave: what cannot stand in a place is left out and told, what is no audition has its reason, and what
// names nothing is nothing.
func TestAuditionsThatThePageCannotHave(t *testing.T) {
	t.Parallel()
	s := auditionSite(t, inPools, "")
	m := answered[auditionMessage](t, s, auditionPath("border", "1", []string{"rust", "navy", "foam"}))
	if len(m.Alternatives) != 3 || len(m.Left) != 0 {
		t.Errorf("a border: %d alternatives, left out %v", len(m.Alternatives), m.Left)
	}
	m = answered[auditionMessage](t, s, auditionPath("kites", "W", []string{"navy", "glow", "foam"}))
	if len(m.Alternatives) != 2 || len(m.Left) != 1 || m.Left[0].Name != "glow" || m.Left[0].Why == "" {
		t.Errorf("kites: %d alternatives, left out %v", len(m.Alternatives), m.Left)
	}
	for address, why := range map[string]string{
		auditionPath("wedges", "X", []string{"navy", "rust"}): `No block is called "X"`, auditionPath("wedges", "W", []string{"navy"}): "2 to 9 alternatives",
		"/audition": "2 to 9",
	} {
		if m := answered[auditionMessage](t, s, address); !strings.Contains(strings.ToLower(m.Why), strings.ToLower(why)) || len(m.Alternatives) > 0 {
			t.Errorf("%s: %q", address, m.Why)
		}
	}
	for _, address := range []string{"/picture.svg?view=colour&role=nothing&alternative=navy", "/squint.png?role=wedges&of=W&alternative=nothing"} {
		if r := ask(s, address, nil); r.StatusCode != http.StatusNotFound {
			t.Errorf("%s: %d", address, r.StatusCode)
		}
	}
}

// TestAuditionedColorIsTheTried: of an alternative that is no more than another color, the try that the page asks the study for is that
// color, and the fabric looks as it will.
func TestAuditionedColorIsTheTried(t *testing.T) {
	t.Parallel()
	s := auditionSite(t, inPools, "")
	m := answered[auditionMessage](t, s, auditionPath("rust", "", []string{"#123456", "navy"}))
	if a := m.Alternatives[0]; a.Try != "0-123456" || a.Fabric == nil || !strings.EqualFold(a.Fabric.Colour, "#123456") || a.Fabric.Seen["deutan"] == "" {
		t.Errorf("a color is tried as %q, fabric %+v", a.Try, a.Fabric)
	}
	study := body(ask(s, "/report?tab=0&try="+m.Alternatives[0].Try, nil))
	says, _ := json.Marshal(m.Alternatives[0].Says)
	if !strings.Contains(study, strings.Trim(string(says), `"`)) {
		t.Errorf("the study does not say %s", says)
	}
	if a := answered[auditionMessage](t, s, auditionPath("slate", "", []string{"#123456", "navy"})).Alternatives[0]; a.Try != "" {
		t.Errorf("a palette's fabric among scraps is tried as %q, which deals them otherwise than its line", a.Try)
	}
}
