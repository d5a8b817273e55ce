package layout

import (
	"cmp"
	"fmt"
	"slices"
	"strconv"
	"strings"

	"eighthturn/internal/blocks"
	"eighthturn/palettes"
)

// Bounds of an audition.
const (
	MinAuditions = 2
	MaxAuditions = 9
)

// Trial is a layout with one alternative written into it.
type Trial struct {
	Name  string   // the alternative, as it was asked for
	Text  string   // the whole layout
	Lines []string // the lines that are new or changed in it, as they are to be written
	Try   string   // "fabric=#rrggbb" where the alternative is no more than another color for a fabric, "" for others
	Bound bool     // it is of the binding, which is to be seen round the top
}

// Unfit is why an audition cannot be: one sentence, and what to write instead.
type Unfit struct{ Message, Hint string }

func (e *Unfit) Error() string { return e.Message }

func unfit(hint, format string, args ...any) error {
	return &Unfit{fmt.Sprintf(format, args...), hint}
}

// Words for what an audition is of, beside the roles of blocks and the names of fabrics.
const (
	auditionWebs   = "webs"
	auditionSash   = "sash"
	auditionPosts  = "posts"
	auditionBorder = "border"
	auditionBind   = "binding"
	auditionDeal   = "deal"
)

// auditionWords are those words.
func auditionWords() []string {
	return []string{auditionBorder, auditionBind, auditionSash, auditionPosts, auditionWebs, auditionDeal}
}

// AuditionOf is what an audition is of.
type AuditionOf struct {
	Role     string // of blocks, or one of the other words, or a fabric
	Of       string // the block's label, the pool's name or the border's number; "" where it is not said
	Colorway string // that fabrics are recolored in; "" for the quilt as it is written
}

// Auditions writes each of several alternatives into the layout, which must have no errors: in the place of a role of the block
// that Of names, or of all blocks that have the role where it is ""; of a border, by its number from the inside; of the binding; of
// the sashes or their posts; of the webs statement; as the deal of a pool of scraps; or in place of a fabric by its name, wherever it
// is, as the quilt is written or, where one is named, in a colorway. An alternative is what a layout may have there, as fabrics, strip
// sets, reversed or not, and pools; a color or a fabric of a palette is defined before it. The error is an *Unfit.
func (r *Reading) Auditions(at AuditionOf, alternatives []string) ([]Trial, error) {
	if n := len(alternatives); n < MinAuditions || n > MaxAuditions {
		return nil, unfit(fmt.Sprintf("name %d to %d, each in quotes where it has a blank", MinAuditions, MaxAuditions), "an audition is of %d to %d alternatives, found %d", MinAuditions, MaxAuditions, n)
	}
	for i, text := range alternatives {
		if strings.TrimSpace(text) == "" {
			return nil, unfit("write what is tried, for example "+r.someName(), "alternative %d is empty", i+1)
		}
		if first := slices.Index(alternatives, text); first < i {
			return nil, unfit("leave out one of them", "alternatives %d and %d are the same: %s", first+1, i+1, quote(text))
		}
	}
	a, err := r.audition(at)
	if err != nil {
		return nil, err
	}
	var list []Trial
	for _, text := range alternatives {
		t, err := a.trial(text)
		if err != nil {
			return nil, err
		}
		list = append(list, t)
	}
	return list, nil
}

// Trial writes one alternative into the layout, as Auditions does.
func (r *Reading) Trial(at AuditionOf, alternative string) (Trial, error) {
	a, err := r.audition(at)
	if err != nil {
		return Trial{}, err
	}
	if strings.TrimSpace(alternative) == "" {
		return Trial{}, unfit("write what is tried, for example "+r.someName(), "the alternative is empty")
	}
	return a.trial(alternative)
}

// audition is what alternatives are written in the place of.
type audition struct {
	*Reading
	role, of string
	colorway string          // that fabrics are recolored in, "" for the quilt as it is written
	fabrics  []Fabric        // of the design, as they are in that
	places   []auditionPlace // in the order of the text
	fabric   string          // that is recolored, "" where places are written anew
	deal     bool            // the alternatives are numbers
	plain    bool            // a single fabric alone may stand there
	bound    bool            // it is the binding
}

// audition finds what an audition is of.
func (r *Reading) audition(at AuditionOf) (*audition, error) {
	a := &audition{Reading: r, role: strings.ToLower(at.Role), of: at.Of, fabrics: r.Design.Fabrics}
	for i := range r.Design.Colorways {
		if c := &r.Design.Colorways[i]; foldName(c.Name) == foldName(at.Colorway) {
			a.colorway, a.fabrics = c.Name, r.Design.In(c).Fabrics
		}
	}
	return a, a.find(at.Role)
}

