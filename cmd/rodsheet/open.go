//go:build !js

package main

import (
	"bytes"
	"context"
	"errors"
	"net"
	"net/http"
	"os/exec"
	"path/filepath"
	"runtime"
	"strconv"
	"strings"
	"time"

	"rodsheet/cmd/internal/live"
	"rodsheet/render/atomicfile"
	"rodsheet/templates/wording"
)

// pageCommands are those that a browser has no use for.
func pageCommands() []func() command { return []func() command{openCommand, publishCommand} }

func openCommand() command {
	return command{
		name:    "open",
		words:   "[FILE.toml]",
		summary: "the piece in the browser, drawn while its figures change",
		about: `Opens a page in the browser of this machine: the figures of the design as a
form, the piece drawn while they change, what fails with the changes that mend
it, cards, lists, the sheets as they will print, and the pack as PDF. The file
is written when you save it, and only what you changed in it. Without FILE the
page asks a few questions and writes a design for you to take.

Nothing leaves this machine, and no other machine can open the page. The program
ends with Ctrl-C, or once the last page is closed.`,
		caution: sawCaution,
		flags: []flag{
			{name: "no-browser", usage: "print the address, and open it yourself"},
			{name: "stay", usage: "go on when the last page is closed"},
			{name: "port", value: "N", usage: "of this machine to listen at; any free one if not given"},
		},
		examples: []example{
			{"rodsheet open table.toml", "in the usual browser"},
			{"rodsheet open", "a few questions first"},
			{"rodsheet open table.toml --no-browser", "print the address"},
		},
		act: openPage,
	}
}

// openPage serves the page until the last one is closed or the program is stopped.
func openPage(ctx context.Context, v *values, w world) error {
	if len(v.words) > 1 {
		v.add("open takes one design file, found "+wording.Shown(v.words[1])+" as well", "")
	}
	port := v.count("port", 0, 1, 65535)
	if len(v.problems) > 0 {
		return v.problems
	}
	var file live.File
	if len(v.words) == 1 {
		f := &designFile{name: v.words[0]}
		if _, err := f.Read(); err != nil {
			return refuse(cannot("read", wording.Shown(v.words[0]), err).Error(), readHint(err))
		}
		file = f
	}
	listener, err := net.Listen("tcp", net.JoinHostPort("127.0.0.1", strconv.Itoa(port)))
	if err != nil {
		return refuse(cannot("listen at", "port "+strconv.Itoa(port), reasonOf(err)).Error(), "leave --port out for any free one")
	}
	ctx, stop := context.WithCancel(ctx)
	defer stop()
	s := &live.Server{
		Desk: w.desk(), File: file, Version: thisEdition().version, Caution: strings.ReplaceAll(sawCaution, "\n", " "),
		Token: live.NewToken(), Host: listener.Addr().String(), Printers: printerNames,
	}
	if !v.on("stay") {
		s.Gone, s.Linger = stop, 4*time.Second
	}
	if err := emit(w.stdout, s.Address()+"\n"); err != nil {
		return err
	}
	if !v.on("no-browser") {
		if err := browse(ctx, s.Address()); err != nil {
			note(w.stderr, "no browser could be started ("+err.Error()+"): open the address above")
		}
	}
	return serve(ctx, listener, s.Handler())
}

func serve(ctx context.Context, l net.Listener, h http.Handler) error {
	server := &http.Server{Handler: h, ReadHeaderTimeout: 5 * time.Second, ReadTimeout: 30 * time.Second, IdleTimeout: 2 * time.Minute, MaxHeaderBytes: 1 << 16}
	context.AfterFunc(ctx, func() {
		end, cancel := context.WithTimeout(context.Background(), time.Second)
		defer cancel()
		server.Shutdown(end)
	})
	if err := server.Serve(l); !errors.Is(err, http.ErrServerClosed) {
		return cannot("serve", "the page", err)
	}
	return nil
}

// reasonOf is what the system says, without the address that the message names itself.
func reasonOf(err error) error {
	var op *net.OpError
	if errors.As(err, &op) {
		return op.Err
	}
	return err
}

// browse opens an address in the usual browser, and does not wait for it.
func browse(ctx context.Context, address string) error {
	words := map[string][]string{
		"windows": {"rundll32", "url.dll,FileProtocolHandler"},
		"darwin":  {"open"},
	}[runtime.GOOS]
	if words == nil {
		words = []string{"xdg-open"}
	}
	c := exec.CommandContext(context.WithoutCancel(ctx), words[0], append(words[1:], address)...)
	if err := c.Start(); err != nil {
		return errors.New(atomicfile.Reason(err))
	}
	go c.Wait()
	return nil
}

type designFile struct{ name string }

func (f *designFile) Name() string { return filepath.Base(f.name) }

func (f *designFile) Read() ([]byte, error) {
	text, err := readSome(f.name)
	return text.data, err
}

// Write replaces the file beside itself, unless it reads otherwise than base.
func (f *designFile) Write(text, base []byte) ([]byte, error) {
	now, err := f.Read()
	if err == nil && !bytes.Equal(now, base) {
		return now, live.ErrChanged
	}
	if err := atomicfile.Write(context.Background(), atomicfile.File{Name: f.name, Write: atomicfile.Text(text)}); err != nil {
		return nil, cannot("write", wording.Shown(f.Name()), err)
	}
	return nil, nil
}
