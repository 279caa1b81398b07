package main

import (
	"bytes"
	"context"
	"fmt"
	"io"
	"net"
	"net/http"
	"os"
	"os/exec"
	"path/filepath"
	"strconv"
	"strings"
	"sync"
	"testing"
	"time"

	"github.com/chromedp/chromedp"

	"rodsheet/cmd/internal/live"
	"rodsheet/render/readback"
)

// aBrowser is started once for all tests.
var aBrowser = sync.OnceValues(func() (context.Context, error) {
	var path string
	for _, name := range []string{"chromium", "chromium-browser", "google-chrome"} {
		if found, err := exec.LookPath(name); err == nil {
			path = found
			break
		}
	}
	if path == "" {
		return nil, exec.ErrNotFound
	}
	ctx, _ := chromedp.NewExecAllocator(context.Background(), append(chromedp.DefaultExecAllocatorOptions[:],
		chromedp.NoSandbox, chromedp.ExecPath(path), chromedp.WindowSize(1400, 1000), chromedp.Flag("disable-dev-shm-usage", true))...)
	ctx, _ = chromedp.NewContext(ctx)
	return ctx, chromedp.Do(ctx)
})

// A tab is one page of the browser, on a design of its own.
type tab struct {
	*testing.T
	ctx     context.Context
	file    string // that the page is open on
	address string
}

// opened serves a page about a design and opens it. Without a browser the test is
// skipped, or fails where readers are required.
func opened(t *testing.T, design string) *tab {
	t.Helper()
	if testing.Short() {
		t.Skip("opens a browser")
	}
	t.Parallel()
	file := filepath.Join(t.TempDir(), "table.toml")
	done(t, os.WriteFile(file, []byte(design), 0o600))
	return visit(t, file, served(t, &designFile{file}).Address())
}

// served starts a server for a page.
func served(t testing.TB, file live.File) *live.Server {
	t.Helper()
	l := must(net.Listen("tcp", "127.0.0.1:0"))(t)
	w := world{getenv: func(string) string { return "" }}
	s := &live.Server{Desk: w.desk(), File: file, Token: live.NewToken(), Host: l.Addr().String(), Version: "test"}
	ctx, stop := context.WithCancel(context.Background())
	done := make(chan error, 1)
	go func() { done <- serve(ctx, l, s.Handler()) }()
	t.Cleanup(func() {
		stop()
		if err := <-done; err != nil {
			t.Error(err)
		}
	})
	return s
}

func visit(t *testing.T, file, address string) *tab {
	t.Helper()
	all, err := aBrowser()
	if err != nil {
		readback.Missing(t, "chromium")
	}
	ctx, cancel := chromedp.NewContext(all)
	t.Cleanup(cancel)
	ctx, late := context.WithTimeout(ctx, 5*time.Minute)
	t.Cleanup(late)
	p := &tab{T: t, ctx: ctx, file: file, address: address}
	p.do(chromedp.Navigate(address), chromedp.WaitReady(chromedp.CSS(`html[data-ready]`)))
	return p
}

func (p *tab) do(actions ...chromedp.Action[chromedp.Void]) {
	p.Helper()
	if err := chromedp.Do(p.ctx, actions...); err != nil {
		p.Fatal(err)
	}
}

// call sends the browser a command of its protocol.
func (p *tab) call(method string, params map[string]any) {
	p.Helper()
	p.do(chromedp.Func(func(ctx context.Context, t *chromedp.Target) error {
		var answer any
		return t.Call(ctx, method, params, &answer)
	}))
}

// click clicks the first element of a selector, as a mouse would that is over it.
func (p *tab) click(selector string) {
	p.Helper()
	p.js(fmt.Sprintf(`(() => { const e = document.querySelector(%q); e.click ? e.click() : e.dispatchEvent(new MouseEvent('click', {bubbles: true})); return ''; })()`, selector))
}

// value returns what a script gives.
func value[T any](p *tab, script string, options ...chromedp.EvaluateOption) T {
	p.Helper()
	out, err := chromedp.Run(p.ctx, chromedp.Evaluate[T](script, options...))
	if err != nil {
		p.Fatalf("%s: %v", script, err)
	}
	return out
}

// js returns what a script gives, as text.
func (p *tab) js(script string) string {
	p.Helper()
	return value[string](p, "String("+script+")")
}

// until waits for a script to give something.
func (p *tab) until(script, want string) {
	p.Helper()
	var got string
	for range 200 {
		if got = p.js(script); got == want {
			return
		}
		time.Sleep(25 * time.Millisecond)
	}
	p.Fatalf("%s gives %q, want %q; the page says %q", script, got, want, p.js(`document.getElementById('status').textContent`))
}

