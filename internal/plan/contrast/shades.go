package contrast

import (
	"math"

	"eighthturn/internal/quilt"
	"eighthturn/internal/render/pixels"
	"eighthturn/palettes"
)

// shade is a fabric, or what pieces of like light show of one that has a print.
type shade struct {
	fabric int32
	cloth  *quilt.Cloth // nil for a plain color
	light  float64      // CIE L* of the part of the print; of a plain color its fabric says it
}

// lightStep is by how much lights of one print differ that are told apart, CIE L*: less than anybody sees. Where a top then has more shades
// than can be told apart, a print has but the one that it has from afar.
const lightStep = 0.5

// shades puts a top's faces together by their fabrics, those of prints by how light the part is that they show.
func (s *study) shades() ([]shade, pixels.Shades) {
	type key struct{ fabric, step int32 }
	list, of, known := []shade{}, pixels.Shades{Of: make([]uint16, len(s.Faces))}, map[key]uint16{}
	for i := range s.Faces {
		f := s.Faces[i].Fabric
		one, k := shade{fabric: f}, key{f, -1}
		if cloth := s.Fabrics[f].Cloth; cloth != nil && s.own != nil {
			k.step = int32(math.Round(s.own[i] / lightStep))
			one.cloth, one.light = cloth, float64(k.step)*lightStep
		}
		n, ok := known[k]
		if !ok {
			if len(list) == math.MaxUint16 {
				return s.shadesFromAfar()
			}
			n = uint16(len(list))
			known[k], list = n, append(list, one)
		}
		of.Of[i] = n
	}
	of.Count = len(list)
	return list, of
}

// shadesFromAfar puts faces together by their fabrics alone.
func (s *study) shadesFromAfar() ([]shade, pixels.Shades) {
	list, of := make([]shade, len(s.Fabrics)), pixels.Shades{Of: make([]uint16, len(s.Faces)), Count: len(s.Fabrics)}
	for f := range list {
		list[f].fabric = int32(f)
	}
	for i := range s.Faces {
		of.Of[i] = uint16(s.Faces[i].Fabric)
	}
	return list, of
}

// luminance is that of a shade in the colors that the fabrics have: a print that another color is tried for has that.
func (s *study) luminance(of *shade) float64 {
	if of.cloth != nil && of.cloth == s.Fabrics[of.fabric].Cloth {
		return palettes.LuminanceOf(of.light)
	}
	return s.Fabrics[of.fabric].Colour.Luminance()
}

// otherPrints says whether a study has prints that the canvas knows nothing of.
func (c *canvas) otherPrints(s *study) bool {
	for i := range c.shades {
		if cloth := s.Fabrics[c.shades[i].fabric].Cloth; cloth != nil && cloth != c.shades[i].cloth {
			return true
		}
	}
	return false
}
