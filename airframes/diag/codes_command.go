package diag

// commandCodes are the codes of cmd/hingeline.
var commandCodes = []CodeInfo{
	{
		Code:  "seen-everywhere",
		Title: "something seen that nobody can have seen",
		Text: "A file for --seen says what was seen on the model, position by position. A sentence with whatever, at every, " +
			"whenever, always or never speaks of more positions than anybody has looked at. Write where the controls stood " +
			"and what the part did there, one sentence for each position.",
	},
	{
		Code:  "file-missing",
		Title: "there is no file of that name",
		Text: "The file that was named, on the command line or under script: in the airframe file, is not there. " +
			"A name is seen from the directory you are in; under script: it is seen from the airframe file. " +
			"A built-in model goes by its bare name, such as bracken-20, without .yaml.",
	},
	{
		Code:  "file-is-directory",
		Title: "a directory was named where a file is needed",
		Text:  "Name the file in the directory, not the directory itself.",
	},
	{
		Code:  "file-unreadable",
		Title: "the file is there but cannot be read",
		Text: "Most often you lack the permission to read it, or it lies on a disk that has gone away. " +
			"Nothing was checked: a file that was not read says nothing about the model.",
	},
	{
		Code:  "too-large-to-read",
		Title: "the file is far larger than such a file can be",
		Text: "An airframe file or a script is some thousand characters of text. A file a hundred times that size is " +
			"something else: a picture, a log, a recording.",
	},
	{
		Code:  "wrong-kind-of-file",
		Title: "a script stands where an airframe file is needed, or the other way round",
		Text: "The airframe file (ending in .yaml) comes first on the command line, then the scripts (ending in .feature), " +
			"if they are named at all. One run checks one model.",
	},
	{
		Code:  "answer-unknown",
		Title: "an answer for bench that cannot be taken",
		Text: "A file for --answers holds what would be typed, one answer a line: yes to what must be so, then step by step y where " +
			"all is as expected, or a part and what it did, such as: port flap up, or 3 other way, or 3 12 up where it was measured; s " +
			"and a reason skips a step. It is gone through before anything begins, so that nothing is kept of a file with mistakes. " +
			"A line that is wrong may make those behind it look wrong.",
	},
	{
		Code:  "answer-left-over",
		Title: "more answers for bench than are asked for",
		Text: "Every step is answered for and the walk is over, and the file for --answers goes on. It was made for another walk, or " +
			"a step has one answer too many: y ends a step.",
	},
	{
		Code:  "revision-missing",
		Title: "git knows no such revision",
		Text: "What was named is no file and no built-in model, so it was taken for a revision of git: HEAD~1, a tag, a branch, " +
			"a hash. Git was asked in the directory of the file, and knows none. A revision and a file in it are written " +
			"with a colon between them, such as v1:my-model.yaml.",
	},
	{
		Code:  "git-missing",
		Title: "the git program is needed and not there",
		Text: "A file as it was at a revision is read by the git program, which must be installed and on the PATH. Without it, " +
			"write the older file out by hand and compare two files.",
	},
	{
		Code:  "no-script",
		Title: "no script says what the model should do",
		Text: "A check needs a script beside the airframe file. Name it behind the airframe file on the command line, " +
			"or write script: my-model.feature in the airframe file, or give it the airframe file's name with the " +
			"ending .feature and put it beside the airframe file or in a directory called features next to it.\n\n" +
			"Without a script Hingeline could only say that it found nothing odd, which is not a control check.",
	},
}
