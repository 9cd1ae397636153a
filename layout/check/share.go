package check

import (
	"cmp"

	"stepoff/spec/measure"
)

// Share is one of Parts equal parts of a length, exactly: a unit rise is the
// total rise shared among the risers. The zero value is no length.
//
// Lengths stay under a kilometre and stairs under ten thousand risers, so that
// the products that compare two shares fit an int64 of nanometres.
type Share struct {
	Total measure.Length
	Parts int
}

// Whole is a length that is not shared.
func Whole(l measure.Length) Share { return Share{l, 1} }

// Even returns every riser of a stair whose total rise is shared evenly, of
// which the flight has some.
func Even(total measure.Length, parts, some int) []Share {
	all := make([]Share, some)
	for i := range all {
		all[i] = Share{total, parts}
	}
	return all
}

// Wholes returns lengths as measured.
func Wholes(ls []measure.Length) []Share {
	all := make([]Share, len(ls))
	for i, l := range ls {
		all[i] = Whole(l)
	}
	return all
}

// MM returns the share in millimetres.
func (s Share) MM() float64 { return s.Total.MM() / float64(s.Parts) }

// Plus returns the share with a length added, exactly.
func (s Share) Plus(l measure.Length) Share {
	return Share{s.Total + l*measure.Length(s.Parts), s.Parts}
}

// Times returns the share taken n times, exactly.
func (s Share) Times(n int) Share { return Share{s.Total * measure.Length(n), s.Parts} }

// Compare tells how the share stands to a length: less than 0 when it is less.
func (s Share) Compare(l measure.Length) int {
	return cmp.Compare(s.Total, l*measure.Length(s.Parts))
}

// less tells whether one share is less than another.
func (s Share) less(t Share) bool {
	if s.Parts == t.Parts {
		return s.Total < t.Total
	}
	return s.Total*measure.Length(t.Parts) < t.Total*measure.Length(s.Parts)
}

// apart returns how far two shares are apart, without a sign.
func (s Share) apart(t Share) Share {
	if s.Parts == t.Parts {
		return Share{(s.Total - t.Total).Abs(), s.Parts}
	}
	return Share{(s.Total*measure.Length(t.Parts) - t.Total*measure.Length(s.Parts)).Abs(), s.Parts * t.Parts}
}

// sum adds shares that are shared alike; ok is false for others.
func sum(shares []Share) (total Share, ok bool) {
	for i, s := range shares {
		if i > 0 && s.Parts != total.Parts {
			return Share{}, false
		}
		total = Share{total.Total + s.Total, s.Parts}
	}
	return total, len(shares) > 0
}

// alike tells whether all shares are the same.
func alike(shares []Share) bool {
	for _, s := range shares {
		if s.apart(shares[0]).Total != 0 {
			return false
		}
	}
	return true
}

// mean returns the average in millimetres.
func mean(shares []Share) float64 {
	total := 0.0
	for _, s := range shares {
		total += s.MM()
	}
	return total / float64(len(shares))
}
