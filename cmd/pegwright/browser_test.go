//go:build renderers

package main

import (
	"bytes"
	"context"
	"os"
	"strings"
	"sync"
	"testing"
	"time"

	"github.com/chromedp/cdproto/runtime"
	"github.com/chromedp/chromedp"

	"pegwright/cmd/pegwright/live"
)

// page opens the view of a file in a browser without a window.
func openPage(t *testing.T, name string) (context.Context, *complaints) {
	t.Helper()
	l, err := live.Listen(0)
	if err != nil {
		t.Fatal(err)
	}
	ctx, stop := context.WithCancel(context.Background())
	t.Cleanup(stop)
	s := &streams{ctx: ctx, errs: &bytes.Buffer{}, out: &bytes.Buffer{}}
	go (&live.Server{Read: plainly(fileReader(name)), Solve: s.solver(name), Every: 50 * time.Millisecond}).Serve(ctx, l)
	opts := append(chromedp.DefaultExecAllocatorOptions[:], chromedp.NoSandbox, chromedp.WindowSize(1500, 950))
	alloc, stopAlloc := chromedp.NewExecAllocator(ctx, opts...)
	t.Cleanup(stopAlloc)
	tab, stopTab := chromedp.NewContext(alloc)
	t.Cleanup(stopTab)
	tab, stopTime := context.WithTimeout(tab, 90*time.Second)
	t.Cleanup(stopTime)
	c := &complaints{}
	chromedp.ListenTarget(tab, c.hear)
	do(t, tab, chromedp.Navigate("http://"+l.Addr().String()+"/"), until(`document.getElementById("status").textContent === "up to date"`))
	return tab, c
}

// complaints are what the browser's console says.
type complaints struct {
	mu   sync.Mutex
	list []string
}

func (c *complaints) hear(ev any) {
	c.mu.Lock()
	defer c.mu.Unlock()
	switch e := ev.(type) {
	case *runtime.EventConsoleAPICalled:
		c.list = append(c.list, string(e.Type))
	case *runtime.EventExceptionThrown:
		c.list = append(c.list, e.ExceptionDetails.Error())
	}
}

func do(t *testing.T, ctx context.Context, actions ...chromedp.Action) {
	t.Helper()
	if err := chromedp.Run(ctx, actions...); err != nil {
		t.Fatal(err)
	}
}

// until waits for an expression of the page to become true.
func until(expression string) chromedp.Action {
	return chromedp.Poll(expression, nil, chromedp.WithPollingInterval(50*time.Millisecond), chromedp.WithPollingTimeout(30*time.Second))
}

func value(t *testing.T, ctx context.Context, expression string) string {
	t.Helper()
	var v string
	do(t, ctx, chromedp.Evaluate("String("+expression+")", &v))
	return v
}

// The whole life of the page: open, save, break, mend, try a value, keyboard.
func TestViewInABrowser(t *testing.T) {
	within(t)
	put(t, "rail.yaml", rail(t))
	ctx, c := openPage(t, "rail.yaml")
	if n := value(t, ctx, `document.querySelectorAll("#sheets option").length`); n == "0" || n == "1" {
		t.Fatalf("%s sheets", n)
	}
	const drawing = `document.querySelector("#paper svg").outerHTML`
	first := value(t, ctx, drawing)

	save := strings.Replace(rail(t), "frame: ", "frame: New ", 1)
	put(t, "rail.yaml", save)
	do(t, ctx, until(`document.title.startsWith("New ")`), until(`document.getElementById("status").textContent === "up to date"`))
	good := value(t, ctx, drawing)
	if good == first {
		t.Error("a save does not redraw")
	}

	put(t, "rail.yaml", strings.Replace(save, "units:", "unit:", 1))
	do(t, ctx, until(`document.querySelectorAll("#faults .message").length > 0`))
	if value(t, ctx, drawing) != good {
		t.Error("a broken file takes the last drawing away")
	}
	if text := value(t, ctx, `document.getElementById("faults").textContent`); !strings.Contains(text, "unit") {
		t.Errorf("the fault says %q", text)
	}
	put(t, "rail.yaml", save)
	do(t, ctx, until(`document.querySelectorAll("#faults .message").length === 0`))

	do(t, ctx, chromedp.Focus("#paper"), chromedp.KeyEvent("+"))
	if box := value(t, ctx, `document.querySelector("#paper svg").getAttribute("viewBox")`); strings.HasPrefix(box, "0 0 ") {
		t.Errorf("plus does not bring the sheet closer: %s", box)
	}
	before := value(t, ctx, `document.getElementById("sheets").value`)
	do(t, ctx, chromedp.KeyEvent("0"), chromedp.Click("#after"), until(`document.getElementById("sheets").value !== "`+before+`"`))
	outside := value(t, ctx, `performance.getEntriesByType("resource").map(e => new URL(e.name)).filter(u => u.protocol !== "data:" && u.host !== location.host).length`)
	if outside != "0" {
		t.Errorf("%s requests go elsewhere", outside)
	}
	c.mu.Lock()
	defer c.mu.Unlock()
	if len(c.list) > 0 {
		t.Errorf("the console says %v", c.list)
	}
}

