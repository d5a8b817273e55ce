package report

import (
	"strings"

	"eighthturn/internal/measure"
	"eighthturn/internal/quilt"
)

// ListingForPrograms is what Listing says, as data.
type ListingForPrograms struct {
	Title     string           `json:"title"`
	Designer  string           `json:"designer"`
	Pages     int              `json:"pages"` // of the printed pattern
	Skill     string           `json:"skill_level"`
	Skills    []string         `json:"skills"`
	Sizes     []SizeListed     `json:"sizes"` // that of the pattern first
	Colorways []ColorwayListed `json:"colorways"`
	Pictures  []string         `json:"pictures"` // files that were written
}

// SizeListed is a size with what is bought for it. A size in other units is listed with its own.
type SizeListed struct {
	Name    string       `json:"name"` // "" where the layout names no sizes
	Units   string       `json:"units"`
	Top     ListedSize   `json:"top_finished"`
	Block   ListedLength `json:"block_finished"`
	Across  int          `json:"blocks_across"`
	Down    int          `json:"blocks_down"`
	Buy     []Bought     `json:"buy"`
	Batting *ListedSize  `json:"batting_at_least"` // nil for none
	Pattern bool         `json:"in_the_pattern"`   // the printed pattern is for it
}

// Bought is a length of fabric to buy.
type Bought struct {
	Fabric string       `json:"fabric"`
	Length ListedLength `json:"length"`
}

// ListedLength is a length in the dialect of every JSON, its text in the units of its size, which may be others than the layout's.
type ListedLength struct {
	NM   int64  `json:"nm"`
	Text string `json:"text"`
}

// ListedSize is a width and a height.
type ListedSize struct {
	Width  ListedLength `json:"width"`
	Height ListedLength `json:"height"`
}

// listed is a size by the words for its lengths.
func listed(width, height measure.NM, words func(measure.NM) string) ListedSize {
	return ListedSize{ListedLength{int64(width), words(width)}, ListedLength{int64(height), words(height)}}
}

// ColorwayListed is a colorway and the colors of its fabrics.
type ColorwayListed struct {
	Name    string        `json:"name"`
	Fabrics []FabricShown `json:"fabrics"`
}

// FabricShown is a fabric and its color.
type FabricShown struct {
	Fabric string `json:"fabric"` // as the layout has it
	Shows  string `json:"shows"`  // the fabric in its place
	Colour string `json:"colour"` // #rrggbb
}

// ListingData is the listing of a pattern of so many pages, for other programs.
func ListingData(p *Plans, pages int) *ListingForPrograms {
	l := &ListingForPrograms{Title: listingTitle(p.Top), Designer: strings.TrimSpace(p.Top.Credits.Designer), Pages: pages, Skill: SkillLevel(p), Skills: Skills(p)}
	sizes, names := p.Sized(), p.SizeNames()
	if len(sizes) == 0 {
		sizes, names = []*Plans{p}, []string{p.Top.Size}
	}
	for i, size := range sizes {
		l.Sizes = append(l.Sizes, sizeListed(size, names[i], true))
	}
	for i := range p.Top.Sizes {
		if s := &p.Top.Sizes[i]; s.Units != p.Top.Units {
			l.Sizes = append(l.Sizes, sizeListed(&Plans{Top: s.Top(p.sign), Cutting: p.Cutting, sign: p.sign}, s.Name, false))
		}
	}
	for i := range p.Top.Colorways {
		l.Colorways = append(l.Colorways, colorwayListed(p.Top, &p.Top.Colorways[i]))
	}
	return l
}

func sizeListed(p *Plans, name string, inPattern bool) SizeListed {
	c, t := newCuts(p), p.Top
	s := SizeListed{Name: name, Units: t.Units.String(), Top: listed(t.Outer.Width(), t.Outer.Height(), t.Units.Nearest),
		Block: ListedLength{int64(t.SideFinished), t.Units.Nearest(t.SideFinished)}, Across: t.Columns, Down: t.Rows, Pattern: inPattern}
	shopped := func(nm measure.NM) ListedLength { return ListedLength{int64(nm), t.Units.Shop(nm)} }
	for i := range c.Fabrics {
		s.Buy = append(s.Buy, Bought{c.Fabrics[i].Name, shopped(c.Fabrics[i].Purchase.Buy)})
	}
	if c.BackingBuy.Buy > 0 {
		s.Buy = append(s.Buy, Bought{chosenBacking, shopped(c.BackingBuy.Buy)})
	}
	if c.Batting != nil {
		size := listed(c.Batting.WidthCut, c.Batting.HeightCut, t.Units.AtLeast)
		s.Batting = &size
	}
	return s
}

func colorwayListed(t *quilt.Top, way *quilt.Colorway) ColorwayListed {
	c := ColorwayListed{Name: way.Name}
	for f := range t.Fabrics {
		c.Fabrics = append(c.Fabrics, FabricShown{t.Fabrics[f].Name, way.Fabrics[f].Name, way.Fabrics[f].Colour.Hex()})
	}
	return c
}
