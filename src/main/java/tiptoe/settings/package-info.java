/** What the user has chosen, from one YAML file. Known to every stage, knows none. */
package tiptoe.settings;
