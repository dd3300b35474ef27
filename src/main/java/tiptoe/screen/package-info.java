/**
 * What is seen during an examination. The screen is given an immutable {@link
 * tiptoe.screen.ScreenState} and draws it; it knows nothing of how sound becomes words.
 */
package tiptoe.screen;
