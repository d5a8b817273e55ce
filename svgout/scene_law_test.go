package svgout

import (
	"bytes"
	"encoding/base64"
	"fmt"
	"math"
	"strconv"
	"strings"
	"testing"

	"eighthturn/internal/measure"
	"eighthturn/internal/quilt"
)

// leaf is an element that is seen, with what it has and what it takes over from the groups that it stands in.
type leaf struct {
	*node
	has    map[string]string
	groups []string // ids
}

// leaves are the elements of a picture that are seen, in their order.
func leaves(root *node) (list []leaf) {
	var walk func(n *node, has map[string]string, groups []string)
	walk = func(n *node, above map[string]string, groups []string) {
		if n.name == "defs" {
			return
		}
		has := map[string]string{}
		for name, value := range above {
			has[name] = value
		}
		for _, a := range n.attrs {
			has[qualified(a.Name)] = a.Value
		}
		switch n.name {
		case "path", "rect", "text", "image":
			list = append(list, leaf{n, has, groups})
		case "g":
			delete(has, "id")
			if id := n.attr("id"); id != "" {
				groups = append(groups[:len(groups):len(groups)], id)
			}
			fallthrough
		default:
			for _, c := range n.children {
				walk(c, has, groups)
			}
		}
	}
	walk(root, map[string]string{}, nil)
	return list
}

// wanted is an element that a scene asks for.
type wanted struct {
	name   string
	has    map[string]string // "" for what must not be there
	exact  []measure.Point   // of a path, corner by corner
	open   bool
	about  map[string]float64 // numbers, written to the nearest thousandth below 1, else hundredth
	text   string
	groups []string
}

// lawScene says that a file shows what its scene says: element by element, the outlines and words in their places, painted as the item
// says or else its layer.
func lawScene(s *Scene, svg []byte) error {
	root, err := parse(svg)
	if err != nil {
		return err
	}
	found, want := leaves(root), elementsOf(s)
	for i, w := range want {
		if i == len(found) {
			return fmt.Errorf("%d elements, expected %d", len(found), len(want))
		}
		if err := w.is(found[i]); err != nil {
			return fmt.Errorf("element %d, <%s> in %v: %w", i, found[i].name, found[i].groups, err)
		}
	}
	if len(found) > len(want) {
		return fmt.Errorf("%d elements, expected %d", len(found), len(want))
	}
	return nil
}

// is says in what an element is not what is wanted.
func (w *wanted) is(l leaf) error {
	if l.name != w.name || fmt.Sprint(l.groups) != fmt.Sprint(w.groups) {
		return fmt.Errorf("expected <%s> in %v", w.name, w.groups)
	}
	for name, want := range w.has {
		if l.has[name] != want {
			return fmt.Errorf("%s=%q, expected %q", name, l.has[name], want)
		}
	}
	for name, want := range w.about {
		got, err := strconv.ParseFloat(l.has[name], 64)
		if most := 0.005 * math.Pow(0.1, float64(bool2(want < 1))); want != 0 && (err != nil || math.Abs(got-want) > most*1.001) || want == 0 && l.has[name] != "" {
			return fmt.Errorf("%s=%q, expected %g", name, l.has[name], want)
		}
	}
	said := l.text
	if l.name == "path" && len(l.children) > 0 {
		said = l.children[0].text
	}
	if said != w.text {
		return fmt.Errorf("it says %q, expected %q", said, w.text)
	}
	return w.draws(l.has["d"])
}

func bool2(b bool) int {
	if b {
		return 1
	}
	return 0
}

// draws says in what path data are not the outlines that are wanted; between them stands a corner that is none.
func (w *wanted) draws(data string) error {
	if w.name != "path" {
		return nil
	}
	if w.open == strings.Contains(data, "Z") {
		return fmt.Errorf("lines are open: %v", w.open)
	}
	numbers := strings.FieldsFunc(data, func(r rune) bool { return strings.ContainsRune("MLZ ", r) })
	if len(numbers) != 2*len(w.exact) {
		return fmt.Errorf("%d corners, expected %d", len(numbers)/2, len(w.exact))
	}
	for i, p := range w.exact {
		for j, nm := range [2]measure.NM{p.X, p.Y} {
			got, err := strconv.ParseFloat(numbers[2*i+j], 64)
			if err != nil || math.Abs(got-float64(nm)*96/25_400_000) > 0.51e-4 {
				return fmt.Errorf("corner %d lies at %s, expected %v", i, numbers[2*i+j], p)
			}
		}
	}
	return nil
}

