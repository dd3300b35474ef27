package tiptoe.report;

import java.util.Locale;

/** What a record can be written as. */
public enum Format {
  FHIR("fhir.json"),
  HTML("html"),
  PDF("pdf"),
  MD("md"),
  TXT("txt"),
  CSV("csv"),
  JSON("json"),
  LETTER("letter.pdf"),
  LETTER_HTML("letter.html"),
  PARENTS("parents.pdf"),
  PARENTS_HTML("parents.html");

  private final String ending;

  Format(String ending) {
    this.ending = ending;
  }

  /** The ending of the file, without a dot. */
  public String ending() {
    return ending;
  }

  /** The name used on the command line. */
  @Override
  public String toString() {
    return name().toLowerCase(Locale.ROOT).replace('_', '-');
  }
}
