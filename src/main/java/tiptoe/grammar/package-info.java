/**
 * What can be said: W3C SRGS 1.0 grammars in ABNF form, read from {@code grammars/}, as automata
 * over words. Known to the decoding graph and to the language stage; knows neither.
 *
 * <pre>
 * GrammarSet set = GrammarSet.load(folder, "examination.gram");   // never throws for bad text
 * set.problems()                       // List&lt;Problem(file, line, column, expectation, found)&gt;; must be empty
 * set.grammars().get("numbers.gram").rules()                      // what was read
 *
 * PhraseNetwork network = PhraseNetwork.of(set);                  // the root rule, tags kept
 * PhraseNetwork.of(set, "numbers.gram", "number")                 // of any other rule
 * network.parse(List.of("left", "clavicle", "crepitus"))          // Parse(phrases, uncovered)
 *     .phrases().get(0).items()        // WordItem(index) and TagItem(text, position), in order
 * Tag.parse("step=clavicle value=crepitus")                       // List&lt;Tag(key, value)&gt;; ";" is Tag.CLAUSE_END
 * network.following(words)             // Following(words that carry on, mayEnd)
 * network.firstWords(), network.words()
 * network.paths(random, limit)         // List&lt;Path(words, items)&gt; that walk every arc
 * network.samplePath(random)
 *
 * WordAutomaton automaton = network.automaton();                  // tags gone, deterministic, minimal
 * automaton.cost(words)                // infinite where they are no phrase
 * </pre>
 *
 * <p>Costs are natural-log penalties: −ln of an alternative's share of the weights; equal shares
 * where none are written, and a half each for saying or leaving out an optional part.
 */
package tiptoe.grammar;
