package tiptoe.exam;

import tiptoe.finding.Finding;

/** What an unsure utterance seems to say; it counts only once someone has accepted it. */
public record Candidate(Finding statement, boolean correction) {}
