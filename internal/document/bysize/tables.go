package bysize

import (
	"slices"
	"strings"

	"eighthturn/internal/document"
)

// mostColumns is how many sizes have a column each.
const mostColumns = 4

// none stands in the column of a size that has no such row.
const none = "none"

// tables merges a table: what its rows are of stands once, and a column that is by size is a column for each.
func (m *merger) tables(e entry[document.Block]) []document.Block {
	list := each(e, func(t document.Table) document.Table { return t })
	inner := m.of(e.places)
	t := list[0]
	t.Columns = unitedColumns(list)
	units := make([][]unit, len(list))
	for i := range list {
		units[i] = unitsOf(spread(list[i], t.Columns))
	}
	if t.Caption != nil {
		captions := each(e, func(t document.Table) document.Text { return t.Caption })
		t.Caption = m.led(e.places, inner.texts(captions)[0].text)
	}
	if t.More != nil {
		t.More = inner.together(each(e, func(t document.Table) document.Text { return t.More }))
	}
	whole := aligned(units, func(a, b *unit) int { return matchUnits(&t, *a, *b) })
	order, sized := rowByRow(whole), -1
	if at := slices.IndexFunc(t.Columns, func(c document.Column) bool { return c.BySize }); at >= 0 && len(list) > 1 && len(list) <= mostColumns && inner.differ(order, at) {
		sized = at
		order = rowByRow(inner.apart(whole, sized))
	}
	t.Rows = nil
	for _, r := range order {
		t.Rows = append(t.Rows, inner.row(r, sized, len(t.Columns)))
	}
	if sized >= 0 {
		t.Columns = inner.columns(t.Columns, sized)
	}
	if len(e.places) < m.all() && t.Caption == nil && sized < 0 {
		t.Caption = document.Bold(m.label(e.places) + ":")
	}
	return []document.Block{t}
}

// unitedColumns are the columns of all tables.
func unitedColumns(list []document.Table) (columns []document.Column) {
	of := make([][]document.Column, len(list))
	for i := range list {
		of[i] = list[i].Columns
	}
	for _, e := range aligned(of, func(a, b *document.Column) int { return score(a.Title == b.Title, false) }) {
		columns = append(columns, *e.first())
	}
	return columns
}

// spread is the rows of a table under the columns of all.
func spread(t document.Table, columns []document.Column) (rows []document.Row) {
	for _, r := range t.Rows {
		if len(r.Cells) == 1 && len(t.Columns) > 1 {
			rows = append(rows, r)
			continue
		}
		cells := make([]document.Cell, len(columns))
		at := 0
		for i, c := range columns {
			if at < len(r.Cells) && t.Columns[at].Title == c.Title {
				cells[i] = r.Cells[at]
				at++
			}
		}
		r.Cells = cells
		rows = append(rows, r)
	}
	return rows
}

// unit is a row with those that go on with it, whose first cells are empty.
type unit []document.Row

func unitsOf(rows []document.Row) (list []unit) {
	for i, r := range rows {
		if last := len(list) - 1; last >= 0 && len(r.Cells) > 1 && r.Cells[0].Text.String() == "" && len(r.Cells[0].Swatches) == 0 && i > 0 {
			list[last] = append(list[last], r)
			continue
		}
		list = append(list, unit{r})
	}
	return list
}

// matchUnits says how well two units match: those of several rows row by row.
func matchUnits(t *document.Table, a, b unit) int {
	if len(a) != len(b) {
		return apart
	}
	least := alike
	for i := range a {
		if least = min(least, matchRows(t, &a[i], &b[i])); least < alike && len(a) > 1 {
			return apart
		}
	}
	return least
}

// rowByRow is the rows of units.
func rowByRow(list []entry[unit]) (rows []entry[document.Row]) {
	for _, e := range list {
		for n := range *e.first() {
			r := entry[document.Row]{places: e.places}
			for _, u := range e.at {
				r.at = append(r.at, &(*u)[n])
			}
			rows = append(rows, r)
		}
	}
	return rows
}

// matchRows says how well two rows match: by their words, or by what names them.
func matchRows(t *document.Table, a, b *document.Row) int {
	if len(a.Cells) != len(b.Cells) {
		return apart
	}
	var names [2][]string
	same := true
	for i := range a.Cells {
		if len(a.Cells) == len(t.Columns) && t.Columns[i].Kind.Right() {
			continue
		}
		same = same && skeleton(a.Cells[i].Text) == skeleton(b.Cells[i].Text)
		for n, r := range []*document.Row{a, b} {
			names[n] = append(names[n], r.Cells[i].Text.String())
		}
	}
	naming := 2
	if t.Named {
		naming = 1
	}
	return score(same, len(names[0]) > naming && slices.Equal(names[0][:naming], names[1][:naming]))
}

