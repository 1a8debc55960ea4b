package jsonout

import "example.com/hingeline/verify/result"

type effectJSON struct {
	Turns   []turnJSON `json:"turns"`
	Speed   float64    `json:"speed_ms"`
	Roll    *rollJSON  `json:"roll"`
	Loads   []loadJSON `json:"loads"`
	Missing []string   `json:"missing"`
	Worth   []string   `json:"worth"`
}

type turnJSON struct {
	Axis string `json:"axis"`
	Way  string `json:"way"`
	Sure bool   `json:"sure"`
	Text string `json:"text"`
}

type rollJSON struct {
	Way    string      `json:"way"`
	Helix  float64     `json:"helix"`
	Rate   float64     `json:"rate_deg_s"`
	Text   string      `json:"text"`
	Shares []shareJSON `json:"shares"`
	Lost   float64     `json:"lost_percent"`
	Stops  string      `json:"stops"`
}

type shareJSON struct {
	Kind    string  `json:"kind"`
	Of      string  `json:"of"`
	Percent float64 `json:"percent"`
	Text    string  `json:"text"`
}

type loadJSON struct {
	Servo  string  `json:"servo"`
	Low    float64 `json:"low_ncm"`
	High   float64 `json:"high_ncm"`
	Has    float64 `json:"has_ncm"`
	Stalls bool    `json:"stalls"`
	Text   string  `json:"text"`
}

func effectOf(e *result.Effect) *effectJSON {
	if e == nil {
		return nil
	}
	out := &effectJSON{
		Turns: []turnJSON{}, Speed: e.Speed, Loads: []loadJSON{}, Missing: list(e.Missing), Worth: list(e.Worth),
	}
	for _, t := range e.Turns {
		out.Turns = append(out.Turns, turnJSON(t))
	}
	if r := e.Roll; r != nil {
		out.Roll = &rollJSON{
			Way: r.Way, Helix: r.Helix, Rate: r.Rate, Text: r.Text, Shares: []shareJSON{}, Lost: r.Lost, Stops: r.Stops,
		}
		for _, s := range r.Shares {
			out.Roll.Shares = append(out.Roll.Shares, shareJSON(s))
		}
	}
	for _, l := range e.Loads {
		out.Loads = append(out.Loads, loadJSON(l))
	}
	return out
}
