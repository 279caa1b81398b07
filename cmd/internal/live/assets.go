//go:build !js

package live

import (
	"embed"
	"io/fs"
)

//go:embed static
var static embed.FS

// Assets returns the files of the page that hang on no design.
func Assets() fs.FS {
	sub, err := fs.Sub(static, "static")
	if err != nil {
		panic(err) // the directory is part of the program
	}
	return sub
}