// text returns that of the first element of a selector.
func (p *tab) text(selector string) string {
	p.Helper()
	return p.js(fmt.Sprintf(`document.querySelector(%q)?.textContent ?? "(none)"`, selector))
}

// fill types a value in the place of what a field holds.
func (p *tab) fill(id, value string) {
	p.Helper()
	p.js(fmt.Sprintf(`(() => { const f = document.getElementById(%q); f.closest('details').open = true; f.focus(); f.select(); return ''; })()`, id))
	p.call("Input.insertText", map[string]any{"text": value})
}

const figureOn = `[...document.querySelectorAll('#%s .figure')].find((f) => f.dataset.key === '%s')?.textContent`

func windowSeat(t testing.TB) string {
	data := must(os.ReadFile(anExample))(t)
	return string(data)
}

// A figure that is typed changes the drawing; a wrong one says so beside its field and
// the drawing stays; what waits for another figure comes with it.
func TestPageFollowsTheForm(t *testing.T) {
	p := opened(t, windowSeat(t))
	inside := fmt.Sprintf(figureOn, "plan", "ring.inside")
	p.until(inside, "260 mm")
	p.fill("f-ring-inside", "270")
	p.until(inside, "270 mm")
	p.fill("f-ring-inside", "27 cm 5")
	p.until(`document.getElementById('f-ring-inside').getAttribute('aria-invalid')`, "true")
	if said := p.text("#f-ring-inside-e"); !strings.Contains(said, "27 cm 5") {
		t.Errorf("beside the field stands %q", said)
	}
	if got := p.js(inside); got != "270 mm" {
		t.Errorf("the drawing shows %s, not the last sound figure", got)
	}
	// Another field is sound by itself and counts; the wrong one waits.
	p.fill("f-ring-horn", "20")
	p.until(`document.getElementById('f-ring-horn').value + document.getElementById('f-ring-inside').value`, "2027 cm 5")
	p.fill("f-ring-inside", "280")
	p.until(inside, "280 mm")
	p.click("#undo")
	p.until(inside, "270 mm")
	p.click("#redo")
	p.until(inside, "280 mm")
	p.fill("f-title", "A table of ours")
	p.until(`document.title`, "A table of ours")
}

// A size names what differs; the rest shows as inherited, and what follows is told.
func TestPageSizes(t *testing.T) {
	p := opened(t, windowSeat(t))
	p.click(`#form [data-own=tall]`)
	p.until(`document.querySelector('#sizes [aria-pressed=true]')?.textContent`, "tall")
	p.until(`document.getElementById('f-ring-inside-of-tall')?.placeholder`, "260, as for all sizes")
	p.fill("f-legs-splay-of-tall", "13")
	p.until(fmt.Sprintf(figureOn, "front", "legs.splay"), "13°")
	p.click(`#sizes button:first-child`)
	p.until(fmt.Sprintf(figureOn, "front", "legs.splay"), "15°")
	if got := p.js(`document.getElementById('f-legs-foot-spread')?.placeholder ?? document.getElementById('f-legs-foot-spread-of-tall').placeholder`); !strings.Contains(got, "follows") {
		t.Errorf("what follows from other figures shows as %q", got)
	}
}

// A fix is a button; it mends the check and can be undone.
func TestPageMends(t *testing.T) {
	p := opened(t, windowSeat(t))
	p.fill("f-legs-mid-to-leg", "190")
	p.until(`document.querySelectorAll('#checks .grade2').length > 0`, "true")
	failed := p.js(`document.querySelectorAll('#checks .grade2').length`)
	p.click(`#checks .grade2 [data-check]`)
	p.until(`document.querySelectorAll('#checks .grade2').length < `+failed, "true")
	p.click("#undo")
	p.until(`document.querySelectorAll('#checks .grade2').length`, failed)
}

// drag takes a handle by so much on the screen.
func (p *tab) drag(view, grip string, dx, dy float64) {
	p.Helper()
	at := value[[]float64](p, fmt.Sprintf(`(() => { const g = document.querySelector('#%s [data-grip=%s]'); g.scrollIntoView({block: 'center'}); const r = g.getBoundingClientRect(); return [r.x + r.width / 2, r.y + r.height / 2]; })()`, view, grip))
	mouse := func(kind string, x, y float64) {
		p.call("Input.dispatchMouseEvent", map[string]any{"type": kind, "x": x, "y": y, "button": "left", "buttons": 1, "clickCount": 1})
	}
	mouse("mousePressed", at[0], at[1])
	for i := 1; i <= 5; i++ {
		mouse("mouseMoved", at[0]+dx*float64(i)/5, at[1]+dy*float64(i)/5)
	}
	mouse("mouseReleased", at[0]+dx, at[1]+dy)
}

