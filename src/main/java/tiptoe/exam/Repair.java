package tiptoe.exam;

/**
 * Words of a remark that were put in place of others that sound alike.
 *
 * @param heard what the recogniser gave, such as {@code font an el}
 * @param word what it was taken for, such as {@code fontanelle}
 */
public record Repair(String heard, String word) {}
