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
		about: `Writes a design file with every key explained, for a small piece that builds as
it stands. Change the figures with any editor of plain text, then see what
rodsheet check says. A file that is there already is left alone.`,
		flags: []flag{
			{name: "kind", value: "KIND", choices: design.Kinds(), usage: wording.Or(design.Kinds()...) + "; a ring if not given"},
			{name: "sides", value: "N", usage: "sides of a ring or a box, legs of the others"},
			unitsFlag("of the figures in the file"),
		},
		examples: []example{
			{"rodsheet new table.toml", "a three-sided table in millimetres"},
			{"rodsheet new stand.toml --sides 6", "a six-sided one"},
			{"rodsheet new planter.toml --kind box --sides 5", "a planter of five sloping sides"},
			{"rodsheet new bench.toml --sides 4 --units in", "a four-sided one in inches"},
		},
		act: startDesign,
	}
}

func startDesign(ctx context.Context, v *values, w world) error {
	kind := design.KindOf(v.text("kind"))
	if v.given("kind") && v.text("kind") != kind.String() {
		v.add("--kind "+wording.Shown(v.text("kind"))+" must be "+wording.Or(design.Kinds()...), suggest("--kind ", v.text("kind"), design.Kinds()))
	}
	fewest, most, usual := kind.Sides()
	sides := v.count("sides", usual, fewest, most)
	if len(v.words) > 1 {
		v.add("new takes one file, found "+wording.Shown(v.words[1])+" as well", "")
	}
	if len(v.problems) > 0 {
		return v.problems
	}
	text, err := design.Start(kind, sides, v.unit)
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
