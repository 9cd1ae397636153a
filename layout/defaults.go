package layout

import (
	"math"

	"stepoff/layout/stringer"
	"stepoff/spec"
	"stepoff/spec/lumber"
	"stepoff/spec/measure"
)

// The blade depth taken where the job does not say: an eighth through the
// stock (common practice), but no more than the common 7 1/4 in saw reaches.
// Published depths for that saw run from 2 1/4 to 2 3/4 in; 2 7/16 is usual.
const (
	bladeProud = measure.Inch / 8
	bladeReach = 2*measure.Inch + 7*measure.Inch/16
)

func saw(w spec.Saw, stock measure.Length) stringer.Saw {
	set := stringer.Saw{Blade: w.Blade.MM(), StopShort: w.StopShort.MM(), Bevel: w.Bevel * math.Pi / 180, RootHole: w.RootHole.MM()}
	switch {
	case w.Depth != nil:
		set.Depth = w.Depth.MM()
	case w.Bevel == 0:
		set.Depth = min(stock+bladeProud, bladeReach).MM()
	default: // tilted, it has farther to go
		set.Depth = math.Min(set.Through(stock.MM())+bladeProud.MM(), bladeReach.MM())
	}
	return set
}

// squareStep is the fineness to which a framing square is set.
func squareStep(u measure.Units) measure.Length {
	if u == measure.Metric {
		return measure.Millimetre
	}
	return measure.Inch / 16
}

// stockLength is the shortest length sold that holds the blank and a trim at
// both ends; 0 when there is none.
func stockLength(leastBlank float64, u measure.Units) measure.Length {
	least, ok := measure.FromMM(leastBlank)
	if !ok {
		return 0
	}
	l, _ := lumber.StockLength(least+2*EndTrim, u)
	return l
}
