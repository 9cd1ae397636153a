package layout

import (
	"stepoff/spec"
	"stepoff/spec/lumber"
	"stepoff/spec/measure"
	"stepoff/spec/rules"
)

// Loads taken where neither the job nor the code says: dwellings, and what
// stringers, treads and riser boards of 2x lumber weigh (common practice; DCA 6
// reckons with both). The point load is that of one tread on its patch.
//
// Source of 40 psf, and of 300 lb on 2 in by 2 in: IRC table R301.5 and its note
// on treads.
const (
	usualLive = 40 * measure.PSF
	usualDead = 10 * measure.PSF
	pointLoad = 300 * measure.PoundForce
	patchSide = 2 * 25.4
)

// TreadDeflection is what a tread may bend under its point load: span over this.
// Source: Wisconsin SPS 320-325, appendix B, basis of its table of treads.
const TreadDeflection = 288

// FlightLoads are the uniform loads a flight is held against, in pascals.
type FlightLoads struct {
	Live, Dead float64
	Usual      float64      // the live load without Times: what deflection is held against
	LiveFrom   string       // whose live load it is
	DeadFrom   string       // likewise
	Limit      *rules.Limit // the code's live load, where it was taken
	Times      *rules.Limit // the code's number of times the live load expected
	Point      float64      // N on a spot: of a tread, and where the code says so of the stringers
	PointLimit *rules.Limit // the code's, for treads and stringers; nil: it is a rule for treads alone
}

// Lumber is the wood of a member and what it may be stressed to.
type Lumber struct {
	Name   string // DF-L No.2
	Source string
	Basis  string
	lumber.Adjusted
}

func loads(job *spec.Job, code *rules.Code) FlightLoads {
	l := FlightLoads{Live: usualLive, LiveFrom: "no live load is known of " + code.Name + ": that of dwellings is taken", Dead: usualDead, DeadFrom: "usual", Point: pointLoad}
	if code.Name == rules.None {
		l.LiveFrom = "no code is named: that of dwellings is taken"
	}
	if limit, ok := code.Limit(rules.LiveLoadMin); ok {
		l.Live, l.LiveFrom, l.Limit = limit.Pascals, code.Name+" "+limit.Section, &limit
	}
	if job.Loads.Live != nil {
		l.Live, l.LiveFrom, l.Limit = *job.Loads.Live, "the job", nil
	}
	if job.Loads.Dead != nil {
		l.Dead, l.DeadFrom = *job.Loads.Dead, "the job"
	}
	l.Usual = l.Live
	if times, ok := code.Limit(rules.LiveLoadTimes); ok {
		l.Live *= float64(times.Count)
		l.Times = &times
	}
	if point, ok := code.Limit(rules.PointLoadMin); ok {
		l.Point = max(l.Point, point.Newtons)
		l.PointLimit = &point
	}
	return l
}

// woodOf finds the design values of a board and puts the job's conditions on
// them.
func woodOf(job *spec.Job, w spec.Wood, size lumber.Size, flat bool) (Lumber, error) {
	if w.Values != nil {
		return Lumber{Name: "own values", Source: "the job", Basis: "own values", Adjusted: w.Values.Own()}, nil
	}
	row, err := lumber.Published(w.Species, w.Grade, size)
	if err != nil {
		return Lumber{}, err
	}
	c := lumber.Conditions{Wet: job.Service == spec.Wet, Incised: job.Incised, Flat: flat, Size: size}
	return Lumber{Name: row.Species + " " + row.Grade, Source: row.Source, Basis: row.Basis, Adjusted: row.Adjust(c)}, nil
}

// mpa turns pascals into N/mm2.
const mpa = 1e-6
