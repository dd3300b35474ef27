/**
 * Sound to words: Vosk over the decoding graph, utterances with the times of their words, and the
 * decision whether an utterance may be recorded. Knows nothing of the examination.
 */
package tiptoe.speech;
