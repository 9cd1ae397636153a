package spec

import (
	"cmp"
	"regexp"
	"slices"
	"strconv"
	"strings"

	"stepoff/spec/lumber"
	"stepoff/spec/measure"
	"stepoff/spec/source"
)

// readBought reads how boards are bought.
func readBought(top group, units measure.Units) Bought {
	g, _ := top.sub("stock")
	b := Bought{Kerf: g.length("kerf"), EndTrim: g.length("end_trim")}
	lengths := g.lengths("lengths", "a list of lengths, like [8', 10', 12']")
	prices := g.prices("prices", "a list with one price for each of the lengths, like [7.50, 9.80, 12.40]")
	if at := g.get("prices"); at != nil && g.get("lengths") == nil {
		at.Mistake("prices: they are those of lengths; write the lengths too, one for each price")
		prices = nil
	} else if len(prices) > 0 && len(lengths) > 0 && len(prices) != len(lengths) {
		at.Mistake("prices: there are %d lengths, so the list has %[1]d values, not %d", len(lengths), len(prices))
		prices = nil
	}
	if len(lengths) == 0 {
		b.Lengths = lumber.YardLengths(units)
	}
	sold := make([]soldLength, len(lengths))
	for i, l := range lengths {
		sold[i].length = l
		if len(prices) > 0 {
			sold[i].price = prices[i]
		}
	}
	slices.SortStableFunc(sold, func(a, c soldLength) int { return cmp.Compare(a.length, c.length) })
	say := measure.Style{Units: units, Denominator: 64}.Format
	for i, s := range sold {
		if s.length > 0 && i > 0 && s.length == sold[i-1].length {
			g.get("lengths").Mistake("lengths: %s stands twice", say(s.length))
		}
		b.Lengths = append(b.Lengths, s.length)
		if len(prices) > 0 {
			b.Prices = append(b.Prices, s.price)
		}
	}
	if longest := b.Lengths[len(b.Lengths)-1]; longest > 0 && 2*b.EndTrim >= longest {
		g.blame("end_trim", "lengths").Mistake("end_trim: two of %s leave nothing of the longest board, %s", say(b.EndTrim), say(longest))
	}
	return b
}

// soldLength is a length with its price; 0 is none that could be read.
type soldLength struct {
	length measure.Length
	price  int64
}

var priceForm = regexp.MustCompile(`^(?:0|[1-9][0-9]{0,7})(?:\.[0-9]{1,2})?$`)

// mostPrice bounds a price, in hundredths.
const mostPrice = 100_000_000_00

// prices returns a list of prices, in hundredths; 0 for one that cannot be read.
func (g group) prices(name, wanted string) []int64 {
	var prices []int64
	for _, item := range g.items(name, wanted) {
		p, _ := priceAt(item, name)
		prices = append(prices, p)
	}
	return prices
}

func priceAt(n *source.Node, name string) (int64, bool) {
	text, ok := single(n, name, "a price")
	if !ok {
		return 0, false
	}
	whole, part, _ := strings.Cut(text, ".")
	hundredths, err := strconv.ParseInt(whole+(part + "00")[:2], 10, 64)
	if err != nil || !priceForm.MatchString(text) || hundredths == 0 {
		n.Mistake("%s: %s is not a price: write it in plain digits with up to two decimals, like 12.40, more than 0 and without a sign of money", name, measure.Quote(text))
		return 0, false
	}
	return hundredths, true
}
