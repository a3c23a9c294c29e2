package packet

import (
	"pegwright/draw/sheet"
	"pegwright/templates"
)

// composers returns the composers of the input, or those that draw everything.
func composers(in Input) (sheets, fullSize Composer) {
	sheets, fullSize = in.Sheets, in.Templates
	if sheets == nil {
		sheets = sheet.All
	}
	if fullSize == nil {
		fullSize = templates.Sheets
	}
	return sheets, fullSize
}
