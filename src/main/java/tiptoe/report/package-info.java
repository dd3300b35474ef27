/** The record for people and for other systems: FHIR, HTML, PDF, Markdown, text, CSV, JSON. */
package tiptoe.report;
