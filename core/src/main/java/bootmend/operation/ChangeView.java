package bootmend.operation;

/**
 * A change that was made, as a user is shown it.
 *
 * @param undoRecord where its undo record lies
 * @param verified whether it was forced and every sector and file read back as planned
 * @param secondReader whether the second reader, too, found the files as planned; false where it cannot read such a card
 */
public record ChangeView(String undoRecord, boolean verified, boolean secondReader) {}
