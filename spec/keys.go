package spec

import (
	"fmt"
	"strings"

	"stepoff/spec/lumber"
	"stepoff/spec/source"
)

// Key is one key of the job file. The table of them is what the loader knows,
// what the schema is made of, and what the README's table of defaults shows.
type Key struct {
	// Path names the key with those it stands under: tread.thickness,
	// stairway[].flight.run.
	Path string
	// Doc says what the value is, in one line.
	Doc string
	// Default is the value taken when the key is left out, as it would be
	// written; empty when there is none.
	Default string
	// LeftOut says what leaving the key out means where there is no Default
	// that could be written. A key with neither is required, or is only a
	// heading for those below it.
	LeftOut string

	example     string // of a required value, as it would be written after the key
	kind        kind
	many        many
	words       []string // allowed, in the order of the constants they stand for
	least, most int      // bounds of a whole number, or of an angle
	required    bool
}

// kind is what one value of a key is. Keys with others below them may be a
// mapping too.
type kind int

const (
	heading     kind = iota // nothing but the keys below it
	text                    // any one line
	word                    // one of words
	positive                // a length, more than 0
	size                    // a length, 0 or more
	level                   // a length of either sign
	whole                   // a whole number, or one of words
	angle                   // degrees, within bounds
	scale                   // measured over drawn
	ratio                   // a slope, 1:16, or one of words
	truth                   // true or false
	date                    // a day
	load                    // psf or kPa, more than 0
	stress                  // psi or MPa, more than 0
	sheet                   // a paper size
	price                   // money, more than 0
	nominalSize             // a board by its nominal size
	boards                  // one or more of them
	elementList             // the members of a stairway
)

// many says whether a key holds a list.
type many int

const (
	one many = iota
	aList
	oneOrList
)

const lumberHint = "a nominal size, or what was measured"

