package html_test

import (
	"bytes"
	"context"
	"fmt"
	"net/url"
	"os"
	"path/filepath"
	"strings"
	"sync"
	"testing"
	"time"

	"github.com/chromedp/cdproto/log"
	"github.com/chromedp/cdproto/network"
	"github.com/chromedp/cdproto/runtime"
	"github.com/chromedp/chromedp"

	"stepoff/layout/layouttest"
	"stepoff/layout/lesson"
	"stepoff/pdfout/booklet"
	"stepoff/pdfout/html"
	"stepoff/pdfout/pdftest"
	"stepoff/spec/measure"
)

// screen writes an example's lesson as a page.
func screen(t *testing.T, example string) []byte {
	t.Helper()
	s, code := layouttest.Example(t, example)
	doc, err := booklet.Lesson(s, booklet.Options{Style: measure.Style{Units: s.Job.Units}, Code: code, Level: lesson.Full, Stamp: []string{"a <stamp> & more"}})
	if err != nil {
		t.Fatal(err)
	}
	var out bytes.Buffer
	if err := html.Write(&out, doc); err != nil {
		t.Fatal(err)
	}
	return out.Bytes()
}

// seen is what a browser had to say of a page.
type seen struct {
	sync.Mutex
	wrong []string
}

func (s *seen) say(format string, args ...any) {
	s.Lock()
	defer s.Unlock()
	s.wrong = append(s.wrong, fmt.Sprintf(format, args...))
}

func (s *seen) listen(own string) func(any) {
	return func(event any) {
		switch e := event.(type) {
		case *network.EventRequestWillBeSent:
			if u := e.Request.URL; u != own && !strings.HasPrefix(u, "data:") {
				s.say("asks for %s", u)
			}
		case *runtime.EventConsoleAPICalled:
			s.say("the console says %s", e.Type)
		case *runtime.EventExceptionThrown:
			s.say("fails: %s", e.ExceptionDetails.Text)
		case *log.EventEntryAdded:
			s.say("the log says %s: %s", e.Entry.Level, e.Entry.Text)
		}
	}
}

// screens are the widths and heights of a phone and of a desk's screen, in pixels.
var screens = map[string][2]int64{"phone": {360, 740}, "desk": {1280, 900}}

// leastLetters is how high the font of a figure's smallest writing is on a phone
// at least, in pixels: smaller is not read without enlarging.
const leastLetters = 9

// patience is how long a browser may take to start on a busy machine.
const patience = 2 * time.Minute

// Opened in a browser, a lesson asks for nothing, has nothing on its console, does
// not run out of the screen sideways, and its figures are large enough to read. It
// prints to a PDF.
func TestInABrowser(t *testing.T) {
	browser := start(t)
	for _, example := range []string{"loft", "winder-l", "curved", "cellar"} {
		file := screen(t, "../../examples/"+example+".yaml")
		for name, size := range screens {
			t.Run(example+" "+name, func(t *testing.T) {
				wrong, got, printed := open(t, browser, file, size)
				for _, w := range wrong {
					t.Error(w)
				}
				if got.Wide > got.Room {
					t.Errorf("the page is %g wide on a screen of %g", got.Wide, got.Room)
				}
				if got.Letters < leastLetters {
					t.Errorf("the smallest letters of a figure are %.1f pixels high", got.Letters)
				}
				if got.Figures < 10 || got.Figures != got.Captions {
					t.Errorf("%d figures, %d captions", got.Figures, got.Captions)
				}
				if got.Text != "a <stamp> & more" {
					t.Errorf("the stamp reads %q", got.Text)
				}
				if !bytes.HasPrefix(printed, []byte("%PDF-")) {
					t.Error("it does not print")
				}
			})
		}
	}
}

