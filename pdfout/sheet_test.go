package pdfout_test

import (
	"fmt"
	"math"
	"regexp"
	"strings"
	"testing"

	"stepoff/layout/drawing"
	"stepoff/layout/geom"
	"stepoff/pdfout"
	"stepoff/pdfout/pdftest"
	"stepoff/spec/measure"
)

// layer keeps a page's paths of one layer, in the drawing's millimetres.
func layer(tl *pdfout.Tiling, f *pdftest.File, i int, name string) []pdftest.Path {
	return pdftest.Layer(f.Pages[i].Unplace(laid(tl, i)), name)
}

// TestSheetsSayWhatTheyAre: every sheet carries its name, its place among the
// others, the job, how to print and lay it, and its neighbours' names.
func TestSheetsSayWhatTheyAre(t *testing.T) {
	part := stringer()
	part.Hand = "left"
	tl := plan(t, part, letterPaper, measure.Imperial)
	doc := document(letterPaper, measure.Imperial, tl)
	doc.Stamp = []string{"NOT TO CODE: the unit rise is 8 1/2 in, the limit 7 3/4 in"}
	f := pdftest.MustRead(t, write(t, doc))
	named := map[string]pdfout.Sheet{}
	at := map[[2]int]string{}
	for _, s := range tl.Sheets {
		named[s.Name] = s
		at[[2]int{s.Column, s.Row}] = s.Name
	}
	for i, s := range tl.Sheets {
		text := strings.Join(f.Pages[i].Lines(), "\n")
		flat := strings.Join(strings.Fields(text), " ")
		for _, want := range []string{
			s.Name + " Saw-tooth board", "LEFT HAND", fmt.Sprintf("sheet %d of %d", i+1, len(tl.Sheets)),
			"Board loft · B-7 · 2026-03-02", "paper letter", "print at 100 %, no fit to page",
			"STOCK EDGE on the upper edge", "from the foot end of the blank", "Guards on",
			"measure this: if it is not", "NOT TO CODE: the unit rise is 8 1/2 in",
		} {
			if !strings.Contains(flat, want) {
				t.Errorf("%s does not say %q:\n%s", s.Name, want, text)
			}
		}
		for _, n := range []struct {
			columns, rows int
			words         string
		}{{-1, 0, "trim here and lay on %s"}, {1, 0, "%s is laid to this line"}, {0, -1, "trim here and lay on %s"}, {0, 1, "%s is laid to this line"}} {
			other, ok := at[[2]int{s.Column + n.columns, s.Row + n.rows}]
			if words := fmt.Sprintf(n.words, other); ok && !strings.Contains(text, words) {
				t.Errorf("%s does not say %q", s.Name, words)
			}
		}
	}
	if len(named) != len(tl.Sheets) {
		t.Errorf("two sheets have one name: %v", named)
	}
}

// TestCrossesCoincide: neighbours carry the same crosses at the same stations
// of the part, two for every pair.
func TestCrossesCoincide(t *testing.T) {
	for _, units := range []measure.Units{measure.Imperial, measure.Metric} {
		p := letterPaper
		p.ScaleX, p.ScaleY = 0.9962, 1.0031
		tl := plan(t, stringer(), p, units)
		f := pdftest.MustRead(t, write(t, document(p, units, tl)))
		middles := make([][]geom.Point, len(tl.Sheets))
		for i := range tl.Sheets {
			for _, path := range layer(tl, f, i, "Cross") {
				level, upright := path.Pieces[0], path.Pieces[1]
				middles[i] = append(middles[i], geom.Pt(upright.From.X, level.From.Y))
			}
		}
		for i, a := range tl.Sheets {
			for j, b := range tl.Sheets {
				beside := a.Row == b.Row && b.Column == a.Column+1 || a.Column == b.Column && b.Row == a.Row+1
				if !beside {
					continue
				}
				shared := 0
				for _, m := range middles[i] {
					for _, n := range middles[j] {
						if math.Hypot(m.X-n.X, m.Y-n.Y) < trueSize {
							shared++
						}
					}
				}
				if shared != 2 {
					t.Errorf("%s and %s share %d crosses: %v, %v", a.Name, b.Name, shared, middles[i], middles[j])
				}
			}
		}
	}
}

