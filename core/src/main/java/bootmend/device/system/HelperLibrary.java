package bootmend.device.system;

import bootmend.CardException;

/** The native part of the library through which the system's own calls are made; it does not load on every system. */
final class HelperLibrary {

    private HelperLibrary() {}

    static CardException missing(LinkageError cause) {
        return CardException.refused(
                "the disks of this computer cannot be worked with, because the helper library for that did not load ("
                        + cause.getMessage() + ")",
                "Give Java a folder that programs may run from, with -Djna.tmpdir=FOLDER; image files and mounted "
                        + "folders work without it.",
                cause);
    }
}