// keys is every key of a job file, in the order of the documentation.
var keys = inherit([]Key{
	{Path: "name", kind: text, Doc: "what the job is called", LeftOut: "no name"},
	{Path: "number", kind: text, Doc: "identification number in the title block", LeftOut: "no number"},
	{Path: "date", kind: date, Doc: "date in the title block, year-month-day", LeftOut: "no date"},
	{Path: "units", kind: word, words: []string{"imperial", "metric"}, Doc: "what bare numbers mean (inches or millimetres) and how lengths are printed",
		LeftOut: "bare numbers are refused; printed as `total_rise` is written"},
	{Path: "code", kind: text, Doc: "the building code in force: a name from `stepoff codes`, a file, or none", Default: "irc-2021"},

	{Path: "levels", required: true, example: `{total_rise: 8' 9"}`, Doc: "the heights measured on site"},
	{Path: "levels.total_rise", kind: positive, required: true, example: `8' 9"`, Doc: "lower floor to upper floor, plumb"},
	{Path: "levels.measured", kind: word, words: []string{"finished", "rough"}, Doc: "the floors the rise was taken between: finished, or as they are today", Default: "finished"},
	{Path: "levels.lower_finish", kind: size, Doc: "flooring still to come on the lower floor", Default: "0"},
	{Path: "levels.upper_finish", kind: size, Doc: "flooring still to come on the upper floor", Default: "0"},
	{Path: "levels.header_top", kind: size, Doc: "finished upper floor down to the top of what the head bears on", Default: "0"},
	{Path: "levels.header_depth", kind: positive, Doc: "finished upper floor down to the underside of what the head bears on", LeftOut: "head bearing is not checked"},
	{Path: "levels.floor_depth", kind: positive, Doc: "finished upper floor down to the ceiling below", LeftOut: "headroom is not checked"},

	{Path: "width", kind: positive, Doc: "clear width", LeftOut: "nothing that needs the width is given"},
	{Path: "sides", kind: word, many: aList, words: []string{"wall", "open"}, Doc: "what stands at the left and at the right, going up", LeftOut: "guards and handrails are not checked"},
	{Path: "wall_gap", kind: size, Doc: "stringer to wall framing, for drywall and skirt", Default: "0"},
	{Path: "available_run", kind: positive, Doc: "first nosing to head plumb cut, as much as there is", LeftOut: "the run is not limited"},
	{Path: "room", Doc: "the floor there is for the whole stairway, its first nosing to the farthest wall"},
	{Path: "room.along", kind: positive, Doc: "along the first flight, as much as there is", LeftOut: "not limited"},
	{Path: "room.across", kind: positive, Doc: "across it, as much as there is", LeftOut: "not limited"},
	{Path: "opening", kind: positive, Doc: "head plumb cut to the far edge of the floor opening, level", LeftOut: "the opening is not checked"},

	{Path: "stairway", kind: elementList, many: aList, Doc: "the flights and what stands between them, from the bottom up", LeftOut: "one flight, its risers and run chosen"},
	{Path: "stairway[].flight", Doc: "a straight flight"},
	{Path: "stairway[].flight.risers", kind: whole, least: 1, most: 999, Doc: "number of risers", LeftOut: "the best choice of `figure` under the code; without a code the nearest to rise / 7 1/2 in"},
	{Path: "stairway[].flight.run", kind: positive, Doc: "unit run, nosing to nosing", LeftOut: "tread board less nosing, not under the code's least"},
	override("head"), override("foot"), override("kicker"), override("ledger"), override("count"), override("support"), override("foot_levels"),

	{Path: "stairway[].landing", Doc: "a landing between two flights"},
	{Path: "stairway[].landing.turn", kind: word, words: []string{"none", "left", "right"}, required: true, example: "left", Doc: "the hand it turns to, going up; none: straight through"},
	{Path: "stairway[].landing.angle", kind: word, words: []string{"90", "180"}, Doc: "quarter turn or half turn, in degrees", Default: "90"},
	{Path: "stairway[].landing.length", kind: positive, Doc: "clear length along the lower flight's travel, to the wall; straight through, to the upper flight's first nosing", LeftOut: "`width`, the stair's"},
	{Path: "stairway[].landing.width", kind: positive, Doc: "clear width across it; of a quarter turn, from the upper flight's first nosing to the wall", LeftOut: "`width`, the stair's; 180: two of them and the gap"},
	{Path: "stairway[].landing.gap", kind: size, Doc: "between the two flights of a half turn", Default: "0"},
	{Path: "stairway[].landing.side", kind: word, words: []string{"inside", "middle", "outside", "left", "right"}, Doc: "where the flights stand on a landing wider than they are: inside is toward the hand it turns to; left and right going up", LeftOut: "inside; straight through, middle"},
	{Path: "stairway[].landing.finish", kind: size, Doc: "flooring on its sheathing", LeftOut: "that of `levels.upper_finish`"},
	{Path: "stairway[].landing.joists", kind: word, words: lumber.Names(), Doc: "what its joists and rims are cut from", LeftOut: "no framing is worked out, and bearing on it is not checked"},
	{Path: "stairway[].landing.spacing", kind: positive, Doc: "joist to joist, on centre", Default: `16"`},
	{Path: "stairway[].landing.sheathing", kind: positive, Doc: "thickness of the sheathing on the joists", Default: `3/4"`},
	{Path: "stairway[].landing.on", kind: word, words: []string{"legs", "walls", "ledgers"}, Doc: "what carries it", Default: "legs"},
	{Path: "stairway[].landing.built_level", kind: positive, Doc: "top of a landing that exists, above the lower floor; measured as the total rise is", LeftOut: "its level follows from the shared rise"},

	{Path: "stairway[].winders", Doc: "a turn of winders between two flights"},
	{Path: "stairway[].winders.turn", kind: word, words: []string{"left", "right"}, required: true, example: "left", Doc: "the hand it turns to, going up"},
	{Path: "stairway[].winders.angle", kind: angle, least: 45, most: 90, Doc: "how far it turns, in degrees", Default: "90"},
	{Path: "stairway[].winders.treads", kind: whole, least: 2, most: 5, required: true, example: "3", Doc: "number of winders"},
	{Path: "stairway[].winders.lines", kind: word, words: []string{"radial", "even"}, Doc: "riser lines through one pivot, or through equal chords of the walkline and of the inside", Default: "radial"},
	{Path: "stairway[].winders.framing", kind: word, words: []string{"boxes", "none"}, Doc: "platforms stacked on each other, or not worked out", Default: "boxes"},
	{Path: "stairway[].winders.sheathing", kind: positive, Doc: "thickness of the sheathing on the boxes", Default: `3/4"`},
	{Path: "stairway[].winders.setback", kind: size, Doc: "how far before and after the inside corner the first and the last riser line stand; one that is given is checked and not changed", LeftOut: "the least that is deep enough by the code"},
	{Path: "stairway[].winders.walkline", kind: positive, Doc: "walkline it is laid out by, from the inside edge of the clear width; a code that has its own from there is checked on that", LeftOut: "the code's; without one 12 in"},
	{Path: "stairway[].winders.narrow", kind: size, Doc: "least depth of a winder at its narrow end, square to its nosing", LeftOut: "the code's; without one 6 in, or 0 where the code lets winders meet in a point"},
	{Path: "stairway[].winders.measure", kind: word, words: []string{"chord", "arc"}, Doc: "depth on the walkline straight across, or along it", Default: "chord"},

	{Path: "stairway[].curve", Doc: "a curved flight"},
	{Path: "stairway[].curve.turn", kind: word, words: []string{"left", "right"}, required: true, example: "left", Doc: "the hand it turns to, going up"},
	{Path: "stairway[].curve.risers", kind: whole, least: 3, most: 999, Doc: "number of risers; its treads are one fewer", LeftOut: "as a flight's"},
	{Path: "stairway[].curve.inside_radius", kind: positive, required: true, example: `5'`, Doc: "radius of the inside edge of the clear width"},
	{Path: "stairway[].curve.angle", kind: angle, least: 1, most: 350, required: true, example: "125", Doc: "how far it turns from its first riser line to its last, in degrees"},
	{Path: "stairway[].curve.walkline", kind: positive, Doc: "walkline it is laid out by, from the inside edge of the clear width; a code that has its own from there is checked on that", LeftOut: "the code's; without one 12 in"},
	{Path: "stairway[].curve.measure", kind: word, words: []string{"chord", "arc"}, Doc: "depth on the walkline straight across, or along it", Default: "chord"},
	{Path: "stairway[].curve.plate", kind: word, words: lumber.Names(), Doc: "the stock whose width the curved plates and the studs on them have", Default: "2x4"},
	{Path: "stairway[].curve.sheet", Doc: "the sheets that curved plates are cut from"},
	{Path: "stairway[].curve.sheet.width", kind: positive, Doc: "across the grain", Default: `48"`},
	{Path: "stairway[].curve.sheet.length", kind: positive, Doc: "along the grain", Default: `96"`},
	{Path: "stairway[].curve.sheet.thickness", kind: positive, Doc: "of one layer", Default: `3/4"`},
	{Path: "stairway[].curve.layers", kind: whole, least: 1, most: 8, Doc: "layers of sheet in one plate, their joints staggered", LeftOut: "2"},
	{Path: "stairway[].curve.lamination", kind: positive, Doc: "thickness of the layers that strings are bent from", Default: `3/8"`},

	{Path: "tread", required: true, example: `{thickness: 1 1/2"}`, Doc: "the treads"},
	{Path: "tread.thickness", kind: positive, Doc: "thickness of the finished tread", LeftOut: "that of `tread.boards`; required without them"},
	{Path: "tread.nosing", kind: size, Doc: "overhang past the riser board's face", Default: "0"},
	{Path: "tread.boards", kind: boards, Doc: "what a tread is cut from: 2x12, 2 2x6, or what was measured", LeftOut: "tread boards are not checked"},
	{Path: "tread.boards.width", kind: positive, required: true, example: `11 1/4"`, Doc: "width as measured"},
	{Path: "tread.boards.thickness", kind: positive, required: true, example: `1 1/2"`, Doc: "thickness as measured"},
	{Path: "tread.species", kind: text, Doc: "species of the tread boards, as it is stamped", LeftOut: "the treads' strength is not checked"},
	{Path: "tread.grade", kind: text, Doc: "grade of the tread boards, as it is stamped", LeftOut: "the treads' strength is not checked"},
	{Path: "tread.values", Doc: "design values of treads that have their own: see stringer.values"},
	{Path: "tread.values.bending", kind: stress, required: true, example: "1400 psi", Doc: "Fb"},
	{Path: "tread.values.shear", kind: stress, required: true, example: "135 psi", Doc: "Fv"},
	{Path: "tread.values.modulus", kind: stress, required: true, example: "1.4e6 psi", Doc: "E"},
	{Path: "tread.overhang", kind: size, Doc: "overhang past an open side", Default: "0"},

	{Path: "riser", kind: word, words: []string{"open"}, required: true, example: `{thickness: 3/4"} or riser: open`, Doc: "the riser boards, or open"},
	{Path: "riser.thickness", kind: positive, required: true, example: `3/4"`, Doc: "thickness of the riser board"},
	{Path: "riser.joint", kind: word, words: []string{"behind", "on"}, Doc: "the riser board runs down behind the tread, or stands on it", Default: "behind"},

	{Path: "stringer", required: true, example: `{stock: 2x12}`, Doc: "the stringers"},
	{Path: "stringer.stock", kind: nominalSize, required: true, example: `2x12`, Doc: "the board they are cut from: " + lumberHint},
	{Path: "stringer.stock.width", kind: positive, required: true, example: `11 1/4"`, Doc: "width as measured"},
	{Path: "stringer.stock.thickness", kind: positive, required: true, example: `1 1/2"`, Doc: "thickness as measured"},
	{Path: "stringer.species", kind: text, Doc: "species of wood, as it is stamped", LeftOut: "strength is not checked, and that is said"},
	{Path: "stringer.grade", kind: text, Doc: "grade, as it is stamped", LeftOut: "strength is not checked, and that is said"},
	{Path: "stringer.count", kind: whole, words: []string{"auto"}, least: 2, most: 99, Doc: "how many stringers stand under the flight",
		LeftOut: "one for each value of `foot_levels` or `support`; else 3 up to 36 in wide or where no width is given, wider by 18 in spacing; auto: by strength and tread; 2 where they are housed or cleated, as treads stand between them"},
	{Path: "stringer.head", kind: word, words: []string{"hung", "flush"}, Doc: "top tread one rise below the upper floor, or level with it", Default: "hung"},
	{Path: "stringer.top_riser", kind: word, words: []string{"board", "none"}, Doc: "whether a riser board covers the header above the last tread", LeftOut: "board; none where risers are open"},
	{Path: "stringer.top_nosing", kind: size, Doc: "overhang of the upper floor's own nosing", LeftOut: "as the treads'"},
	{Path: "stringer.behind_head", kind: size, Doc: "hanger board or packing between head and header", Default: "0"},
	{Path: "stringer.foot", kind: word, words: []string{"finished", "rough"}, Doc: "the surface the foot stands on: the finished floor, or the floor as it is today", Default: "rough"},
	{Path: "stringer.foot_levels", kind: level, many: aList, Doc: "bearing of each stringer above (+) or below (-) where the rise was measured, left to right going up", LeftOut: "all 0"},
	{Path: "stringer.kicker", kind: word, words: pieces(), Doc: "notch at the foot over a plate laid flat", Default: "none"},
	{Path: "stringer.ledger", kind: word, words: pieces(), Doc: "notch at the head over a ledger on edge", Default: "none"},
	{Path: "stringer.support", kind: word, many: oneOrList, words: []string{"span", "wall"}, Doc: "held at its ends, or fastened along a wall: one word for all stringers or one each", Default: "span"},
	{Path: "stringer.build", kind: word, words: []string{"sawn", "housed", "cleated"}, Doc: "treads on teeth, let into the face, or on cleats", Default: "sawn"},
	{Path: "stringer.props", kind: positive, many: aList, Doc: "posts below the stringers: distances from the foot's front, level, in order", LeftOut: "none"},
	{Path: "stringer.strongback", kind: word, words: pieces(), Doc: "stiffener fastened to the stringers' sides", Default: "none"},
	{Path: "stringer.deflection", kind: whole, least: 1, most: 9999, Doc: "allowed deflection under the live load, span over this", Default: "360"},
	{Path: "stringer.values", Doc: "design values of stock that has its own, with its maker's factors on them; taken in place of those for species and grade"},
	{Path: "stringer.values.bending", kind: stress, required: true, example: "2250 psi", Doc: "Fb"},
	{Path: "stringer.values.shear", kind: stress, required: true, example: "285 psi", Doc: "Fv"},
	{Path: "stringer.values.bearing", kind: stress, required: true, example: "750 psi", Doc: "Fc-perp, across the grain"},
	{Path: "stringer.values.modulus", kind: stress, required: true, example: "1.5e6 psi", Doc: "E"},

	{Path: "housing", Doc: "how treads and risers are let into strings of `build: housed`"},
	{Path: "housing.margin", kind: size, Doc: "nosing line to the string's top edge, square to it; 40 mm: GTZ, Carpentry for Vocational Schools, ch. 23", Default: "40mm"},
	{Path: "housing.depth", kind: positive, Doc: `depth of the housings; 1/2": Wood, 1894`, Default: `1/2"`},
	{Path: "housing.wedge_taper", kind: ratio, Doc: "thickness to length of the wedges, under treads and behind risers alike; 1:16: from memory, no published one was found", Default: "1:16"},
	{Path: "housing.undercut", kind: ratio, words: []string{"none"}, Doc: "how much the housings' walls lean out at the bottom, by their depth; about 1:12: Goring; none: square walls, a straight cutter", Default: "1:12"},
	{Path: "housing.round", kind: size, Doc: "radius to which the treads' nosings are rounded, above and below", LeftOut: "half the tread's thickness, a half round, but no more than the nosing"},
	{Path: "housing.cutter", kind: positive, Doc: `diameter of the router cutter where it is widest; 1/2": common practice`, Default: `1/2"`},
	{Path: "housing.bush", kind: positive, Doc: `outside diameter of the guide bush; 5/8": common practice`, Default: `5/8"`},
	{Path: "housing.foot_plumb", kind: size, Doc: "plumb cut at the foot to the first nosing, level; 40 mm: GTZ, ch. 23", Default: "40mm"},
	{Path: "housing.head_level", kind: size, Doc: "length of the level cut at a hung head; 100 mm: GTZ, ch. 23", Default: "100mm"},

	{Path: "cleats", Doc: "what treads bear on between stringers of `build: cleated`"},
	{Path: "cleats.margin", kind: size, Doc: "nosing line to the stringer's top edge, square to it; as a housed string's", Default: "40mm"},
	{Path: "cleats.kind", kind: word, words: []string{"wood", "bracket"}, Doc: "blocks of wood, or steel angle brackets", Default: "wood"},
	{Path: "cleats.height", kind: positive, Doc: `down from the tread's underside; 1 1/2": common practice, a 2x2`, Default: `1 1/2"`},
	{Path: "cleats.thickness", kind: positive, Doc: `out from the stringer's face, under the tread; 1 1/2": common practice, a 2x2`, Default: `1 1/2"`},
	{Path: "cleats.setback", kind: size, Doc: `from the tread's front and back to the ends of the cleat; 1/2": common practice`, Default: `1/2"`},
	{Path: "cleats.screws", kind: whole, least: 2, most: 20, Doc: "screws through each cleat into the stringer; 3: from memory, see the maker's table or a licensed professional", Default: "3"},
	{Path: "cleats.foot_plumb", kind: size, Doc: "plumb cut at the foot to the first nosing, level; as a housed string's", Default: "40mm"},
	{Path: "cleats.head_level", kind: size, Doc: "length of the level cut at a hung head; as a housed string's", Default: "100mm"},

	{Path: "saw", Doc: "the circular saw the stringers are cut with"},
	{Path: "saw.blade", kind: positive, Doc: "diameter of the blade", Default: `7 1/4"`},
	{Path: "saw.depth", kind: positive, Doc: "depth of the blade below the shoe", LeftOut: `stock + 1/8", at most 2 7/16"`},
	{Path: "saw.stop_short", kind: size, Doc: "how far short of the root the blade stops", Default: `1/8"`},

	{Path: "saw.bevel", kind: angle, most: 45, Doc: "tilt of the blade from square, degrees", Default: "0"},
	{Path: "saw.root_hole", kind: positive, Doc: "diameter of a hole drilled at every root, its middle in the corner; half of it is lost to the throat", LeftOut: "none"},

	{Path: "loads", Doc: "uniform loads on the horizontal projection"},
	{Path: "loads.live", kind: load, Doc: "live load, psf or kPa", LeftOut: "the code's; 40 psf where it has none, and that is said"},
	{Path: "loads.dead", kind: load, Doc: "dead load, psf or kPa", LeftOut: "10 psf"},
	{Path: "service", kind: word, words: []string{"dry", "wet"}, Doc: "whether the wood stays dry", Default: "dry"},
	{Path: "incised", kind: truth, Doc: "whether the stock is incised and treated", Default: "false"},

	{Path: "stock", Doc: "the boards that a shop buys, and how it cuts them"},
	{Path: "stock.lengths", kind: positive, many: aList, Doc: "lengths they are sold in", LeftOut: "8 to 20 ft by 2 ft; metric 2.4 to 6 m by 0.3 m (common practice)"},
	{Path: "stock.prices", kind: price, many: aList, Doc: "what one board of the stringers' size costs, one price for each of `lengths`, in any money", LeftOut: "planned for least waste instead of least cost"},
	{Path: "stock.kerf", kind: size, Doc: "what the saw takes between two parts", Default: `1/8"`},
	{Path: "stock.end_trim", kind: size, Doc: "what comes off either end of a board first, for checks and to square it", Default: `1"`},

	{Path: "paper", Doc: "what the sheets are printed on"},
	{Path: "paper.size", kind: sheet, words: PaperNames(), Doc: `a named size, roll 36", or two lengths: 12" x 18"`, Default: "letter"},
	{Path: "paper.margin", kind: size, Doc: "edge the printer leaves white", Default: `1/4"`},
	{Path: "paper.overlap", kind: size, Doc: "how far neighbouring sheets overlap", Default: `1/2"`},
	{Path: "paper.scale_x", kind: scale, Doc: "what the printer makes of a true length across the paper, measured / drawn", Default: "1"},
	{Path: "paper.scale_y", kind: scale, Doc: "the same along the paper", Default: "1"},
})

