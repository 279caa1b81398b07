package main

import (
	"bytes"
	"cmp"
	"io"
	"os"
	"path/filepath"
	"slices"
	"strconv"
	"strings"

	"rodsheet/render/atomicfile"
	"rodsheet/render/svg"
)

// clear looks for sheets that an earlier, larger job left under the same name
// and that would be taken for sheets of this one. It removes them where that
// was asked for, and says what it found.
func (d destination) clear(sheets int) (notes []string) {
	stale := d.stale(sheets)
	if len(stale) == 0 {
		return nil
	}
	if !d.replace {
		return []string{span(stale) + ": of an earlier, larger job; --replace removes such sheets"}
	}
	for _, f := range stale {
		if err := os.Remove(f.Name); err != nil {
			return []string{cannot("remove", named(f.Name), err).Error()}
		}
	}
	return []string{"removed " + span(stale) + ", of an earlier, larger job"}
}

// stale lists the files that bear the name of a sheet which a job of so many
// sheets does not have, and that this program wrote.
func (d destination) stale(sheets int) (out []file) {
	if !d.svg {
		return nil
	}
	extension := filepath.Ext(d.name)
	stem := strings.TrimSuffix(filepath.Base(d.name), extension) + "-"
	entries, _ := os.ReadDir(filepath.Dir(d.name))
	for _, e := range entries {
		number, ok := strings.CutPrefix(strings.TrimSuffix(e.Name(), extension), stem)
		n, err := strconv.Atoi(number)
		f := file{atomicfile.File{Name: d.sheetName(n, mostSheets)}, n}
		ok = ok && err == nil && filepath.Base(f.Name) == e.Name() && e.Type().IsRegular()
		if ok && (sheets == 1 || n > sheets) && ours(f.Name) {
			out = append(out, f)
		}
	}
	slices.SortFunc(out, func(a, b file) int { return cmp.Compare(a.sheet, b.sheet) })
	return out
}

// ours reports whether a file begins as the SVG sheets of this program do.
func ours(name string) bool {
	const enough = 1024
	f, err := os.Open(name)
	if err != nil {
		return false
	}
	defer f.Close()
	head, _ := io.ReadAll(io.LimitReader(f, enough))
	return bytes.Contains(head, []byte(svg.Mark))
}
