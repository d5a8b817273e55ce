package bysize

import (
	"reflect"
	"strconv"
	"strings"

	"eighthturn/internal/document"
)

// key is the key of a figure, from its caption; "" for one without.
func (m *merger) key(caption document.Text) string {
	_, after, ok := strings.Cut(caption.String(), m.Figures.Defines)
	if !ok {
		return ""
	}
	key, _, _ := strings.Cut(after, m.Figures.Closes)
	return key
}

// caption is the caption of a figure that some sizes have; of one that is not every size's it names the sizes.
func (m *merger) caption(places []int, first document.Text, list []document.Text) document.Text {
	if first == nil {
		return nil
	}
	said := m.of(places).texts(list)
	text := said[0].text
	if len(places) == m.all() || m.key(first) == "" {
		return text
	}
	return append(append(document.Text{text[0]}, document.Text{{Text: " " + m.label(places) + ".", Bold: true}}...), text[1:]...)
}

// shown is chapters of all sizes with their figures settled: one that is alike in all sizes is every size's, one that differs is
// shown in each under a key of its own, or in the first alone.
func (m *merger) shown(list [][]document.Section) [][]document.Section {
	figures := make([]map[string]document.Block, len(list))
	for i := range list {
		figures[i] = map[string]document.Block{}
		for _, s := range list[i] {
			m.gather(s.Blocks, figures[i])
		}
	}
	out := make([][]document.Section, len(list))
	for i := range list {
		renamed, left := map[string]string{}, map[string]bool{}
		for key, block := range figures[i] {
			switch first, has := figures[0][key]; {
			case i == 0 || has && sameFigure(first, block):
			case has && !m.Every(key):
				left[key] = true
			default:
				renamed[key] = key + " size " + strconv.Itoa(i)
				for k := 1; k < i; k++ { // as in a size before it
					if other, has := figures[k][key]; has && sameFigure(other, block) {
						renamed[key] = key + " size " + strconv.Itoa(k)
						break
					}
				}
			}
		}
		for _, s := range list[i] {
			s.Blocks = m.settled(s.Blocks, renamed, left)
			out[i] = append(out[i], s)
		}
	}
	return out
}

// gather gathers the figures with keys among blocks.
func (m *merger) gather(list []document.Block, figures map[string]document.Block) {
	for _, b := range list {
		switch v := b.(type) {
		case document.Figure:
			if key := m.key(v.Caption); key != "" {
				figures[key] = v
			}
		case document.Picture:
			if key := m.key(v.Caption); key != "" {
				figures[key] = v
			}
		case document.Together:
			m.gather(v.Blocks, figures)
		case document.Box:
			m.gather(v.Blocks, figures)
		case document.List:
			for _, it := range v.Items {
				m.gather(it.Blocks, figures)
			}
		}
	}
}

// sameFigure says whether two illustrations show the same.
func sameFigure(a, b document.Block) bool {
	switch v := a.(type) {
	case document.Figure:
		w, ok := b.(document.Figure)
		return ok && reflect.DeepEqual(v.Of, w.Of)
	case document.Picture:
		w, ok := b.(document.Picture)
		return ok && reflect.DeepEqual(v.Of, w.Of)
	}
	return false
}

// settled is blocks with figures renamed, where they stand and where texts refer to them, and with others left out.
func (m *merger) settled(list []document.Block, renamed map[string]string, left map[string]bool) (out []document.Block) {
	var pairs []string
	for key, name := range renamed {
		for _, sign := range []string{m.Figures.Opens, m.Figures.Defines} {
			pairs = append(pairs, sign+key+m.Figures.Closes, sign+name+m.Figures.Closes)
		}
	}
	r := strings.NewReplacer(pairs...)
	return m.without(document.Rewritten(list, r.Replace), left)
}

// without is blocks without some figures.
func (m *merger) without(list []document.Block, left map[string]bool) (out []document.Block) {
	for _, b := range list {
		switch v := b.(type) {
		case document.Figure:
			if left[m.key(v.Caption)] {
				continue
			}
		case document.Picture:
			if left[m.key(v.Caption)] {
				continue
			}
		case document.Together:
			v.Blocks = m.without(v.Blocks, left)
			b = v
		case document.Box:
			v.Blocks = m.without(v.Blocks, left)
			b = v
		}
		out = append(out, b)
	}
	return out
}