// TestStationsAreTrue: the figure printed at a seam is where the seam is.
func TestStationsAreTrue(t *testing.T) {
	tl := plan(t, stringer(), letterPaper, measure.Imperial)
	f := pdftest.MustRead(t, write(t, document(letterPaper, measure.Imperial, tl)))
	for i, s := range tl.Sheets {
		var stations []float64
		for _, w := range lines(f.Pages[i], "Station") {
			l, err := measure.Parse(w, measure.Imperial)
			if err != nil {
				t.Fatalf("%s: station %q: %v", s.Name, w, err)
			}
			stations = append(stations, l.MM())
		}
		if len(stations) != 2 || stations[0] >= stations[1] {
			t.Fatalf("%s: stations %v", s.Name, stations)
		}
		for _, path := range layer(tl, f, i, "Seam") {
			q := path.Pieces[0]
			if math.Abs(q.From.X-q.To.X) > trueSize {
				continue // between rows
			}
			if math.Min(math.Abs(q.From.X-stations[0]), math.Abs(q.From.X-stations[1])) > trueSize {
				t.Errorf("%s: a seam at %.3f mm, stations %v", s.Name, q.From.X, stations)
			}
		}
		for _, x := range stations {
			if x < s.Window.Min.X || x > s.Window.Max.X {
				t.Errorf("%s: station %.3f is not on the sheet", s.Name, x)
			}
		}
	}
}

// lines are the lines of writing inside one mark.
func lines(p pdftest.Page, tag string) []string {
	kept := pdftest.Page{}
	for _, w := range p.Writing {
		for _, t := range w.Tags {
			if t == tag {
				kept.Writing = append(kept.Writing, w)
				break
			}
		}
	}
	return kept.Lines()
}

// TestMetricRulers: in metric a ruler says its millimetres first.
func TestMetricRulers(t *testing.T) {
	tl := plan(t, stringer(), papers[1], measure.Metric)
	f := pdftest.MustRead(t, write(t, document(papers[1], measure.Metric, tl)))
	if want := "measure this: if it is not 270 mm (10.63 in), stop"; !f.Pages[0].Has(want) {
		t.Errorf("the sheet does not say %q: %q", want, lines(f.Pages[0], "Ruler"))
	}
}

// TestRulersAreTrue: both axes of every sheet carry a ruler as long as it says,
// and no longer whole number of inches would have fitted the window.
func TestRulersAreTrue(t *testing.T) {
	stop := regexp.MustCompile(`if it is not (\d+) in \(([\d.]+) mm\), stop`)
	for _, p := range []pdfout.Paper{letterPaper, paper("A3", 297*measure.Millimetre, 420*measure.Millimetre)} {
		p.ScaleX, p.ScaleY = 0.99, 1.01
		tl := plan(t, stringer(), p, measure.Imperial)
		f := pdftest.MustRead(t, write(t, document(p, measure.Imperial, tl)))
		for i, s := range tl.Sheets {
			var said []string
			for _, l := range lines(f.Pages[i], "Ruler") {
				if m := stop.FindStringSubmatch(l); m != nil {
					said = append(said, m[1])
				}
			}
			rulers := layer(tl, f, i, "Ruler")
			if len(rulers) != 2 || len(said) != 2 {
				t.Fatalf("%s: %d rulers, saying %q", s.Name, len(rulers), said)
			}
			for k, r := range rulers {
				box := geom.EmptyBox()
				for _, q := range r.Pieces[1:] { // the ticks
					box = box.Include(q.From).Include(q.To)
				}
				along, across := box.Width(), box.Height()
				if k == 1 {
					along, across = across, along
				}
				var inches float64
				fmt.Sscan(said[k], &inches)
				// The ticks' outer ones are the last inch and the last
				// centimetre.
				if want := math.Max(inches*25.4, math.Floor(along/10+1e-6)*10); math.Abs(along-want) > trueSize {
					t.Errorf("%s: ruler %d is %.4f mm long and says %v in", s.Name, k, along, inches)
				}
				// Half inches to one side, centimetres to the other, from one
				// end; the first line is the ruler's edge.
				for j, q := range r.Pieces[1:] {
					at := q.From.X - r.Pieces[0].From.X
					if k == 1 {
						at = q.From.Y - r.Pieces[0].From.Y
					}
					want := float64(j) * 12.7
					if halves := int(2*inches) + 1; j >= halves {
						want = float64(j-halves) * 10
					}
					if math.Abs(at-want) > trueSize {
						t.Fatalf("%s: ruler %d, tick %d stands at %.4f mm, want %.4f", s.Name, k, j, at, want)
					}
				}
				if _, below := sheetAt(tl, s.Column, s.Row+1); k == 0 && below && r.Pieces[0].From.Y < s.Window.Min.Y+p.Overlap.MM() {
					t.Errorf("%s: the ruler lies where the sheet below is joined", s.Name)
				}
				if _, above := sheetAt(tl, s.Column, s.Row-1); k == 0 && above && r.Pieces[0].From.Y > s.Window.Max.Y-p.Overlap.MM() {
					t.Errorf("%s: the ruler lies where the sheet above is joined", s.Name)
				}
				if across < 4 || across > 10 {
					t.Errorf("%s: ruler %d has ticks %.2f mm across", s.Name, k, across)
				}
				room := s.Window.Width()
				if k == 1 {
					room = s.Window.Height()
				}
				if inches*25.4+25.4+24 < room {
					t.Errorf("%s: ruler %d is %v in long on a window of %.1f in", s.Name, k, inches, room/25.4)
				}
			}
		}
	}
}

