package main

import (
	"fmt"
	"go/ast"
	"go/constant"
	"go/token"
	"go/types"
	"path/filepath"
	"strings"
)

// mutant is one breakage.
type mutant struct {
	id    int
	place string // file:line
	where string // the function that it is in, "var" for none
	line  string // the line that is broken, with marks round what is broken in it
	is    string // what becomes of that
	turn  int    // of those that are alike up to here in one file, which one, from 1
}

// String is the mutant as it is listed.
func (m mutant) String() string { return m.place + ": " + m.name() }

// key is what tells a mutant from all others of its package when lines have moved.
func (m mutant) key() string {
	file, _, _ := strings.Cut(filepath.Base(m.place), ":")
	return file + " " + m.name()
}

// name is the mutant without its file.
func (m mutant) name() string {
	name := m.where + ": " + m.line + " -> " + m.is
	if m.turn > 1 {
		name += fmt.Sprintf(" (%d)", m.turn)
	}
	return name
}

// breaker finds the breakages of a file.
type breaker struct {
	info     *types.Info
	home     *types.Package
	fset     *token.FileSet
	text     string
	name     string
	imported map[string]bool
	next     int
	where    string
	named    map[string]int // how many breakages have a name so far
	mutants  []mutant
	changes  []change
}

// file breaks what is worked out when the program runs: the functions, and the variables of the package.
func (b *breaker) file(f *ast.File) {
	for _, d := range f.Decls {
		switch d := d.(type) {
		case *ast.FuncDecl:
			if b.where = d.Name.Name; d.Recv != nil {
				b.where = b.of(d.Recv.List[0].Type) + "." + d.Name.Name
			}
			if d.Body != nil && d.Type.TypeParams == nil {
				b.walk(d.Body)
			}
		case *ast.GenDecl:
			if d.Tok == token.VAR {
				b.where = "var"
				b.walk(d)
			}
		}
	}
}

// walk breaks a node and what is in it.
func (b *breaker) walk(n ast.Node) {
	ast.Inspect(n, func(n ast.Node) bool {
		switch n := n.(type) {
		case *ast.BlockStmt:
			b.statements(n.List)
		case *ast.CaseClause:
			b.statements(n.Body)
		case *ast.CommClause:
			b.statements(n.Body)
		case *ast.IfStmt:
			b.condition(n.Cond)
		case *ast.ReturnStmt:
			if b.fails(n) {
				for _, result := range n.Results {
					if b.info.Types[result].Value == nil {
						b.walk(result)
					}
				}
				return false
			}
		case *ast.ForStmt:
			if n.Cond != nil {
				b.condition(n.Cond)
			}
		case *ast.GenDecl:
			return n.Tok == token.VAR
		case *ast.ArrayType, *ast.FuncType, *ast.StructType, *ast.ImportSpec, *ast.FieldList:
			return false
		case *ast.KeyValueExpr:
			b.walk(n.Value) // the key of an array is no expression that runs
			return false
		case ast.Expr:
			return b.expression(n)
		}
		return true
	})
}

// statements leaves each of some statements out.
func (b *breaker) statements(list []ast.Stmt) {
	for _, s := range list {
		switch s := s.(type) {
		case *ast.ExprStmt:
			if call, ok := s.X.(*ast.CallExpr); ok && b.of(call.Fun) == "panic" {
				continue // what follows may need it
			}
		case *ast.AssignStmt:
			if s.Tok == token.DEFINE {
				continue
			}
		case *ast.IncDecStmt, *ast.SendStmt:
		case *ast.BranchStmt:
			if s.Tok != token.CONTINUE {
				continue
			}
		default:
			continue
		}
		id := b.add(s, "left out")
		b.around(s, fmt.Sprintf("if !mutantOn(%d) { ", id), " }")
	}
}

// fails says whether what is returned is an error, or false, beside something that then means nothing.
func (b *breaker) fails(s *ast.ReturnStmt) bool {
	if len(s.Results) < 2 {
		return false
	}
	last := s.Results[len(s.Results)-1]
	tv := b.info.Types[last]
	if tv.Value != nil {
		return tv.Value.Kind() == constant.Bool && !constant.BoolVal(tv.Value)
	}
	if call, ok := last.(*ast.CallExpr); ok { // most may give nil
		name := b.of(call.Fun)
		return strings.HasPrefix(name, "fmt.") || strings.HasPrefix(name, "errors.") || strings.HasSuffix(name, ".fault")
	}
	return !tv.IsNil() && types.AssignableTo(tv.Type, types.Universe.Lookup("error").Type())
}

// condition turns a condition round that is no comparison; comparisons are turned round wherever they stand.
func (b *breaker) condition(e ast.Expr) {
	switch inner := ast.Unparen(e).(type) {
	case *ast.BinaryExpr:
		if inner.Op == token.LAND || inner.Op == token.LOR {
			b.condition(inner.X)
			b.condition(inner.Y)
		}
		return
	case *ast.UnaryExpr:
		if inner.Op == token.NOT {
			b.condition(inner.X)
			return
		}
	}
	if b.is(e, types.Typ[types.Bool]) {
		b.not(e)
	}
}

// not turns a truth round.
func (b *breaker) not(e ast.Expr) {
	id := b.add(e, "turned round")
	b.around(e, fmt.Sprintf("(mutantOn(%d) != (", id), "))")
}

