package report

import (
	"eighthturn/internal/diagram"
	"eighthturn/internal/plan/cutting"
	"eighthturn/palettes"
)

// Pictures of cloth in maps: pixels on their longer side at the most, and how many parts of white in a hundred they are mixed
// with so that lines and words are read on them, in pieces and in cloth that is not used.
const (
	mapPixels   = 400
	pieceWhite  = 40
	unusedWhite = 70
)

// clothPrint is what pieces of a fabric show in its map, and what cloth that is not used shows.
type clothPrint struct{ pieces, unused *diagram.Print }

// clothPrint is the pictures of a fabric's print, nothing where it shows a plain color.
func (c *cuts) clothPrint(f *cutting.Fabric) clothPrint {
	cloth := c.print(f)
	if cloth == nil {
		return clothPrint{}
	}
	picture := cloth.Picture()
	if picture == nil {
		return clothPrint{}
	}
	small := palettes.Coarser(picture, mapPixels)
	shows := func(white int) *diagram.Print { return diagram.NewPrint(small, cloth.Across, cloth.Down, white) }
	return clothPrint{shows(pieceWhite), shows(unusedWhite)}
}
