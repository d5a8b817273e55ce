package summary

import (
	"eighthturn/internal/quilt"
	"eighthturn/palettes"
)

// Colorway is the quilt in other fabrics.
type Colorway struct {
	Name    string   `json:"name"`
	Changes []Change `json:"changes"`
}

// Change is a fabric and what takes its place.
type Change struct {
	Fabric string          `json:"fabric"`
	Takes  string          `json:"takes"` // the fabric in its place; the same name where only the color is another
	Colour palettes.Colour `json:"colour"`
}

// colorways are those of a top, with the changes that it shows.
func colorways(t *quilt.Top) []Colorway {
	list := make([]Colorway, 0, len(t.Colorways))
	for i := range t.Colorways {
		c := Colorway{Name: t.Colorways[i].Name, Changes: []Change{}}
		for _, f := range t.Colorways[i].Changed {
			is := &t.Colorways[i].Fabrics[f]
			c.Changes = append(c.Changes, Change{t.Fabrics[f].Name, is.Name, is.Colour})
		}
		list = append(list, c)
	}
	return list
}
