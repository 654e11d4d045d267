package bootmend.earlier;

/**
 * What a change that this computer made to this very card found and left.
 *
 * @param place the change's undo record
 * @param before the config file's bytes before it, or null where there was none
 * @param after the bytes after it, or null where it took the file away
 * @param proven whether it surely was this card; else what it left must be found on the card before it counts
 */
public record RecordedVersion(Place.Recorded place, byte[] before, byte[] after, boolean proven) {}
