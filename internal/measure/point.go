package measure

// Point is a place in the plane, y downwards; whoever has it says what of.
type Point struct {
	X NM `json:"x"`
	Y NM `json:"y"`
}

// Add is p moved by q.
func (p Point) Add(q Point) Point { return Point{p.X + q.X, p.Y + q.Y} }