// is says whether an expression, which is no constant, has just this type or one without a name.
func (b *breaker) is(e ast.Expr, want types.Type) bool {
	tv := b.info.Types[e]
	if tv.Type == nil || tv.Value != nil {
		return false
	}
	basic, ok := tv.Type.(*types.Basic)
	return ok && (basic == want || basic.Kind() == types.UntypedBool)
}

// expression breaks an expression itself; it says whether what is in it may be broken too.
func (b *breaker) expression(e ast.Expr) bool {
	tv := b.info.Types[e]
	if tv.IsType() {
		return false
	}
	if tv.Value != nil {
		b.constant(e, tv)
		return false
	}
	binary, ok := e.(*ast.BinaryExpr)
	if !ok {
		return true
	}
	switch binary.Op {
	case token.LSS, token.LEQ, token.GTR, token.GEQ:
		if b.is(e, types.Typ[types.Bool]) {
			b.bound(binary)
			b.not(e)
		}
	case token.EQL, token.NEQ:
		if b.is(e, types.Typ[types.Bool]) {
			b.not(e)
		}
	case token.ADD, token.SUB:
		b.sign(binary)
	}
	return true
}

// bound takes the bound of a comparison in, or leaves it out.
func (b *breaker) bound(e *ast.BinaryExpr) {
	other := map[token.Token]string{token.LSS: "<=", token.LEQ: "<", token.GTR: ">=", token.GEQ: ">"}[e.Op]
	x, y := b.of(e.X), b.of(e.Y)
	id := b.add(e, x+" "+other+" "+y)
	b.around(e, "(", fmt.Sprintf(" != (mutantOn(%d) && (%s) == (%s)))", id, x, y))
}

// sign swaps plus and minus.
func (b *breaker) sign(e *ast.BinaryExpr) {
	basic, ok := b.info.Types[e].Type.Underlying().(*types.Basic)
	if !ok || basic.Info()&(types.IsInteger|types.IsFloat) == 0 {
		return
	}
	name, ok := b.typeName(b.info.Types[e].Type)
	if !ok {
		return
	}
	other := "+"
	if e.Op == token.ADD {
		other = "-"
	}
	id := b.add(e, b.of(e.X)+" "+other+" "+b.of(e.Y))
	b.around(e.Y, fmt.Sprintf("mutantSign[%s](%d, ", name, id), ")")
}

// constant makes a number one more, or a long one an eighth; a fraction becomes a quarter more.
func (b *breaker) constant(e ast.Expr, tv types.TypeAndValue) {
	switch ast.Unparen(e).(type) {
	case *ast.Ident, *ast.SelectorExpr:
		return // a number that has a name is broken where the name is given
	}
	basic, ok := tv.Type.Underlying().(*types.Basic)
	if !ok || basic.Info()&(types.IsInteger|types.IsFloat) == 0 || basic.Info()&types.IsUntyped != 0 {
		return
	}
	if tv.Value.Kind() != constant.Int && tv.Value.Kind() != constant.Float {
		return
	}
	name, ok := b.typeName(tv.Type)
	if !ok {
		return
	}
	more := "1"
	value, _ := constant.Float64Val(tv.Value)
	switch {
	case basic.Info()&types.IsFloat != 0 && value != 0:
		more = fmt.Sprint(value / 4)
	case value >= 1000 || value <= -1000:
		more = fmt.Sprintf("%.0f", value/8)
	}
	id := b.add(e, b.of(e)+" + "+more)
	b.around(e, fmt.Sprintf("mutantMore[%s](%d, ", name, id), ", "+more+")")
}

// typeName is how the file may write a type; false if it cannot.
func (b *breaker) typeName(t types.Type) (string, bool) {
	ok := true
	name := types.TypeString(t, func(p *types.Package) string {
		if p == b.home {
			return ""
		}
		ok = ok && b.imported[p.Path()]
		return p.Name()
	})
	return name, ok && !strings.ContainsAny(name, " {[")
}

// of is a node's text.
func (b *breaker) of(n ast.Node) string {
	return b.text[b.fset.Position(n.Pos()).Offset:b.fset.Position(n.End()).Offset]
}

// add notes a breakage.
func (b *breaker) add(n ast.Node, is string) int {
	p := b.fset.Position(n.Pos())
	m := mutant{id: b.next, place: fmt.Sprintf("%s:%d", b.name, p.Line), where: b.where, line: b.marked(n), is: oneLine(is)}
	b.named[m.name()]++
	m.turn = b.named[m.name()]
	b.mutants = append(b.mutants, m)
	b.next++
	return m.id
}

// marked is the line that a node stands in, without a comment, and with marks round the node; of a node that goes on behind its
// line, the line alone.
func (b *breaker) marked(n ast.Node) string {
	from, to := b.fset.Position(n.Pos()).Offset, b.fset.Position(n.End()).Offset
	start := strings.LastIndex(b.text[:from], "\n") + 1
	end := from + strings.Index(b.text[from:]+"\n", "\n")
	if end < to {
		return oneLine(b.text[start:from]+"«"+b.text[from:end]) + " …»"
	}
	behind, _, _ := strings.Cut(b.text[to:end], " //")
	return oneLine(b.text[start:from] + "«" + b.text[from:to] + "»" + behind)
}

// around puts text before and behind a node.
func (b *breaker) around(n ast.Node, before, behind string) {
	from, to := b.fset.Position(n.Pos()).Offset, b.fset.Position(n.End()).Offset
	b.changes = append(b.changes, change{at: from, extent: to - from, text: before}, change{at: to, ends: true, extent: to - from, text: behind})
}

// oneLine is text on one line.
func oneLine(text string) string { return strings.Join(strings.Fields(text), " ") }
