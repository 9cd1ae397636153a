package report

import (
	"fmt"

	"stepoff/layout"
	"stepoff/layout/turn"
)

// The shapes of what winders and curves are built from.
type (
	boxJSON struct {
		Name    string        `json:"name"`
		Height  mm            `json:"height_mm"` // of its rims and joists
		Bottom  mm            `json:"bottom_mm"` // levels above the lower finished floor
		Top     mm            `json:"top_mm"`    // of its sheathing
		Leg     *mm           `json:"leg_mm,omitempty"`
		Outline [][2]mm       `json:"outline_mm"`
		Parts   []boxPartJSON `json:"parts"`
	}
	boxPartJSON struct {
		Part    string  `json:"part"`
		Length  mm      `json:"length_mm"`  // long point to long point
		Bevels  [2]deg  `json:"bevels_deg"` // off square; more than 0: the long point is on the outer face
		Outline [][2]mm `json:"outline_mm"`
	}
	markJSON struct {
		Riser      int    `json:"riser"`
		Wall       string `json:"wall"`
		FromCorner mm     `json:"from_corner_mm"`
		Height     mm     `json:"height_mm"`
	}
	wallStringJSON struct {
		Wall    string         `json:"wall"`
		From    mm             `json:"from_mm"`
		To      mm             `json:"to_mm"`
		Steps   []wallStepJSON `json:"steps"`
		Notched [][2]mm        `json:"notched_mm"`
	}
	wallStepJSON struct {
		Tread  int `json:"tread"`
		Run    mm  `json:"run_mm"`
		Whole  mm  `json:"whole_run_mm"`
		Pitch  deg `json:"pitch_deg"`
		Length mm  `json:"length_mm"`
	}
	housedJSON struct {
		Wall        string  `json:"wall"`
		Pitch       deg     `json:"pitch_deg"`
		FlightPitch *deg    `json:"flight_pitch_deg,omitempty"`
		Radius      *mm     `json:"radius_mm,omitempty"`
		Clear       mm      `json:"clear_mm"`
		Needs       mm      `json:"least_width_mm"`
		Upper       [][2]mm `json:"upper_mm"`
		Lower       [][2]mm `json:"lower_mm"`
	}
	studJSON struct {
		Plate  string `json:"plate"`
		Angle  deg    `json:"angle_deg"`
		Height mm     `json:"height_mm"`
		Riser  int    `json:"riser,omitempty"` // left out between two riser lines
		Tread  int    `json:"tread"`
		Stands string `json:"stands"` // behind its mark, or before it
		Bevel  deg    `json:"bevel_deg"`
	}
	plateJSON struct {
		Name     string        `json:"name"`
		Radius   mm            `json:"radius_mm"` // of the edge flush with the clear width
		Width    mm            `json:"width_mm"`
		Angle    deg           `json:"angle_deg"`
		Segments int           `json:"segments"` // of a layer without half ones
		Inner    mm            `json:"inner_radius_mm"`
		Outer    mm            `json:"outer_radius_mm"`
		Joints   [][]deg       `json:"joints_deg"` // of every layer from the floor up, both ends with them
		Pieces   []segmentJSON `json:"pieces"`     // each shape once
	}
	segmentJSON struct {
		Angle   deg     `json:"angle_deg"`
		Count   int     `json:"count"`
		Blank   [2]mm   `json:"blank_mm"` // along the grain, across it
		Centre  [2]mm   `json:"centre_mm"`
		Outline [][2]mm `json:"outline_mm"`
	}
	bearerJSON struct {
		Part      string `json:"part"`
		Riser     int    `json:"riser"`
		Tread     int    `json:"tread"`
		Angle     deg    `json:"angle_deg"`
		Top       mm     `json:"top_mm"`
		Thickness mm     `json:"thickness_mm"`
		Depth     mm     `json:"depth_mm"`
		From      mm     `json:"from_centre_mm"`
		Length    mm     `json:"length_mm"`
		On        string `json:"on"`
	}
	stringJSON struct {
		Name          string    `json:"name"`
		Radius        mm        `json:"radius_mm"`
		UnitRun       mm        `json:"unit_run_mm"`
		Pitch         deg       `json:"pitch_deg"`
		Length        mm        `json:"length_mm"`
		Run           mm        `json:"run_mm"`
		Height        mm        `json:"height_mm"`
		NotchDepth    mm        `json:"notch_depth_mm"`
		Throat        mm        `json:"throat_mm"`
		Width         mm        `json:"width_mm"`
		FirstRiserCut mm        `json:"first_riser_cut_mm"`
		SeatCut       mm        `json:"seat_cut_mm"`
		HeadCut       mm        `json:"head_cut_mm"`
		LeastBlank    mm        `json:"least_blank_mm"`
		Tips          [][2]mm   `json:"tips_mm"`
		Roots         [][2]mm   `json:"roots_mm"`
		Outline       [][2]mm   `json:"outline_mm"`
		Bend          *bendJSON `json:"bend,omitempty"` // left out where the layers do not bend so tightly
	}
	bendJSON struct {
		FormRadius mm  `json:"form_radius_mm"`
		Layers     int `json:"layers"`
		Layer      mm  `json:"layer_mm"`
		MostLayer  mm  `json:"most_layer_mm"`
		Thickness  mm  `json:"thickness_mm"`
		InnerRun   mm  `json:"inner_run_mm"`
		OuterRun   mm  `json:"outer_run_mm"`
	}
)

