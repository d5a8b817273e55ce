package layout

import (
	"slices"
	"strconv"
)

// AuditionPlace is a place of a layout that an audition may be of.
type AuditionPlace struct {
	Role, Of string // as Auditions takes them
	Fabric   int    // of the design's, by index, one that is there now
	Plain    bool   // one fabric alone may stand there
	Deal     int    // of a pool of scraps, the number that it has now; 0 for other places
}

// AuditionPlaces are all places of the layout that have something now and that an audition may be of, the roles of its blocks first and
// its fabrics last. It must have no errors.
func (r *Reading) AuditionPlaces() (list []AuditionPlace) {
	add := func(p AuditionPlace) {
		if p.Fabric >= 0 && r.audition("", p.Role, p.Of).find(p.Role) == nil {
			list = append(list, p)
		}
	}
	d := r.Design
	for _, b := range d.Blocks {
		for i, role := range b.Kind.Roles {
			add(AuditionPlace{Role: role.Name, Of: b.Label, Fabric: d.someFabric(b.Fills[i])})
		}
	}
	add(AuditionPlace{Role: auditionWebs, Fabric: d.someFabric(d.Webs)})
	if d.Sash != nil {
		add(AuditionPlace{Role: auditionSash, Fabric: d.Sash.Fabric, Plain: true})
		posts := d.Sash.Fabric
		if d.Sash.Corners >= 0 {
			posts = d.Sash.Corners
		}
		add(AuditionPlace{Role: auditionPosts, Fabric: posts, Plain: true})
	}
	for i, b := range d.Borders {
		add(AuditionPlace{Role: auditionBorder, Of: strconv.Itoa(i + 1), Fabric: b.Fabric, Plain: true})
	}
	if d.Binding != nil {
		add(AuditionPlace{Role: auditionBind, Fabric: d.Binding.Fabric, Plain: true})
	}
	for _, p := range d.Pools {
		add(AuditionPlace{Role: auditionDeal, Of: p.Name, Fabric: p.Fabrics[0], Deal: max(1, p.Deal)})
	}
	for i, f := range d.Fabrics {
		if roleOrPlace := r.audition("", f.Name, ""); roleOrPlace.find(f.Name) == nil && roleOrPlace.fabric != "" {
			add(AuditionPlace{Role: f.Name, Fabric: i, Plain: true})
		}
	}
	return list
}

// someFabric is the first fabric that fills have, -1 for none.
func (d *Design) someFabric(fills []Fill) int {
	for _, f := range fills {
		switch {
		case f.Fabric >= 0:
			return f.Fabric
		case f.Set >= 0:
			if b := d.StripSets[f.Set].Bands[0]; b.Fabric >= 0 {
				return b.Fabric
			} else {
				return d.Pools[b.Pool].Fabrics[0]
			}
		case f.Pool >= 0:
			return d.Pools[f.Pool].Fabrics[0]
		}
	}
	return -1
}

// AuditionFabrics are the names of what a place may be given: the layout's own fabrics, with its strip sets and pools where they may
// stand there, and those of its palettes.
func (r *Reading) AuditionFabrics(p AuditionPlace) (own, ofPalettes []string) {
	for _, f := range r.Design.Fabrics {
		if slices.ContainsFunc(r.Tree.Fabrics, func(n *fabricNode) bool { return n.Name.key() == foldName(f.Name) }) {
			own = append(own, f.Name)
		} else {
			ofPalettes = append(ofPalettes, f.Name)
		}
	}
	if !p.Plain {
		for _, s := range r.Design.StripSets {
			own = append(own, s.Name)
		}
		for _, s := range r.Design.Pools {
			own = append(own, s.Name)
		}
	}
	return own, ofPalettes
}
