package spec

import "gopkg.in/yaml.v3"

// paperFields are the keys of the paper and of the printer.
func paperFields(p *Paper) []field {
	return []field{
		wordKey("sheets", "size of the drawing sheets", &p.Sheets, paperSizes()...),
		wordKey("templates", "size of the full-scale sheets, or the width of a roll", &p.Templates, append(paperSizes(), rollWidths()...)...),
		printedKey("printed along", "what the 100 mm bar of the print check measures along the long side of the paper (along a roll)", &p.Along),
		printedKey("printed across", "what the 100 mm bar of the print check measures along the short side of the paper (across a roll)", &p.Across),
		flagKey("story poles", "draw a story pole of every timber; usual on a roll", &p.Poles),
		flagKey("hidden lines", "draw hidden edges dashed on elevations, plans, views of the frame and exploded joints; usual is to leave them out there", &p.Hidden),
	}
}

func paperSizes() []string {
	return []string{"letter", "a4", "legal", "tabloid", "arch c", "arch d", "a3", "a2", "a1"}
}

func rollWidths() []string {
	return []string{"roll 18 in", "roll 24 in", "roll 30 in", "roll 36 in", "roll 420 mm", "roll 594 mm", "roll 610 mm", "roll 841 mm", "roll 914 mm"}
}

// Bounds of what a printer that can be corrected makes of 100 mm, mm: one that
// is farther off was told to fit the sheet to the page.
const leastPrinted, mostPrinted = 98.0, 102.0

// printedKey reads what 100 mm measure on a print.
func printedKey(name, doc string, dst *Length) field {
	return field{name: name, kind: "a length above zero", doc: doc, read: func(r *reader, n *yaml.Node) {
		l := r.length(n, positive)
		if l.Set && (l.MM < leastPrinted || l.MM > mostPrinted) {
			r.fault(n, n.Value, "100 mm cannot print as this: it must lie between 98 mm and 102 mm",
				"measure the 100 mm bar of the print check; a print that is farther off was scaled to fit: print it at 100 %")
			return
		}
		*dst = l
	}}
}
