package junit

import "encoding/xml"

// noTime is how long everything took: nothing that was measured.
const noTime = "0"

type suitesXML struct {
	XMLName  xml.Name   `xml:"testsuites"`
	Name     string     `xml:"name,attr"`
	Tests    int        `xml:"tests,attr"`
	Failures int        `xml:"failures,attr"`
	Errors   int        `xml:"errors,attr"`
	Skipped  int        `xml:"skipped,attr"`
	Time     string     `xml:"time,attr"`
	Suites   []suiteXML `xml:"testsuite"`
}

type suiteXML struct {
	Name       string         `xml:"name,attr"`
	Tests      int            `xml:"tests,attr"`
	Failures   int            `xml:"failures,attr"`
	Errors     int            `xml:"errors,attr"`
	Skipped    int            `xml:"skipped,attr"`
	Time       string         `xml:"time,attr"`
	Timestamp  string         `xml:"timestamp,attr,omitempty"`
	Properties *propertiesXML `xml:"properties"`
	Cases      []caseXML      `xml:"testcase"`
	Out        *outXML        `xml:"system-out"`
}

type propertiesXML struct {
	List []propertyXML `xml:"property"`
}

type propertyXML struct {
	Name  string `xml:"name,attr"`
	Value string `xml:"value,attr"`
}

type caseXML struct {
	Class   string      `xml:"classname,attr"`
	Name    string      `xml:"name,attr"`
	File    string      `xml:"file,attr,omitempty"`
	Line    int         `xml:"line,attr,omitempty"`
	Time    string      `xml:"time,attr"`
	Skipped *skippedXML `xml:"skipped"`
	Error   *wrongXML   `xml:"error"`
	Failure *wrongXML   `xml:"failure"`
}

type wrongXML struct {
	Message string `xml:"message,attr"`
	Type    string `xml:"type,attr"`
	Text    string `xml:",cdata"`
}

type outXML struct {
	Text string `xml:",cdata"`
}

type skippedXML struct {
	Message string `xml:"message,attr"`
}
