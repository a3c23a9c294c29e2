package live

import (
	"bufio"
	"context"
	"encoding/json"
	"errors"
	"io"
	"net"
	"net/http"
	"net/url"
	"strings"
	"sync"
	"testing"
	"time"

	"pegwright/draw/packet"
	"pegwright/geom/finding"
)

// file is a description that tests save again and again.
type file struct {
	mu   sync.Mutex
	text string
	lost int // how many reads fail
}

func (f *file) save(text string) { f.mu.Lock(); f.text = text; f.mu.Unlock() }

// lose lets the next reads fail, and has another text after them.
func (f *file) lose(reads int) {
	f.mu.Lock()
	defer f.mu.Unlock()
	f.lost, f.text = reads, "back"
}

func (f *file) read() ([]byte, error) {
	f.mu.Lock()
	defer f.mu.Unlock()
	if f.lost > 0 {
		f.lost--
		return nil, errors.New("there is no such file")
	}
	if f.text == "" {
		return nil, errors.New("there is no such file")
	}
	return []byte(f.text), nil
}

// pretend solves by looking for a word, so that these tests are about the
// server alone.
func pretend(source []byte, sets map[string]string) Solved {
	text := string(source)
	if strings.Contains(text, "broken") {
		return Solved{Faults: finding.Faults{{At: finding.Pos{Line: 1, Col: 3}, Source: "broken", Text: "bad", Mend: "mend it"}}}
	}
	return Solved{Title: text + sets["width"], Parameters: []Parameter{{"width", "8'", "8'-0\""}},
		Findings: []finding.Finding{{Severity: finding.Warn, Rule: "stick", Text: "thin", At: finding.Pos{Line: 1, Col: 1}, Joints: []string{"a"}}},
		Draw: func() (*packet.Packet, error) {
			return &packet.Packet{Files: []packet.File{{Path: "svg/001-frame-1.svg", Data: []byte("<svg>" + text + "</svg>")}},
				Contents: []packet.Entry{{Number: 1, Kind: "frame", ID: "frame", Title: "The frame", Group: "Start here", SVG: "svg/001-frame-1.svg"}}}, nil
		}}
}

// served starts a server and returns its address and the file it shows.
func served(t *testing.T, text string) (string, *file) {
	t.Helper()
	l, err := Listen(0)
	if err != nil {
		t.Fatal(err)
	}
	f := &file{text: text}
	s := &Server{Read: f.read, Solve: pretend, Every: 5 * time.Millisecond}
	ctx, stop := context.WithCancel(context.Background())
	done := make(chan error)
	go func() { done <- s.Serve(ctx, l) }()
	t.Cleanup(func() {
		stop()
		if err := <-done; err != nil {
			t.Error(err)
		}
	})
	return l.Addr().String(), f
}

// ask sends one request as written, and returns the status and the body.
func ask(t *testing.T, addr, target string, head map[string]string) (int, string) {
	t.Helper()
	req, err := http.NewRequest("GET", "http://"+addr+"/", nil)
	if err != nil {
		t.Fatal(err)
	}
	req.URL.Opaque = target // sent as it stands, dots and all
	for k, v := range head {
		req.Header.Set(k, v)
	}
	if h := head["Host"]; h != "" {
		req.Host = h
	}
	client := &http.Client{CheckRedirect: func(*http.Request, []*http.Request) error { return http.ErrUseLastResponse }}
	r, err := client.Do(req)
	if err != nil {
		t.Fatal(err)
	}
	defer r.Body.Close()
	b, _ := io.ReadAll(r.Body)
	return r.StatusCode, string(b)
}

func stateOf(t *testing.T, addr, query string) state {
	t.Helper()
	code, body := ask(t, addr, "/state"+query, nil)
	if code != 200 {
		t.Fatalf("state: %d %s", code, body)
	}
	var s state
	if err := json.Unmarshal([]byte(body), &s); err != nil {
		t.Fatal(err)
	}
	return s
}

