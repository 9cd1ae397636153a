package stock

import (
	"fmt"
	"slices"
	"strings"

	"stepoff/spec/measure"
)

// Part is something to be cut, Count times.
type Part struct {
	Name   string
	Length measure.Length
	// Width is what is ripped from the board's width; 0 is a part that is
	// as wide as the board.
	Width measure.Length
	Count int
}

// Stock is one length that boards are sold in.
type Stock struct {
	Length measure.Length
	// Price of one board, in hundredths of whatever money the shop counts in.
	// It is looked at only where every length of an order has one, more than 0.
	Price int64
}

// Order is what is wanted, and what it can be cut from: boards of one section.
type Order struct {
	Parts []Part
	Stock []Stock
	// Width is that of the boards. It matters where parts are ripped: those
	// of one length that fit beside each other share one piece of the board.
	Width measure.Length
	// Kerf is what the saw takes between two neighbouring parts, crosscut or
	// ripped. Trim comes off either end of every board first, its kerf
	// included.
	Kerf, Trim measure.Length
	// Effort bounds the search for a better plan, in steps; 0 is DefaultEffort.
	// More of it costs time and narrows the gap, where there is one.
	Effort int
}

// Plan is every board with what is cut from it.
type Plan struct {
	// Boards, the longest first.
	Boards []Board
	// Priced tells whether Cost and Bound are prices, in hundredths; they are
	// nanometres of stock otherwise, so that the least cost is the least waste.
	Priced bool
	// Cost is that of all boards, and Bound one below which no plan can be.
	Cost, Bound int64
	// Proved: no plan costs less.
	Proved bool
	// Stock and Parts are the lengths of all boards and of all parts. What is
	// between them is kerf, trim, offcuts, and what stands beside a part
	// narrower than the board.
	Stock, Parts measure.Length
}

// Board is one board of the plan.
type Board struct {
	Stock measure.Length
	// Pieces are crosscut from the board, in order from one end. A piece
	// begins where it is At from that end; the first after the trim.
	Pieces []Piece
	// Offcut is what is left in one length, after the last piece's kerf and
	// before the far end's trim; 0 where the last kerf takes it all.
	Offcut measure.Length
}

// Piece is one crosscut length of a board, and the parts it is ripped into:
// one, but where narrower parts stand side by side.
type Piece struct {
	At, Length measure.Length
	Strips     []Strip
}

// Strip is one part. Part is its place in the order's list; From is how far
// from the board's edge it begins, across.
type Strip struct {
	Part int
	From measure.Length
}

// Gap is how much more than Bound the plan may cost, as a fraction of Bound; 0
// where nothing costs less.
func (p *Plan) Gap() float64 {
	if p.Proved || p.Bound == 0 {
		return 0
	}
	return float64(p.Cost-p.Bound) / float64(p.Bound)
}

// Group is one way to cut a board, and how many boards are cut that way.
type Group struct {
	Board
	Count int
}

// Alike gathers neighbouring boards that are cut alike.
func (p *Plan) Alike() []Group {
	var groups []Group
	for _, b := range p.Boards {
		if n := len(groups); n > 0 && alike(groups[n-1].Board, b) {
			groups[n-1].Count++
			continue
		}
		groups = append(groups, Group{Board: b, Count: 1})
	}
	return groups
}

func alike(a, b Board) bool {
	return a.Stock == b.Stock && slices.EqualFunc(a.Pieces, b.Pieces, func(p, q Piece) bool {
		return p.At == q.At && p.Length == q.Length && slices.Equal(p.Strips, q.Strips)
	})
}

// Pull is how many boards of one length a plan takes.
type Pull struct {
	Length measure.Length
	Count  int
}

// Pulls counts the boards of each length, the longest first.
func (p *Plan) Pulls() []Pull {
	var pulls []Pull
	for _, b := range p.Boards {
		if n := len(pulls); n > 0 && pulls[n-1].Length == b.Stock {
			pulls[n-1].Count++
			continue
		}
		pulls = append(pulls, Pull{Length: b.Stock, Count: 1})
	}
	return pulls
}

// MostParts is how many parts one order may hold in all, so that no sum
// overflows: far more than a shop cuts.
const MostParts = 1 << 20

// TooBig is the error of an order with parts that no board holds.
type TooBig struct {
	Parts []Part         // those that do not fit
	Room  measure.Length // of the longest board, its ends trimmed
	Width measure.Length // of the boards
}

func (e *TooBig) Error() string {
	names := make([]string, len(e.Parts))
	for i, p := range e.Parts {
		names[i] = p.Name
	}
	return "no board is large enough for " + strings.Join(names, ", ")
}

// check tells what keeps the order from being planned.
func (o *Order) check() error {
	if len(o.Stock) == 0 {
		return fmt.Errorf("no stock length is given")
	}
	if o.Kerf < 0 || o.Trim < 0 || o.Kerf > measure.Max || o.Trim > measure.Max || o.Width < 0 || o.Width > measure.Max {
		return fmt.Errorf("kerf, trim and the boards' width are 0 or more, and no longer than %d m", measure.Max/measure.Metre)
	}
	longest := measure.Length(0)
	for _, s := range o.Stock {
		if s.Length <= 0 || s.Length > measure.Max {
			return fmt.Errorf("a stock length is more than 0, and no longer than %d m", measure.Max/measure.Metre)
		}
		if s.Price < 0 || s.Price > mostPrice {
			return fmt.Errorf("a board's price is 0 or more, and at most %d", int64(mostPrice))
		}
		longest = max(longest, s.Length-2*o.Trim)
	}
	tooBig := &TooBig{Room: longest, Width: o.Width}
	count := 0
	for _, p := range o.Parts {
		if p.Length <= 0 || p.Width < 0 || p.Count < 0 || p.Count > MostParts {
			return fmt.Errorf("part %s: a length is more than 0, a width 0 or more, a count from 0 to %d", p.Name, MostParts)
		}
		count += p.Count
		if count > MostParts {
			return fmt.Errorf("one order holds up to %d parts", MostParts)
		}
		if p.Count > 0 && (p.Length > longest || o.Width > 0 && p.Width > o.Width) {
			tooBig.Parts = append(tooBig.Parts, p)
		}
	}
	if len(tooBig.Parts) > 0 {
		return tooBig
	}
	return nil
}

// mostPrice bounds a price, so that no sum overflows: ten million.
const mostPrice = 1_000_000_000
