package bootmend.boot;

import bootmend.config.VisibleText;
import bootmend.tuning.resolve.EffectiveState;
import bootmend.tuning.resolve.Resolution;
import java.util.List;

/** A boot file that is there and is not whole, as part of a link. */
final class BrokenFile {

    private BrokenFile() {}

    /**
     * Stops where the file is damaged; unknown where that cannot be told.
     *
     * @param put the files that a good card must give
     * @param settings what runs on the board: a write that is wrong and not cut short is laid to clocks where some are set
     */
    static ChainPart part(
            LinkKind link, String path, long bytes, FileLook look, List<String> put, Resolution settings) {
        Found found = Found.file(path, bytes, look.check());
        String what = VisibleText.of(path) + " " + look.why();
        if (look.state() == LinkState.UNKNOWN) {
            return ChainPart.unknown(what, found);
        }
        boolean tuned = settings.effective().stream().anyMatch(each -> each.state() != EffectiveState.IGNORED);
        Origin origin = look.isCut() ? Origin.CUT_WRITE : tuned ? Origin.HIGH_CLOCK : Origin.CUT_WRITE;
        return ChainPart.stops(LinkState.DAMAGED, new Cause(link, what + ".", origin, new Remedy.PutFiles(put)), found);
    }
}