// apart is units with a unit for each size where some sizes have none and numbers differ beside those in the column by size.
func (m *merger) apart(list []entry[unit], sized int) (out []entry[unit]) {
	for _, e := range list {
		if len(e.places) == m.all() || !slices.ContainsFunc(e.at, func(u *unit) bool { return !sameBut(*u, *e.first(), sized) }) {
			out = append(out, e)
			continue
		}
		for i, u := range e.at {
			out = append(out, entry[unit]{[]*unit{u}, e.places[i : i+1]})
		}
	}
	return out
}

// sameBut says whether two units say the same but for a column.
func sameBut(a, b unit, column int) bool {
	for n := range a {
		for i := range a[n].Cells {
			if i != column && a[n].Cells[i].Text.String() != b[n].Cells[i].Text.String() {
				return false
			}
		}
	}
	return true
}

// differ says whether a column is not the same in all sizes.
func (m *merger) differ(order []entry[document.Row], column int) bool {
	return slices.ContainsFunc(order, func(e entry[document.Row]) bool {
		return len(e.first().Cells) > column && (len(e.places) < m.all() || slices.ContainsFunc(e.at, func(r *document.Row) bool {
			return r.Cells[column].Text.String() != e.first().Cells[column].Text.String()
		}))
	})
}

// columns are the columns of a table with one for each size in the place of one.
func (m *merger) columns(list []document.Column, sized int) []document.Column {
	var each []document.Column
	for i := range m.sizes {
		c := list[sized]
		c.Title += ", " + m.Names[m.sizes[i]]
		c.Sum, c.Factors = false, nil
		each = append(each, c)
	}
	return slices.Concat(list[:sized], each, list[sized+1:])
}

// row merges a row; sized is the column that is one for each size, -1 for none.
func (m *merger) row(e entry[document.Row], sized, columns int) document.Row {
	r := *e.first()
	cells := r.Cells
	r.Cells, r.Figure = nil, nil
	for i := range cells {
		if i == sized && len(cells) == columns {
			for place := range m.sizes {
				c := document.Cell{}
				if cells[i].Text.String() != "" {
					c.Text = document.Plain(none)
				}
				if has := e.has(place); has != nil {
					c = has.Cells[i]
				}
				r.Cells = append(r.Cells, c)
			}
			continue
		}
		c := cells[i]
		texts := make([]document.Text, m.all())
		for n, place := range e.places {
			if texts[place] = e.at[n].Cells[i].Text; texts[place] == nil {
				texts[place] = document.Text{}
			}
		}
		if c.Text = m.together(texts); i == 0 && (sized < 0 || len(cells) != columns) {
			c.Text = m.led(e.places, c.Text)
		}
		if len(m.sizes) > 1 {
			c.Number = ""
		}
		r.Cells = append(r.Cells, c)
	}
	r.Under = m.under(e)
	return r
}

// under is what is said of a row beneath it.
func (m *merger) under(e entry[document.Row]) (list []document.Text) {
	of := make([][]document.Item, m.all())
	for n, place := range e.places {
		for _, text := range e.at[n].Under {
			of[place] = append(of[place], document.Item{Text: text})
		}
	}
	for _, it := range m.of(e.places).items(picked(of, e.places)) {
		list = append(list, it.Text)
	}
	return list
}

func picked[T any](list []T, places []int) (some []T) {
	for _, i := range places {
		some = append(some, list[i])
	}
	return some
}

// together is one text of all sizes, nil for a size without one: with their numbers behind one another, or what each says.
func (m *merger) together(list []document.Text) document.Text {
	said := m.texts(list)
	if len(said) == 0 {
		return nil
	}
	if len(said) == 1 {
		all := make([][]token, len(list))
		for place, text := range list {
			if text != nil {
				all[place] = tokens(text)
			}
		}
		return m.merged(all)
	}
	var text document.Text
	for _, w := range said {
		if strings.TrimSpace(w.text.String()) == "" {
			continue
		}
		if len(text) > 0 {
			text = append(text, document.Run{Text: "; "})
		}
		text = append(text, m.led(w.places, w.text)...)
	}
	return text
}
