package tiptoe.screen.review;

import java.io.IOException;
import java.util.ArrayList;
import java.util.List;

/** The way to a signature: what is open is read first, then name, role and a yes are asked for. */
record SignaturePrompts(ReviewDialogue sitting) {
  void begin() {
    if (!sitting.mayEdit()) {
      return;
    }
    try {
      List<String> lines =
          new ArrayList<>(List.of("BEFORE SIGNING  (Enter goes on, arrows scroll, Esc leaves)"));
      lines.addAll(sitting.desk().beforeSigning());
      sitting.foreground().read(lines, this::askName);
    } catch (IOException e) {
      sitting.notice("cannot be signed now: " + e.getMessage());
    }
  }

  private void askName() {
    sitting.askOn("sign as, name:", sitting.desk().reviewer().name(), this::askRole);
  }

  private void askRole(String name) {
    sitting.askOn("role:", sitting.desk().reviewer().role(), role -> askYes(name, role));
  }

  private void askYes(String name, String role) {
    sitting.ask(
        "type yes to sign as " + name + ", " + role + ":",
        "",
        yes ->
            yes.equalsIgnoreCase("yes")
                ? sitting.desk().sign(name, role)
                : Reply.refused("not signed"));
  }
}