// pieces are the sizes a kicker, ledger or strongback comes in; none takes
// away what a flight would inherit.
func pieces() []string { return append([]string{"none"}, lumber.Names()...) }

const flightPath = "stairway[].flight"

// override is a key of stringer that a flight may set for itself.
func override(name string) Key {
	return Key{Path: flightPath + "." + name, Doc: "for this flight: see stringer." + name, LeftOut: "that of `stringer`"}
}

// inherit gives a flight's own keys what the stringer's of the same name allow.
func inherit(all []Key) []Key {
	for i := range all {
		name, below := strings.CutPrefix(all[i].Path, flightPath+".")
		if !below {
			continue
		}
		for _, k := range all {
			if k.Path == "stringer."+name {
				all[i].kind, all[i].many, all[i].words, all[i].least, all[i].most = k.kind, k.many, k.words, k.least, k.most
			}
		}
	}
	return all
}

// table holds the keys by path.
var table = func() map[string]Key {
	byPath := map[string]Key{}
	for _, k := range keys {
		byPath[k.Path] = k
	}
	return byPath
}()

// below returns the names of the keys directly below a path; of the top level
// for an empty one.
func below(path string) []string {
	var names []string
	for _, k := range keys {
		if parent, name := split(k.Path); parent == path {
			names = append(names, name)
		}
	}
	return names
}

