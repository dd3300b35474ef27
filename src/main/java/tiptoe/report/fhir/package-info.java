/** The record as an HL7 FHIR R4 document, written and read back. */
package tiptoe.report.fhir;
