package peg

import "fmt"

// The range in which the peg expressions are said to hold (TFEC 1, recalled),
// and that of the bearing table for timbers (NDS Table 12.3.3A).
const (
	leastPeg     = 0.75 * inchMM
	mostPeg      = 1.25 * inchMM
	leastPegG    = 0.57
	leastTimberG = 0.31
	mostTimberG  = 0.73
)

// Outside returns why the equations do not apply to the connection, "" where
// they do. Lengths in the words are ratios, so that they serve in any unit.
func (s Shear) Outside() string {
	const slack = 1e-9
	least, most := min(s.TenonG, s.CheekG), max(s.TenonG, s.CheekG)
	switch {
	case !(s.Tenon > slack) || !(s.Cheek > slack):
		return "the peg does not cross a tenon between two cheeks"
	case !(s.Diameter >= leastPeg-0.05 && s.Diameter <= mostPeg+0.05):
		return "the peg is outside the range of the equations, 3/4 to 1-1/4 in (19 to 32 mm)"
	case !(s.PegG >= leastPegG):
		return fmt.Sprintf("the peg wood's specific gravity %.2f is under %.2f", s.PegG, leastPegG)
	case !(s.PegG >= most-slack):
		return fmt.Sprintf("the peg wood's specific gravity %.2f is under the timber's %.2f", s.PegG, most)
	case !(least >= leastTimberG-slack) || !(most <= mostTimberG+slack):
		return fmt.Sprintf("the timber's specific gravity is outside the table's range, %.2f to %.2f", leastTimberG, mostTimberG)
	}
	return ""
}

// Moisture content, percent, above which a connection counts as made or used
// wet (NDS Table 11.3.3).
const wetConnection = 19.0

// WetFactor returns the factor for moisture C_M of NDS Table 11.3.3: 1 made and
// used dry; 0.7 used wet; made wet and used dry 1 with a single peg and 0.4
// with more, since pegs of a tenon stand in a row across its grain. Moisture is
// in percent.
func WetFactor(made, service float64, pegs int) float64 {
	switch {
	case service > wetConnection:
		return 0.7
	case made > wetConnection && pegs > 1:
		return 0.4
	}
	return 1
}
