// Package examples holds the designs of this folder, for the page in the browser to begin with.
package examples

import "embed"

// Designs are the design files.
//
//go:embed *.toml
var Designs embed.FS