// auditionPlace is a place of the text, and what stands before an alternative where it is a new one.
type auditionPlace struct {
	Span
	before string
}

// find finds the places.
func (a *audition) find(role string) error {
	word := map[string]string{"borders": auditionBorder, "sashes": auditionSash, "sashing": auditionSash, "web": auditionWebs, "deals": auditionDeal}[a.role]
	if word == "" {
		word = a.role
	}
	isRole := slices.Contains(roleWords(blocks.Kinds()), a.today(word))
	switch {
	case isRole:
		return a.findRole(a.today(word))
	case word == auditionBorder:
		return a.findBorder()
	case word == auditionBind && a.Tree.Binding != nil:
		a.plain, a.bound, a.places = true, true, []auditionPlace{{Span: a.Tree.Binding.Fabric.Span}}
		return nil
	case word == auditionBind:
		return unfit("write one in the layout, for example binding 2 1/2 "+a.someName(), "this layout has no binding")
	case word == auditionSash, word == auditionPosts:
		return a.findSash(word == auditionPosts)
	case word == auditionWebs && a.Tree.Webs != nil && len(a.Tree.Webs.Values) > 0:
		values := a.Tree.Webs.Values
		a.places = []auditionPlace{{Span: values[0].Span.To(values[len(values)-1].Span)}}
		return nil
	case word == auditionWebs:
		return unfit("write one in the layout, for example webs "+a.someName(), "this layout has no webs statement with fabrics")
	case word == auditionDeal:
		return a.findDeal()
	}
	if a.of == "" {
		for _, f := range a.fabrics {
			if foldName(f.Name) == foldName(role) {
				a.fabric = f.Name
				return nil
			}
		}
	}
	known := append(slices.Clone(auditionWords()), a.roles()...)
	for _, f := range a.fabrics {
		known = append(known, f.Name)
	}
	hint := "roles of this layout are: " + strings.Join(a.roles(), ", ") + "; or name a fabric, or one of " + strings.Join(auditionWords(), ", ")
	if near := nearest(role, known); near != "" {
		hint = "did you mean " + quote(near) + "?"
	}
	return unfit(hint, "nothing in this layout is called %s: expected a role or a fabric", quote(role))
}

// today is a role's name as it is written today.
func (a *audition) today(word string) string {
	for _, k := range blocks.Kinds() {
		for _, r := range k.Roles {
			if r.Former != "" && strings.EqualFold(r.Former, word) {
				return r.Name
			}
		}
	}
	return word
}

// roles are those of the layout's blocks, each once.
func (r *Reading) roles() (list []string) {
	for _, b := range r.Design.Blocks {
		for _, role := range b.Kind.RoleNames() {
			if !slices.Contains(list, role) {
				list = append(list, role)
			}
		}
	}
	return list
}

func (r *Reading) someName() string { return r.Design.Fabrics[0].Name }

// findRole finds a role in one block, or in all that give it.
func (a *audition) findRole(role string) error {
	byWebs := false
	for i, n := range a.Tree.Blocks {
		if a.of != "" && foldName(n.Label.Text) != foldName(a.of) {
			continue
		}
		kind := a.Design.Blocks[i].Kind
		switch place, ok := placeOfRole(n, kind, role, a.of != ""); {
		case !ok && a.of != "":
			return unfit("its roles are: "+strings.Join(kind.RoleNames(), ", "), "block %s has no %s", n.Label.Text, role)
		case a.byWebs(kind, role):
			byWebs = true
		case ok:
			a.places = append(a.places, place)
		}
	}
	switch {
	case len(a.places) > 0:
		return nil
	case byWebs:
		return unfit("audition webs in its place", "the webs statement says what the %s %s cut from, in every block", role, verb(role, "is", "are"))
	case a.of != "":
		return unfit("blocks are: "+strings.Join(a.labels(), ", "), "no block is called %s", quote(a.of))
	}
	return unfit("roles of this layout are: "+strings.Join(a.roles(), ", ")+"; name the block too: "+role+" of "+cmp.Or(append(a.labels(), "W")[0]), "no block of this layout says what its %s %s cut from", role, verb(role, "is", "are"))
}

