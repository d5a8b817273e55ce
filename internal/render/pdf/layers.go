package pdf

import (
	"strconv"

	"github.com/carlos7ags/folio/core"
)

// layer is what viewers and drawing programs show or hide as one (ISO 32000-1, 8.11).
type layer struct {
	label, resource string
	group           *core.PdfIndirectReference
}

// Layer puts what is drawn from here on into the layer of a name, which is made when it is first named; "" is for none. It may
// stand in several stretches. Elements end where layers do.
func (f *File) Layer(label string) {
	if label == f.layer {
		return
	}
	f.outside()
	if f.layer != "" {
		f.Operator("EMC")
	}
	f.layer = label
	if label == "" {
		return
	}
	l, known := f.layers[label]
	if !known {
		group := f.objects.add(dictionary("Type", name("OCG"), "Name", core.NewPdfTextString(label)))
		l = layer{label, "Layer" + strconv.Itoa(len(f.layers)+1), group}
		f.layers[label] = l
		f.layersInOrder = append(f.layersInOrder, group)
		f.resources.layers.Set(l.resource, group)
	}
	f.Operator("/OC /" + l.resource + " BDC")
}

// layersOf are the layers as viewers list them, all of them shown.
func (f *File) layersOf() *core.PdfDictionary {
	all, order := core.NewPdfArray(), core.NewPdfArray()
	for _, group := range f.layersInOrder {
		all.Add(group)
		order.Add(group)
	}
	return dictionary("OCGs", all, "D", dictionary("Name", core.NewPdfTextString("Layers"), "Order", order))
}