// A file that is taken away is told, with the last drawing left in place; one
// that comes back by a rename, as editors save, is drawn again.
func TestViewOfAFileThatGoes(t *testing.T) {
	within(t)
	put(t, "rail.yaml", rail(t))
	ctx, c := openPage(t, "rail.yaml")
	must(t, os.Remove("rail.yaml"))
	do(t, ctx, until(`document.getElementById("status").textContent.includes("there is no such file")`))
	if value(t, ctx, `document.querySelectorAll("#paper svg").length`) != "1" {
		t.Error("the last drawing is gone, too")
	}
	put(t, ".rail.new", strings.Replace(rail(t), "frame: ", "frame: New ", 1))
	must(t, os.Rename(".rail.new", "rail.yaml"))
	do(t, ctx, until(`document.title.startsWith("New ") && document.getElementById("status").textContent === "up to date"`))
	c.mu.Lock()
	defer c.mu.Unlock()
	for _, text := range c.list {
		t.Errorf("the console says %s", text)
	}
}

// On a narrow screen the sheet comes first, large enough to read, and nothing
// runs out at the side.
func TestViewOnANarrowScreen(t *testing.T) {
	within(t)
	put(t, "rail.yaml", rail(t))
	ctx, _ := openPage(t, "rail.yaml")
	do(t, ctx, chromedp.EmulateViewport(390, 844))
	for what, holds := range map[string]string{
		"the sheet is half the screen": `document.getElementById("paper").getBoundingClientRect().height > 400`,
		"the sheet is in sight":        `document.getElementById("paper").getBoundingClientRect().bottom < innerHeight`,
		"the findings come below it":   `document.getElementById("side").getBoundingClientRect().top >= document.getElementById("paper").getBoundingClientRect().bottom - 1`,
		"nothing runs out":             `Math.max(...[...document.querySelectorAll("header, #tools *, #paper, #values *")].map(e => e.getBoundingClientRect().right)) <= 390`,
	} {
		if value(t, ctx, holds) != "true" {
			t.Errorf("not so: %s", what)
		}
	}
}

// A value typed on the page redraws and leaves the file as it is.
func TestViewTriesValues(t *testing.T) {
	within(t)
	put(t, "rail.yaml", drawn(t))
	ctx, _ := openPage(t, "rail.yaml")
	was := value(t, ctx, `document.getElementById("findings").textContent`)
	do(t, ctx, chromedp.SetValue(`input[name="draw"]`, "3/8"),
		chromedp.Evaluate(`document.querySelector('input[name="draw"]').dispatchEvent(new Event("change"))`, nil),
		until(`document.querySelectorAll("#findings .stop").length > 0`))
	if src, _ := os.ReadFile("rail.yaml"); string(src) != drawn(t) {
		t.Error("the file changed")
	}
	do(t, ctx, chromedp.Click(`#values button[type="reset"]`), until(`document.querySelectorAll("#findings .stop").length === 0`))
	if now := value(t, ctx, `document.getElementById("findings").textContent`); now != was {
		t.Errorf("after going back to the file:\n%s\nwas\n%s", now, was)
	}
}

// With PEGWRIGHT_PICTURE=file the page of the default sample is kept as a
// picture for the README.
func TestViewOfTheDefaultSample(t *testing.T) {
	within(t)
	src, err := sampleReader()()
	if err != nil {
		t.Fatal(err)
	}
	put(t, "store.yaml", string(src))
	ctx, _ := openPage(t, "store.yaml")
	if n := value(t, ctx, `document.querySelectorAll("#fields input").length`); n == "0" {
		t.Error("the page offers no parameters")
	}
	if shot := os.Getenv("PEGWRIGHT_PICTURE"); shot != "" {
		var png []byte
		do(t, ctx, chromedp.FullScreenshot(&png, 100))
		if err := os.WriteFile(shot, png, 0o666); err != nil {
			t.Fatal(err)
		}
	}
}
