/** From an utterance to statements: what was said, about which step, side and value. */
package tiptoe.language;
