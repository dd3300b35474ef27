package tiptoe.protocol;

import com.fasterxml.jackson.annotation.JsonValue;

/** A constant that data, grammars and the command line name by its id in kebab-case. */
public interface Identified {
  String name();

  /** The id of {@code UNTIL_SIGNED} is {@code until-signed}. */
  @JsonValue
  default String id() {
    return Labels.id(name());
  }
}
