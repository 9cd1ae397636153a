package packet

import (
	"fmt"
	"strings"

	"stepoff/layout"
	"stepoff/layout/geom"
	"stepoff/layout/views"
	"stepoff/pdfout"
	"stepoff/spec/measure"
)

// treadTemplate is one full-size drawing and the treads that are cut to it.
type treadTemplate struct {
	first  views.Tread
	serves []views.Tread // first among them
	over   int           // of those, for how many it is turned over
}

// treadTemplates gathers the tapered treads that are alike.
func treadTemplates(s *layout.Stairway) []treadTemplate {
	var all []treadTemplate
next:
	for _, t := range views.Treads(s) {
		for i := range all {
			alike, over := all[i].first.Alike(t)
			if !alike {
				continue
			}
			all[i].serves = append(all[i].serves, t)
			if over {
				all[i].over++
			}
			continue next
		}
		all = append(all, treadTemplate{first: t, serves: []views.Tread{t}})
	}
	return all
}

// treadParts are the sheets that tapered treads are cut to, by member.
func treadParts(s *layout.Stairway, st measure.Style) []part {
	var all []part
	for _, t := range treadTemplates(s) {
		var names []string
		last := ""
		for _, served := range t.serves {
			if served.Member != last {
				names, last = append(names, memberPart(s, served.Member, partTreads)), served.Member
			}
		}
		all = append(all, part{names: names, sheet: func() pdfout.Part { return t.part(names[0], st) }})
	}
	return all
}

// memberPart is what a part of a turn or of a curve goes by: with its member's
// name, where another one has such a part too.
func memberPart(s *layout.Stairway, member, name string) string {
	if len(s.Winders())+len(s.Curves()) > 1 {
		return member + "/" + name
	}
	return name
}

// which tells the treads a template serves: tread 2 of winders-1, treads 1 to 15
// of curve-1.
func (t treadTemplate) which() string {
	var words []string
	for i := 0; i < len(t.serves); {
		j := i
		for j+1 < len(t.serves) && t.serves[j+1].Member == t.serves[i].Member && t.serves[j+1].Number == t.serves[j].Number+1 {
			j++
		}
		from, to := t.serves[i], t.serves[j]
		switch j - i {
		case 0:
			words = append(words, fmt.Sprintf("tread %d of %s", from.Number, from.Member))
		case 1:
			words = append(words, fmt.Sprintf("treads %d and %d of %s", from.Number, to.Number, from.Member))
		default:
			words = append(words, fmt.Sprintf("treads %d to %d of %s", from.Number, to.Number, from.Member))
		}
		i = j + 1
	}
	text := strings.Join(words, ", ")
	return strings.ToUpper(text[:1]) + text[1:]
}

// count says how many are cut.
func (t treadTemplate) count() string {
	words := fmt.Sprintf("cut %d", len(t.serves))
	if t.over > 0 {
		words += fmt.Sprintf(", %d of them with the template turned over", t.over)
	}
	return words
}

// board is the rectangle a tread is cut from, along its nosing and square to it.
func (t treadTemplate) board(st measure.Style) string {
	b := t.first.Board
	return st.InchesMM(b.Along) + " along by " + st.InchesMM(b.Deep) + " deep"
}

func (t treadTemplate) part(name string, st measure.Style) pdfout.Part {
	d := views.TreadTemplate(t.first, t.which(), st)
	box := t.first.Outline().Box()
	return pdfout.Part{
		Name: name, Title: t.which() + ": " + t.count(),
		Drawing: d,
		Station: "the left end of the board",
		Lay:     fmt.Sprintf("lay STOCK EDGE on the front edge of a board %s, grain along it; %s", t.board(st), t.count()),
		Stock:   geom.Line(geom.Pt(0, 0), geom.Pt(box.Max.X, 0)),
	}
}