// elementsOf are the elements that a scene asks for.
func elementsOf(s *Scene) (list []wanted) {
	for i := range s.Layers {
		l := &s.Layers[i]
		var groups []string
		if l.ID != "" {
			groups = []string{s.prefix + l.ID}
		}
		for n := range l.Items {
			list = append(list, s.elementsOf(l, &l.Items[n], groups)...)
		}
	}
	return list
}

func (s *Scene) elementsOf(l *Layer, item *Item, groups []string) (list []wanted) {
	style := l.Styled(item)
	base := func(name, id string) wanted {
		w := wanted{name: name, groups: groups, has: s.painted(style), about: map[string]float64{"stroke-width": style.Width, "stroke-dasharray": style.Dash}}
		if id != "" {
			id = s.prefix + id
		}
		w.has["id"] = id
		return w
	}
	switch {
	case item.Outlines != nil:
		return s.pathsOf(style, item, base)
	case item.Texts != nil:
		for t := range item.Texts {
			w := base("text", "")
			w.text, w.about["x"], w.about["y"], w.about["font-size"] = t.Text, t.X, t.Y, t.Size
			list = append(list, w)
		}
		return list
	case item.Text != nil:
		w := base("text", "")
		w.text, w.about["x"], w.about["y"], w.about["font-size"] = item.Text.Text, item.Text.X, item.Text.Y, item.Text.Size
		w.has["font-weight"] = map[bool]string{true: "bold"}[item.Text.Bold]
		return []wanted{w}
	case item.Picture != nil:
		w := wanted{name: "image", groups: groups, has: map[string]string{"x": "0", "y": "0", "preserveAspectRatio": "none",
			"width": string(appendNumber(nil, s.Top.Outer.Width())), "height": string(appendNumber(nil, s.Top.Outer.Height())),
			"xlink:href": "data:image/png;base64," + base64.StdEncoding.EncodeToString(item.Picture)}}
		return []wanted{w}
	}
	w := base("rect", "")
	for name, v := range map[string]float64{"x": item.Box.X, "y": item.Box.Y, "width": item.Box.Width, "height": item.Box.Height} {
		w.has[name] = strconv.FormatFloat(v, 'f', 4, 64) // as its library writes them
	}
	return []wanted{w}
}

// pathsOf are the paths of an item: one, or one for each outline where each has a name or shows its own place of a print.
func (s *Scene) pathsOf(style Style, item *Item, base func(name, id string) wanted) (list []wanted) {
	printed := style.Fill.Kind == Fabric && s.Paints[style.Fill.Fabric].Print != nil && item.Faces != nil
	n := 0
	whole := base("path", item.ID)
	whole.open = item.Open
	for outline := range item.Outlines {
		if item.Each == nil && !printed {
			whole.exact = append(whole.exact, outline...)
			continue
		}
		w := base("path", "")
		w.exact, w.open = append(w.exact, outline...), item.Open
		if item.Each != nil {
			w.has["id"] = s.prefix + string(item.Each.ID(nil, n))
			w.text = unescaped(string(item.Each.Title(nil, n)))
		}
		if item.ID != "" {
			w.groups = append(w.groups[:len(w.groups):len(w.groups)], s.prefix+item.ID)
		}
		if printed {
			w.has["fill"] = fmt.Sprintf("url(#%sprint-%d-%d)", s.prefix, style.Fill.Fabric+1, item.Faces[n]+1)
		}
		list = append(list, w)
		n++
	}
	if item.Each == nil && !printed {
		return []wanted{whole}
	}
	return list
}

