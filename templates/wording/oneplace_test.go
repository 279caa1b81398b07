package wording_test

import (
	"errors"
	"go/ast"
	"go/parser"
	"go/token"
	"io/fs"
	"path/filepath"
	"regexp"
	"strconv"
	"strings"
	"testing"
)

// sentence is two words with a blank between them.
var sentence = regexp.MustCompile(`\pL[\pL’',;:.]* \pL`)

// unitOrID are units, and what geometry writes of an error by identities.
var unitOrID = regexp.MustCompile(`^(?: (?:sq|cu) in|left of|%s %s: not %v %s)$`)

// Every sentence of this floor, and of geometry below it, stands in a file words.go,
// in words_KIND.go of a single template or in a package wording: all else works with identities and figures. So a sentence can be changed, or
// said in another language, without a look at what it is said of.
func TestSentencesStandInOnePlace(t *testing.T) {
	read := 0
	look := func(path string, d fs.DirEntry, err error) error {
		inPlace := d.IsDir() && (d.Name() == "wording" || d.Name() == "internal")
		switch {
		case err != nil:
			return err
		case inPlace:
			return filepath.SkipDir
		case d.IsDir() || !strings.HasSuffix(path, ".go") || strings.HasSuffix(path, "_test.go") || d.Name() == "words.go" || strings.HasPrefix(d.Name(), "words_"):
			return nil
		}
		read++
		for _, at := range sentencesOf(t, path) {
			t.Errorf("%s", at)
		}
		return nil
	}
	if err := errors.Join(filepath.WalkDir("..", look), filepath.WalkDir("../../geometry", look)); err != nil || read < 20 {
		t.Errorf("%d files read, %v", read, err)
	}
}

// sentencesOf returns the sentences among the strings of a Go file, each with its
// place.
func sentencesOf(t *testing.T, path string) []string {
	t.Helper()
	files := token.NewFileSet()
	file, err := parser.ParseFile(files, path, nil, 0)
	if err != nil {
		t.Fatal(err)
	}
	var out []string
	ast.Inspect(file, func(n ast.Node) bool {
		lit, ok := n.(*ast.BasicLit)
		if !ok || lit.Kind != token.STRING {
			return true
		}
		if text, err := strconv.Unquote(lit.Value); err == nil && sentence.MatchString(text) && !unitOrID.MatchString(text) {
			out = append(out, files.Position(lit.Pos()).String()+": "+text)
		}
		return true
	})
	return out
}
