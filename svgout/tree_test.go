package svgout

import (
	"bytes"
	"encoding/xml"
	"fmt"
	"io"
	"iter"
	"strings"
)

// node is an element of a picture as an XML parser reads it.
type node struct {
	name     string // with its prefix: inkscape:label
	attrs    []xml.Attr
	text     string
	children []*node
}

// attr is an attribute by its name with prefix, "" where it is missing.
func (n *node) attr(name string) string {
	for _, a := range n.attrs {
		if qualified(a.Name) == name {
			return a.Value
		}
	}
	return ""
}

// all is the node and everything below it.
func (n *node) all() iter.Seq[*node] {
	return func(yield func(*node) bool) { n.walk(yield) }
}

func (n *node) walk(yield func(*node) bool) bool {
	if !yield(n) {
		return false
	}
	for _, c := range n.children {
		if !c.walk(yield) {
			return false
		}
	}
	return true
}

// layer is the layer with an id.
func (n *node) layer(id string) *node {
	for c := range n.all() {
		if c.name == "g" && c.attr("id") == id {
			return c
		}
	}
	return nil
}

// lastRead is the picture that was read last, which many laws ask for one after the other.
var lastRead struct {
	svg  []byte
	root *node
}

// parse reads a picture strictly. What it gives is only read.
func parse(svg []byte) (*node, error) {
	if lastRead.root != nil && bytes.Equal(svg, lastRead.svg) {
		return lastRead.root, nil
	}
	root, err := parsed(svg)
	if err == nil {
		lastRead.svg, lastRead.root = bytes.Clone(svg), root
	}
	return root, err
}

func parsed(svg []byte) (*node, error) {
	d := xml.NewDecoder(bytes.NewReader(svg))
	root := &node{}
	open := []*node{root}
	for {
		token, err := d.RawToken()
		if err == io.EOF {
			break
		}
		if err != nil {
			return nil, err
		}
		top := open[len(open)-1]
		switch token := token.(type) {
		case xml.StartElement:
			n := &node{name: qualified(token.Name), attrs: token.Attr}
			top.children = append(top.children, n)
			open = append(open, n)
		case xml.EndElement:
			if len(open) == 1 || top.name != qualified(token.Name) {
				return nil, fmt.Errorf("</%s> ends <%s>", qualified(token.Name), top.name)
			}
			open = open[:len(open)-1]
		case xml.CharData:
			top.text += string(token)
		}
	}
	if len(open) != 1 || len(root.children) != 1 || strings.TrimSpace(root.text) != "" {
		return nil, fmt.Errorf("%d elements left open, %d roots, text %q outside them", len(open)-1, len(root.children), root.text)
	}
	return root.children[0], nil
}

func qualified(n xml.Name) string {
	if n.Space == "" {
		return n.Local
	}
	return n.Space + ":" + n.Local
}

// outlines are the closed outlines of path data, a string each.
func outlines(data string) []string {
	return strings.SplitAfter(strings.TrimSuffix(data, "Z"), "Z")
}
