// Command loud uses the library without package quietstart: the test proves by
// it that it would notice a program being started before main.
package main

import (
	"fmt"

	"github.com/cucumber/godog"
)

func main() { fmt.Println(godog.Version) }
