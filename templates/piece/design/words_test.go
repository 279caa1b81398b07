package design

import (
	"strings"
	"testing"
	"unicode"

	"rodsheet/templates/wording"
)

// Not run beside other tests: it changes every sentence to nonsense. What is
// wrong with a file, and where, does not hang on the sentences.
func TestMistakesHangOnNoSentence(t *testing.T) {
	files := []string{
		"", "ring = 3", "[ring", "[ring]\nwidth = 28mm\ndepth = “3”\n[legs]\n\"a",
		"units = 5\ntitle = \"\"\n[ring]\nsides = 2\nwidht = 28\ndepth = true\nhorn = 3\nhorn = 4\nplain-end = \"flush\"\n" +
			"[legs]\nsplay = 3\nfoot-circle = 9\n[top]\nkind = \"gläs\"\npoints = [[0, 1], 3]\n[wood]\nspecies = \"red mapel\"\nmoisture = 3\n" +
			"[[wood.board]]\nlenght = 3\n[[size]]\n[[size]]\nname = \"a\"\n[[size]]\nname = \"A\"\nunits = \"mm\"\n",
	}
	for _, file := range files {
		plain := mistakesOf(t, file)
		restore := wording.Garble(nonsense)
		garbled := mistakesOf(t, file)
		restore()
		if len(plain) != len(garbled) {
			t.Fatalf("%q: %d mistakes, %d in other words", file, len(plain), len(garbled))
		}
		for i, m := range plain {
			g := garbled[i]
			if m.Line != g.Line || m.Column != g.Column || (m.Hint == "") != (g.Hint == "") {
				t.Errorf("%v (%s): in other words it is %v (%s)", m, m.Hint, g, g.Hint)
			}
			if _, words, keyed := strings.Cut(m.Text, ": "); keyed && strings.Contains(g.Text, words) {
				t.Errorf("%q does not come from the table of sentences", words)
			}
		}
	}
}

func mistakesOf(t *testing.T, file string) Mistakes {
	t.Helper()
	_, err := Read([]byte(file), nil)
	m, ok := err.(Mistakes)
	if !ok {
		t.Fatalf("%q: %v", file, err)
	}
	return m
}

// nonsense changes every letter that belongs to no verb.
func nonsense(text wording.Text) string {
	verb := false
	return strings.Map(func(r rune) rune {
		switch {
		case r == '%':
			verb = !verb
		case verb && unicode.IsLetter(r):
			verb = false
		case !verb && unicode.IsLetter(r):
			return 'x'
		}
		return r
	}, string(text))
}
