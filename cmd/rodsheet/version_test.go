package main

import (
	"runtime"
	"runtime/debug"
	"testing"
	"time"
)

// An edition says as much of itself as is known. The keys are those of the go command:
// go doc runtime/debug.BuildSetting.
func TestVersion(t *testing.T) {
	system := ", " + runtime.Version() + ", " + runtime.GOOS + "/" + runtime.GOARCH
	vcs := []debug.BuildSetting{
		{Key: "vcs", Value: "git"},
		{Key: "vcs.revision", Value: "0123456789abcdef0123456789abcdef01234567"},
		{Key: "vcs.time", Value: "2026-03-01T01:30:00+02:00"},
		{Key: "vcs.modified", Value: "false"},
	}
	changed := append(vcs[:3:3], debug.BuildSetting{Key: "vcs.modified", Value: "true"})
	for want, e := range map[string]edition{
		"rodsheet development":                                               recorded(nil),
		"rodsheet development, commit 0123456789ab, 2026-02-28":              recorded(vcs),
		"rodsheet development, commit 0123456789ab with changes, 2026-02-28": recorded(changed),
		"rodsheet 1.2.0, commit 0123456789ab, 2026-02-28":                    {"1.2.0", "0123456789ab", time.Date(2026, 2, 28, 0, 0, 0, 0, time.UTC)},
	} {
		if got := e.String(); got != want+system {
			t.Errorf("%q, want %q", got, want+system)
		}
	}
}

// What is stamped goes before what the go command recorded.
func TestStampedVersion(t *testing.T) {
	defer func() { stampedVersion, stampedCommit, stampedTime = "", "", "" }()
	stampedVersion, stampedCommit, stampedTime = "1.2.0", "0123456789ab", "2026-02-28T23:30:00Z"
	if e := thisEdition(); e.version != "1.2.0" || e.commit != "0123456789ab" || e.at.Day() != 28 {
		t.Errorf("%+v", e)
	}
}
