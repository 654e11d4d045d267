package bootmend.fat;

import java.io.IOException;

/** Says in a clause why something on a volume cannot be what it should be. */
public final class BadVolumeException extends IOException {

    private static final long serialVersionUID = 1L;

    public BadVolumeException(String why) {
        super(why);
    }
}
