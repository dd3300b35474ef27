/**
 * What can be said: W3C SRGS grammars in ABNF form, read from {@code grammars/}, as automata over
 * words. Known to the decoding graph and to the language stage; knows neither.
 */
package tiptoe.grammar;