func boxes(all []turn.Box) (out []boxJSON) {
	for k, b := range all {
		box := boxJSON{Name: fmt.Sprintf("box-%d", k+1), Height: mm(b.Height), Bottom: mm(b.Bottom), Top: mm(b.Top), Outline: path(b.Outline)}
		if b.Leg > 0 {
			box.Leg = maybe(&b.Leg)
		}
		for _, p := range b.Parts {
			box.Parts = append(box.Parts, boxPartJSON{p.Kind.String(), mm(p.Length), [2]deg{deg(p.Ends[0].Bevel), deg(p.Ends[1].Bevel)}, path(p.Outline)})
		}
		out = append(out, box)
	}
	return out
}

func marks(all []turn.WallMark) []markJSON {
	out := []markJSON{}
	for _, m := range all {
		out = append(out, markJSON{m.Riser, m.Wall.String(), mm(m.FromCorner), mm(m.Height)})
	}
	return out
}

func wallStrings(all []turn.WallString) []wallStringJSON {
	out := []wallStringJSON{}
	for _, s := range all {
		row := wallStringJSON{Wall: s.Wall.String(), From: mm(s.From), To: mm(s.To), Notched: points(s.Notched)}
		for _, step := range s.Steps {
			row.Steps = append(row.Steps, wallStepJSON{step.Tread, mm(step.Run), mm(step.Whole), deg(step.Pitch), mm(step.Length)})
		}
		out = append(out, row)
	}
	return out
}

func housed(all []turn.HousedString) []housedJSON {
	out := []housedJSON{}
	for _, s := range all {
		row := housedJSON{Wall: s.Wall.String(), Pitch: deg(s.Pitch), Clear: mm(s.Clear), Needs: mm(s.Needs), Upper: path(s.Upper), Lower: path(s.Lower)}
		if s.Radius > 0 {
			pitch := deg(s.FlightPitch)
			row.FlightPitch, row.Radius = &pitch, maybe(&s.Radius)
		}
		out = append(out, row)
	}
	return out
}

func studs(all []turn.Stud) []studJSON {
	out := []studJSON{}
	for _, s := range all {
		row := studJSON{Plate: s.Plate, Angle: deg(s.Angle), Height: mm(s.Height), Riser: s.Riser, Tread: s.Tread, Stands: "behind", Bevel: deg(s.Bevel)}
		if s.Before {
			row.Stands = "before"
		}
		out = append(out, row)
	}
	return out
}

func plates(all []turn.Plate) []plateJSON {
	out := []plateJSON{}
	for _, p := range all {
		row := plateJSON{Name: p.Name, Radius: mm(p.Face), Width: mm(p.Outer - p.Inner), Angle: deg(p.Angle), Segments: p.Segments, Inner: mm(p.Inner), Outer: mm(p.Outer)}
		for _, layer := range p.Layers {
			joints := []deg{0}
			for _, g := range layer {
				joints = append(joints, deg(g.To))
				row.Pieces = addSegment(row.Pieces, g)
			}
			row.Joints = append(row.Joints, joints)
		}
		out = append(out, row)
	}
	return out
}

func addSegment(all []segmentJSON, g turn.PlateSegment) []segmentJSON {
	for k := range all {
		if all[k].Angle == deg(g.Angle) { // those alike are drawn from the same angle
			all[k].Count++
			return all
		}
	}
	return append(all, segmentJSON{deg(g.Angle), 1, point(g.Blank), point(g.Centre), path(g.Outline)})
}

func bearers(all []turn.Bearer) []bearerJSON {
	out := []bearerJSON{}
	for _, b := range all {
		row := bearerJSON{
			Part: "bearer", Riser: b.Riser, Tread: b.Tread, Angle: deg(b.Angle), Top: mm(b.Level),
			Thickness: mm(b.Thickness), Depth: mm(b.Depth), From: mm(b.From), Length: mm(b.Length), On: "studs",
		}
		if b.Ledger {
			row.Part = "ledger"
		}
		if b.OnPlates {
			row.On = "plates"
		}
		out = append(out, row)
	}
	return out
}

func curveStrings(all []layout.CurvedString) (out []stringJSON) {
	for _, s := range all {
		row := stringJSON{
			Name: s.Name, Radius: mm(s.Radius), UnitRun: mm(s.UnitRun), Pitch: deg(s.Pitch), Length: mm(s.Length), Run: mm(s.Run), Height: mm(s.Height),
			NotchDepth: mm(s.NotchDepth), Throat: mm(s.Throat), Width: mm(s.BoardWidth), FirstRiserCut: mm(s.FirstRiserCut),
			SeatCut: mm(s.SeatCut), HeadCut: mm(s.HeadCut), LeastBlank: mm(s.LeastBlank),
			Tips: points(s.Tips), Roots: points(s.Roots), Outline: path(s.Outline),
		}
		if b := s.Bend; b != nil {
			row.Bend = &bendJSON{mm(b.FormRadius), b.Layers, mm(b.Layer), mm(b.MostLayer), mm(b.Thickness), mm(b.InnerRun), mm(b.OuterRun)}
		}
		out = append(out, row)
	}
	return out
}
