/** Reads sentences that no grammar lists: words to labelled spans, spans to statements. */
package tiptoe.language.tagger;
