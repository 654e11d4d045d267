package bootmend.device.system;

import bootmend.CardException;
import bootmend.NextStep;

/** The native part of the library through which the system's own calls are made; it does not load on every system. */
final class HelperLibrary {

    private HelperLibrary() {}

    static CardException missing(LinkageError cause) {
        return CardException.refused(
                "the disks of this computer cannot be worked with, because the helper library for that did not load ("
                        + cause.getMessage() + ")",
                "Image files and mounted folders work without it.",
                cause,
                NextStep.Plain.SET_LIBRARY_FOLDER);
    }
}
