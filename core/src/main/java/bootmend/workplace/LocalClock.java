package bootmend.workplace;

import java.time.Clock;
import java.time.Instant;
import java.time.ZoneId;

/** The computer's clock, which looks for its time zone when first asked for it: reading a card needs none. */
final class LocalClock extends Clock {

    @Override
    public ZoneId getZone() {
        return ZoneId.systemDefault();
    }

    @Override
    public Clock withZone(ZoneId zone) {
        return Clock.system(zone);
    }

    @Override
    public Instant instant() {
        return Instant.now();
    }
}
