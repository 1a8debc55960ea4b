package figure

// RGB is the colour of an ink, each 0 to 255. All but Pale and White have a contrast of
// more than 7 to 1 with white paper, and differ from it in grey alike.
func (i Ink) RGB() (r, g, b uint8) {
	switch i {
	case Grey:
		return 0x55, 0x55, 0x55
	case Pale:
		return 0xdd, 0xdd, 0xdd
	case White:
		return 0xff, 0xff, 0xff
	case Good:
		return 0x0b, 0x5a, 0x2b
	case Bad:
		return 0x9c, 0x10, 0x10
	}
	return 0x11, 0x11, 0x11
}

// name is what an ink is called in the classes of [SVG].
func (i Ink) name() string {
	switch i {
	case Grey:
		return "grey"
	case Pale:
		return "pale"
	case White:
		return "white"
	case Good:
		return "good"
	case Bad:
		return "bad"
	}
	return "black"
}

// Lengths of the dashes and gaps of a pattern, in millimetres; none for a whole line.
func (d Dash) Lengths() []float64 {
	switch d {
	case Dashed:
		return []float64{1.6, 0.9}
	case Dotted:
		return []float64{0.35, 0.8}
	}
	return nil
}
