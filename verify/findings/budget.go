package findings

// budget is how many poses are evaluated at most in one look over a model, so
// that a model of any size takes well under a second.
const budget = 150_000