// What the test above looks for is found where it is.
func TestTheBrowserTells(t *testing.T) {
	browser := start(t)
	page := `<!DOCTYPE html><html><head><link rel="icon" href="data:,"></head><body><p class="stamp">x</p><div style="width: 2000px">wide</div>
<figure><svg viewBox="0 0 100 10"><text font-size="1">small</text></svg></figure>
<img src="picture.png"><script>console.error("no"); missing()</script></body></html>`
	wrong, got, _ := open(t, browser, []byte(page), screens["phone"])
	all := strings.Join(wrong, "\n")
	for _, want := range []string{"asks for file:", "the console says", "fails:", "the log says"} {
		if !strings.Contains(all, want) {
			t.Errorf("nobody says %q of a page that deserves it:\n%s", want, all)
		}
	}
	if got.Wide <= got.Room || got.Letters >= leastLetters {
		t.Errorf("a page 2000 wide with letters of 1 in 100 is %+v", got)
	}
}

// measured is what a browser measures on a page.
type measured struct {
	Wide, Room, Letters float64
	Figures, Captions   int
	Text                string
}

const measuring = `({
	Wide: document.documentElement.scrollWidth, Room: document.documentElement.clientWidth,
	Letters: Math.min(...[...document.querySelectorAll("svg text")].map(t => parseFloat(t.getAttribute("font-size")) * t.ownerSVGElement.getBoundingClientRect().width / t.ownerSVGElement.viewBox.baseVal.width)),
	Figures: document.querySelectorAll("figure svg").length, Captions: document.querySelectorAll("figure figcaption").length,
	Text: document.querySelector(".stamp").textContent,
})`

// start starts a browser that opens pages in tabs of their own.
func start(t *testing.T) context.Context {
	t.Helper()
	chromium := pdftest.Tool(t, "chromium")
	options := append(chromedp.DefaultExecAllocatorOptions[:], chromedp.ExecPath(chromium), chromedp.NoSandbox, chromedp.DisableGPU)
	ctx, cancel := context.WithTimeout(context.Background(), patience)
	t.Cleanup(cancel)
	ctx, cancel = chromedp.NewExecAllocator(ctx, options...)
	t.Cleanup(cancel)
	ctx, cancel = chromedp.NewContext(ctx)
	t.Cleanup(cancel)
	if err := chromedp.Do(ctx, chromedp.Navigate("about:blank")); err != nil {
		t.Fatal(err)
	}
	return ctx
}

// open opens a page on a screen of a size, and returns what went wrong, what it
// measures, and the page printed.
func open(t *testing.T, browser context.Context, html []byte, size [2]int64) (wrong []string, got measured, printed []byte) {
	t.Helper()
	file := filepath.Join(t.TempDir(), "page.html")
	if err := os.WriteFile(file, html, 0o644); err != nil {
		t.Fatal(err)
	}
	address := (&url.URL{Scheme: "file", Path: filepath.ToSlash(file)}).String()
	ctx, cancel := chromedp.NewContext(browser)
	defer cancel()
	var said seen
	err := chromedp.Listen(ctx, said.listen(address))
	if err == nil {
		err = chromedp.Do(ctx, chromedp.EmulateViewport(size[0], size[1]), chromedp.Navigate(address), chromedp.WaitReady("body"))
	}
	if err == nil {
		got, err = chromedp.Run(ctx, chromedp.Evaluate[measured](measuring))
	}
	if err == nil {
		printed, err = chromedp.Run(ctx, chromedp.PrintToPDF())
	}
	if err != nil {
		t.Fatal(err)
	}
	said.Lock()
	defer said.Unlock()
	return said.wrong, got, printed
}

// The file itself names no place to fetch anything from.
func TestNothingOutside(t *testing.T) {
	file := string(screen(t, "../../examples/attic.yaml"))
	for _, never := range []string{"http:", "https:", "//", "<script", "@import", "url(", "src="} {
		if strings.Contains(file, never) {
			t.Errorf("the page holds %q", never)
		}
	}
	if !strings.HasSuffix(file, "</html>\n") {
		t.Error("the page does not end")
	}
}