// placeOfRole is where a block gives a role, or, where it need not be written yet, may give it.
func placeOfRole(n *blockNode, kind *blocks.Kind, role string, anew bool) (place auditionPlace, ok bool) {
	written := slices.IndexFunc(n.Roles, func(r roleNode) bool {
		return strings.EqualFold(r.Word.Text, role) && n.holds(r.Span)
	})
	if written >= 0 {
		v := n.Roles[written].Values
		return auditionPlace{Span: v[0].Span.To(v[len(v)-1].Span)}, true
	}
	return auditionPlace{Span{n.End, n.End}, "  " + role + " "}, anew && kind.Role(role) >= 0
}

// byWebs says whether the webs statement alone says what a role of a kind of blocks is cut from.
func (a *audition) byWebs(kind *blocks.Kind, role string) bool {
	w := a.Tree.Webs
	if w == nil || len(w.Values) == 0 {
		return false
	}
	n := kind.Role(role)
	return n >= 0 && kind.Roles[n].OfWebs
}

func (a *audition) labels() (list []string) {
	for _, n := range a.Tree.Blocks {
		list = append(list, n.Label.Text)
	}
	return list
}

// findBorder finds a border by its number, or the only one.
func (a *audition) findBorder() error {
	a.plain = true
	list := a.Tree.Borders
	switch n, err := strconv.Atoi(a.of); {
	case len(list) == 0:
		return unfit("write one in the layout, for example border 2 "+a.someName(), "this layout has no border")
	case a.of == "" && len(list) == 1:
		a.places = []auditionPlace{{Span: list[0].Fabric.Span}}
	case a.of == "" || err != nil || n < 1 || n > len(list):
		return unfit("name one by its number from the inside, for example border of 1", "this layout has %d %s", len(list), map[bool]string{true: "border", false: "borders"}[len(list) == 1])
	default:
		a.places = []auditionPlace{{Span: list[n-1].Fabric.Span}}
	}
	return nil
}

// findSash finds the sashes' fabric, or that of their posts.
func (a *audition) findSash(posts bool) error {
	a.plain = true
	sash := a.Tree.Sash
	switch {
	case sash == nil:
		return unfit("write them in the layout, for example sash 1 "+a.someName(), "this layout has no sashes")
	case posts && sash.Corners == nil:
		a.places = []auditionPlace{{Span{sash.Fabric.End, sash.Fabric.End}, " posts "}}
	case posts:
		a.places = []auditionPlace{{Span: sash.Corners.Span}}
	default:
		a.places = []auditionPlace{{Span: sash.Fabric.Span}}
	}
	return nil
}

// findDeal finds the deal of a pool, or of the only one.
func (a *audition) findDeal() error {
	a.deal = true
	var names []string
	for _, n := range a.Tree.Scraps {
		names = append(names, n.Name.Text)
		if a.of != "" && foldName(a.of) != n.Name.key() {
			continue
		}
		if a.of == "" && len(a.Tree.Scraps) > 1 {
			continue
		}
		place := auditionPlace{Span{n.End, n.End}, "  " + auditionDeal + " "}
		if n.Deal != nil {
			place = auditionPlace{Span: n.Deal.Span}
		}
		a.places = append(a.places, place)
	}
	switch {
	case len(a.places) > 0:
		return nil
	case len(names) == 0:
		return unfit("a pool is written scraps, its name, and its fabrics", "this layout has no pool of scraps")
	}
	return unfit("name one of its pools: deal of "+names[0], "this layout has no pool to deal by that name: its pools are %s", strings.Join(names, ", "))
}

// trial writes one alternative into the layout.
func (a *audition) trial(alternative string) (Trial, error) {
	alternative = strings.Join(strings.Fields(alternative), " ")
	if a.fabric != "" {
		return a.recolored(alternative)
	}
	t := Trial{Name: alternative, Bound: a.bound}
	text := alternative
	var edits []Edit
	if a.deal {
		if n, err := strconv.Atoi(alternative); err != nil || n < 1 || n > MaxAuditions {
			return t, unfit("for example deal 1 2 3", "%s is no deal: expected a number from 1 to %d", quote(alternative), MaxAuditions)
		}
	} else {
		words, defined, err := a.resolved(alternative)
		if err != nil {
			return t, err
		}
		text = strings.Join(words, " ")
		if len(defined) > 0 {
			edits = append(edits, a.lineBefore(a.places[0].Start, defined...))
		}
	}
	for _, p := range a.places {
		edits = append(edits, Edit{p.Span, p.before + text})
	}
	return a.written(t, edits), nil
}

