package piece_test

import (
	"testing"

	"rodsheet/templates/piece"
)

func TestSizeWords(t *testing.T) {
	for _, tt := range []struct {
		sizes []string
		all   int
		want  string
	}{
		{[]string{""}, 1, ""},
		{[]string{"low"}, 2, "size low"},
		{[]string{"low", "tall"}, 2, "both sizes"},
		{[]string{"a", "b"}, 3, "sizes a and b"},
		{[]string{"a", "b", "c"}, 4, "sizes a, b and c"},
		{[]string{"a", "b", "c"}, 3, "all sizes"},
	} {
		if got := piece.SizeWords(tt.sizes, tt.all); got != tt.want {
			t.Errorf("%q of %d: got %q, want %q", tt.sizes, tt.all, got, tt.want)
		}
	}
}
