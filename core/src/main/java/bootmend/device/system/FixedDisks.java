package bootmend.device.system;

/** Whether a disk that does not look like a card, built in or over 2 TiB, may be changed. */
public enum FixedDisks {
    REFUSED,
    ALLOWED
}
