package bootmend.device;

import java.util.List;
import java.util.Objects;
import java.util.Optional;

/**
 * By what one card is told from another that looks the same: not by what stands on it, but by what it is.
 *
 * <p>Only what this computer tells is here; where two say nothing in common but the name, nothing tells them apart, and
 * {@link #isTellingFrom} says so.
 *
 * @param name absolute, links followed: what a name led to when this was asked
 * @param fileKey of an image, the file system's own number of the file, such as {@code (dev=801,ino=12)}; of a disk, the
 *     system's number of it with the count that grows with every medium put in. The same as long as the file is not replaced or
 *     the medium changed; not the same in another run of the system
 * @param cardId the card's own number, such as an SD card's CID in 32 hexadecimal digits: the same in every reader that
 *     tells it
 * @param reader the reader's serial number and slot: where the card is, whichever card it is
 */
public record CardIdentity(String name, Optional<String> fileKey, Optional<String> cardId, Optional<String> reader) {

    public CardIdentity {
        Objects.requireNonNull(name);
        fileKey.ifPresent(Objects::requireNonNull);
    }

    /** Of a card of which nothing is known but what it is called. */
    public static CardIdentity named(String name) {
        return new CardIdentity(name, Optional.empty(), Optional.empty(), Optional.empty());
    }

    /**
     * Whether that is the same card, as far as it is told: every number that both have is equal, and where they have none in
     * common, the name. Two answers from one run of the system are meant; for answers from two, see {@link #isSameCard}.
     */
    public boolean isStill(CardIdentity now) {
        List<Optional<Boolean>> told =
                List.of(same(fileKey, now.fileKey), same(cardId, now.cardId), same(reader, now.reader));
        return told.stream().flatMap(Optional::stream).allMatch(equal -> equal)
                && (told.stream().anyMatch(Optional::isPresent) || name.equals(now.name));
    }

    /** Whether it is proven that both are one card, by the card's own number; the same reader or name proves nothing. */
    public boolean isSameCard(CardIdentity other) {
        return same(cardId, other.cardId).orElse(false);
    }

    /** Whether the two tell anything by which different cards under one name would differ. */
    public boolean isTellingFrom(CardIdentity other) {
        return same(fileKey, other.fileKey).isPresent()
                || same(cardId, other.cardId).isPresent();
    }

    private static Optional<Boolean> same(Optional<String> one, Optional<String> other) {
        return one.isPresent() && other.isPresent() ? Optional.of(one.equals(other)) : Optional.empty();
    }
}