// recolored gives a fabric another color. A fabric of a palette gets a line of its own, before those of the palette: where there are
// scraps, which are dealt by the order of the fabrics, that is no longer the same quilt in another color.
func (a *audition) recolored(alternative string) (Trial, error) {
	t := Trial{Name: alternative}
	colour, ok := a.colour(alternative)
	if !ok {
		return t, a.unknown(alternative)
	}
	if a.colorway != "" {
		t.Try = a.fabric + "=" + colour.Hex()
		return a.written(t, a.RecoloredIn(a.colorway, a.fabric, colour)), nil
	}
	if len(a.Design.Pools) == 0 || slices.ContainsFunc(a.Tree.Fabrics, func(n *fabricNode) bool { return n.Name.key() == foldName(a.fabric) }) {
		t.Try = a.fabric + "=" + colour.Hex()
	}
	return a.written(t, a.Recolored(a.fabric, colour)), nil
}

// colour is that of a fabric of the layout, a color, or that of a fabric of a palette.
func (a *audition) colour(name string) (palettes.Colour, bool) {
	for _, f := range a.fabrics {
		if foldName(f.Name) == foldName(name) {
			return f.Colour, true
		}
	}
	if c, ok := paletteColour(name); ok {
		return c, true
	}
	c, err := palettes.Parse(name)
	return c, err == nil
}

func paletteColour(name string) (palettes.Colour, bool) {
	for _, p := range palettes.All() {
		for _, f := range p.Fabrics {
			if foldName(f.Name) == foldName(name) {
				return f.Colour, true
			}
		}
	}
	return palettes.Colour{}, false
}

func (a *audition) unknown(name string) error {
	names := a.names()
	if near := nearest(name, names); near != "" {
		return unfit("did you mean "+quote(near)+"?", "no fabric and no color is called %s", quote(name))
	}
	return unfit("name a fabric of the layout or of a palette, or a color like #3a4f66", "no fabric and no color is called %s", quote(name))
}

// names are all that a role may be given.
func (a *audition) names() (list []string) {
	for _, f := range a.Design.Fabrics {
		list = append(list, f.Name)
	}
	if a.plain {
		return list
	}
	for _, s := range a.Design.StripSets {
		list = append(list, s.Name)
	}
	for _, p := range a.Design.Pools {
		list = append(list, p.Name)
	}
	return list
}

// resolved is the words of an alternative as the layout is to have them, and the lines that define what it has not yet.
func (a *audition) resolved(alternative string) (list, defined []string, err error) {
	fields := strings.Fields(alternative)
	if a.plain && len(fields) > 1 {
		return nil, nil, unfit("name one fabric or color", "%s is more than one fabric", quote(alternative))
	}
	for _, w := range fields {
		switch {
		case !a.plain && (strings.EqualFold(w, Reversed) || w == "/"):
		case slices.ContainsFunc(a.names(), func(n string) bool { return foldName(n) == foldName(w) }):
		default:
			colour, ok := a.colour(w)
			if !ok {
				return nil, nil, a.unknown(w)
			}
			if strings.HasPrefix(w, "#") {
				w = "tone-" + strings.TrimPrefix(colour.Hex(), "#")
			}
			if line := "fabric " + w + " " + colour.Hex(); !slices.Contains(defined, line) && !slices.ContainsFunc(a.names(), func(n string) bool { return foldName(n) == foldName(w) }) {
				defined = append(defined, line)
			}
		}
		list = append(list, w)
	}
	return list, defined, nil
}

// written is the layout with edits made, in the order of their places, and the lines that they leave.
func (a *audition) written(t Trial, edits []Edit) Trial {
	t.Text = Apply(a.Source.Text, edits)
	for i := 0; i < len(edits); {
		line := a.Source.LineSpan(a.Source.Line(edits[i].Span.Start))
		var own []Edit
		for ; i < len(edits) && edits[i].Span.Start <= line.End; i++ {
			own = append(own, Edit{Span{edits[i].Span.Start - line.Start, min(edits[i].Span.End, line.End) - line.Start}, edits[i].Text})
		}
		end := line.End
		if whole := len(own) == 1 && own[0].Span.Empty() && strings.ContainsAny(own[0].Text, LineEnds); whole {
			end = line.Start + own[0].Span.Start // a new line before this one, which stays
		}
		for _, text := range TextLines(Apply(a.Source.Text[line.Start:end], own)) {
			if text = strings.TrimPrefix(text, byteOrderMark); text != "" {
				t.Lines = append(t.Lines, text)
			}
		}
	}
	return t
}
