package jsonout

import "example.com/hingeline/verify/result"

type printJSON struct {
	File   string `json:"file"`
	SHA256 string `json:"sha256"`
}

func printsOf(prints []result.Print) []printJSON {
	out := []printJSON{}
	for _, p := range prints {
		out = append(out, printJSON(p))
	}
	return out
}

// paperJSON is the tables of the report on paper. What it draws is not in it: show has
// every position as numbers.
type paperJSON struct {
	MassKg float64      `json:"mass_kg"`
	Throws []throwJSON  `json:"throws"`
	Travel []travelJSON `json:"travel"`
	Signal []signalJSON `json:"signal_lost"`
	Motors []motorJSON  `json:"motors"`
}

type throwJSON struct {
	Part    string         `json:"part"`
	Control string         `json:"control"`
	When    []string       `json:"when"`
	Ends    []throwEndJSON `json:"ends"`
	Partner string         `json:"partner"`
}

type throwEndJSON struct {
	Way                  string  `json:"way"`
	At                   string  `json:"at"`
	Degrees              float64 `json:"degrees"`
	Millimetres          float64 `json:"millimetres"`
	ToleranceDegrees     float64 `json:"tolerance_degrees"`
	ToleranceMillimetres float64 `json:"tolerance_millimetres"`
}

type travelJSON struct {
	Channel string   `json:"channel"`
	Low     float64  `json:"low_us"`
	High    float64  `json:"high_us"`
	Min     float64  `json:"min_us"`
	Max     float64  `json:"max_us"`
	Spare   float64  `json:"spare_percent"`
	Worst   []string `json:"worst"`
	Bites   string   `json:"bites"`
	Sure    bool     `json:"sure"`
}

type signalJSON struct {
	Channel string   `json:"channel"`
	Does    string   `json:"does"`
	Parts   []string `json:"parts"`
	Motor   bool     `json:"motor"`
	Runs    bool     `json:"runs"`
}

type motorJSON struct {
	Name        string   `json:"name"`
	Channel     string   `json:"channel"`
	StoppedWhen string   `json:"stopped_when"`
	Rest        string   `json:"rest"`
	Full        []string `json:"full"`
	Breaks      []string `json:"breaks"`
	NotSure     bool     `json:"not_sure"`
}

func paperOf(p *result.Paper) *paperJSON {
	if p == nil {
		return nil
	}
	out := &paperJSON{MassKg: p.MassKg, Throws: []throwJSON{}, Travel: []travelJSON{}, Signal: []signalJSON{}, Motors: []motorJSON{}}
	for _, t := range p.Throws {
		row := throwJSON{Part: t.Part, Control: t.Control, When: list(t.When), Ends: []throwEndJSON{}, Partner: t.Partner}
		for _, e := range t.Ends {
			row.Ends = append(row.Ends, throwEndJSON{
				Way: e.Way, At: e.At, Degrees: e.Degrees, Millimetres: e.Millimetres,
				ToleranceDegrees: e.Tolerance.Degrees, ToleranceMillimetres: e.Tolerance.Millimetres,
			})
		}
		out.Throws = append(out.Throws, row)
	}
	for _, t := range p.Travel {
		out.Travel = append(out.Travel, travelJSON{
			Channel: t.Channel, Low: t.Low, High: t.High, Min: t.Min, Max: t.Max,
			Spare: t.Spare, Worst: list(t.Worst), Bites: t.Bites, Sure: t.Sure,
		})
	}
	for _, s := range p.Signal {
		out.Signal = append(out.Signal, signalJSON{Channel: s.Channel, Does: s.Does, Parts: list(s.Parts), Motor: s.Motor, Runs: s.Runs})
	}
	for _, m := range p.Motors {
		out.Motors = append(out.Motors, motorJSON{Name: m.Name, Channel: m.Channel, StoppedWhen: m.StoppedWhen, Rest: m.Rest, Full: list(m.Full), Breaks: list(m.Breaks), NotSure: m.NotSure})
	}
	return out
}
