package document

// Rewritten is blocks with every text of theirs replaced, in the order in which they are read.
func Rewritten(list []Block, f func(string) string) []Block {
	out := make([]Block, len(list))
	for i, b := range list {
		out[i] = rewrittenBlock(b, f)
	}
	return out
}

func rewrittenBlock(b Block, f func(string) string) Block {
	switch v := b.(type) {
	case Heading:
		v.Text = f(v.Text)
		return v
	case Paragraph:
		v.Text = rewrittenText(v.Text, f)
		return v
	case List:
		items := make([]Item, len(v.Items))
		for i, it := range v.Items {
			items[i] = Item{Text: rewrittenText(it.Text, f), Blocks: Rewritten(it.Blocks, f)}
		}
		v.Items = items
		return v
	case Table:
		return rewrittenTable(v, f)
	case Figure:
		v.Caption = rewrittenText(v.Caption, f)
		return v
	case Picture:
		v.Caption = rewrittenText(v.Caption, f)
		return v
	case Gallery:
		list := make([]Illustration, len(v.Pictures))
		for i, p := range v.Pictures {
			list[i] = rewrittenBlock(p, f).(Illustration)
		}
		v.Pictures = list
		return v
	case Box:
		v.Blocks = Rewritten(v.Blocks, f)
		return v
	case Together:
		v.Blocks = Rewritten(v.Blocks, f)
		return v
	}
	return b
}

func rewrittenTable(t Table, f func(string) string) Table {
	t.Caption = rewrittenText(t.Caption, f)
	columns := make([]Column, len(t.Columns))
	for i, c := range t.Columns {
		c.Title = f(c.Title)
		columns[i] = c
	}
	rows := make([]Row, len(t.Rows))
	for i, r := range t.Rows {
		cells := make([]Cell, len(r.Cells))
		for n, c := range r.Cells {
			c.Text = rewrittenText(c.Text, f)
			cells[n] = c
		}
		r.Cells = cells
		rows[i] = r
	}
	t.Columns, t.Rows = columns, rows
	return t
}

func rewrittenText(t Text, f func(string) string) Text {
	if t == nil {
		return nil
	}
	out := make(Text, len(t))
	for i, r := range t {
		r.Text = f(r.Text)
		out[i] = r
	}
	return out
}
