package sarif

// The levels.
const (
	levelError   = "error"
	levelWarning = "warning"
	levelNote    = "note"
)

type logJSON struct {
	Schema  string    `json:"$schema"`
	Version string    `json:"version"`
	Runs    []runJSON `json:"runs"`
}

type runJSON struct {
	Tool        toolJSON          `json:"tool"`
	Invocations []invocationJSON  `json:"invocations"`
	Artifacts   []artifactJSON    `json:"artifacts"`
	ColumnKind  string            `json:"columnKind"`
	Results     []resultJSON      `json:"results"`
	Properties  runPropertiesJSON `json:"properties"`
}

type toolJSON struct {
	Driver driverJSON `json:"driver"`
}

type driverJSON struct {
	Name     string     `json:"name"`
	FullName string     `json:"fullName"`
	Version  string     `json:"version"`
	Rules    []ruleJSON `json:"rules"`
}

type ruleJSON struct {
	ID      string       `json:"id"`
	Short   messageJSON  `json:"shortDescription"`
	Help    *messageJSON `json:"help,omitempty"`
	Default struct {
		Level string `json:"level"`
	} `json:"defaultConfiguration"`
}

type messageJSON struct {
	Text string `json:"text"`
}

type invocationJSON struct {
	Successful    bool               `json:"executionSuccessful"`
	End           string             `json:"endTimeUtc,omitempty"`
	Notifications []notificationJSON `json:"toolExecutionNotifications,omitempty"`
}

type notificationJSON struct {
	Level   string      `json:"level"`
	Message messageJSON `json:"message"`
}

type artifactJSON struct {
	Location artifactLocationJSON `json:"location"`
	Hashes   map[string]string    `json:"hashes"`
}

type artifactLocationJSON struct {
	URI string `json:"uri"`
}

type runPropertiesJSON struct {
	Model   string `json:"model"`
	Verdict string `json:"verdict"`
	Words   string `json:"verdictWords"`
	Passed  int    `json:"passed"`
	Failed  int    `json:"failed"`
	LeftOut int    `json:"leftOut"`
	SetUp   string `json:"setUp,omitempty"`
	Asked   string `json:"asked,omitempty"`
	Date    string `json:"date,omitempty"`
}

type resultJSON struct {
	Rule         string            `json:"ruleId"`
	Index        int               `json:"ruleIndex"`
	Level        string            `json:"level"`
	Message      messageJSON       `json:"message"`
	Locations    []locationJSON    `json:"locations,omitempty"`
	Related      []locationJSON    `json:"relatedLocations,omitempty"`
	Suppressions []suppressionJSON `json:"suppressions,omitempty"`
	Fingerprints map[string]string `json:"partialFingerprints"`
}

type locationJSON struct {
	Message  *messageJSON         `json:"message,omitempty"`
	Physical physicalLocationJSON `json:"physicalLocation"`
}

type physicalLocationJSON struct {
	Artifact artifactLocationJSON `json:"artifactLocation"`
	Region   *regionJSON          `json:"region,omitempty"`
}

type regionJSON struct {
	Line    int          `json:"startLine"`
	Column  int          `json:"startColumn,omitempty"`
	Snippet *messageJSON `json:"snippet,omitempty"`
}

type suppressionJSON struct {
	Kind          string `json:"kind"`
	Justification string `json:"justification"`
}
