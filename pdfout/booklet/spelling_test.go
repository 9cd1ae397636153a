package booklet

import (
	"os"
	"os/exec"
	"path/filepath"
	"regexp"
	"slices"
	"strings"
	"testing"
	"unicode"

	"stepoff/layout/drawing"
	"stepoff/pdfout"
	"stepoff/pdfout/pdftest"
)

// texts gathers everything a document says: running text, tables, captions, and
// the words on its figures.
func texts(doc pdfout.Document) (all []string) {
	var walk func(blocks []pdfout.Block)
	walk = func(blocks []pdfout.Block) {
		for _, b := range blocks {
			switch b := b.(type) {
			case pdfout.Heading:
				all = append(all, b.Text)
			case pdfout.Paragraph:
				all = append(all, b.Text)
			case pdfout.List:
				all = append(all, b.Items...)
			case pdfout.Table:
				all = append(all, b.Header...)
				for _, r := range b.Rows {
					all = append(all, r...)
				}
			case pdfout.Figure:
				all = append(all, b.Caption, b.Drawing.Title)
				for _, it := range b.Drawing.Items {
					switch it := it.(type) {
					case drawing.Text:
						all = append(all, it.Text)
					case drawing.Dim:
						all = append(all, it.Text)
					}
				}
			case pdfout.Columns:
				walk(b.Left)
				walk(b.Right)
			case pdfout.Band:
				walk(b.Blocks)
			}
		}
	}
	for _, p := range doc.Pages {
		if flow, ok := p.(pdfout.Flow); ok {
			all = append(all, flow.Title)
			walk(flow.Blocks)
		}
	}
	return append(all, doc.Subject)
}

// everything is every text of every lesson and exercise, each once. A job's own
// name is not the lesson's.
func everything(t *testing.T) []string {
	seen := map[string]bool{}
	documents(t, func(_ string, doc pdfout.Document) {
		for _, text := range texts(doc) {
			if text != doc.Title {
				seen[text] = true
			}
		}
	})
	var all []string
	for text := range seen {
		all = append(all, text)
	}
	slices.Sort(all)
	if len(all) < 200 {
		t.Fatalf("%d texts in all", len(all))
	}
	return all
}

// terms are the project's own words, which no dictionary has, and the names it may
// use.
func terms(t *testing.T) map[string]bool {
	t.Helper()
	text, err := os.ReadFile("testdata/terms.txt")
	if err != nil {
		t.Fatal(err)
	}
	own := map[string]bool{}
	for _, line := range strings.Split(string(text), "\n") {
		if word := strings.TrimSpace(line); word != "" && !strings.HasPrefix(word, "#") {
			own[word] = true
		}
	}
	return own
}

var word = regexp.MustCompile(`[A-Za-z][A-Za-z'-]*[A-Za-z]`)

// Every word is one the dictionary has, or a term of the project's own list.
func TestSpelling(t *testing.T) {
	hunspell := pdftest.Tool(t, "hunspell")
	own := terms(t)
	var words []string
	for _, text := range everything(t) {
		words = append(words, word.FindAllString(text, -1)...)
	}
	slices.Sort(words)
	words = slices.Compact(words)
	unknown := misspelled(t, hunspell, words)
	for _, w := range unknown {
		if !own[w] {
			t.Errorf("%q is in no dictionary, nor in testdata/terms.txt", w)
		}
	}
	if got := misspelled(t, hunspell, []string{"stringer", "stirnger"}); !slices.Contains(got, "stirnger") {
		t.Errorf("a misspelled word is not found: %v", got)
	}
}

func misspelled(t *testing.T, hunspell string, words []string) []string {
	t.Helper()
	file := filepath.Join(t.TempDir(), "words.txt")
	if err := os.WriteFile(file, []byte(strings.Join(words, "\n")), 0o644); err != nil {
		t.Fatal(err)
	}
	out, err := exec.Command(hunspell, "-d", "en_US", "-l", file).CombinedOutput()
	if err != nil && os.Getenv(pdftest.RequireTools) == "" {
		t.Skipf("hunspell has no dictionary of American English: %s", out)
	}
	if err != nil {
		t.Fatalf("hunspell: %v\n%s", err, out)
	}
	return strings.Fields(string(out))
}

// foreign are the names in a text: words with a capital where no sentence begins,
// that the list does not have.
func foreign(text string, own map[string]bool) []string {
	var names []string
	begins := true
	for _, field := range strings.Fields(text) {
		for _, w := range word.FindAllString(field, -1) {
			if unicode.IsUpper(rune(w[0])) && !begins && !own[w] && w != strings.ToUpper(w) {
				names = append(names, w)
			}
			begins = false
		}
		if strings.ContainsAny(field[len(field)-1:], ".!?:") {
			begins = true
		}
	}
	return names
}

// Lessons and exercises name nobody: no firm, no product, no person. What has a
// capital inside a sentence is on the project's list.
func TestNoNames(t *testing.T) {
	own := terms(t)
	for _, text := range everything(t) {
		for _, name := range foreign(text, own) {
			t.Errorf("%q names %s", text, name)
		}
	}
	if got := foreign("Set the Sharpline square. Then draw.", own); len(got) != 1 || got[0] != "Sharpline" {
		t.Errorf("a name is not found: %v", got)
	}
}
