package main

import (
	"io"
	"runtime/debug"

	"rodsheet/templates/wording"
)

// printVersion writes the version that the build recorded.
func printVersion(rest []string, stdout io.Writer) error {
	if len(rest) > 0 {
		return refuse("--version takes nothing after it, found "+wording.Shown(rest[0]), "")
	}
	return emit(stdout, "rodsheet "+version(debug.ReadBuildInfo())+"\n")
}

// version names the build as well as it is known.
func version(info *debug.BuildInfo, ok bool) string {
	if !ok || info.Main.Version == "" {
		return "(version unknown)"
	}
	return info.Main.Version
}
