Feature: nothing but a heading
