package tiptoe.session;

/** The version of the program, as records name it. */
public final class ToolVersion {
  private static final String UNPACKED = "0.1.0";

  private ToolVersion() {}

  /** From the archive's manifest; outside an archive that of the project. */
  public static String number() {
    String number = ToolVersion.class.getPackage().getImplementationVersion();
    return number == null ? UNPACKED : number;
  }
}
