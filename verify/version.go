package verify

// Version is the version of Hingeline, as it stands in reports.
const Version = "0.1.0"
