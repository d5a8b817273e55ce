package layout

import (
	"slices"
	"strconv"
)

// AuditionPlace is a place of a layout that an audition may be of.
type AuditionPlace struct {
	AuditionOf
	Fabric   int  // of the design's, by index, one that is there now
	Plain    bool // one fabric alone may stand there
	Recolors bool // the place is that fabric itself, wherever it is
	Deal     int  // of a pool of scraps, the number that it has now; 0 for other places
}

// AuditionPlaces are all places of the layout that have something now and that an audition may be of, the roles of its blocks first and
// its fabrics last, as they are called in a colorway. It must have no errors.
func (r *Reading) AuditionPlaces(colorway string) (list []AuditionPlace) {
	add := func(role, of string, p AuditionPlace) {
		p.AuditionOf = AuditionOf{role, of, colorway}
		if a, err := r.audition(p.AuditionOf); err == nil && p.Fabric >= 0 && p.Recolors == (a.fabric != "") {
			list = append(list, p)
		}
	}
	d := r.Design
	for _, b := range d.Blocks {
		for i, role := range b.Kind.Roles {
			add(role.Name, b.Label, AuditionPlace{Fabric: d.someFabric(b.Fills[i])})
		}
	}
	add(auditionWebs, "", AuditionPlace{Fabric: d.someFabric(d.Webs)})
	if s := d.Sash; s != nil {
		add(auditionSash, "", AuditionPlace{Fabric: s.Fabric, Plain: true})
		posts := s.Fabric
		if s.Corners >= 0 {
			posts = s.Corners
		}
		add(auditionPosts, "", AuditionPlace{Fabric: posts, Plain: true})
	}
	for i, b := range d.Borders {
		add(auditionBorder, strconv.Itoa(i+1), AuditionPlace{Fabric: b.Fabric, Plain: true})
	}
	if d.Binding != nil {
		add(auditionBind, "", AuditionPlace{Fabric: d.Binding.Fabric, Plain: true})
	}
	for _, p := range d.Pools {
		add(auditionDeal, p.Name, AuditionPlace{Fabric: p.Fabrics[0], Deal: max(1, p.Deal)})
	}
	for i, name := range r.AuditionFabrics(colorway) {
		add(name, "", AuditionPlace{Fabric: i, Plain: true, Recolors: true})
	}
	return list
}

// someFabric is the first fabric that fills have, -1 for none.
func (d *Design) someFabric(fills []Fill) int {
	if len(fills) == 0 {
		return -1
	}
	return d.FabricsOf(fills[0])[0]
}

// FabricsOf are the fabrics that a fill, which must be one, may show, by index.
func (d *Design) FabricsOf(f Fill) (list []int) {
	switch {
	case f.Fabric >= 0:
		return []int{f.Fabric}
	case f.Pool >= 0:
		return d.Pools[f.Pool].Fabrics
	}
	for _, b := range d.StripSets[f.Set].Bands {
		if b.Fabric >= 0 {
			list = append(list, b.Fabric)
		} else {
			list = append(list, d.Pools[b.Pool].Fabrics...)
		}
	}
	return list
}

// AuditionFabrics are the names of the design's fabrics, by index, as they are called in a colorway.
func (r *Reading) AuditionFabrics(colorway string) (list []string) {
	a, _ := r.audition(AuditionOf{Colorway: colorway}) // of nothing
	for _, f := range a.fabrics {
		list = append(list, f.Name)
	}
	return list
}

// OfPalette says whether a fabric of the design, by index, is brought in by a palette.
func (r *Reading) OfPalette(fabric int) bool {
	name := foldName(r.Design.Fabrics[fabric].Name)
	return !slices.ContainsFunc(r.Tree.Fabrics, func(n *fabricNode) bool { return n.Name.key() == name })
}
