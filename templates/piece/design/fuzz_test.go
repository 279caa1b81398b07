package design

import (
	"bytes"
	"errors"
	"reflect"
	"testing"

	"github.com/pelletier/go-toml/v2"

	"rodsheet/geometry/measure"
)

// Whatever the file: no panic; mistakes of the right type, in order, with
// words, within the file; what is read is TOML, has at least one size, and is
// read the same a second time.
func FuzzRead(f *testing.F) {
	f.Add([]byte(sound))
	f.Add([]byte(sized("[size.legs]\nfoot-circle = 640\n[size.top]\nkind = \"none\"")))
	f.Add([]byte("ring = {sides = 3, inside = 10}\nsize = [{name = \"a\"}, 3]\n[[wood.board]]\nlength = 1\n[top.pads]\n"))
	f.Add([]byte("\ufeff[ring]\r\nsides = 0x3\r\nwidth = '1 1/8\"'\r\npoints = [[1, 2], [\n3, 4]]"))
	f.Add([]byte(sound + "[top.fixing]\nbond = \"silicone\"\n[plan]\ndate = 2031-05-04\nnote = \"n\"\n[prices]\ncurrency = \"€\"\nwood-per-m3 = 3\n[[item]]\nname = \"bolt\"\ncount = 3\nprice = 0.5\n"))
	for i := range schemas() {
		for sides := 3; sides <= 8; sides++ {
			text, err := Start(Kind(i), sides, measure.Unit(sides%2))
			if err != nil {
				f.Fatal(err)
			}
			f.Add(text)
		}
	}
	f.Fuzz(func(t *testing.T, data []byte) {
		file, err := Read(data, nil)
		again, err2 := Read(data, nil)
		if !reflect.DeepEqual(file, again) || !reflect.DeepEqual(err, err2) {
			t.Fatalf("read twice: %v, %v", err, err2)
		}
		if err != nil {
			checkMistakes(t, data, err)
			return
		}
		var values map[string]any
		if err := toml.Unmarshal(bytes.TrimPrefix(data, []byte(byteOrderMark)), &values); err != nil {
			t.Errorf("not TOML: %v", err)
		}
		if len(file.Sizes) == 0 {
			t.Error("no sizes")
		}
	})
}

func checkMistakes(t *testing.T, data []byte, err error) {
	t.Helper()
	var all Mistakes
	if !errors.As(err, &all) || len(all) == 0 {
		t.Fatalf("%T: %v", err, err)
	}
	lines := bytes.Split(data, []byte("\n"))
	last := len(lines)
	if last > 1 && len(lines[last-1]) == 0 {
		last--
	}
	before := Mistake{Line: 1, Column: 1}
	for _, m := range all {
		if m.Line < 1 || m.Line > last || m.Column < 1 || m.Column > len(lines[m.Line-1])+1 {
			t.Errorf("%v lies outside", m)
		}
		if m.Line < before.Line || m.Line == before.Line && m.Column < before.Column {
			t.Errorf("%v stands behind %v", m, before)
		}
		if m.Text == "" || bytes.ContainsAny([]byte(m.Text+m.Hint), "\n\r\x00\x1b") || len(m.Text) > 1000 {
			t.Errorf("words: %q, %q", m.Text, m.Hint)
		}
		before = m
	}
}

func BenchmarkRead(b *testing.B) {
	text := must(Start(RingKind, 3, measure.Millimetre))(b)
	for b.Loop() {
		if _, err := Read(text, nil); err != nil {
			b.Fatal(err)
		}
	}
}

// Whatever is changed in whatever text: no panic, mistakes or TOML; and a form.
func FuzzEdit(f *testing.F) {
	for i, text := range texts(f) {
		f.Add([]byte(text), "low", "legs.height", i%3, "25 1/4")
		f.Add([]byte(text), "", "top.points", i%3, "1, 2; 3")
		f.Add([]byte(text), "", "wood.board.length", i%3, "'\n")
	}
	f.Add([]byte("[top]\n# points = [[1, 2], [3, 4], [5, 6]]\n"), "", "top.points", 0, "1, \x9e; 3")
	f.Add([]byte("[[size]]\n[size.legs]\na = {b = [{c = 3}]}\nsize = [{}, {name = 3}]\n"), "1", "size.name", 0, "\x00\"'")
	f.Add([]byte("[wood\n[[item]]\n# [[item]]\n#name = [\n\"size\".legs = {}"), "", "item.name", 1, "")
	f.Fuzz(func(t *testing.T, text []byte, size, key string, row int, value string) {
		_, formErr := FormOf(text)
		Misfits(text)
		got, err := Edit(text, Change{size, Key(key), row, value})
		for _, err := range []error{formErr, err} {
			if _, ok := err.(Mistakes); err != nil && !ok {
				t.Fatalf("%T: %v", err, err)
			}
		}
		if err != nil {
			return
		}
		if err := unsound(got); err != nil {
			t.Fatalf("%v\n%s", err, got)
		}
		if merged, clash, err := Merge(text, got, text); err != nil || len(clash) > 0 || !bytes.Equal(merged, got) {
			t.Fatalf("%v, %v", clash, err)
		}
		for _, f := range []func() ([]byte, error){
			func() ([]byte, error) { return AddSize(text, value) }, func() ([]byte, error) { return RemoveSize(text, size) },
			func() ([]byte, error) { return RemoveRow(text, "item", row) },
		} {
			if _, err := f(); err != nil && err.Error() == "" {
				t.Fatal("a mistake without words")
			}
		}
	})
}
