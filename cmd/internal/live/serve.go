//go:build !js

package live

import (
	"bytes"
	"context"
	"crypto/rand"
	"crypto/subtle"
	"encoding/hex"
	"encoding/json"
	"errors"
	"fmt"
	"io"
	"net"
	"net/http"
	"strings"
	"sync"
	"time"
)

// What a request may take. No design comes near to it.
const (
	mostBytes = 1 << 20
	mostTime  = 60 * time.Second
)

// A File is where a design is kept. Read returns its text and Write replaces it as a
// whole if it still reads as it did, else it returns what stands there now and
// ErrChanged.
type File interface {
	Name() string
	Read() ([]byte, error)
	Write(text, base []byte) (now []byte, err error)
}

// ErrChanged says that a file is not as it was read.
var ErrChanged = errors.New("live: the file has been changed meanwhile")

// A Server serves one page about one file to browsers of this machine.
type Server struct {
	*Desk
	File     File // nil for none
	Version  string
	Caution  string          // at the foot of the page
	Token    string          // stands in the address; nobody without it gets an answer
	Host     string          // the address that is listened at
	Printers func() []string // that were measured
	// Gone is called when the last page has said that it goes, and none has come for
	// Linger; nil asks for nothing.
	Gone   func()
	Linger time.Duration
	pages  pages
}

// NewToken returns a token that cannot be guessed.
func NewToken() string {
	var b [16]byte
	rand.Read(b[:]) // never fails
	return hex.EncodeToString(b[:])
}

// Handler returns what answers requests. It serves below the token only, to requests
// that name this machine as their host, and changes nothing for one from another page.
func (s *Server) Handler() http.Handler {
	mux := http.NewServeMux()
	root := "/" + s.Token + "/"
	mux.HandleFunc("GET "+root+"{$}", s.page)
	mux.Handle("GET "+root+"static/", http.StripPrefix(root+"static/", http.FileServerFS(Assets())))
	mux.HandleFunc("POST "+root+"ask", answer(func(ctx context.Context, r Request) (any, error) { return s.Ask(ctx, r), nil }))
	mux.HandleFunc("POST "+root+"make", s.make)
	mux.HandleFunc("POST "+root+"printer", answer(s.printer))
	mux.HandleFunc("GET "+root+"file", s.read)
	mux.HandleFunc("POST "+root+"file", answer(s.write))
	mux.HandleFunc("POST "+root+"here", s.counted(s.come))
	mux.HandleFunc("POST "+root+"gone", s.counted(s.leave))
	return s.guarded(http.NewCrossOriginProtection().Handler(http.TimeoutHandler(mux, mostTime, tooLong.With())))
}

// policy lets the page load what this server has and nothing else, and run no script
// that stands in the page itself.
const policy = "default-src 'none'; script-src 'self' 'wasm-unsafe-eval'; style-src 'self'; img-src 'self' blob:; " +
	"connect-src 'self'; worker-src 'self'; form-action 'none'; base-uri 'none'; frame-ancestors 'none'"

// guarded refuses what does not come from a page of this server, and makes an error of
// a panic.
func (s *Server) guarded(next http.Handler) http.Handler {
	return http.HandlerFunc(func(w http.ResponseWriter, r *http.Request) {
		defer func() {
			if p := recover(); p != nil {
				http.Error(w, broken.With(), http.StatusInternalServerError)
			}
		}()
		h := w.Header()
		h.Set("Content-Security-Policy", policy)
		h.Set("X-Content-Type-Options", "nosniff")
		h.Set("Referrer-Policy", "no-referrer")
		h.Set("Cache-Control", "no-store")
		if !s.here(r.Host) {
			http.Error(w, otherHost.With(), http.StatusMisdirectedRequest)
			return
		}
		token, _, _ := strings.Cut(strings.TrimPrefix(r.URL.Path, "/"), "/")
		if subtle.ConstantTimeCompare([]byte(token), []byte(s.Token)) != 1 {
			http.Error(w, noToken.With(), http.StatusForbidden)
			return
		}
		r.Body = http.MaxBytesReader(w, r.Body, mostBytes)
		next.ServeHTTP(w, r)
	})
}

// here reports whether a host is the one that is listened at: a name of another machine
// that leads here is none of ours.
func (s *Server) here(host string) bool {
	_, port, err := net.SplitHostPort(s.Host)
	return host == s.Host || err == nil && host == net.JoinHostPort("localhost", port)
}

func answer[In any](do func(context.Context, In) (any, error)) http.HandlerFunc {
	return func(w http.ResponseWriter, r *http.Request) {
		var in In
		if !decode(w, r, &in) {
			return
		}
		out, err := do(r.Context(), in)
		if err != nil {
			http.Error(w, err.Error(), http.StatusUnprocessableEntity)
			return
		}
		reply(w, out)
	}
}