// sheetAt finds the sheet at a place of the grid.
func sheetAt(tl *pdfout.Tiling, column, row int) (pdfout.Sheet, bool) {
	for _, s := range tl.Sheets {
		if s.Column == column && s.Row == row {
			return s, true
		}
	}
	return pdfout.Sheet{}, false
}

// TestNothingOverTheCuts: no words stand on a cut of these sheets, which have
// room enough beside them.
func TestNothingOverTheCuts(t *testing.T) {
	for _, p := range []pdfout.Paper{letterPaper, paper("legal", inches(8.5), inches(14)), {Name: "roll 12 in", Width: inches(12), Roll: true, Margin: inches(0.25), Overlap: inches(0.5)}} {
		tl := plan(t, stringer(), p, measure.Imperial)
		f := pdftest.MustRead(t, write(t, document(p, measure.Imperial, tl)))
		for i, s := range tl.Sheets {
			var boxes []geom.Box
			cleared := 0
			for _, path := range f.Pages[i].Paths {
				if path.Layer == "Frame" && path.Filled && path.Grey == 1 {
					cleared++
				}
				if path.Layer == "Frame" && path.Stroked {
					b := geom.EmptyBox()
					for _, q := range path.Pieces {
						b = b.Include(q.From).Include(q.To)
					}
					boxes = append(boxes, b)
				}
			}
			if len(boxes) == 0 || cleared != len(boxes) {
				t.Fatalf("%s has %d title blocks, the paper cleared under %d", s.Name, len(boxes), cleared)
			}
			for _, path := range pdftest.Layer(f.Pages[i].Paths, "Cut") {
				for _, q := range path.Pieces {
					for k := range 201 {
						for _, b := range boxes {
							if b.Contains(q.At(float64(k)/200), -0.1) {
								t.Fatalf("%s on %s: the title block lies on a cut", s.Name, p.Name)
							}
						}
					}
				}
			}
		}
	}
}

// TestWordsApart: the words of a sheet do not stand on one another.
func TestWordsApart(t *testing.T) {
	part := stringer()
	doc := document(letterPaper, measure.Imperial, plan(t, part, letterPaper, measure.Imperial))
	doc.Stamp = []string{"NOT TO CODE"}
	f := pdftest.MustRead(t, write(t, doc))
	for _, page := range f.Pages {
		type placed struct {
			text string
			box  geom.Box
		}
		var all []placed
		for _, w := range page.Writing {
			sin, cos := math.Sincos(w.Angle)
			for _, r := range w.Runs {
				const in = 0.1 // touching is not standing on
				b := geom.EmptyBox()
				for _, c := range []geom.Point{{X: in, Y: in}, {X: r.Width - in, Y: in}, {X: r.Width - in, Y: r.Height - in}, {X: in, Y: r.Height - in}} {
					b = b.Include(geom.Pt(r.At.X+c.X*cos-c.Y*sin, r.At.Y+c.X*sin+c.Y*cos))
				}
				for _, o := range all {
					if o.box.Min.X < b.Max.X && o.box.Max.X > b.Min.X && o.box.Min.Y < b.Max.Y && o.box.Max.Y > b.Min.Y {
						t.Errorf("page %d: %q stands on %q", page.Number, r.Text, o.text)
					}
				}
				all = append(all, placed{r.Text, b})
			}
		}
	}
}

