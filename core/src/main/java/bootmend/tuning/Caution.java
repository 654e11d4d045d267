package bootmend.tuning;

import java.util.List;
import java.util.Set;

/**
 * A warning that belongs to some kinds of tuning.
 *
 * @param id short name, such as {@code heat}
 * @param causes what on a card calls for it, any one of them: {@value #TUNED}, {@value #WARRANTY}, or a tuning group
 *     followed by {@value #ABOVE} or {@value #BELOW}, such as {@code clock-above}
 * @param topics tuning groups, {@code throttle} or {@code board}: whose explanation carries it
 * @param text whole sentences
 * @param citation where it is published, or that it is not
 */
public record Caution(String id, Set<String> causes, List<String> topics, String text, String citation) {

    /** Some tuning key counts, or may. */
    public static final String TUNED = "tuned";

    /** Settings that together can set the warranty bit, on a board that is not known never to set it. */
    public static final String WARRANTY = "warranty";

    /** A key of the group is above its stock value, or may be. */
    public static final String ABOVE = "-above";

    /** A key of the group is below its stock value, or may be. */
    public static final String BELOW = "-below";

    public Caution {
        causes = Set.copyOf(causes);
        topics = List.copyOf(topics);
    }
}