func TestOnlyItsOwnAddressIsAnswered(t *testing.T) {
	addr, _ := served(t, "good")
	_, port, _ := net.SplitHostPort(addr)
	for _, c := range []struct {
		head map[string]string
		want int
	}{
		{nil, 200},
		{map[string]string{"Host": "localhost:" + port}, 200},
		{map[string]string{"Host": "shed.example:" + port}, 403},
		{map[string]string{"Host": "127.0.0.1"}, 403},
		{map[string]string{"Host": "127.0.0.1:1"}, 403},
		{map[string]string{"Sec-Fetch-Site": "cross-site"}, 403},
		{map[string]string{"Sec-Fetch-Site": "same-origin"}, 200},
		{map[string]string{"Sec-Fetch-Site": "none"}, 200}, // typed into the address bar
		{map[string]string{"Origin": "http://shed.example"}, 403},
		{map[string]string{"Origin": "http://localhost:1"}, 403},
		{map[string]string{"Origin": "null"}, 403},
		{map[string]string{"Origin": "http://" + addr}, 200},
		{map[string]string{"Origin": "https://" + addr}, 403},
	} {
		for _, target := range []string{"/", "/state", "/page.js"} {
			if code, _ := ask(t, addr, target, c.head); code != c.want {
				t.Errorf("%v %s: %d, want %d", c.head, target, code, c.want)
			}
		}
	}
	if host, _, _ := net.SplitHostPort(addr); !net.ParseIP(host).IsLoopback() {
		t.Errorf("listens on %s", addr)
	}
}

func TestNoPathLeavesThePacket(t *testing.T) {
	addr, _ := served(t, "good")
	key := stateOf(t, addr, "").Show
	for _, target := range []string{"/etc/passwd", "/../etc/passwd", "/of/" + key + "/../../etc/passwd", "/of/" + key + "/%2e%2e/%2e%2e/etc/passwd",
		"/of/" + key + "//etc/passwd", "/of/" + key + "/svg/..%2f..%2fserver.go", "/of/" + key + "/", "/of/x/svg/001-frame-1.svg", "/server.go"} {
		if code, body := ask(t, addr, target, nil); code == 200 || strings.Contains(body, "root:") {
			t.Errorf("%s: %d %.60s", target, code, body)
		}
	}
	if code, body := ask(t, addr, "/of/"+key+"/svg/001-frame-1.svg", nil); code != 200 || body != "<svg>good</svg>" {
		t.Errorf("the sheet itself: %d %s", code, body)
	}
}

func TestTheLastGoodDrawingStays(t *testing.T) {
	addr, f := served(t, "good")
	first := stateOf(t, addr, "")
	for i := range 2 * kept {
		f.save("x broken " + strings.Repeat("again ", i))
		s := stateOf(t, addr, "")
		if s.Show != first.Show || len(s.Faults) != 1 || s.Faults[0].Line != 1 || s.Title != "good" || len(s.Findings) != 1 {
			t.Fatalf("%+v", s)
		}
	}
	if code, body := ask(t, addr, "/of/"+first.Show+"/svg/001-frame-1.svg", nil); code != 200 || !strings.Contains(body, "good") {
		t.Errorf("the last good sheet: %d %s", code, body)
	}
	f.save("better")
	if s := stateOf(t, addr, ""); s.Show == first.Show || len(s.Faults) != 0 || s.Title != "better" {
		t.Errorf("%+v", s)
	}
}

func TestValuesDoNotTouchTheFile(t *testing.T) {
	addr, f := served(t, "good ")
	s := stateOf(t, addr, "?set="+url.QueryEscape("width=9'"))
	if s.Title != "good 9'" || f.text != "good " {
		t.Errorf("%+v, file %q", s, f.text)
	}
	if stateOf(t, addr, "").Title != "good " {
		t.Error("a value outlives its request")
	}
}

// told returns what the stream of changes says, one after another.
func told(t *testing.T, addr string) (next func() string) {
	t.Helper()
	r, err := http.Get("http://" + addr + "/changes")
	if err != nil {
		t.Fatal(err)
	}
	t.Cleanup(func() { r.Body.Close() })
	lines := bufio.NewScanner(r.Body)
	return func() string {
		for lines.Scan() {
			if data, ok := strings.CutPrefix(lines.Text(), "data: "); ok {
				return data
			}
		}
		t.Fatal("the stream ended")
		return ""
	}
}

func TestASaveIsToldOnce(t *testing.T) {
	addr, f := served(t, "one")
	next := told(t, addr)
	seen := map[string]bool{next(): true}
	for _, text := range []string{"two", "", "three"} { // "": gone, and told as such
		f.save(text)
		want := "gone"
		if text != "" {
			want = keyOf([]byte(text), nil)
		}
		if key := next(); seen[key] || key != want {
			t.Errorf("%s: told %s", text, key)
		} else {
			seen[key] = true
		}
	}
}

// An editor that saves by renaming takes the file away for a moment: that is
// not told, only what comes after it.
func TestAMomentWithoutAFileIsNotTold(t *testing.T) {
	addr, f := served(t, "one")
	next := told(t, addr)
	next()
	f.lose(patience - 1)
	if key := next(); key != keyOf([]byte("back"), nil) {
		t.Errorf("told %s", key)
	}
}
