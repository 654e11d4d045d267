package bootmend.edit;

import bootmend.CardException;
import bootmend.config.ConfigDocument;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;

/** Comments single lines out, and makes such lines live again. */
public final class LineSwitch {

    private LineSwitch() {}

    /**
     * The config files after that, by path; what is so already stays as it is.
     *
     * @param main the config file's path
     * @throws CardException where a name is that of no line, or of several
     */
    public static Map<String, ConfigDocument> apply(
            String main, Map<String, ConfigDocument> files, List<LineName> commentOut, List<LineName> uncomment)
            throws CardException {
        Map<String, ConfigDocument> changed = new LinkedHashMap<>(files);
        for (LineName name : commentOut) {
            Optional<LineName.Spot> spot = name.toCommentOut(main, files);
            if (spot.isPresent()) {
                changed.computeIfPresent(
                        spot.get().path(),
                        (path, document) -> document.commentOut(spot.get().line()));
            }
        }
        for (LineName name : uncomment) {
            Optional<LineName.Spot> spot = name.toUncomment(main, files);
            if (spot.isPresent()) {
                changed.computeIfPresent(
                        spot.get().path(),
                        (path, document) ->
                                document.uncomment(List.of(spot.get().line())));
            }
        }
        return changed;
    }
}
