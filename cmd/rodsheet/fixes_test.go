package main

import (
	"encoding/json"
	"fmt"
	"os"
	"path/filepath"
	"regexp"
	"strings"
	"testing"
)

// A program that writes the keys of a fix into the design file, as the JSON gives
// them, finds the check to hold.
func TestFixesCanBeWrittenIntoTheFile(t *testing.T) {
	t.Parallel()
	const text = "[ring]\nsides = 3\ninside = 260\nwidth = 28\ndepth = 36\nhorn = 12\nplain-end = \"open\"\nslack = 0\n" +
		"[legs]\nbreadth = 36\nsplay = 14\nheight = 450\nmid-to-leg = 190\nproud = 9\n[wood]\ndensity = 700\n[saw]\nkerf = 3\n" +
		"[top]\nkind = \"glass\"\nthickness = 8\ndiameter = 500\n[top.pads]\ndiameter = 40\nheight = 6\n"
	dir := t.TempDir()
	ask := func(name, text string) (ids map[string]checkJSON) {
		t.Helper()
		file := filepath.Join(dir, name)
		done(t, os.WriteFile(file, []byte(text), 0o600))
		_, out, errs := start(t.Context(), "check", file, "--json")
		var all struct {
			Sizes []struct{ Checks []json.RawMessage }
		}
		if err := json.Unmarshal([]byte(out), &all); err != nil || len(all.Sizes) != 1 {
			t.Fatalf("%v: %s %s", err, out, errs)
		}
		ids = map[string]checkJSON{}
		for _, raw := range all.Sizes[0].Checks {
			var c checkJSON
			done(t, json.Unmarshal(raw, &c))
			ids[string(c.ID)] = c
		}
		return ids
	}
	tried := 0
	for id, c := range ask("before.toml", text) {
		if len(c.Fixes) != len(c.Mends) {
			t.Errorf("%s: %d fixes, %d mends", id, len(c.Fixes), len(c.Mends))
		}
		for i, f := range c.Fixes {
			if f.Words != c.Mends[i] || f.Value == nil || f.Unit != "mm" && f.Unit != "deg" {
				t.Errorf("%s: %+v", id, f)
				continue
			}
			i := strings.LastIndex(string(f.Key), ".")
			table, word := string(f.Key[:i]), string(f.Key[i+1:])
			line := regexp.MustCompile(`(?ms)^(\[` + regexp.QuoteMeta(table) + `\][^\[]*?^` + word + ` = ).*?$`)
			if !line.MatchString(text) || len(f.Follows) > 0 {
				continue
			}
			mended := line.ReplaceAllString(text, fmt.Sprintf("${1}%v", float64(*f.Value)))
			if now := ask("after.toml", mended)[id]; now.Grade != "holds" && now.Grade != "" { // a clash that is gone has no check
				t.Errorf("%s: %s makes it %q", id, f.Words, now.Grade)
			}
			tried++
		}
	}
	if tried < 3 {
		t.Errorf("only %d fixes tried", tried)
	}
}