// reply writes a value as JSON, HTML in it as it is.
func reply(w http.ResponseWriter, v any) {
	w.Header().Set("Content-Type", "application/json")
	e := json.NewEncoder(w)
	e.SetEscapeHTML(false)
	e.Encode(v)
}

func decode(w http.ResponseWriter, r *http.Request, into any) bool {
	err := json.NewDecoder(r.Body).Decode(into)
	var large *http.MaxBytesError
	switch {
	case err == nil:
		return true
	case errors.As(err, &large):
		http.Error(w, tooLarge.With(mostBytes>>20), http.StatusRequestEntityTooLarge)
	default:
		http.Error(w, notAsked.With(), http.StatusBadRequest)
	}
	return false
}

func (s *Server) make(w http.ResponseWriter, r *http.Request) {
	var o Order
	if !decode(w, r, &o) {
		return
	}
	p, err := s.Make(r.Context(), o)
	if err != nil {
		http.Error(w, err.Error(), http.StatusUnprocessableEntity)
		return
	}
	w.Header().Set("Content-Type", p.Type)
	w.Write(p.Data)
}

// A Reading is what was measured on a printer, in the words of the command line.
type Reading struct {
	Name      string `json:"name"`
	Across    string `json:"across"`
	Along     string `json:"along"`
	Diagonals string `json:"diagonals"`
	Units     string `json:"units"`
}

func (s *Server) printer(ctx context.Context, r Reading) (any, error) {
	args := []string{"printer", "--across", r.Across, "--along", r.Along}
	if r.Diagonals != "" {
		args = append(args, "--diagonals", r.Diagonals)
	}
	if r.Units != "" {
		args = append(args, "--units", r.Units)
	}
	out, complaint := s.Run(ctx, append(args, "--", r.Name), nil)
	if complaint != "" {
		return nil, errors.New(complaint)
	}
	return map[string]any{"words": string(out), "printers": s.printers()}, nil
}

func (s *Server) printers() []string {
	if s.Printers == nil {
		return nil
	}
	return s.Printers()
}

// A Kept is the file as it stands, or as it is to be.
type Kept struct {
	Name string `json:"name"`
	Text string `json:"text"`
	Base string `json:"base,omitempty"` // what was read before
	// Changed says that the file was not written, since it reads as Text and not as Base.
	Changed bool `json:"changed,omitempty"`
}

func (s *Server) read(w http.ResponseWriter, r *http.Request) {
	var kept any // null where there is no file
	if s.File != nil {
		text, err := s.File.Read()
		if err != nil {
			http.Error(w, err.Error(), http.StatusUnprocessableEntity)
			return
		}
		kept = Kept{Name: s.File.Name(), Text: string(text)}
	}
	reply(w, kept)
}

func (s *Server) write(_ context.Context, k Kept) (any, error) {
	if s.File == nil {
		return nil, errors.New(noFile.With())
	}
	now, err := s.File.Write([]byte(k.Text), []byte(k.Base))
	switch {
	case errors.Is(err, ErrChanged):
		return Kept{Name: s.File.Name(), Text: string(now), Changed: true}, nil
	case err != nil:
		return nil, err
	}
	return Kept{Name: s.File.Name(), Text: k.Text}, nil
}

func (s *Server) page(w http.ResponseWriter, r *http.Request) {
	p := Page{Version: s.Version, Caution: s.Caution, Printers: s.printers()}
	if s.File != nil {
		p.Name = s.File.Name()
	}
	var b bytes.Buffer
	if err := p.Write(&b); err != nil {
		http.Error(w, err.Error(), http.StatusInternalServerError)
		return
	}
	w.Header().Set("Content-Type", "text/html; charset=utf-8")
	b.WriteTo(w)
}

// pages are those that are open, by the names that they gave themselves.
type pages struct {
	sync.Mutex
	open  map[string]bool
	timer *time.Timer
}

// counted makes a handler of what is done for a page that names itself.
func (s *Server) counted(do func(page string)) http.HandlerFunc {
	return func(w http.ResponseWriter, r *http.Request) {
		name, err := io.ReadAll(io.LimitReader(r.Body, 64))
		if err != nil {
			http.Error(w, notAsked.With(), http.StatusBadRequest)
			return
		}
		s.pages.Lock()
		defer s.pages.Unlock()
		do(string(name))
		w.WriteHeader(http.StatusNoContent)
	}
}

func (s *Server) come(page string) {
	if s.pages.open == nil {
		s.pages.open = map[string]bool{}
	}
	s.pages.open[page] = true
	if s.pages.timer != nil {
		s.pages.timer.Stop()
		s.pages.timer = nil
	}
}

// leave waits for a page that is only loaded anew.
func (s *Server) leave(page string) {
	delete(s.pages.open, page)
	if s.Gone != nil && len(s.pages.open) == 0 && s.pages.timer == nil {
		s.pages.timer = time.AfterFunc(s.Linger, s.Gone)
	}
}

// Address returns where the page is.
func (s *Server) Address() string { return fmt.Sprintf("http://%s/%s/", s.Host, s.Token) }
