/**
 * The live pipeline: from sound to the record, and the one decision what becomes of an utterance.
 */
package tiptoe.session;
