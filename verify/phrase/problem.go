package phrase

// Problem is a mistake in a sentence.
type Problem struct {
	Column, Width int // in characters of the sentence, from 1
	Code          string
	Message       string // lower case, got and wanted
	Hint          string // one line, may be empty
}

// The problem codes of sentences.
const (
	CodeUnknownSentence = "unknown-sentence"  // no sentence of this form
	CodeUnknownName     = "unknown-subject"   // nothing on the model has this name
	CodeUnknownPosition = "unknown-setting"   // the control has no such position
	CodeUnclearName     = "unclear-name"      // the name could be more than one thing
	CodeOutOfRange      = "setting-range"     // a position beyond the control's travel
	CodeBadNumber       = "bad-amount"        // a number that makes no sense here
	CodeBadUnit         = "wrong-unit"        // the unit does not fit the subject
	CodeWrongMotion     = "wrong-motion"      // the subject cannot do that
	CodeConflict        = "set-twice"         // two values for one control
	CodeUnclearOrder    = "unclear-order"     // signal lost and a control moved at once
	CodeMissingSize     = "missing-dimension" // the airframe file lacks a chord or stop
	CodeNoMovement      = "no-movement"       // nothing moved before the sentence
	CodeNotAlways       = "not-for-always"    // an outcome that cannot be asked of every position
	CodeWrongPlace      = "wrong-keyword"     // a setting under Then, or an outcome under Given or When
)

// hintPhrases stands below every sentence that is not known.
const hintPhrases = "Hingeline does not know this sentence; \"hingeline phrases\" lists those it knows"

func problemAt(t token, code, message, hint string) *Problem {
	return &Problem{Column: t.column, Width: max(t.width, 1), Code: code, Message: message, Hint: hint}
}

// across is a problem that underlines the tokens from first to last.
func across(first, last token, code, message, hint string) *Problem {
	return &Problem{Column: first.column, Width: max(last.column+last.width-first.column, 1), Code: code, Message: message, Hint: hint}
}