// Foot, rim and height are dragged on the drawing, by hand or by keys.
func TestPageDrags(t *testing.T) {
	p := opened(t, windowSeat(t))
	for _, one := range []struct {
		view, grip, key, was string
		dx, dy               float64
	}{
		{"front", "height", "legs.height", "overall 400 mm", 0, -20},
		{"front", "foot", "legs.splay", "15°", -12, 0},
		{"plan", "rim", "top.diameter", "top 530 mm", 20, 0},
	} {
		figure := fmt.Sprintf(figureOn, one.view, one.key)
		p.until(figure, one.was)
		p.drag(one.view, one.grip, one.dx, one.dy)
		p.until(figure+` !== '`+one.was+`'`, "true")
		p.until(`document.body.classList.contains('busy')`, "false")
		p.click("#undo")
		p.until(figure, one.was)
		p.js(fmt.Sprintf(`document.querySelector('#%s [data-grip=%s]').focus()`, one.view, one.grip))
		key := "ArrowUp"
		if one.dx != 0 {
			key = "ArrowRight"
		}
		p.js(fmt.Sprintf(`document.activeElement.dispatchEvent(new KeyboardEvent('keydown', {key: %q, bubbles: true}))`, key))
		p.until(figure+` !== '`+one.was+`'`, "true")
		p.click("#undo")
		p.until(figure, one.was)
	}
}

// Parts say their names and sizes, figures lead to their fields, the view turns.
func TestPageDrawing(t *testing.T) {
	p := opened(t, windowSeat(t))
	p.js(`document.querySelector('#corner .part[data-kind=leg]').focus()`)
	p.until(`document.getElementById('named').textContent.startsWith('leg ')`, "true")
	p.click(`#front [data-key="legs.height"]`)
	p.until(`document.activeElement.id.startsWith('f-legs-height')`, "true")
	before := p.js(`document.getElementById('corner').innerHTML`)
	p.js(`document.getElementById('corner').dispatchEvent(new KeyboardEvent('keydown', {key: 'ArrowLeft', bubbles: true}))`)
	p.until(`document.getElementById('corner').innerHTML !== `+fmt.Sprintf("%q", before), "true")
	p.click("#close")
	p.until(`document.querySelectorAll('#corner .part').length`, "3")
	p.js(`(() => { const s = document.getElementById('apart'); s.value = 1; s.dispatchEvent(new Event('input')); })()`)
	p.until(`document.body.classList.contains('busy')`, "false")
}

// A clash shows on the drawing, where it is.
func TestPageShowsAClash(t *testing.T) {
	p := opened(t, windowSeat(t))
	if got := p.js(`document.querySelectorAll('.clash').length`); got != "0" {
		t.Errorf("%s clashes in a piece that has none", got)
	}
	p.fill("f-legs-mid-to-leg", "190")
	p.until(`document.getElementById('checks').textContent.includes('clash')`, "true")
	p.until(`document.querySelectorAll('#corner .clash').length > 0`, "true")
}

// Cards, lists, figures and sheets are those of the pack.
func TestPageTabs(t *testing.T) {
	p := opened(t, windowSeat(t))
	p.until(`document.querySelectorAll('#cards .card').length > 20`, "true")
	for _, one := range []struct{ tab, holds string }{{"buying", "Cut list"}, {"glue", "loop"}, {"figures", "Feet"}} {
		p.click("#tab-" + one.tab)
		p.until(fmt.Sprintf(`document.getElementById(%q).innerHTML.includes(%q)`, one.tab, one.holds), "true")
	}
	p.click("#tab-sheets")
	p.js(`document.getElementById('tabs').scrollIntoView()`)
	p.until(`document.querySelectorAll('#sheets [data-shown]').length > 0`, "true")
	want := p.js(`document.querySelectorAll('#sheets li').length`)
	if _, said, _ := start(t.Context(), "piece", p.file, "-o", filepath.Join(t.TempDir(), "x.pdf")); !strings.Contains(said, want+" sheets") {
		t.Errorf("the page shows %s sheets; the command says %q", want, said)
	}
}

