package preview

import (
	"fmt"
	"image"
	"slices"
	"sync"

	"eighthturn/internal/measure"
	"eighthturn/internal/quilt"
	"eighthturn/internal/stop"
)

// cutPrints keep what was made of prints for pages that cut pieces from them: most saves leave prints as they are.
type cutPrints struct {
	lock sync.Mutex
	list []*cutPrint // the newest last
}

// cutPrint is what was made of a print, each part when it is first asked for.
type cutPrint struct {
	of      printKey
	png     stop.Once[printed]
	centers stop.Once[*centers]
}

// printKey is the same for prints that are the same, with wedges of one height.
type printKey struct {
	fabric       string
	tile         *image.RGBA
	shown        image.Rectangle // of the tile, in one repeat
	repeats      bool
	stripes      string
	across, down measure.NM
	height       measure.NM
}

// mostCutPrints is how many prints are kept.
const mostCutPrints = 8

// print is what is kept of a print of a top.
func (c *cutPrints) print(t *quilt.Top, fabric int) *cutPrint {
	cloth := t.Fabrics[fabric].Cloth
	key := printKey{fabric: t.Fabrics[fabric].Name, tile: cloth.Tile, repeats: cloth.Repeats, across: cloth.Across, down: cloth.Down, height: t.WedgeFinished(fabric)}
	switch {
	case cloth.Stripes == nil && cloth.Repeats && cloth.Tile != nil:
		key.shown = cloth.Picture().Bounds()
	case cloth.Stripes != nil:
		key.stripes = fmt.Sprint(cloth.Stripes.Parts(), cloth.Stripes.Crosswise)
	}
	c.lock.Lock()
	defer c.lock.Unlock()
	if n := slices.IndexFunc(c.list, func(p *cutPrint) bool { return p.of == key }); n >= 0 {
		return c.list[n]
	}
	c.list = append(c.list, &cutPrint{of: key})
	c.list = c.list[max(0, len(c.list)-mostCutPrints):]
	return c.list[len(c.list)-1]
}
