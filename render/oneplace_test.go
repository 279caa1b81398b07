package render

import (
	"go/ast"
	"go/parser"
	"go/token"
	"path/filepath"
	"regexp"
	"strconv"
	"strings"
	"testing"
)

// Every sentence of the sheets stands in words.go: elsewhere no text has words
// apart by a space, or beside the verb of a format.
func TestSentencesStandInOnePlace(t *testing.T) {
	sentence := regexp.MustCompile(`[\pL,;:] [\pL%]|%[0-9.]*[a-z] \pL`)
	names, err := filepath.Glob("*.go")
	for _, folder := range []string{"accuracy", "label", "pack", "table"} {
		more, _ := filepath.Glob(folder + "/*.go")
		names = append(names, more...)
	}
	if err != nil || len(names) == 0 {
		t.Fatal(names, err)
	}
	files := token.NewFileSet()
	for _, name := range names {
		if base := filepath.Base(name); strings.HasSuffix(base, "_test.go") || base == "words.go" {
			continue
		}
		file := must(parser.ParseFile(files, name, nil, parser.SkipObjectResolution))(t)
		ast.Inspect(file, func(n ast.Node) bool {
			lit, ok := n.(*ast.BasicLit)
			if !ok || lit.Kind != token.STRING {
				return true
			}
			if text, err := strconv.Unquote(lit.Value); err != nil || sentence.MatchString(text) {
				t.Errorf("%v: %s", files.Position(lit.Pos()), lit.Value)
			}
			return true
		})
	}
}
