package main

import (
	"encoding/json"
	"path/filepath"
	"regexp"
	"slices"
	"testing"

	"rodsheet/templates/wording"
)

// nonsense turns every word round and leaves the verbs, so that lines are as long
// as they were.
func nonsense(t wording.Text) string {
	words := regexp.MustCompile(`%[-+#0-9.]*[a-z%]|\pL+`)
	return words.ReplaceAllStringFunc(string(t), func(w string) string {
		if w[0] == '%' {
			return w
		}
		letters := []rune(w)
		slices.Reverse(letters)
		return string(letters)
	})
}

// Whatever sentences say, the same is worked out, in the same order, and stands on
// the same sheets. The test runs by itself: the words are everybody's.
func TestNoWordMovesAnything(t *testing.T) {
	if testing.Short() {
		t.Skip("prints everything, one command after another")
	}
	designs, _ := filepath.Glob("../../examples/*.toml")
	lines := [][]string{
		{"angle", "16", "120", "1:6"},
		{"lap", "--width", "28", "--other", "28", "--depth", "36", "--angle", "120", "--kerf", "3.2", "--at", "155"},
		{"bridle", "--width", "28", "--depth", "36", "--angle", "12", "--leg", "38"},
		{"mortise", "--width", "22", "--depth", "70", "--leg", "40", "--length", "28", "--splay", "8", "--rake", "5", "--haunch", "sloping"},
		{"dovetail", "--width", "120mm", "--tail-board", "14mm", "--tails", "3", "--lap", "3mm", "--slope", "75", "--sides", "1:4.5"},
		{"taper", "--length", "640", "--top", "45", "--foot", "28", "--start", "110", "--faces", "opposite"},
		{"top", "--length", "800", "--width", "600", "--round", "40"},
		{"sightline", "--rake", "12", "--splay", "8", "--height", "430"},
		{"arc", "--chord", "900", "--rise", "400"},
		{"hopper", "--slope", "78", "--second", "70", "--ends", "butted"},
		{"oval", "--length", "900", "--width", "600", "--compass"},
		{"segments", "--pieces", "12", "--outer", "300", "--inner", "240"},
		{"segments", "--pieces", "12", "--top", "320", "--bottom", "260", "--height", "400", "--thickness", "18"},
		{"scale"},
	}
	for _, name := range designs {
		lines = append(lines, []string{"piece", name}, []string{"check", name})
	}
	lines = append(lines, []string{"piece", "../../examples/window-seat.toml", "--plan"})
	for _, args := range lines {
		want := told(t, args)
		restore := wording.Garble(nonsense)
		got := told(t, args)
		restore()
		if !slices.Equal(got, want) {
			for i := range min(len(got), len(want)) {
				if got[i] != want[i] {
					t.Errorf("%v: %s became %s", args[:2], want[i], got[i])
					break
				}
			}
			t.Errorf("%v: %d figures, checks and places of templates, were %d", args[:1], len(got), len(want))
		}
	}
	if nonsense("lay %s, 4.5 %% off") != "yal %s, 4.5 %% ffo" {
		t.Error(nonsense("lay %s, 4.5 %% off"))
	}
}

// told returns what a command says that is no word: identities and values of
// figures, checks and fixes, and the places of templates on their sheets.
func told(t *testing.T, args []string) []string {
	t.Helper()
	if args[0] != "check" {
		args = append(slices.Clone(args), "-o", filepath.Join(t.TempDir(), "job.pdf"))
	}
	status, out, errs := start(t.Context(), append(slices.Clone(args), "--json")...)
	if status != 0 {
		t.Fatalf("%q: status %d, %s", args, status, errs)
	}
	var all any
	done(t, json.Unmarshal([]byte(out), &all))
	var lines []string
	gather(&lines, "", all)
	return lines
}

// gather lists every number and identity of a JSON value, in order.
func gather(lines *[]string, key string, value any) {
	spoken := []string{"name", "template", "group", "text", "words", "mends", "warnings", "grade", "relation", "size"}
	switch v := value.(type) {
	case map[string]any:
		keys := make([]string, 0, len(v))
		for k := range v {
			keys = append(keys, k)
		}
		slices.Sort(keys)
		for _, k := range keys {
			gather(lines, k, v[k])
		}
	case []any:
		if slices.Contains(spoken, key) {
			*lines = append(*lines, key+": "+string(rune('0'+len(v)%10)))
			return
		}
		for _, one := range v {
			gather(lines, key, one)
		}
	default:
		if slices.Contains(spoken, key) {
			return
		}
		text, _ := json.Marshal(v)
		*lines = append(*lines, key+": "+string(text))
	}
}
