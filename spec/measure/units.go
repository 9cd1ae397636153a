package measure

import "fmt"

// Units are what bare numbers mean and how lengths are printed.
type Units int

// The two systems; the zero value is imperial.
const (
	Imperial Units = iota
	Metric

	// Undeclared is for Parse alone: nobody has said what a bare number
	// means, so that only 0 can be one.
	Undeclared Units = -1
)

func (u Units) String() string {
	switch u {
	case Imperial:
		return "imperial"
	case Metric:
		return "metric"
	}
	return "undeclared"
}

// ParseUnits reads the name of a system of units.
func ParseUnits(text string) (Units, error) {
	switch text {
	case "imperial":
		return Imperial, nil
	case "metric":
		return Metric, nil
	}
	return Undeclared, fmt.Errorf("units are imperial or metric, not %s", Quote(text))
}

// ParseDenominator reads how finely inches are printed: 16, 32 or 64, the
// divisions a tape or rule carries.
func ParseDenominator(text string) (int, error) {
	switch text {
	case "16":
		return 16, nil
	case "32":
		return 32, nil
	case "64":
		return 64, nil
	}
	return 0, fmt.Errorf("inches are printed in 16, 32 or 64 parts, not %s", Quote(text))
}
