package main

import (
	"os"
	"path/filepath"
)

// doubleClicked reports whether the program was started without a command typed: by its
// whole path, as the file manager does (common practice, no source).
func doubleClicked() bool { return filepath.IsAbs(os.Args[0]) }
