package design

// Loads on the rim of a top, kg. Common practice, no source; no standard is meant.
const (
	HandLoad   = 10.0  // a hand that is leaned on: what every piece should bear
	PersonLoad = 150.0 // a heavy person who sits down on it
)