// What the page gives as PDF and as CSV are the bytes that the commands write.
func TestPageGivesTheSameBytes(t *testing.T) {
	p := opened(t, windowSeat(t))
	dir := t.TempDir()
	p.call("Page.setDownloadBehavior", map[string]any{"behavior": "allow", "downloadPath": dir})
	p.click("#tab-sheets")
	p.js(`(() => { const s = document.querySelector('[data-print=paper]'); s.value = 'letter'; s.onchange(); })()`)
	for _, one := range []struct{ kind, line string }{{"pdf", "piece FILE --paper letter -o OUT"}, {"csv", "buying FILE -o OUT"}} {
		p.js(fmt.Sprintf(`document.querySelector('[data-make=%s]').click()`, one.kind))
		got := awaitFile(t, filepath.Join(dir, "table."+one.kind))
		out := filepath.Join(t.TempDir(), "want."+one.kind)
		args := strings.Fields(strings.NewReplacer("FILE", p.file, "OUT", out).Replace(one.line))
		if status, _, errs := start(t.Context(), args...); status != 0 {
			t.Fatal(errs)
		}
		want, err := os.ReadFile(out)
		if err != nil || !bytes.Equal(got, want) {
			t.Errorf("%s of the page has %d bytes, that of the command %d: %v", one.kind, len(got), len(want), err)
		}
	}
}

func awaitFile(t *testing.T, name string) []byte {
	t.Helper()
	size := -1
	for range 400 {
		data, err := os.ReadFile(name)
		if err == nil && len(data) > 0 && len(data) == size {
			return data
		}
		if err == nil {
			size = len(data)
		}
		time.Sleep(25 * time.Millisecond)
	}
	t.Fatalf("%s was not written", name)
	return nil
}

// The file stays the maker's: saving changes a value and nothing else. What an editor
// changed meanwhile is brought together, or refused where both changed the same.
func TestPageSaves(t *testing.T) {
	design := windowSeat(t)
	p := opened(t, design)
	p.fill("f-ring-inside", "270")
	p.until(`document.getElementById('save').disabled`, "false")
	p.click("#save")
	p.until(`document.getElementById('save').disabled`, "true")
	saved := strings.Replace(design, "inside = 260", "inside = 270", 1)
	onDisk := func() string {
		data := must(os.ReadFile(p.file))(t)
		return string(data)
	}
	if got := onDisk(); got != saved {
		t.Errorf("the file is not as it was but for the figure:\n%s", got)
	}
	edit := func(old, new string) {
		done(t, os.WriteFile(p.file, []byte(strings.Replace(onDisk(), old, new, 1)), 0o600))
	}
	// Nothing of its own: the page follows.
	edit("horn = 14", "horn = 15")
	p.until(`document.getElementById('f-ring-horn').value`, "15")
	// Changes of its own: both together.
	p.fill("f-ring-inside", "275")
	p.until(`document.getElementById('save').disabled`, "false")
	edit("horn = 15", "horn = 16")
	p.until(`document.getElementById('news').hidden`, "false")
	p.click("#news-buttons button")
	p.until(`document.getElementById('f-ring-horn').value + ' ' + document.getElementById('f-ring-inside').value`, "16 275")
	// The same figure: refused, and nothing is lost.
	edit("inside = 270", "inside = 290")
	p.until(`document.getElementById('news').hidden`, "false")
	p.click("#news-buttons button")
	p.until(`document.getElementById('news-words').textContent.includes('ring.inside')`, "true")
	if got := p.js(`document.getElementById('f-ring-inside').value`); got != "275" || !strings.Contains(onDisk(), "290") {
		t.Errorf("the page holds %s", got)
	}
}

// Two pages on one file do not overwrite each other unseen.
func TestTwoPages(t *testing.T) {
	p := opened(t, windowSeat(t))
	q := visit(t, p.file, p.address)
	p.fill("f-ring-inside", "270")
	q.fill("f-ring-horn", "20")
	p.until(`document.getElementById('save').disabled`, "false")
	q.until(`document.getElementById('save').disabled`, "false")
	p.click("#save")
	q.until(`document.getElementById('news').hidden`, "false")
	q.click("#news-buttons button")
	q.until(`document.getElementById('f-ring-inside').value`, "270")
}

// Without a file a few answers make a design that can be built.
func TestPageBegins(t *testing.T) {
	if testing.Short() {
		t.Skip("opens a browser")
	}
	t.Parallel()
	p := visit(t, "", served(t, nil).Address())
	p.click(`#legs input[value="4"]`)
	p.click(`input[name=top][value=wood]`)
	p.do(chromedp.SendKeys(chromedp.CSS(`input[name=height]`), "620"), chromedp.SendKeys(chromedp.CSS(`input[name=width]`), "700"))
	p.click(`#questions button[type=submit]`)
	p.until(`document.querySelectorAll('#corner .part[data-kind=leg]').length`, "4")
	p.until(fmt.Sprintf(figureOn, "front", "legs.height"), "overall 620 mm")
	if got := p.js(`document.querySelectorAll('#checks .grade2').length`); got != "0" {
		t.Errorf("%s checks fail", got)
	}
	p.click("#anew")
	p.click(`[data-example=hall-table]`)
	p.until(`document.title.includes('all')`, "true")
}

