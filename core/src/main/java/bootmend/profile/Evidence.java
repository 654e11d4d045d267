package bootmend.profile;

/**
 * One trial of a profile's settings, as the profile keeps it.
 *
 * @param trial the trial's id, or the user's own words for it
 * @param holds whether the board held until the end
 * @param minutes how long it ran
 * @param fullLoad whether every core was loaded
 * @param throttled whether any throttle bit was set
 */
public record Evidence(String trial, boolean holds, int minutes, boolean fullLoad, boolean throttled) {

    /** How long a stability run lasts; common practice, no source. */
    public static final int ENOUGH_MINUTES = 45;

    /** Whether it shows that the settings are good: it held, long enough, under full load, without a throttle bit. */
    public boolean passes() {
        return holds && fullLoad && !throttled && minutes >= ENOUGH_MINUTES;
    }
}
