package live

import (
	"context"
	_ "embed"
	"encoding/json"
	"errors"
	"fmt"
	"mime"
	"net"
	"net/http"
	"path"
	"slices"
	"strings"
	"time"
)

//go:embed page.html
var pageHTML []byte

//go:embed page.js
var pageJS []byte

//go:embed page.css
var pageCSS []byte

// Server shows one description.
type Server struct {
	Read  func() ([]byte, error) // the description as it is now
	Solve Solver
	Sets  map[string]string // parameters given on the command line
	Every time.Duration     // how often the description is looked at; 0 for 300 ms

	book *book
	host []string // what the Host header may say
}

// Listen takes a port of the loopback address, 0 for any that is free. It fails
// when the port is taken.
func Listen(port int) (net.Listener, error) {
	return net.Listen("tcp", fmt.Sprintf("127.0.0.1:%d", port))
}

// Serve answers requests on l until ctx ends. l must listen on loopback.
func (s *Server) Serve(ctx context.Context, l net.Listener) error {
	addr, ok := l.Addr().(*net.TCPAddr)
	if !ok || !addr.IP.IsLoopback() {
		return errors.New("the page is served on the loopback address only")
	}
	for _, name := range []string{"127.0.0.1", "localhost"} {
		s.host = append(s.host, fmt.Sprintf("%s:%d", name, addr.Port))
		if addr.Port == 80 { // a browser leaves the usual port away
			s.host = append(s.host, name)
		}
	}
	s.book = &book{solve: s.Solve}
	srv := &http.Server{Handler: s.guard(s.routes()), ReadHeaderTimeout: 5 * time.Second, BaseContext: func(net.Listener) context.Context { return ctx }}
	go func() {
		<-ctx.Done()
		srv.Close()
	}()
	if err := srv.Serve(l); err != nil && !errors.Is(err, http.ErrServerClosed) {
		return err
	}
	return nil
}

func (s *Server) routes() http.Handler {
	m := http.NewServeMux()
	m.HandleFunc("GET /{$}", fixed("text/html; charset=utf-8", pageHTML))
	m.HandleFunc("GET /page.js", fixed("text/javascript; charset=utf-8", pageJS))
	m.HandleFunc("GET /page.css", fixed("text/css; charset=utf-8", pageCSS))
	m.HandleFunc("GET /state", s.serveState)
	m.HandleFunc("GET /changes", s.serveChanges)
	m.HandleFunc("GET /sheets/{key}", s.serveSheets)
	m.HandleFunc("GET /of/{key}/{file...}", s.serveFile)
	return m
}

// guard turns away whatever another page of the browser, or another name for
// this machine, could have sent, and tells the browser to fetch from here only.
func (s *Server) guard(next http.Handler) http.Handler {
	return http.HandlerFunc(func(w http.ResponseWriter, r *http.Request) {
		site, origin := r.Header.Get("Sec-Fetch-Site"), r.Header.Get("Origin")
		if !slices.Contains(s.host, r.Host) || site == "cross-site" || site == "same-site" || origin != "" && origin != "http://"+r.Host {
			http.Error(w, "this page answers on its own address only", http.StatusForbidden)
			return
		}
		h := w.Header()
		h.Set("Content-Security-Policy", "default-src 'none'; script-src 'self'; style-src 'self' 'unsafe-inline'; img-src 'self' data:; font-src data:; connect-src 'self'; base-uri 'none'; form-action 'none'; frame-ancestors 'none'")
		h.Set("X-Content-Type-Options", "nosniff")
		h.Set("Referrer-Policy", "no-referrer")
		h.Set("Cross-Origin-Resource-Policy", "same-origin")
		h.Set("Cache-Control", "no-store")
		next.ServeHTTP(w, r)
	})
}

func fixed(kind string, body []byte) http.HandlerFunc {
	return func(w http.ResponseWriter, _ *http.Request) {
		w.Header().Set("Content-Type", kind)
		w.Write(body)
	}
}

// settings returns the parameters of a request laid over those of the command
// line.
func (s *Server) settings(r *http.Request) map[string]string {
	sets := map[string]string{}
	for k, v := range s.Sets {
		sets[k] = v
	}
	for _, v := range r.URL.Query()["set"] {
		if name, value, ok := strings.Cut(v, "="); ok && name != "" && strings.TrimSpace(value) != "" {
			sets[name] = strings.TrimSpace(value)
		}
	}
	return sets
}

func (s *Server) serveState(w http.ResponseWriter, r *http.Request) {
	source, err := s.Read()
	if err != nil {
		http.Error(w, err.Error(), http.StatusServiceUnavailable)
		return
	}
	body, err := json.Marshal(s.book.state(source, s.settings(r)))
	if err != nil {
		http.Error(w, err.Error(), http.StatusInternalServerError)
		return
	}
	w.Header().Set("Content-Type", "application/json")
	w.Write(body)
}

// serveSheets draws and lists the sheets of a drawing.
func (s *Server) serveSheets(w http.ResponseWriter, r *http.Request) {
	d := s.book.find(r.PathValue("key"))
	if d == nil || d.solved.Draw == nil {
		http.Error(w, "that drawing is gone", http.StatusNotFound)
		return
	}
	p, err := d.drawn()
	if err != nil {
		http.Error(w, err.Error(), http.StatusInternalServerError)
		return
	}
	w.Header().Set("Content-Type", "application/json")
	w.Write(sheetsJSON(p))
}

// serveFile gives one file of a drawn packet, out of memory.
func (s *Server) serveFile(w http.ResponseWriter, r *http.Request) {
	name := r.PathValue("file")
	d := s.book.find(r.PathValue("key"))
	if d == nil || d.solved.Draw == nil {
		http.NotFound(w, r)
		return
	}
	if _, err := d.drawn(); err != nil {
		http.Error(w, err.Error(), http.StatusInternalServerError)
		return
	}
	data, ok := d.files[name]
	if !ok {
		http.NotFound(w, r)
		return
	}
	if r.URL.Query().Has("download") {
		w.Header().Set("Content-Disposition", mime.FormatMediaType("attachment", map[string]string{"filename": path.Base(name)}))
	}
	kind := mime.TypeByExtension(path.Ext(name))
	if kind == "" {
		kind = "application/octet-stream"
	}
	w.Header().Set("Content-Type", kind)
	w.Write(data)
}

// patience is how often in a row a description cannot be read before the page
// is told: an editor that saves by renaming takes the file away for a moment.
const patience = 3

// serveChanges tells the page whenever the description is another, or gone.
func (s *Server) serveChanges(w http.ResponseWriter, r *http.Request) {
	flush, ok := w.(http.Flusher)
	if !ok {
		http.Error(w, "no stream", http.StatusInternalServerError)
		return
	}
	w.Header().Set("Content-Type", "text/event-stream")
	every := s.Every
	if every == 0 {
		every = 300 * time.Millisecond
	}
	tick := time.NewTicker(every)
	defer tick.Stop()
	last, missed := "", 0
	for {
		key := "gone"
		source, err := s.Read()
		if missed++; err == nil {
			key, missed = keyOf(source, nil), 0
		}
		if key != last && (missed == 0 || missed == patience) {
			last = key
			fmt.Fprintf(w, "data: %s\n\n", key)
			flush.Flush()
		}
		select {
		case <-r.Context().Done():
			return
		case <-tick.C:
		}
	}
}
