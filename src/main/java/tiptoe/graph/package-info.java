/**
 * The decoding graph: what the recogniser searches. Reads the acoustic model's own files, recovers
 * its lexicon and phone contexts, expands a word automaton to transition-ids and writes a model
 * folder that Vosk loads.
 */
package tiptoe.graph;
