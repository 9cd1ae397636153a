package lumber

// Factor is one adjustment factor and what it does to each design value; 1
// leaves it alone.
type Factor struct {
	Symbol, Name      string // CM, wet service
	Fb, Fv, FcPerp, E float64
	Why               string // why it is what it is here
	Source, Basis     string
}

// Conditions are what the factors depend on.
type Conditions struct {
	Wet     bool // in service above 19 % moisture content
	Incised bool
	Flat    bool // loaded on its face, as a tread is
	Size    Size
}

// Adjusted are design values with every factor on them, and the factors.
type Adjusted struct {
	Reference Values
	Values
	Factors []Factor
}

// Occupancy loads count as lasting ten years, for which the reference values
// are. Wet service, size, flat use: the adjustments at the head of tables 4A and
// 4B. CF of 4 in thick lumber is a little more than that of 2 and 3 in, which is
// taken.
const (
	tables = "NDS Supplement 2018, tables 4A and 4B" // as a public structural library gives them
	// dryEnough is Fb x CF up to which wet service leaves bending alone.
	dryEnough = 1150 * psi
)

// sizeFactors are CF on bending by nominal width; Southern Pine has its own
// value for each width instead, and 0.9 beyond 12 in.
var sizeFactors = map[int]float64{4: 1.5, 6: 1.3, 8: 1.2, 10: 1.1, 12: 1.0, 14: 0.9}

// flatFactors are Cfu on bending by nominal width, 2 and 3 in thick. From
// memory.
var flatFactors = map[int]float64{4: 1.1, 6: 1.15, 8: 1.15, 10: 1.2, 12: 1.2, 14: 1.2}

// Adjust puts the factors on reference values.
func (r Reference) Adjust(c Conditions) Adjusted {
	nominal := nominalWidth(c.Size.Width)
	size := Factor{Symbol: "CF", Name: "size", Fb: sizeFactors[nominal], Why: "the board's own width, not what the notches leave", Source: tables, Basis: secondary}
	if r.Nominal != 0 {
		size.Why = "Southern Pine has values for each width"
		if nominal <= 12 {
			size.Fb = 1
		}
	}
	wet := Factor{Symbol: "CM", Name: "wet service", Why: "dry", Source: tables, Basis: secondary}
	if c.Wet {
		wet.Why = "wet"
		wet.Fb, wet.Fv, wet.FcPerp, wet.E = 0.85, 0.97, 0.67, 0.90
		if r.Fb*size.Fb <= dryEnough {
			wet.Fb, wet.Why = 1, "wet; bending is left alone up to 1150 psi"
		}
	}
	incised := Factor{Symbol: "Ci", Name: "incising", Why: "not incised", Source: "NDS 2018, 4.3.8", Basis: fromMemory}
	if c.Incised {
		incised.Why = "incised"
		incised.Fb, incised.Fv, incised.E = 0.80, 0.80, 0.95
	}
	factors := []Factor{
		{Symbol: "CD", Name: "load duration", Why: "occupancy", Source: "NDS 2018, table 2.3.2", Basis: fromMemory},
		wet,
		{Symbol: "Ct", Name: "temperature", Why: "up to 100 F", Source: "NDS 2018, 2.3.3", Basis: fromMemory},
		{Symbol: "CL", Name: "stability", Why: "the treads hold the upper edge", Source: "NDS 2018, 3.3.3", Basis: fromMemory},
		size,
		{Symbol: "Cr", Name: "repetitive member", Why: "not counted on: DCA 6 does not either", Source: "NDS 2018, 4.3.9", Basis: secondary},
		incised,
	}
	if c.Flat {
		factors = append(factors, Factor{Symbol: "Cfu", Name: "flat use", Fb: flatFactors[nominal], Why: "loaded on its face", Source: tables, Basis: fromMemory})
	}
	return r.Values.with(factors)
}

// Own takes design values as somebody states them, with nothing put on them but
// what is 1 anyway.
func (v Values) Own() Adjusted {
	return v.with([]Factor{{Symbol: "every factor", Name: "as stated", Why: "the values stated in the job are taken as they are, for the load, moisture and size they are used at", Source: "the job", Basis: "own values"}})
}

// with multiplies the factors in; one that says nothing of a value is 1.
func (v Values) with(factors []Factor) Adjusted {
	a := Adjusted{Reference: v, Values: v}
	for _, f := range factors {
		for _, one := range []*float64{&f.Fb, &f.Fv, &f.FcPerp, &f.E} {
			if *one == 0 {
				*one = 1
			}
		}
		a.Fb *= f.Fb
		a.Fv *= f.Fv
		a.FcPerp *= f.FcPerp
		a.E *= f.E
		a.Emin *= f.E
		a.Factors = append(a.Factors, f)
	}
	return a
}
