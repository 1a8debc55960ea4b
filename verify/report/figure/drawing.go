// Package figure draws: the model from behind and in plan, a hinge in section, a linkage
// to scale. What it makes is a list of lines, shapes and words in millimetres of paper, a
// [Drawing], which [SVG] writes for pages and package pdf puts on paper, so that both show
// the same.
//
// It knows package result only and decides nothing: every number and every word comes from
// there. A movement is shown by a word, a symbol and a pattern, never by colour alone, so
// that it can be read in black and white and be read out.
// Start at [Drawing]; [Behind], [Plan], [Section] and [Linkage] make them.
package figure

// Drawing is one figure. X runs right and Y down, from the top left corner, in millimetres
// of paper.
type Drawing struct {
	Width, Height float64
	Title         string // the sentence that it shows
	Description   string // what can be seen, for who cannot see it
	Items         []Item // drawn in order
	Of            []Run  // which of them are a part of the model, or words beside it
}

// Run is the items of a drawing that show one part of the model.
type Run struct {
	Part     int // as Shape.Parts
	From, To int // of Drawing.Items, To excluded
}

// Item is one thing in a drawing: a Path, an Arc or a Text.
type Item interface{ item() }

// Point is a place in a drawing.
type Point struct{ X, Y float64 }

// Path is a line through points, open or closed.
type Path struct {
	Points []Point
	Closed bool
	Stroke Stroke // Width 0: no line
	Fill   Fill   // of a closed path
}

// Arc is a part of a circle, from one angle to another, in degrees clockwise from the
// direction of X.
type Arc struct {
	Centre   Point
	Radius   float64
	From, To float64
	Stroke   Stroke
}

// Text is words on one line.
type Text struct {
	At     Point   // of the base line
	Size   float64 // height of a capital and a half, about: the font's size in millimetres
	Anchor Anchor
	Bold   bool
	Ink    Ink
	Words  string
}

func (Path) item() {}
func (Arc) item()  {}
func (Text) item() {}

// Stroke is how a line is drawn.
type Stroke struct {
	Width float64 // millimetres
	Dash  Dash
	Ink   Ink
}

// Dash is the pattern of a line.
type Dash uint8

// The patterns.
const (
	Whole Dash = iota
	Dashed
	Dotted
)

// Fill is how a closed path is filled.
type Fill struct {
	Pattern Pattern
	Ink     Ink
}

// Pattern is the pattern of a fill.
type Pattern uint8

// The patterns.
const (
	Empty Pattern = iota
	Solid
	Rising  // hatched, lines rising to the right
	Falling // hatched, lines falling to the right
)

// Ink is a colour by its meaning.
type Ink uint8

// The inks. All but White can be told from paper in grey.
const (
	Black Ink = iota
	Grey      // what is only there to be seen against
	Pale      // areas behind lines
	White
	Good // what is as it should be
	Bad  // what is not
)

// Anchor is which point of a text At is.
type Anchor uint8

// The anchors.
const (
	Start Anchor = iota
	Middle
	End
)
