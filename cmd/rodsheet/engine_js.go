package main

import (
	"context"
	"encoding/json"
	"os"
	"slices"
	"syscall/js"

	"rodsheet/cmd/internal/live"
)

// engine serves the page that runs in the same browser, where the program was started
// for that: its global function rodsheet takes a kind and a request as JSON and gives a
// promise of the answer, JSON for "ask" and bytes for "make". It never returns then.
func engine() bool {
	if !slices.Equal(os.Args[1:], []string{"engine"}) {
		return false
	}
	desk := world{getenv: func(string) string { return "" }}.desk()
	global := js.Global()
	global.Set("rodsheet", js.FuncOf(func(_ js.Value, args []js.Value) any {
		kind, request := args[0].String(), []byte(args[1].String())
		return promise(func() (js.Value, error) { return answered(desk, kind, request) })
	}))
	global.Call("rodsheetReady")
	select {}
}

func answered(desk *live.Desk, kind string, request []byte) (out js.Value, err error) {
	err = caught(func() error {
		ctx := context.Background()
		if kind == "make" {
			var o live.Order
			if err := json.Unmarshal(request, &o); err != nil {
				return err
			}
			p, err := desk.Make(ctx, o)
			if err != nil {
				return err
			}
			out = js.Global().Get("Uint8Array").New(len(p.Data))
			js.CopyBytesToJS(out, p.Data)
			return nil
		}
		var r live.Request
		if err := json.Unmarshal(request, &r); err != nil {
			return err
		}
		text, err := json.Marshal(desk.Ask(ctx, r))
		out = js.ValueOf(string(text))
		return err
	})
	return out, err
}

func promise(do func() (js.Value, error)) js.Value {
	var start js.Func
	start = js.FuncOf(func(_ js.Value, way []js.Value) any {
		go func() {
			defer start.Release()
			if v, err := do(); err != nil {
				way[1].Invoke(js.Global().Get("Error").New(err.Error()))
			} else {
				way[0].Invoke(v)
			}
		}()
		return nil
	})
	return js.Global().Get("Promise").New(start)
}

// pageCommands is empty where the page itself runs.
func pageCommands() []func() command { return nil }
