package document

// Print is the document as paper has it: sections within chapters as headings, figures drawn, what stands under a row beside
// its first words, a row's figure and what a table leaves out behind the table.
func (d Document) Print() Document {
	list := make([]Section, len(d.Sections))
	for i, s := range d.Sections {
		s.Blocks = printed(s.Blocks, 1)
		list[i] = s
	}
	d.Sections = list
	return d
}

// printed are blocks for paper; sections among them have headings of a level.
func printed(list []Block, level int) []Block {
	var all []Block
	for _, b := range list {
		switch v := b.(type) {
		case Section:
			if v.Title != "" {
				all = append(all, Heading{Level: level, Text: v.Title})
			}
			all = append(all, printed(v.Blocks, level+1)...)
		case Table:
			all = append(all, v.printed()...)
		case Figure:
			all = append(all, v.drawn())
		case Gallery:
			v.Pictures = append([]Illustration(nil), v.Pictures...)
			for i, one := range v.Pictures {
				if f, ok := one.(Figure); ok {
					v.Pictures[i] = f.drawn()
				}
			}
			all = append(all, v)
		case List:
			v.Items = append([]Item(nil), v.Items...)
			for i := range v.Items {
				v.Items[i].Blocks = printed(v.Items[i].Blocks, level)
			}
			all = append(all, v)
		case Box:
			v.Blocks = printed(v.Blocks, level)
			all = append(all, v)
		case Together:
			v.Blocks = printed(v.Blocks, level)
			all = append(all, v)
		default:
			all = append(all, b)
		}
	}
	return all
}

// drawn is the figure with its diagram in place.
func (f Figure) drawn() Figure {
	f.Of, f.Draw = *f.Diagram(), nil
	return f
}

func (t Table) printed() []Block {
	rows := append([]Row(nil), t.Rows...)
	var behind []Block
	for i := range rows {
		r := &rows[i]
		if len(r.Under) > 0 && len(r.Cells) > 0 {
			r.Cells = append([]Cell(nil), r.Cells...)
			first := &r.Cells[0]
			first.Text = append(Text(nil), first.Text...)
			for _, under := range r.Under {
				first.Text = append(first.Text, Run{Text: "; " + under.String(), Small: true})
			}
		}
		if r.Figure != nil {
			behind = append(behind, r.Figure.drawn())
		}
	}
	if len(t.More) > 0 {
		behind = append([]Block{Paragraph{Text: t.More}}, behind...)
	}
	t.Rows, t.More = rows, nil
	return append([]Block{t}, behind...)
}