// unescaped is text as an XML parser gives it.
func unescaped(text string) string {
	root, err := parse([]byte("<t>" + text + "</t>"))
	if err != nil {
		return err.Error()
	}
	return root.text
}

// painted are the attributes of a style; what is "" is not there.
func (s *Scene) painted(style Style) map[string]string {
	has := map[string]string{"fill": "", "stroke": "", "stroke-opacity": "", "stroke-linejoin": "", "stroke-linecap": "", "font-family": "", "text-anchor": ""}
	switch f := style.Fill; f.Kind {
	case Unfilled:
		has["fill"] = "none"
	case Flat:
		has["fill"] = f.Colour.Hex()
	case Fabric, FabricColour:
		has["fill"] = s.Paints[f.Fabric].Colour.Hex()
		if s.OnePaint {
			has["fill"] = fmt.Sprintf("url(#%spaint-%d) %s", s.prefix, f.Fabric+1, has["fill"])
		}
		if f.Kind == Fabric && s.Paints[f.Fabric].Print != nil {
			has["fill"] = fmt.Sprintf("url(#%sprint-%d)", s.prefix, f.Fabric+1)
		}
	}
	if style.Line != nil {
		has["stroke"] = style.Line.Hex()
	}
	if style.Opacity != 1 {
		has["stroke-opacity"] = strconv.FormatFloat(style.Opacity, 'g', -1, 64)
	}
	for name, there := range map[string]bool{"stroke-linejoin": style.Joins, "stroke-linecap": style.Caps} {
		if there {
			has[name] = "round"
		}
	}
	if style.Words {
		has["font-family"] = "Helvetica, Arial, sans-serif"
	}
	if style.Middle {
		has["text-anchor"] = "middle"
	}
	return has
}

// everyScene is a picture of every sort: every view, and all that may be asked for with it.
func everyScene() (list []Options) {
	for view := range Tritan + 1 {
		list = append(list, Options{View: view, Legend: true, Prefix: "q-"}, Options{View: view, ByFabric: true, Prints: true, OnePaint: true, SeamLines: SeamsDrawn})
	}
	return append(list, Options{Prints: true, Legend: true})
}

// TestTheFileShowsTheScene: what a scene says is what the file has, of every view, with prints, paints and marked seams.
func TestTheFileShowsTheScene(t *testing.T) {
	hard := lay(t, "strip 4\nfabric fog #777777\nfabric mist #7b7b7b\nfabric haze #8c8c8c\nblock R ring wedges fog mist corners haze\n"+grid("R R")+"border 1 mist\n")
	tops := []*quilt.Top{lapTop(t), lay(t, layouts()["sashed"]), hard, printed(t)}
	for _, top := range tops {
		for _, o := range everyScene() {
			if o.View == Squint && top != tops[3] { // the dearest to draw, and one picture whatever the top
				continue
			}
			s, err := NewScene(top, o)
			if err != nil {
				t.Fatal(err)
			}
			if err := lawScene(s, written(t, s)); err != nil {
				t.Errorf("%+v: %v", o, err)
			}
		}
	}
	s, err := NewScene(hard, Options{View: Vanishing, Legend: true})
	if err != nil {
		t.Fatal(err)
	}
	law := func(svg []byte) error { return lawScene(s, svg) }
	svg := written(t, s)
	for pattern, bad := range map[string]string{
		`<path [^\n]*\n`: "", ` stroke-dasharray="[^"]*"`: "", ` stroke-opacity="[^"]*"`: "", `stroke-linecap="round"`: "", `(id="marked"(?s:.*?)stroke-width=")`: "${1}9",
		`<rect[^>]*>`: "", `font-family="[^"]*"`: "", `id="r1c1`: `id="r9c9`, `(<text x=")\d`: "${1}9", `font-weight="bold"`: "",
	} {
		broken(t, law, svg, pattern, bad)
	}
}

func written(t *testing.T, s *Scene) []byte {
	t.Helper()
	var b bytes.Buffer
	if err := s.SVG(&b); err != nil {
		t.Fatal(err)
	}
	return b.Bytes()
}
