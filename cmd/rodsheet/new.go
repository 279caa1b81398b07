package main

import (
	"context"
	"errors"
	"io/fs"
	"path/filepath"
	"strings"

	"rodsheet/render/atomicfile"
	"rodsheet/templates/piece/design"
	"rodsheet/templates/wording"
)

func newCommand() command {
	return command{
		name:    "new",
		words:   fileWord,
		summary: "a starting design for a whole piece",
		about: `Writes a design file with every key explained, for a small table that builds as
it stands. Change the figures with any editor of plain text, then see what
rodsheet check says. A file that is there already is left alone.`,
		flags: []flag{
			{name: "sides", value: "3..8", usage: "stretchers of the ring, each with its leg; 3 if not given"},
			unitsFlag("of the figures in the file"),
		},
		examples: []example{
			{"rodsheet new table.toml", "a three-sided table in millimetres"},
			{"rodsheet new stand.toml --sides 6", "a six-sided one"},
			{"rodsheet new bench.toml --sides 4 --units in", "a four-sided one in inches"},
		},
		act: startDesign,
	}
}

// startDesign writes the starting design where no file is yet.
func startDesign(ctx context.Context, v *values, w world) error {
	sides := v.count("sides", 3, 3, 8)
	if len(v.words) > 1 {
		v.add("new takes one file, found "+wording.Shown(v.words[1])+" as well", "")
	}
	if len(v.problems) > 0 {
		return v.problems
	}
	text, err := design.Start(design.RingKind, sides, v.unit)
	if err != nil {
		return explain(err, v.unit, newCommand())
	}
	name := v.words[0]
	if name == "-" {
		return emit(w.stdout, string(text))
	}
	if base := filepath.Base(name); name == "" || strings.EqualFold(base, ".toml") {
		return refuse(wording.Shown(name)+" names no file", "rodsheet new table.toml")
	}
	if !strings.EqualFold(filepath.Ext(name), ".toml") {
		return refuse(wording.Shown(name)+" does not end in .toml", "a design is a TOML file: "+wording.Shown(name+".toml"))
	}
	files := []file{{atomicfile.File{Name: name, Write: atomicfile.Text(text), New: true}, 0}}
	err = atomicfile.Write(ctx, files[0].File)
	if errors.Is(err, fs.ErrExist) {
		return refuse(wording.Shown(name)+" is there already", "give another name; a design is never written over")
	}
	if err != nil {
		return unwritten(ctx, files, err)
	}
	return afterWriting(emit(w.stdout, "wrote "+named(name)+": a design to change; then rodsheet check "+wording.Shown(name)+"\n"), files)
}