// Any kind of piece is begun, shown, changed by its form and dragged, and its lists are
// there.
func TestPageOfEveryKind(t *testing.T) {
	if testing.Short() {
		t.Skip("opens a browser")
	}
	t.Parallel()
	p := visit(t, "", served(t, nil).Address())
	for _, one := range []struct{ kind, part, key, field, value string }{
		{"box", "side", "box.height", "f-box-thickness", "14"},
		{"aprons", "apron", "frame.height", "f-frame-legs-size", "44"},
		{"seat", "leg", "seat.height", "f-seat-thickness", "40"},
	} {
		p.click("#anew")
		p.click(`button[data-kind=` + one.kind + `]`)
		p.until(`document.querySelectorAll('#corner .part[data-kind=`+one.part+`]').length > 1`, "true")
		height := fmt.Sprintf(figureOn, "front", one.key)
		was := p.js(height)
		p.drag("front", "height", 0, -20)
		p.until(height+` !== '`+was+`'`, "true")
		p.until(`document.body.classList.contains('busy')`, "false")
		before := p.js(`document.getElementById('corner').innerHTML`)
		p.fill(one.field, one.value)
		p.until(`document.getElementById('corner').innerHTML !== `+strconv.Quote(before), "true")
		p.click("#close")
		for _, tab := range []string{"cards", "buying", "figures", "sheets"} {
			p.click("#tab-" + tab)
			p.until(`document.body.classList.contains('busy')`, "false")
			if words := p.js(`document.getElementById('` + tab + `-panel').innerText.length > 100`); words != "true" {
				t.Errorf("%s: %s is empty", one.kind, tab)
			}
		}
		p.click("#close")
	}
}

// On a phone everything is as wide as the screen, and nothing wider.
func TestPageOnAPhone(t *testing.T) {
	p := opened(t, windowSeat(t))
	p.call("Emulation.setDeviceMetricsOverride", map[string]any{"width": 360, "height": 740, "deviceScaleFactor": 2, "mobile": true})
	for _, tab := range []string{"cards", "buying", "glue", "figures", "sheets", "printer"} {
		p.click("#tab-" + tab)
		p.until(`document.body.classList.contains('busy')`, "false")
		if wide := p.js(`document.documentElement.scrollWidth`); wide != "360" {
			t.Errorf("%s: the page is %s px wide", tab, wide)
		}
	}
}

// TestPageIsAccessible asks axe-core, a general checker of WCAG, which RODSHEET_AXE names.
func TestPageIsAccessible(t *testing.T) {
	axe, err := os.ReadFile(os.Getenv("RODSHEET_AXE"))
	if err != nil {
		readback.Missing(t, "axe-core")
	}
	p := opened(t, windowSeat(t))
	p.fill("f-legs-mid-to-leg", "190") // with fails, fixes and a fault
	p.until(`document.querySelectorAll('#checks .grade2').length > 0`, "true")
	p.fill("f-ring-inside", "x")
	p.js("(() => {" + string(axe) + "; return ''; })()")
	for _, scheme := range []string{"light", "dark"} {
		p.call("Emulation.setEmulatedMedia", map[string]any{"features": []map[string]any{{"name": "prefers-color-scheme", "value": scheme}}})
		for _, tab := range []string{"cards", "buying", "glue", "figures", "sheets", "printer"} {
			p.click("#tab-" + tab)
			p.until(`document.body.classList.contains('busy')`, "false")
			found := value[string](p, `axe.run(document, {runOnly: ['wcag2a', 'wcag2aa', 'wcag21a', 'wcag21aa', 'wcag22aa']}).then((r) => r.violations.map((v) => v.id + ': ' + v.nodes.slice(0, 3).map((n) => n.target + ' ' + n.failureSummary).join(' | ')).join('\n'))`, chromedp.EvalAwaitPromise)
			if found != "" {
				t.Errorf("%s, %s: %s", scheme, tab, found)
			}
		}
	}
}

