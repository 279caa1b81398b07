//go:build !js

package main

import (
	"bytes"
	"context"
	"errors"
	"io/fs"
	"os"
	"path"
	"path/filepath"
	"strings"

	"rodsheet/cmd/internal/live"
	"rodsheet/render/atomicfile"
	"rodsheet/templates/wording"
)

func publishCommand() command {
	return command{
		name:    "publish",
		words:   fileWord,
		summary: "a folder with the page of a piece, for any web host",
		about: `Writes a folder that any web host can serve as it is: the page of the piece with
its drawings, checks, cards and lists, the design file, and the pack as PDF for
A4 and letter paper. It works with scripts off. With the engine, which is this
program built for browsers, readers change the figures, see the checks and print
their own size; nothing is fetched from elsewhere and nothing is sent. Title,
maker and terms of use come from [plan].`,
		caution: sawCaution,
		flags: []flag{
			{name: "out", short: "o", value: "DIR", usage: "the folder; the design's name if not given"},
			{name: "engine", value: "DIR", usage: "where the engine is, or none; beside the program else"},
			unitsFlag("of the figures printed; the file's own if not given"),
		},
		examples: []example{
			{"rodsheet publish table.toml", "to the folder table"},
			{"rodsheet publish table.toml --units in", "with figures in inches"},
			{"rodsheet publish table.toml -o site --engine none", "drawings and PDF alone"},
		},
		design: true,
		act:    publish,
	}
}

var engineFiles = []string{"engine.wasm", "wasm_exec.js"}

func publish(ctx context.Context, v *values, w world) error {
	dir := v.text("out")
	if dir == "" {
		dir = v.stem()
	}
	if info, err := os.Stat(dir); v.given("out") && v.text("out") == "" || err == nil && !info.IsDir() {
		v.add("--out "+wording.Shown(dir)+" is no folder", "name a folder to write to")
	}
	engine, err := v.engine()
	if err != nil {
		v.add(err.Error(), "build it as README says, or give --engine none")
	}
	if len(v.problems) > 0 {
		return v.problems
	}
	text, err := w.read(v.words[0])
	if err != nil {
		return cannot("read", wording.Shown(v.words[0]), err)
	}
	files, err := awaited(ctx, func() ([]file, error) { return w.folder(ctx, v, text.data, engine) })
	if err != nil {
		return err
	}
	for i, f := range files {
		files[i].Name = filepath.Join(dir, filepath.FromSlash(f.Name))
		if err := os.MkdirAll(filepath.Dir(files[i].Name), 0o777); err != nil {
			return cannot("make", wording.Shown(filepath.Dir(files[i].Name)), err)
		}
	}
	if err := (destination{source: v.source}).save(ctx, files); err != nil {
		return err
	}
	words := "wrote " + named(dir) + ": " + count(len(files), "file")
	if len(engine) == 0 {
		words += ", without the engine"
	}
	return afterWriting(emit(w.stdout, words+"\n"), files)
}

// engine returns the files of the engine by their names; none where there is none and
// none was asked for.
func (v *values) engine() (map[string][]byte, error) {
	dir, asked := v.text("engine"), v.given("engine")
	if dir == "none" {
		return nil, nil
	}
	if !asked {
		own, err := os.Executable()
		if err != nil {
			return nil, nil
		}
		dir = filepath.Join(filepath.Dir(own), "engine")
	}
	out := map[string][]byte{}
	for _, name := range engineFiles {
		data, err := os.ReadFile(filepath.Join(dir, name))
		if err != nil && !asked {
			return nil, nil
		}
		if err != nil {
			return nil, errors.New("--engine " + wording.Shown(dir) + " holds no " + name)
		}
		out[path.Join("engine", name)] = data
	}
	return out, nil
}

func (w world) folder(ctx context.Context, v *values, text []byte, engine map[string][]byte) ([]file, error) {
	desk, stem := w.desk(), v.stem()
	var files []file
	add := func(name string, data []byte) {
		files = append(files, file{atomicfile.File{Name: name, Write: atomicfile.Text(data)}, 0})
	}
	p := live.Page{Version: thisEdition().version, Caution: strings.ReplaceAll(sawCaution, "\n", " "), Published: true, Engine: len(engine) > 0}
	request := live.Request{Text: string(text), Name: filepath.Base(v.words[0]), Print: live.Print{Units: v.text("units")}}
	for _, paper := range []struct{ size, name string }{{"a4", "A4"}, {"letter", "letter"}} {
		r := request
		r.Print.Paper = paper.size
		made, err := desk.Make(ctx, live.Order{Request: r, Kind: "pdf"})
		if err != nil {
			return nil, unbuildable(strings.Join(strings.Fields(err.Error()), " "))
		}
		name := stem + "-" + paper.size + ".pdf"
		add(name, made.Data)
		p.Files = append(p.Files, live.Link{File: name, Words: "the whole pack as PDF, " + paper.name})
	}
	p.Files = append(p.Files, live.Link{File: "design.toml", Words: "the design file"})
	add("design.toml", text)
	p.Show(desk, request)
	var page bytes.Buffer
	if err := p.Write(&page); err != nil {
		return nil, err
	}
	add("index.html", page.Bytes())
	err := fs.WalkDir(live.Assets(), ".", func(name string, d fs.DirEntry, err error) error {
		if err != nil || d.IsDir() {
			return err
		}
		data, err := fs.ReadFile(live.Assets(), name)
		add(path.Join("static", name), data)
		return err
	})
	for _, name := range engineFiles {
		if data, ok := engine[path.Join("engine", name)]; ok {
			add(path.Join("engine", name), data)
		}
	}
	return files, err
}
