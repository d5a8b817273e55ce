package layout

import (
	"slices"
	"strings"
)

// likes gives blocks that are like others their kind and the roles that they lack.
func (c *checker) likes() {
	byLabel := map[string]*BlockNode{}
	for _, n := range c.tree.Blocks {
		if _, ok := byLabel[n.Label.key()]; !ok {
			byLabel[n.Label.key()] = n
		}
	}
	state := map[*BlockNode]likeState{}
	for _, n := range c.tree.Blocks {
		c.like(n, byLabel, state)
	}
}

type likeState uint8

const (
	likeOpen likeState = iota
	likeBusy
	likeDone
)

func (c *checker) like(n *BlockNode, byLabel map[string]*BlockNode, state map[*BlockNode]likeState) {
	if n.Like == nil || state[n] != likeOpen {
		return
	}
	state[n] = likeBusy
	defer func() { state[n] = likeDone }()
	model, ok := byLabel[n.Like.key()]
	if !ok {
		if c.noLabel[n.Like.key()] || c.spoilt[n.Like.key()] || c.labelOfNamelessBlock(n.Like.Text) {
			n.Broken = true
			return
		}
		var known []string
		for _, b := range c.guessable(c.tree.Blocks) {
			if b != n {
				known = append(known, b.Label.Text)
			}
		}
		c.noLabel[n.Like.key()] = true
		c.fault(n.Like.Span, c.labelHint(n.Like.Text, known), "no block is called %s", quote(n.Like.Text))
		n.Broken = true
		return
	}
	if model == n || state[model] == likeBusy {
		c.fault(n.Like.Span, "give one of them its kind", "block %s is like %s, which comes back to itself", quote(n.Label.Text), quote(model.Label.Text))
		n.Broken = true
		return
	}
	c.like(model, byLabel, state)
	c.takeFrom(n, model)
}

// takeFrom completes a block from the one that it is like.
func (c *checker) takeFrom(n, model *BlockNode) {
	n.Kind, n.Broken = model.Kind, n.Broken || model.Broken
	if n.Kind == nil {
		return
	}
	own := n.Roles
	n.Roles = nil
	for _, r := range own {
		if r.Index = n.Kind.Role(strings.ToLower(r.Word.Text)); r.Index < 0 {
			c.wrongRole(n.Kind, r.Word)
			n.Broken = true
			continue
		}
		n.Roles = append(n.Roles, r)
	}
	for _, r := range model.Roles {
		if !slices.ContainsFunc(n.Roles, func(o RoleNode) bool { return o.Index == r.Index }) {
			n.Roles = append(n.Roles, r)
		}
	}
	if n.Line == nil && n.About == nil {
		n.Line, n.About = model.Line, model.About
	}
}
