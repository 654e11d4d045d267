package bootmend.device.system;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatCode;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import bootmend.CardException;
import bootmend.StepNames;
import bootmend.device.CardIdentity;
import bootmend.device.CardName;
import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import org.junit.jupiter.api.Test;

class ChangeRulesTest {

    private static final String DEVICE = "/dev/sdx";
    private static final long CARD = 32L << 30;

    @Test
    void aCardInAReaderMayBeChanged() {
        assertThatCode(() -> check(new Told(facts(CARD, true, false)), FixedDisks.REFUSED))
                .doesNotThrowAnyException();
    }

    @Test
    void whatDoesNotLookLikeACardNeedsToBeAllowed() {
        assertRefused(new Told(facts(CARD, false, false)), "it is a built-in disk", "<FIXED_DISK>");
        assertRefused(new Told(facts((2L << 40) + 512, true, false)), "it has over 2 TiB", "<FIXED_DISK>");
        assertRefused(new Told(Optional.empty()), "does not say whether it is a card", "<FIXED_DISK>");
        assertThatCode(() -> check(new Told(facts(3L << 40, false, false)), FixedDisks.ALLOWED))
                .doesNotThrowAnyException();
        assertThatCode(() -> check(new Told(facts(2L << 40, true, false)), FixedDisks.REFUSED))
                .doesNotThrowAnyException();
    }

    @Test
    void aLockedCardIsNeverChanged() {
        for (FixedDisks fixed : FixedDisks.values()) {
            assertThatThrownBy(() -> check(new Told(facts(CARD, true, true)), fixed))
                    .isInstanceOfSatisfying(CardException.class, e -> {
                        assertThat(e).hasMessage("the card is write-protected");
                        assertThat(e.remedy()).contains("lock tab");
                    });
        }
    }

    @Test
    void theRunningSystemsDiskIsNeverChanged() {
        for (FixedDisks fixed : FixedDisks.values()) {
            assertThatThrownBy(() -> check(
                            new Told(facts(CARD, true, false)) {
                                @Override
                                public Optional<String> runningSystemOn(String device) {
                                    return Optional.of("/dev/sdx2 is mounted at /");
                                }
                            },
                            fixed))
                    .hasMessageContaining("holds the running system (/dev/sdx2 is mounted at /)");
        }
    }

    private static void check(SystemDisks disks, FixedDisks fixed) throws CardException {
        new ChangeRules(disks, fixed).checkDevice(DEVICE);
    }

    private static void assertRefused(SystemDisks disks, String what, String remedy) {
        assertThatThrownBy(() -> check(disks, FixedDisks.REFUSED)).isInstanceOfSatisfying(CardException.class, e -> {
            assertThat(e.kind()).isEqualTo(CardException.Kind.REFUSED);
            assertThat(e).hasMessageContaining(what);
            assertThat(new StepNames().remedy(e)).contains(remedy);
        });
    }

    private static Optional<DiskFacts> facts(long bytes, boolean removable, boolean readOnly) {
        return Optional.of(new DiskFacts(bytes, 512, 512, removable, readOnly, "usb"));
    }

    /** A system that knows one disk. */
    private static class Told implements SystemDisks {

        private final Optional<DiskFacts> facts;

        Told(Optional<DiskFacts> facts) {
            this.facts = facts;
        }

        @Override
        public Optional<DiskFacts> facts(String device) {
            return facts;
        }

        @Override
        public Optional<String> runningSystemOn(String device) {
            return Optional.empty();
        }

        @Override
        public Optional<String> useOf(String device) {
            return Optional.empty();
        }

        @Override
        public Optional<String> useOfImage(Path image) {
            return Optional.empty();
        }

        @Override
        public CardIdentity medium(String device) {
            return CardIdentity.named(device);
        }

        @Override
        public DiskHold hold(String device) {
            return DiskHold.NONE;
        }

        @Override
        public Ejection eject(String device) {
            return new Ejection(false, "");
        }

        @Override
        public CardName deviceOf(String listed) {
            return CardName.unseen(Path.of(listed));
        }

        @Override
        public List<AttachedDisk> unlisted(List<CardName> listed) {
            return List.of();
        }
    }
}
