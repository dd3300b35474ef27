/**
 * What was found, as values: findings, numbers with units, questions and commands. Knows the
 * protocol only.
 */
package tiptoe.finding;
