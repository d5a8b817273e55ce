package layout

import (
	"slices"
	"strings"
)

// likes gives blocks that are like others their kind and the roles that they lack.
func (c *checker) likes() {
	state := map[*blockNode]likeState{}
	for _, n := range c.tree.Blocks {
		c.like(n, state)
	}
}

type likeState uint8

const (
	likeOpen likeState = iota
	likeBusy
	likeDone
)

func (c *checker) like(n *blockNode, state map[*blockNode]likeState) {
	if n.Like == nil || state[n] != likeOpen {
		return
	}
	state[n] = likeBusy
	defer func() { state[n] = likeDone }()
	model := c.model(n)
	switch {
	case model == nil:
		c.noModel(n)
	case model == n || state[model] == likeBusy:
		c.fault(n.Like.Span, "give one of them its kind", "block %s is like %s, which leads back to itself", quote(n.Label.Text), quote(model.Label.Text))
		n.poisoned = true
	default:
		c.like(model, state)
		c.takeFrom(n, model)
	}
}

// noModel poisons a block that is like one that is not there, and reports that one, once.
func (c *checker) noModel(n *blockNode) {
	n.poisoned = true
	if _, known := c.labels.find(*n.Like); known || c.labelOfUnnamed(*n.Like) {
		return
	}
	var others []string
	for _, b := range c.guessable(c.tree.Blocks) {
		if b != n {
			others = append(others, b.Label.Text)
		}
	}
	c.labels.poison(n.Like.key())
	c.fault(n.Like.Span, "", "no block is called %s", quote(n.Like.Text)).suggest(c.labelHint(n.Like.Text, others))
}

// takeFrom completes a block from the one that it is like.
func (c *checker) takeFrom(n, model *blockNode) {
	n.Kind, n.poisoned = model.Kind, n.poisoned || model.poisoned
	if n.Kind == nil {
		return
	}
	own := n.Roles
	n.Roles = nil
	for _, r := range own {
		if r.Index = n.Kind.Role(strings.ToLower(r.Word.Text)); r.Index < 0 {
			c.wrongRole(n.Kind, r.Word, own)
			n.poisoned = true
			continue
		}
		n.Roles = append(n.Roles, r)
	}
	for _, r := range model.Roles {
		if !slices.ContainsFunc(n.Roles, func(o roleNode) bool { return o.Index == r.Index }) {
			n.Roles = append(n.Roles, r)
		}
	}
	if n.Line == nil && n.About == nil {
		n.Line, n.About = model.Line, model.About
	}
}
