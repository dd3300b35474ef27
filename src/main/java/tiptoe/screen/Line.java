package tiptoe.screen;

/** A line of text and how it is set off. */
record Line(String text, Ink ink) {}
