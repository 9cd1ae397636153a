package spec

import (
	"stepoff/spec/measure"
	"stepoff/spec/source"
)

// Load reads a job file. name is what the file is called in messages. The error
// is a source.Mistakes with everything that is wrong in the file; the job is
// nil then.
func Load(name string, text []byte) (*Job, error) {
	var mistakes source.Mistakes
	job := loadJob(&source.File{Name: name, Text: text}, &mistakes, nil)
	if err := mistakes.Err(); err != nil {
		return nil, err
	}
	return job, nil
}

// loadJob reads a job file, with values in place of the file's own, by the paths of
// their keys. Without a mistake the job is not nil.
func loadJob(file *source.File, mistakes *source.Mistakes, over map[string]*source.Node) *Job {
	root := file.YAML(mistakes)
	if root == nil {
		return nil
	}
	job := &Job{Source: file.Text, file: file, places: root.Places(), over: over}
	if at, there := job.places["kind"]; there {
		mistakes.Add(file, at, "a job file has no kind; a stair as measured (kind: %s) is for stepoff punch", asBuiltKind)
	} else if m, ok := root.Mapping(keysBelow("")); ok {
		readJob(group{units: measure.Undeclared, at: m, over: over}, job)
	}
	return job
}

// readJob reads the whole file.
func readJob(top group, job *Job) {
	if top.get("units") != nil {
		top.units = measure.Units(top.word("units", 0))
	}
	job.Name = top.text("name")
	job.Number = top.text("number")
	job.Date = top.date("date")
	job.Code = Code{Name: top.text("code"), Given: top.get("code") != nil}
	if job.Code.Name == "" {
		top.get("code").Mistake("code: name a code, a file, or none")
	}
	job.Levels, job.Units = readLevels(top)

	job.Width = top.lengthIf("width")
	job.Sides = readSides(top)
	job.WallGap = top.length("wall_gap")
	job.AvailableRun = top.lengthIf("available_run")
	room, _ := top.sub("room")
	job.Room = Room{Along: room.lengthIf("along"), Across: room.lengthIf("across")}
	job.Opening = top.lengthIf("opening")

	job.Tread = readTread(top)
	job.Riser = readRiser(top)
	stringer, at := readStringer(top, job.Riser.Open)
	job.Stringer = stringer.settle(at, job.Width)
	job.Stairway = readStairway(top, stringer, job)

	job.Housing, job.Cleats = readHousing(top), readCleats(top)
	job.Saw = readSaw(top)
	loads, _ := top.sub("loads")
	job.Loads = Loads{Live: loads.loadIf("live"), Dead: loads.loadIf("dead")}
	job.Service = Service(top.word("service", 0))
	job.Incised = top.truth("incised")
	job.Bought = readBought(top, job.Units)
	job.Paper = readPaper(top)
}

// readLevels reads the heights, and in which units the job prints: the declared
// ones, else those its total rise is written in.
func readLevels(top group) (Levels, measure.Units) {
	g, _ := top.sub("levels")
	l := Levels{
		TotalRise:   g.length("total_rise"),
		Measured:    Measured(g.word("measured", 0)),
		LowerFinish: g.length("lower_finish"),
		UpperFinish: g.length("upper_finish"),
		HeaderTop:   g.length("header_top"),
		HeaderDepth: g.lengthIf("header_depth"),
		FloorDepth:  g.lengthIf("floor_depth"),
	}
	if n := g.get("total_rise"); n != nil && l.TotalRise > 0 && l.Finished() <= 0 {
		n.Mistake("total_rise: with the flooring still to come no rise is left between the finished floors")
	}
	if n := g.get("header_depth"); n != nil && l.HeaderDepth != nil && *l.HeaderDepth <= l.HeaderTop {
		n.Mistake("header_depth: the underside must lie deeper than header_top; both are measured down from the finished upper floor")
	}
	if top.units != measure.Undeclared {
		return l, top.units
	}
	if n := g.get("total_rise"); n != nil {
		if text, ok := n.Text(); ok && measure.UnitsOf(text) == measure.Metric {
			return l, measure.Metric
		}
	}
	return l, measure.Imperial
}

func readSides(top group) []Side {
	const wanted = "a list of two, left and right going up, like [wall, open]"
	var sides []Side
	items := top.items("sides", wanted)
	for _, item := range items {
		i, _ := oneOf(item, "sides", top.key("sides").words)
		sides = append(sides, Side(i))
	}
	if len(items) > 0 && len(items) != 2 {
		top.get("sides").Mistake("sides: %s belongs here, not %d values", wanted, len(items))
	}
	return sides
}

func readTread(top group) Tread {
	g, given := top.sub("tread")
	t := Tread{Nosing: g.length("nosing"), Overhang: g.length("overhang"), Boards: g.boards(), Wood: g.wood()}
	if thickness := g.lengthIf("thickness"); thickness != nil {
		t.Thickness = *thickness
	} else if t.Boards != nil {
		t.Thickness = t.Boards.Thickness
	} else if given && g.get("thickness") == nil && g.get("boards") == nil {
		g.at.Missing("thickness", `tread.thickness is missing (the finished tread); write it like thickness: 1 1/2", or name the boards, like boards: 2x12`)
	}
	return t
}

func readRiser(top group) Riser {
	n := top.node("riser")
	if n == nil {
		return Riser{}
	}
	if !n.IsMapping() {
		if text, ok := single(n, "riser", `{thickness: 3/4"} or open`); ok && text != "open" {
			n.Mistake("riser: %s is neither; write {thickness: 3/4\"} for riser boards, open for none", measure.Quote(text))
		}
		return Riser{Open: true}
	}
	g, _ := top.sub("riser")
	return Riser{Thickness: g.length("thickness"), Joint: Joint(g.word("joint", 0))}
}

func readSaw(top group) Saw {
	g, _ := top.sub("saw")
	s := Saw{Blade: g.length("blade"), Depth: g.lengthIf("depth"), StopShort: g.length("stop_short"), Bevel: g.angle("bevel", ""), RootHole: g.length("root_hole")}
	if n := g.get("depth"); n != nil && s.Depth != nil && s.Blade > 0 && 2**s.Depth >= s.Blade {
		n.Mistake("depth: a blade cuts less deep than half its diameter; write less than %s", measure.Style{Units: top.units, Denominator: 64}.Format(s.Blade/2))
	}
	return s
}
