package design

import "testing"

func TestPlace(t *testing.T) {
	s := newSource([]byte("a\näöü = 1\n\nend\n"))
	tests := []struct {
		at   int
		want place
	}{
		{-5, place{1, 1}}, {0, place{1, 1}}, {1, place{1, 2}}, {2, place{2, 1}},
		{8, place{2, 4}}, {13, place{3, 1}}, {14, place{4, 1}}, {17, place{4, 4}},
		{18, place{4, 4}}, {99, place{4, 4}}, // behind the last line feed is no line
	}
	for _, tt := range tests {
		if got := s.place(tt.at); got != tt.want {
			t.Errorf("place(%d) = %v, want %v", tt.at, got, tt.want)
		}
	}
	if got := newSource(nil).place(0); got != (place{1, 1}) {
		t.Errorf("of nothing: %v", got)
	}
}

func TestOffset(t *testing.T) {
	s := newSource([]byte("a\nbcd\n"))
	for _, tt := range []struct{ line, column, want int }{
		{1, 1, 0}, {2, 1, 2}, {2, 3, 4}, {0, 0, 0}, {9, 9, 6}, {2, 99, 6},
	} {
		if got := s.offset(tt.line, tt.column); got != tt.want {
			t.Errorf("offset(%d, %d) = %d, want %d", tt.line, tt.column, got, tt.want)
		}
	}
}