// Every control can be reached and used by keys alone: nothing that is clicked is out of
// the order of the tab key.
func TestPageByKeys(t *testing.T) {
	p := opened(t, windowSeat(t))
	if out := p.js(`[...document.querySelectorAll('button, input, select, .figure, .grip, .part, summary, a[href]')].filter((e) => e.checkVisibility() && e.tabIndex < 0 && e.getAttribute('role') !== 'tab').map((e) => e.outerHTML.slice(0, 80)).join('\n')`); out != "" {
		t.Errorf("not to be reached by keys:\n%s", out)
	}
	p.fill("f-ring-inside", "270")
	p.until(fmt.Sprintf(figureOn, "plan", "ring.inside"), "270 mm")
	p.js(`document.activeElement.dispatchEvent(new KeyboardEvent('keydown', {key: 'z', ctrlKey: true, bubbles: true}))`)
	p.until(fmt.Sprintf(figureOn, "plan", "ring.inside"), "260 mm")
	p.js(`document.querySelector('#front [data-key="legs.height"]').dispatchEvent(new KeyboardEvent('keydown', {key: 'Enter', bubbles: true}))`)
	p.until(`document.activeElement.dataset.key`, "legs.height")
}

// The slider that takes the joints apart keeps up; how many frames were late is told.
func TestPageKeepsUp(t *testing.T) {
	p := opened(t, windowSeat(t))
	got := value[map[string]float64](p, `(async () => {
		const s = document.getElementById('apart'); let drawn = 0;
		new MutationObserver(() => { drawn += 1; }).observe(document.getElementById('corner'), {childList: true});
		const begun = performance.now();
		for (let i = 0; i < 60; i += 1) { s.value = i / 60; s.dispatchEvent(new Event('input')); await new Promise(requestAnimationFrame); await new Promise(requestAnimationFrame); }
		return {drawn, seconds: (performance.now() - begun) / 1000};
	})()`, chromedp.EvalAwaitPromise)
	t.Logf("60 places of the slider in %.2f s: %v drawn, %v dropped", got["seconds"], got["drawn"], 60-got["drawn"])
	if got["drawn"] < 5 {
		t.Errorf("only %v of 60 were drawn", got["drawn"])
	}
}

// Nobody without the token, from another host or from another page gets anything.
func TestPageIsGuarded(t *testing.T) {
	t.Parallel()
	s := served(t, nil)
	ask := func(path, host, origin string, body string) (int, string) {
		r := must(http.NewRequest(http.MethodPost, "http://"+s.Host+path, strings.NewReader(body)))(t)
		if host != "" {
			r.Host = host
		}
		if origin != "" {
			r.Header.Set("Origin", origin)
			r.Header.Set("Sec-Fetch-Site", "cross-site")
		}
		answer := must(http.DefaultClient.Do(r))(t)
		defer answer.Body.Close()
		var b bytes.Buffer
		b.ReadFrom(answer.Body)
		return answer.StatusCode, b.String()
	}
	root := "/" + s.Token + "/"
	for _, one := range []struct {
		name, path, host, origin, body string
		want                           int
	}{
		{"sound", root + "ask", "", "", `{}`, 200},
		{"own origin", root + "ask", "localhost" + s.Host[strings.LastIndex(s.Host, ":"):], "", `{}`, 200},
		{"no token", "/ask", "", "", `{}`, 403},
		{"another token", "/" + strings.Repeat("0", 32) + "/ask", "", "", `{}`, 403},
		{"another host", root + "ask", "example.com", "", `{}`, 421},
		{"another origin", root + "ask", "", "http://example.com", `{}`, 403},
		{"no JSON", root + "ask", "", "", `hello`, 400},
		{"too long", root + "ask", "", "", `{"text":"` + strings.Repeat("x", 2<<20) + `"}`, 413},
		{"unknown", root + "make", "", "", `{"kind":"exe"}`, 422},
	} {
		if got, said := ask(one.path, one.host, one.origin, one.body); got != one.want {
			t.Errorf("%s: status %d, want %d: %s", one.name, got, one.want, said)
		}
	}
	answer := must(http.Get(s.Address()))(t)
	answer.Body.Close()
	if policy := answer.Header.Get("Content-Security-Policy"); !strings.Contains(policy, "default-src 'none'") || strings.Contains(policy, "unsafe-inline") {
		t.Errorf("policy %q", policy)
	}
}

// What breaks is answered, and the page goes on.
func TestPageOutlivesAPanic(t *testing.T) {
	t.Parallel()
	s := served(t, nil)
	s.Desk.Run = nil // a call of it panics
	for _, one := range []struct {
		path, body string
		want       int
	}{{"make", `{"kind":"pdf"}`, 500}, {"ask", `{}`, 200}, {"make", `{"kind":"csv"}`, 500}} {
		answer := must(http.Post(s.Address()+one.path, "application/json", strings.NewReader(one.body)))(t)
		answer.Body.Close()
		if answer.StatusCode != one.want {
			t.Errorf("%s %s: status %d, want %d", one.path, one.body, answer.StatusCode, one.want)
		}
	}
}

