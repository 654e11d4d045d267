package bootmend.tuning;

/**
 * One bit of the board's throttle report.
 *
 * @param bit bit number, 0 to 31
 * @param meaning what the board reports when it is set
 */
public record ThrottleBit(int bit, String meaning) {}
