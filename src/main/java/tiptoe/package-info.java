/** An offline, hands-free recorder for the newborn's head-to-toe examination. */
package tiptoe;
