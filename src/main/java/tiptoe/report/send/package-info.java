/** Sends documents to a FHIR server the user names; the only place that opens a connection. */
package tiptoe.report.send;
