// Package joint holds the parts and joints of angled work as figures: laps,
// bridles, tapers, legs and rings, tops, and how the whole stands. Each type
// states its frame and its limits; Check refuses what no workshop can have.
//
// Lengths are in millimetres and angles in radians. The package knows neither
// paper nor file formats.
package joint
