package layout

import "eighthturn/palettes"

// checker is the second stage: a tree to a design.
type checker struct {
	*session
	photos     func(file string) (palettes.PhotoSample, error) // nil if there are none
	tree       *Tree
	photosFull bool // they are too large together, which was said
	sized      bool // it is the layout in a size, of which not everything is said
	design     Design
	asWritten  map[string]int      // blocks by label as the grid spells it
	setNodes   []*StripSetNode     // where each strip set of the design was written
	mirrors    map[int]MirrorLines // of photos that were asked for theirs, by fabric
}

// Read turns the text of a layout into a design. The design is nil if there are errors;
// warnings do not stop it. Messages come in the order of their places. A layout that names
// photos has an error.
func Read(text string) (*Design, *Source, []Fault) { return ReadWith(text, nil) }

// ReadWith is Read for a layout that may name photos, which it is given by a function; a
// fault of the function is one sentence.
func ReadWith(text string, photos func(file string) (palettes.PhotoSample, error)) (*Design, *Source, []Fault) {
	r := Inspect(text, photos)
	return r.Design, r.Source, r.Faults
}

// Inspect is ReadWith, with the tree.
func Inspect(text string, photos func(file string) (palettes.PhotoSample, error)) Reading {
	return read(text, onceEach(photos), true)
}

// Outline is the first stage of Inspect alone, at a fraction of its cost: what is written where, with no design and no faults.
func Outline(text string) Reading {
	p := newParser(NewSource(text))
	p.parse()
	return Reading{Source: p.source, Tree: &p.tree}
}

// read is ReadWith; try says whether what hints say to type is tried.
func read(text string, photos func(file string) (palettes.PhotoSample, error), try bool) Reading {
	source := NewSource(text)
	p := newParser(source)
	p.parse()
	if len(p.list) > 0 && len(p.tree.Lines) == 0 {
		return Reading{Source: source, Tree: &p.tree, Faults: p.sorted()}
	}
	parsed := len(p.list)
	c := &checker{session: p.session, tree: &p.tree, photos: photos, asWritten: map[string]int{}}
	c.check()
	c.dropMisread(parsed)
	list := c.sorted()
	if try {
		c.tryEdits(list)
	}
	r := Reading{Source: source, Tree: &p.tree, Faults: list}
	if errors, _ := Count(list); errors == 0 {
		r.Design = &c.design
	}
	return r
}

// check checks every statement, given or not, each behind those that it builds on.
func (c *checker) check() {
	done := make([]bool, len(c.statements))
	var check func(int)
	check = func(i int) {
		s := &c.statements[i]
		if done[i] {
			return
		}
		done[i] = true
		for _, word := range s.after {
			check(c.byWord[word])
		}
		if s.check != nil {
			s.check(c)
		}
	}
	for i := range c.statements {
		check(i)
	}
	c.quiltSizes()
	if errors, _ := Count(c.list); errors == 0 && !c.sized {
		c.warnUnused()
	}
}
