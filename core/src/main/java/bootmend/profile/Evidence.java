package bootmend.profile;

import bootmend.trial.Standing;

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

    /** Whether it shows that the settings are good: it held, long enough, under full load, without a throttle bit. */
    public boolean passes() {
        return holds && fullLoad && !throttled && minutes >= Standing.KNOWN_GOOD_MINUTES;
    }
}
