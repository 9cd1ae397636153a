package stringer

import "fmt"

// refuseSizes holds the sizes of the housings against the boards they are for and
// the stock they are cut into.
func (s *Housed) refuseSizes(bad *Refusals) {
	say := s.Style.FormatMM
	if s.Depth > s.Thickness/2 {
		bad.add("housing.depth", "housings %s deep in a string %s thick leave less than half of it behind them; at most %s",
			say(s.Depth), say(s.Thickness), say(s.Thickness/2))
	}
	switch {
	case s.Round > s.Tread/2+touching/1000:
		bad.add("housing.round", "a nosing rounded to %s is more than half a tread %s thick; at most %s", say(s.Round), say(s.Tread), say(s.Tread/2))
	case s.Round > s.Nosing+touching/1000:
		bad.add("housing.round", "a nosing rounded to %s reaches back into the riser board, which it overhangs by %s; at most that", say(s.Round), say(s.Nosing))
	}
	if s.Bush <= s.Cutter {
		bad.add("housing.bush", "a cutter of %s does not pass through a bush of %s: the bush must be larger than the cutter, outside, by twice its wall", say(s.Cutter), say(s.Bush))
	}
	face := s.Cutter - 2*s.Depth*s.Undercut // the cutter's diameter at the string's face
	narrow, what := s.Tread, "tread"
	if s.RiserBoard > 0 && s.RiserBoard < narrow {
		narrow, what = s.RiserBoard, "riser board"
	}
	at := ""
	if s.Undercut > 0 {
		at = fmt.Sprintf(", %s of it at the face of the string,", say(face))
	}
	switch {
	case face < touching:
		bad.add("housing.undercut", "walls undercut 1:%.4g over %s leave nothing of a cutter of %s at the face of the string; a larger cutter, or less undercut", 1/s.Undercut, say(s.Depth), say(s.Cutter))
	case face > narrow+touching/1000:
		bad.add("housing.cutter", "a cutter of %s%s is larger than the %s is thick: %s; take one of %s or less",
			say(s.Cutter), at, what, say(narrow), say(narrow+2*s.Depth*s.Undercut))
	case s.Round > 0 && face > 2*s.Round+touching/1000:
		bad.add("housing.cutter", "a cutter of %s%s cannot follow a nosing rounded to %s; take one of %s or less, or a larger housing.round",
			say(s.Cutter), at, say(s.Round), say(2*(s.Round+s.Depth*s.Undercut)))
	}
}

// refuseFoot holds the housing of the first tread against the floor under it.
func (s *Housed) refuseFoot(bad *Refusals) {
	if s.open() {
		return
	}
	say := s.Style.FormatMM
	n := s.Notches()
	low := s.wedgeUnder(1, s.HeadX())
	if n > 1 {
		low = s.heel(1).Y
	}
	if room := low + s.Below; room < touching {
		bad.add("stringer.foot_levels", "the foot bears %s above the finished floor, and the housing under the first tread runs out of it; the tread and its wedge reach %s below its top",
			say(-s.Below), say(s.Rise-low))
	}
}