// Ten thousand requests, many at a time, leave the server as it was.
func TestPageIsAskedMuch(t *testing.T) {
	t.Parallel()
	s := served(t, nil)
	many := 10000
	if testing.Short() {
		many = 300
	}
	body := fmt.Sprintf(`{"text":%q,"want":["plan"]}`, windowSeat(t))
	client := &http.Client{Transport: &http.Transport{MaxIdleConnsPerHost: 8}}
	var wait sync.WaitGroup
	for w := range 8 {
		wait.Go(func() {
			for i := w; i < many; i += 8 {
				path, text := "ask", `{}`
				if i%100 == 0 {
					text = body
				}
				answer, err := client.Post(s.Address()+path, "application/json", strings.NewReader(text))
				if err != nil {
					t.Error(err)
					return
				}
				io.Copy(io.Discard, answer.Body)
				answer.Body.Close()
				if answer.StatusCode != 200 {
					t.Errorf("request %d: %s", i, answer.Status)
					return
				}
			}
		})
	}
	wait.Wait()
}

// A design with mistakes is shown with them, and its fields can be put right.
func TestPageOfADesignWithMistakes(t *testing.T) {
	p := opened(t, strings.Replace(windowSeat(t), "inside = 260", "inside = \"long\"", 1))
	p.until(`document.getElementById('f-ring-inside').getAttribute('aria-invalid')`, "true")
	p.fill("f-ring-inside", "260")
	p.until(fmt.Sprintf(figureOn, "plan", "ring.inside"), "260 mm")
}

// What cannot be written is said, and nothing is lost.
func TestPageSaysWhatCannotBeSaved(t *testing.T) {
	p := opened(t, windowSeat(t))
	p.fill("f-ring-inside", "270")
	p.until(`document.getElementById('save').disabled`, "false")
	done(t, os.RemoveAll(filepath.Dir(p.file)))
	p.click("#save")
	p.until(`document.getElementById('status').textContent.includes('table.toml')`, "true")
	if got := p.js(`document.getElementById('f-ring-inside').value`); got != "270" {
		t.Errorf("the page holds %s", got)
	}
}

// The program ends with the last page, not with the first of two, and not for one that is
// loaded anew.
func TestLastPageEndsIt(t *testing.T) {
	t.Parallel()
	s := served(t, nil)
	gone := make(chan bool, 1)
	s.Gone, s.Linger = func() { gone <- true }, 300*time.Millisecond
	say := func(path, page string) {
		answer, err := http.Post(s.Address()+path, "text/plain", strings.NewReader(page))
		if err != nil || answer.StatusCode != 204 {
			t.Fatal(err, answer)
		}
		answer.Body.Close()
	}
	ended := func() bool {
		select {
		case <-gone:
			return true
		case <-time.After(time.Second):
			return false
		}
	}
	say("here", "a")
	say("here", "b")
	say("gone", "a")
	if ended() {
		t.Fatal("it ended with the first of two pages")
	}
	say("gone", "b")
	say("here", "c")
	if ended() {
		t.Fatal("it ended while a page was loaded anew")
	}
	say("gone", "c")
	if !ended() {
		t.Error("it goes on without a page")
	}
}

// A port in use, and a system without a browser, are told.
func TestOpenTells(t *testing.T) {
	l := must(net.Listen("tcp", "127.0.0.1:0"))(t)
	defer l.Close()
	_, port, _ := net.SplitHostPort(l.Addr().String())
	status, out, errs := start(t.Context(), "open", "--no-browser", "--port", port)
	if status != 2 || out != "" || !strings.Contains(errs, "cannot listen at port "+port) || !strings.Contains(errs, "hint: leave --port out") {
		t.Errorf("a port in use: status %d, %s%s", status, out, errs)
	}
	t.Setenv("PATH", t.TempDir())
	ctx, stop := context.WithTimeout(t.Context(), 200*time.Millisecond)
	defer stop()
	status, out, errs = start(ctx, "open")
	if status != 0 || !strings.HasPrefix(out, "http://127.0.0.1:") || !strings.Contains(errs, "no browser could be started") {
		t.Errorf("no browser: status %d, %s%s", status, out, errs)
	}
}