// TestRolls: a board of 16 ft is one page of a 12 in roll, one of 20 ft two,
// joined by crosses, none longer than 200 in.
func TestRolls(t *testing.T) {
	roll := pdfout.Paper{Name: "roll 12 in", Width: inches(12), Roll: true, Margin: inches(0.25), Overlap: inches(0.5)}
	for _, c := range []struct {
		feet  float64
		pages int
	}{{16, 1}, {20, 2}} {
		d := &drawing.Drawing{Name: "board"}
		d.Line(drawing.Cut, geom.Pt(0, 0), geom.Pt(3, -11.25*in))
		d.Polyline(drawing.Cut, geom.Pt(0, 0), geom.Pt(c.feet*6*in, -6*in), geom.Pt(c.feet*12*in, 0))
		tl := plan(t, pdfout.Part{Name: "board", Title: "Board", Drawing: d}, roll, measure.Imperial)
		f := pdftest.MustRead(t, write(t, document(roll, measure.Imperial, tl)))
		if len(f.Pages) != c.pages {
			t.Errorf("%v ft: %d pages, want %d", c.feet, len(f.Pages), c.pages)
		}
		for i, page := range f.Pages {
			if page.Height > 14400*25.4/72+0.01 || page.Width > page.Height {
				t.Errorf("%v ft: a page of %.1f x %.1f mm", c.feet, page.Width, page.Height)
			}
			if n := len(layer(tl, f, i, "Cross")); (n == 2) != (c.pages == 2) {
				t.Errorf("%v ft: %d crosses on page %d", c.feet, n, i+1)
			}
		}
		checkTrue(t, tl)
	}
}

// TestMap: the assembly map names every sheet, apart from the others.
func TestMap(t *testing.T) {
	tl := plan(t, stringer(), letterPaper, measure.Imperial)
	names := map[string]geom.Point{}
	for _, it := range tl.Map().Items {
		if text, ok := it.(drawing.Text); ok {
			names[text.Text] = text.At
		}
	}
	for _, s := range tl.Sheets {
		at, ok := names[s.Name]
		if !ok || !s.Window.Contains(at, 0) {
			t.Errorf("%s is named at %v, its window is %v", s.Name, at, s.Window)
		}
	}
	if len(names) != len(tl.Sheets) {
		t.Errorf("%d names for %d sheets", len(names), len(tl.Sheets))
	}
}

// TestPlanErrors: what cannot be printed is refused in plain words.
func TestPlanErrors(t *testing.T) {
	nan := stringer()
	nan.Drawing.Line(drawing.Cut, geom.Pt(math.NaN(), 0), geom.Pt(1, 1))
	far := stringer()
	far.Drawing.Line(drawing.Cut, geom.Pt(0, 0), geom.Pt(9e5, 9e5))
	bare := pdfout.Part{Name: "bare", Drawing: &drawing.Drawing{Name: "bare"}}
	with := func(change func(*pdfout.Paper)) pdfout.Paper {
		p := letterPaper
		change(&p)
		return p
	}
	for _, c := range []struct {
		name, want string
		part       pdfout.Part
		paper      pdfout.Paper
	}{
		{"not a number", "stands at no place", nan, letterPaper},
		{"too many sheets", "more than 5000 sheets", far, letterPaper},
		{"nothing to cut", "nothing in the drawing is to be cut", bare, letterPaper},
		{"no drawing", "there is no drawing", pdfout.Part{Name: "none"}, letterPaper},
		{"tiny paper", "leaves less than 90 mm", stringer(), with(func(p *pdfout.Paper) { p.Width, p.Height = inches(3), inches(5) })},
		{"wide overlap", "more than a third", stringer(), with(func(p *pdfout.Paper) { p.Overlap = inches(4) })},
		{"sideways", "the short side comes first", stringer(), with(func(p *pdfout.Paper) { p.Width, p.Height = p.Height, p.Width })},
		{"page scaling", "page scaling", stringer(), with(func(p *pdfout.Paper) { p.ScaleX = 0.94 })},
		{"factor not a number", "page scaling", stringer(), with(func(p *pdfout.Paper) { p.ScaleY = math.NaN() })},
		{"too long", "200 in", stringer(), with(func(p *pdfout.Paper) { p.Height = inches(201) })},
	} {
		_, err := pdfout.Plan(c.part, c.paper, measure.Imperial)
		if err == nil || !strings.Contains(err.Error(), c.want) {
			t.Errorf("%s: %v; want it to say %q", c.name, err, c.want)
		}
	}
}
