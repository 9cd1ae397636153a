package stock

import (
	"cmp"
	"math"
	"slices"

	"stepoff/spec/measure"
)

// Cut plans an order. The error is a *TooBig, or says what in the order cannot
// be meant; no parts is an empty plan.
//
// Where parts are narrower than the board, those of one length are first put
// side by side into as few pieces of the board as can be, and then the pieces
// onto boards: crosscut first, then rip. Parts of different lengths never stand
// side by side, so that a plan in which some could is proved only when it meets
// a bound that allows for it.
func Cut(o Order) (*Plan, error) {
	if err := o.check(); err != nil {
		return nil, err
	}
	p := &Plan{Priced: !slices.ContainsFunc(o.Stock, func(s Stock) bool { return s.Price == 0 })}
	effort := o.Effort
	if effort <= 0 {
		effort = DefaultEffort
	}
	var rooms []room
	for _, s := range o.Stock {
		if free := s.Length - 2*o.Trim; free > 0 {
			r := room{size: int64(free + o.Kerf), cost: int64(s.Length)}
			if p.Priced {
				r.cost = s.Price
			}
			rooms = append(rooms, r)
		}
	}
	pieces := o.pieces(effort)
	d := newDemand(o.items(pieces), rooms)
	a := d.solve(effort)
	for _, part := range o.Parts {
		p.Parts += measure.Length(part.Count) * part.Length
	}
	p.Boards = o.boards(&d, a.boards, pieces)
	for _, b := range p.Boards {
		p.Stock += b.Stock
	}
	if o.beside() {
		a.bound = o.looseBound(rooms, effort)
	}
	p.Cost, p.Bound = a.cost*d.unit, min(a.bound, a.cost)*d.unit
	p.Proved = p.Cost == p.Bound
	return p, nil
}

// pieces gathers what is crosscut, by its length: the strips of each.
func (o *Order) pieces(effort int) map[measure.Length][][]Strip {
	byLength := map[measure.Length][]int{}
	for i, part := range o.Parts {
		if part.Count > 0 {
			byLength[part.Length] = append(byLength[part.Length], i)
		}
	}
	pieces := map[measure.Length][][]Strip{}
	for length, parts := range byLength {
		pieces[length] = o.ripped(parts, effort)
	}
	return pieces
}

// ripped puts parts of one length side by side into as few pieces as can be.
func (o *Order) ripped(parts []int, effort int) [][]Strip {
	var pieces [][]Strip
	var items []item
	narrow := map[int64][]int{} // parts by the size of their width, each as often as it is wanted
	for _, i := range parts {
		part := o.Parts[i]
		if !o.narrow(part) {
			for range part.Count {
				pieces = append(pieces, []Strip{{Part: i}})
			}
			continue
		}
		size := int64(part.Width + o.Kerf)
		items = append(items, item{size, part.Count})
		for range part.Count {
			narrow[size] = append(narrow[size], i)
		}
	}
	if len(items) == 0 {
		return pieces
	}
	d := newDemand(items, []room{{size: int64(o.Width + o.Kerf), cost: 1}})
	for _, p := range d.solve(effort).boards {
		for range p.boards {
			var strips []Strip
			from := measure.Length(0)
			for _, u := range p.uses {
				size := d.items[u.item].size
				for range u.count {
					queue := narrow[size]
					strips = append(strips, Strip{Part: queue[0], From: from})
					narrow[size] = queue[1:]
					from += measure.Length(size)
				}
			}
			pieces = append(pieces, strips)
		}
	}
	slices.SortStableFunc(pieces, compareStrips)
	return pieces
}

// narrow tells whether a part is ripped.
func (o *Order) narrow(p Part) bool { return p.Width > 0 && p.Width < o.Width }

func compareStrips(a, b []Strip) int {
	return slices.CompareFunc(a, b, func(s, t Strip) int {
		return cmp.Or(cmp.Compare(s.Part, t.Part), cmp.Compare(s.From, t.From))
	})
}

// items are the pieces as sizes.
func (o *Order) items(pieces map[measure.Length][][]Strip) []item {
	var items []item
	for length, all := range pieces {
		items = append(items, item{int64(length + o.Kerf), len(all)})
	}
	return items // newDemand sorts them
}

// boards lays the pieces out on their boards.
func (o *Order) boards(d *demand, all []packed, pieces map[measure.Length][][]Strip) []Board {
	all = slices.Clone(all)
	// Longest boards first, and on boards of one length the longest pieces.
	slices.SortStableFunc(all, func(a, b packed) int {
		return cmp.Or(cmp.Compare(b.room, a.room), slices.CompareFunc(a.uses, b.uses, func(u, v use) int {
			return cmp.Or(cmp.Compare(u.item, v.item), cmp.Compare(v.count, u.count))
		}))
	})
	var boards []Board
	for _, p := range all {
		for range p.boards {
			b := Board{Stock: measure.Length(d.rooms[p.room].size) - o.Kerf + 2*o.Trim}
			at := o.Trim
			for _, u := range p.uses {
				length := measure.Length(d.items[u.item].size) - o.Kerf
				for range u.count {
					queue := pieces[length]
					b.Pieces = append(b.Pieces, Piece{At: at, Length: length, Strips: queue[0]})
					pieces[length] = queue[1:]
					at += length + o.Kerf
				}
			}
			b.Offcut = max(0, b.Stock-o.Trim-at)
			boards = append(boards, b)
		}
	}
	return boards
}

// beside tells whether parts of different lengths could stand side by side.
func (o *Order) beside() bool {
	least, next := measure.Length(math.MaxInt64/4), measure.Length(math.MaxInt64/4)
	for i, p := range o.Parts {
		if p.Count == 0 || !o.narrow(p) {
			continue
		}
		switch w := o.Parts[i].Width; {
		case w < least:
			least, next = w, least
		case w < next:
			next = w
		}
		if p.Count > 1 && p.Width < next {
			next = p.Width
		}
	}
	return least+next+o.Kerf <= o.Width
}

// looseBound is a bound, in units, where parts of different lengths might stand
// side by side: that of the parts that nothing can stand beside, or that of all
// parts' areas, each with a kerf on two sides, whichever is more.
func (o *Order) looseBound(rooms []room, effort int) int64 {
	least := o.Width
	area := 0.0
	for _, p := range o.Parts {
		if p.Count == 0 {
			continue
		}
		w := o.Width
		if o.narrow(p) {
			w = p.Width
			least = min(least, w)
		}
		area += float64(p.Count) * (w + o.Kerf).MM() * (p.Length + o.Kerf).MM()
	}
	var items []item
	for _, p := range o.Parts {
		if p.Count > 0 && (!o.narrow(p) || p.Width+o.Kerf+least > o.Width) {
			items = append(items, item{int64(p.Length + o.Kerf), p.Count})
		}
	}
	d := newDemand(items, rooms)
	bound := d.solve(effort).bound
	cheapest := math.Inf(1)
	for _, r := range d.rooms {
		cheapest = math.Min(cheapest, float64(r.cost)/(measure.Length(r.size).MM()*(o.Width+o.Kerf).MM()))
	}
	// A share of 1e-9 less: floating sums of products are good to that.
	return max(bound, int64(math.Ceil(area*cheapest*(1-1e-9))))
}