// What is measured on a printer is kept, and the page says what follows from it.
func TestPageKeepsAPrinter(t *testing.T) {
	t.Setenv("XDG_CONFIG_HOME", t.TempDir())
	t.Setenv("HOME", t.TempDir()) // where other systems keep it
	s := served(t, nil)
	s.Printers = printerNames
	for _, one := range []struct {
		body   string
		status int
		says   string
	}{
		{`{"name":"bench","across":"149.2","along":"200.9","diagonals":"250.4,250.0","units":"mm"}`, 200, "corrected for bench"},
		{`{"name":"bench","across":"14.92","along":"200.9"}`, 422, "across"},
		{`{"name":"--forget","across":"149.2","along":"200.9"}`, 422, ""},
	} {
		answer := must(http.Post(s.Address()+"printer", "application/json", strings.NewReader(one.body)))(t)
		said, err := io.ReadAll(answer.Body)
		answer.Body.Close()
		if err != nil || answer.StatusCode != one.status || !strings.Contains(string(said), one.says) {
			t.Errorf("%s: status %d, %s", one.body, answer.StatusCode, said)
		}
	}
	if got := printerNames(); len(got) != 1 || got[0] != "bench" {
		t.Errorf("kept are %q", got)
	}
}

// A published folder works from a plain file server: as it is with scripts off, and with
// the engine as the page does.
func TestPublished(t *testing.T) {
	if testing.Short() {
		t.Skip("builds the engine")
	}
	t.Parallel()
	dir := t.TempDir()
	design := filepath.Join(dir, "table.toml")
	done(t, os.WriteFile(design, []byte(windowSeat(t)), 0o600))
	engine := filepath.Join(dir, "engine")
	buildEngine(t, engine)
	for _, one := range []struct{ name, engine string }{{"still", "none"}, {"alive", engine}} {
		site := filepath.Join(dir, one.name)
		if status, _, errs := start(t.Context(), "publish", design, "-o", site, "--engine", one.engine); status != 0 {
			t.Fatal(errs)
		}
		l := must(net.Listen("tcp", "127.0.0.1:0"))(t)
		server := &http.Server{Handler: http.FileServer(http.Dir(site))}
		go server.Serve(l)
		t.Cleanup(func() { server.Close() })
		address := "http://" + l.Addr().String() + "/"
		t.Run(one.name, func(t *testing.T) {
			if one.engine == "none" {
				still(t, address, site, design)
				return
			}
			p := visit(t, "", address)
			inside := fmt.Sprintf(figureOn, "plan", "ring.inside")
			p.until(inside, "260 mm")
			p.fill("f-ring-inside", "270")
			p.until(inside, "270 mm")
			p.click("#tab-sheets")
			p.until(`document.querySelectorAll('#sheets [data-shown]').length > 0`, "true")
		})
	}
}

// still reads a published page with scripts off.
func still(t *testing.T, address, site, design string) {
	all, err := aBrowser()
	if err != nil {
		readback.Missing(t, "chromium")
	}
	ctx, cancel := chromedp.NewContext(all)
	defer cancel()
	p := &tab{T: t, ctx: ctx}
	p.call("Emulation.setScriptExecutionDisabled", map[string]any{"value": true})
	p.do(chromedp.Navigate(address))
	html := must(chromedp.Run(ctx, chromedp.OuterHTML(chromedp.CSS("html"))))(t)
	for _, want := range []string{`data-kind="leg"`, "The piece can be built", "table-a4.pdf", "table-letter.pdf", "design.toml", "Cut list", `class="card"`} {
		if !strings.Contains(html, want) {
			t.Errorf("the page lacks %q", want)
		}
	}
	if strings.Contains(html, "<script") {
		t.Error("a page without the engine holds a script")
	}
	got := must(os.ReadFile(filepath.Join(site, "table-a4.pdf")))(t)
	out := filepath.Join(t.TempDir(), "want.pdf")
	if status, _, errs := start(t.Context(), "piece", design, "--paper", "a4", "-o", out); status != 0 {
		t.Fatal(errs)
	}
	if want, err := os.ReadFile(out); err != nil || !bytes.Equal(got, want) {
		t.Errorf("the PDF is not that of the command: %v", err)
	}
}

// buildEngine builds this program for browsers.
func buildEngine(t *testing.T, dir string) {
	t.Helper()
	done(t, os.MkdirAll(dir, 0o755))
	c := exec.Command("go", "build", "-ldflags=-s -w", "-o", filepath.Join(dir, "engine.wasm"), ".")
	c.Env = append(os.Environ(), "GOOS=js", "GOARCH=wasm")
	if out, err := c.CombinedOutput(); err != nil {
		t.Fatalf("%v: %s", err, out)
	}
	root := must(exec.Command("go", "env", "GOROOT").Output())(t)
	data := must(os.ReadFile(filepath.Join(strings.TrimSpace(string(root)), "lib", "wasm", "wasm_exec.js")))(t)
	done(t, os.WriteFile(filepath.Join(dir, "wasm_exec.js"), data, 0o644))
}
