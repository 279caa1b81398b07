package main

import (
	"io"
	"runtime"
	"runtime/debug"
	"strings"
	"time"

	"rodsheet/templates/wording"
)

// What .ci/release stamps into a release by -ldflags -X: any other build is of the
// work in progress, and may know its commit from the version control.
var stampedVersion, stampedCommit, stampedTime string

// An edition says what the program was made from. What is not known is empty.
type edition struct {
	version string
	commit  string
	at      time.Time // of the commit
}

// thisEdition returns what was stamped into this program, or recorded by the go
// command where nothing was.
func thisEdition() edition {
	if stampedVersion != "" {
		return edition{stampedVersion, stampedCommit, timeOf(stampedTime)}
	}
	info, ok := debug.ReadBuildInfo()
	if !ok {
		info = new(debug.BuildInfo)
	}
	return recorded(info.Settings)
}

// recorded reads the settings that the go command writes into a program.
func recorded(settings []debug.BuildSetting) edition {
	const shown = 12 // digits of a commit, as the go command shows in a version
	set := map[string]string{}
	for _, s := range settings {
		set[s.Key] = s.Value
	}
	e := edition{"development", set["vcs.revision"], timeOf(set["vcs.time"])}
	e.commit = e.commit[:min(shown, len(e.commit))]
	if set["vcs.modified"] == "true" {
		e.commit += " with changes"
	}
	return e
}

// timeOf reads a time of RFC 3339; one that is none is not known.
func timeOf(text string) time.Time {
	at, err := time.Parse(time.RFC3339, text)
	if err != nil {
		return time.Time{}
	}
	return at.UTC()
}

// String names the build, and the system that it runs on, in one line.
func (e edition) String() string {
	parts := []string{"rodsheet " + e.version}
	if e.commit != "" {
		parts = append(parts, "commit "+e.commit)
	}
	if !e.at.IsZero() {
		parts = append(parts, e.at.Format(time.DateOnly))
	}
	return strings.Join(append(parts, runtime.Version(), runtime.GOOS+"/"+runtime.GOARCH), ", ")
}

func printVersion(rest []string, stdout io.Writer) error {
	if len(rest) > 0 {
		return refuse("--version takes nothing after it, found "+wording.Shown(rest[0]), "")
	}
	return emit(stdout, thisEdition().String()+"\n")
}
