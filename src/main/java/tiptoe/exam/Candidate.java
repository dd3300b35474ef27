package tiptoe.exam;

import tiptoe.language.Statement;

/** What an unsure utterance seems to say; it counts only once someone has accepted it. */
public record Candidate(Statement statement, boolean correction) {}
