package main

import (
	"bytes"
	"context"
	"errors"
	"fmt"
	"io"
	"io/fs"
	"os"
	"path/filepath"
	"slices"
	"strings"

	"rodsheet/geometry/lists"
	"rodsheet/render/lettering"
	"rodsheet/templates/piece/design"
	"rodsheet/templates/piece/kind"
	"rodsheet/templates/piece/kinds"
	"rodsheet/templates/wording"
)

// fileWord is the one word of every command that reads a design file.
const fileWord = "FILE.toml"

func sizeFlag() flag {
	return flag{name: "size", value: "NAME", usage: "only this size of the design; all of them if not given"}
}

// design reads the design file that the command line names. Its units are
// those of the command from then on, unless --units is given.
func (v *values) design(ctx context.Context, read func(string) (designText, error)) error {
	if v.given("size") && v.text("size") == "" {
		v.add("--size is empty", "name a size of the design, or leave --size out for all of them")
		return v.problems
	}
	if len(v.words) != 1 {
		v.add(fmt.Sprintf("takes one design file, found %d words", len(v.words)), "rodsheet new table.toml writes one")
		return v.problems
	}
	text, err := awaited(ctx, func() (designText, error) { return read(v.words[0]) })
	if errors.As(err, &interrupted{}) {
		return err
	}
	if err != nil {
		return refuse(cannot("read", wording.Shown(v.words[0]), err).Error(), readHint(err))
	}
	v.source = text.from
	f, err := design.ReadLettered(text.data, v.sizes.Add, lettering.Missing)
	v.file = &f
	return v.mistaken(err)
}

// A designText is what a design file holds, and the file that it came from.
type designText struct {
	data []byte
	from fs.FileInfo
}

// readSome reads a file, or standard input for "-". Of one that is far too
// long for a design it reads enough to tell.
func readSome(name string) (designText, error) {
	const enough = 1 << 20
	in := os.Stdin
	if name != "-" {
		f, err := os.Open(name)
		if err != nil {
			return designText{}, err
		}
		defer f.Close()
		in = f
	}
	info, err := in.Stat()
	if err != nil {
		return designText{}, err
	}
	if info.IsDir() {
		return designText{}, errors.New("it is a directory")
	}
	var data bytes.Buffer
	data.Grow(int(min(info.Size(), enough)) + bytes.MinRead)
	_, err = data.ReadFrom(io.LimitReader(in, enough))
	return designText{data.Bytes(), info}, err
}

func readHint(err error) string {
	if errors.Is(err, os.ErrNotExist) {
		return "rodsheet new FILE.toml writes a design to start from"
	}
	return ""
}

func (v *values) mistaken(err error) error {
	var mistakes design.Mistakes
	if !errors.As(err, &mistakes) {
		return err
	}
	for _, m := range mistakes {
		v.add(wording.Shown(v.words[0])+", "+m.Error(), m.Hint)
	}
	return v.problems
}

// work works out every size, their figures printed in the unit of the command, and
// returns what is asked for. A size is worked out among the others even where it is
// asked for alone, so that its figures are always the same.
func (v *values) work() (kind.Work, error) {
	w, err := v.allSizes()
	if err != nil || !v.given("size") {
		return w, err
	}
	i := slices.IndexFunc(v.file.Sizes, func(d design.Design) bool { return d.Size == v.text("size") })
	if i < 0 {
		return nil, v.noSuchSize()
	}
	return w.Only(i), nil
}

// allSizes works the whole file out; as it was read, where its own unit is asked for.
func (v *values) allSizes() (kind.Work, error) {
	if v.unit == v.file.Unit {
		return v.sizes.Work(), nil
	}
	sizes := slices.Clone(v.file.Sizes)
	for i := range sizes {
		sizes[i].Unit = v.unit
	}
	return kinds.Solve(sizes)
}

func (v *values) noSuchSize() error {
	names := lists.Map(v.file.Sizes, func(d design.Design) string { return d.Size })
	known := lists.Where(names, func(name string) bool { return name != "" })
	asked := v.text("size")
	if len(known) == 0 {
		v.add("--size "+wording.Shown(asked)+": this design has one size, without a name", "leave --size out")
		return v.problems
	}
	hint := suggest("--size ", asked, known)
	if hint == "" {
		hint = "it has " + wording.And(known...)
	}
	v.add("--size "+wording.Shown(asked)+": the design has no such size", hint)
	return v.problems
}

// stem names what is made from the design: the file's name without its
// directory and ending, and the size where one is asked for.
func (v *values) stem() string {
	base := filepath.Base(v.words[0])
	base = strings.TrimSuffix(base, filepath.Ext(base))
	if base == "" || base == "-" || base == "." {
		base = "piece"
	}
	if v.given("size") {
		base += "-" + strings.Map(fileRune, v.text("size"))
	}
	return base
}

// fileRune keeps what is safe in a file's name.
func fileRune(r rune) rune {
	if strings.ContainsRune(`/\:*?"<>| `, r) {
		return '-'
	}
	return r
}
