package tiptoe.exam;

/** A detail the protocol asks for, such as whether the palate was felt, that was not stated. */
public record MissingDetail(Slot slot, String value, String detail) {}
