package tiptoe;

import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;

/** Starts Java in a process of its own, as one that lives for seconds starts soonest. */
public final class ChildJava {
  /** What halves the work of a start: hearing itself is native code. */
  public static final List<String> OPTIONS = List.of("-XX:+UseSerialGC", "-XX:TieredStopAtLevel=1");

  private ChildJava() {}

  /** The beginning of a command, to which options, class path, class and arguments are added. */
  public static List<String> command() {
    List<String> command = new ArrayList<>();
    command.add(Path.of(System.getProperty("java.home"), "bin", "java").toString());
    command.addAll(OPTIONS);
    return command;
  }
}