// keysBelow is below, with a hint for a key that stands at the wrong place.
func keysBelow(path string) (names []string, hint func(key string) string) {
	names = below(path)
	return names, func(key string) string {
		where := ""
		if source.DidYouMean(key, names) != "" {
			return "" // misspelt here, rather than misplaced
		}
		for _, k := range keys {
			parent, name := split(k.Path)
			switch inside := strings.HasPrefix(parent, path+"."); {
			case name != key:
			case inside:
				return fmt.Sprintf("%s belongs under %s", key, strings.TrimPrefix(parent, path+"."))
			case where != "" || strings.Contains(parent, "[]"):
			case parent == "":
				where = key + " belongs at the left edge, under nothing"
			default:
				where = fmt.Sprintf("%s belongs under %s", key, parent)
			}
		}
		return where
	}
}

// split parts a path into the name of a key and the path it stands under.
func split(path string) (parent, name string) {
	i := strings.LastIndex(path, ".")
	if i < 0 {
		return "", path
	}
	return path[:i], path[i+1:]
}

// Defaults returns the keys that may be left out, each with what is taken
// then.
func Defaults() []Key {
	var rows []Key
	for _, k := range keys {
		if k.Default != "" || k.LeftOut != "" {
			rows = append(rows, k)
		}
	}
	return rows
}
