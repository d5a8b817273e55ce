package main

import (
	"math"

	"eighthturn/internal/blocks"
	"eighthturn/internal/report"
	"eighthturn/layout"
	"eighthturn/palettes"
)

// Words as JSON. The names do not change; a change of what they mean changes formatWords.
const formatWords = 1

type jsonWords struct {
	Format     int             `json:"format"`
	Kinds      []jsonKind      `json:"kinds"`
	Statements []jsonStatement `json:"statements"`
	Palettes   []jsonPalette   `json:"palettes"`
}

type jsonKind struct {
	Name    string     `json:"name"`
	Summary string     `json:"summary"`
	Drawing []string   `json:"drawing"`
	Turning string     `json:"turning"`
	Roles   []jsonRole `json:"roles"`
}

type jsonRole struct {
	Name      string `json:"name"`
	Letter    string `json:"letter"`
	Summary   string `json:"summary"`
	Counts    []int  `json:"counts"` // empty for one or more
	Order     string `json:"order"`
	StripSets bool   `json:"strip_sets"`
	Optional  bool   `json:"optional"`
}

type jsonStatement struct {
	Word    string `json:"word"`
	Form    string `json:"form"`
	Summary string `json:"summary"`
	Once    bool   `json:"once"`
}

type jsonPalette struct {
	Name    string       `json:"name"`
	About   string       `json:"about"`
	Fabrics []jsonSwatch `json:"fabrics"` // the darkest first
}

type jsonSwatch struct {
	Name      string  `json:"name"`
	Colour    string  `json:"colour"`
	Lightness float64 `json:"lightness"`
}

// json is the words for other programs. L* is rounded to a hundredth, so that every machine gives the same bytes.
func (v vocabulary) json() jsonWords {
	return jsonWords{
		Format: formatWords,
		Kinds: mapped(v.Kinds, func(k *blocks.Kind) jsonKind {
			return jsonKind{k.Name, k.Summary, k.Picture(), report.TurningText(k.Turning), mapped(k.Roles, func(r blocks.Role) jsonRole {
				return jsonRole{r.Name, r.Letter, r.Summary, append([]int{}, r.Counts...), r.Order, r.Banded, r.Outer}
			})}
		}),
		Statements: mapped(v.Statements, func(s layout.Statement) jsonStatement { return jsonStatement{s.Word, s.Form, s.Summary, s.Once} }),
		Palettes: mapped(v.Palettes, func(p palettes.Palette) jsonPalette {
			return jsonPalette{p.Name, p.About, mapped(p.Fabrics, func(s palettes.Swatch) jsonSwatch {
				return jsonSwatch{s.Name, s.Colour.Hex(), math.Round(s.Colour.Lightness()*100) / 100}
			})}
		}),
	}
}
