package main

import (
	"github.com/spf13/cobra"

	"eighthturn/internal/plan/contrast"
	"eighthturn/internal/quilt"
)

// tryOption tries other colors.
const tryOption = "try"

// tries are the other colors that fabrics are tried in, as written.
type tries []string

// flags adds the option to a command.
func (t *tries) flags(cmd *cobra.Command) {
	cmd.Flags().StringArrayVar((*[]string)(t), tryOption, nil, "try another color, `FABRIC=COLOR`; the layout is not changed; may be repeated")
}

// on finds the fabrics of a top and the colors.
func (t tries) on(cmd *cobra.Command, top *quilt.Top) ([]contrast.Try, error) {
	var list []contrast.Try
	for _, text := range t {
		try, err := contrast.ParseTry(top, text)
		if err != nil {
			return nil, misuse(cmd.CommandPath(), err.Error(), "for example --"+tryOption+" "+top.Fabrics[0].Name+"=#3a4f66")
		}
		list = append(list, try)
	}
	return list, nil
}
