package tiptoe.screen;

/** A line of text and how it is set off. */
public record Line(String text, Ink ink) {}
