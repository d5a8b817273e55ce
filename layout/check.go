package layout

import "eighthturn/palettes"

// checker is the second stage: a tree to a design.
type checker struct {
	*session
	photos    func(file string) (palettes.Cloth, error) // nil if there are none
	tree      *Tree
	design    Design
	names     map[string]entry // fabrics and strip sets share one set of names
	order     []string         // names as defined, for hints
	labels    map[string]int   // blocks by label
	asWritten map[string]int   // blocks by label as the grid spells it
	used      map[string]bool  // names that something uses
	// missing is the message about each name that nothing has, by its number in the list.
	missing map[string]int
	// setNodes is where each strip set of the design was written.
	setNodes []*StripSetNode
	tooMany  bool            // names, and a message says so
	noLabel  map[string]bool // labels that no block has, and a message says so
}

// Read turns the text of a layout into a design. The design is nil if there are errors;
// warnings do not stop it. Messages come in the order of their places. A layout that names
// photos has an error.
func Read(text string) (*Design, *Source, []Fault) { return ReadWith(text, nil) }

// ReadWith is Read for a layout that may name photos, which it is given by a function; a
// fault of the function is one sentence.
func ReadWith(text string, photos func(file string) (palettes.Cloth, error)) (*Design, *Source, []Fault) {
	source := NewSource(text)
	p := newParser(source)
	p.parse()
	if len(p.list) > 0 && len(p.tree.Lines) == 0 {
		return nil, source, p.sorted()
	}
	parsed := len(p.list)
	c := &checker{session: p.session, tree: &p.tree, photos: photos, names: map[string]entry{}, labels: map[string]int{}, asWritten: map[string]int{}, used: map[string]bool{}, missing: map[string]int{}, noLabel: map[string]bool{}}
	c.check()
	c.dropFollowUps(parsed)
	list := c.sorted()
	if errors, _ := Count(list); errors > 0 {
		return nil, source, list
	}
	return &c.design, source, list
}

func (c *checker) check() {
	c.basics()
	c.fabrics()
	c.palettes()
	c.scraps()
	c.stripSets()
	c.likes()
	c.blocks()
	c.webs()
	c.sash()
	if c.grid() {
		c.sizes()
		c.laid()
	}
	c.edgings()
	c.words()
	if errors, _ := Count(c.list); errors == 0 {
		c.unused()
	}
}
