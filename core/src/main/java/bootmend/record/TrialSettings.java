package bootmend.record;

import bootmend.CardException;
import bootmend.NextStep;
import bootmend.card.ConfigFiles;
import bootmend.card.JobErrors;
import bootmend.card.OpenCard;
import bootmend.config.ConfigName;
import bootmend.config.VisibleText;
import bootmend.request.NearWords;
import bootmend.tuning.TuningKey;
import bootmend.tuning.TuningNumber;
import bootmend.tuning.TuningTables;
import bootmend.tuning.resolve.BoardFacts;
import bootmend.tuning.resolve.Effective;
import bootmend.tuning.resolve.EffectiveState;
import bootmend.tuning.resolve.Resolution;
import bootmend.tuning.resolve.Resolver;
import bootmend.workplace.Workplace;
import java.io.IOException;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalLong;

/** Finds the settings that were in force in a trial: those a user names, before those of a card. */
public final class TrialSettings {

    private final Workplace workplace;
    private final TuningTables tables;

    public TrialSettings(Workplace workplace) {
        this.workplace = workplace;
        this.tables = workplace.tables();
    }

    /**
     * What ran.
     *
     * @param settings by key
     * @param file the file they were read from, by its digest; empty where all were told
     * @param notes sentences on what else lies on the card
     */
    record Ran(Map<String, Long> settings, String file, List<String> notes) {}

    Ran of(TrialRequest request, BoardFacts facts) throws CardException {
        Map<String, Long> named = named(request.settings());
        Map<String, Long> settings = new LinkedHashMap<>();
        String file = "";
        List<String> notes = List.of();
        if (request.card().isPresent()) {
            boolean once = facts.tryboot().orElse(false);
            try (OpenCard card =
                    OpenCard.open(workplace.opener(), request.card().get(), false)) {
                ConfigFiles files = ConfigFiles.read(card.volume(), ranFile(card, once));
                settings.putAll(onCard(files, facts, named));
                file = TrialRan.words(files);
                if (!once && card.volume().find(ConfigName.TRY_ONCE).isPresent()) {
                    notes = List.of("Settings are staged on this card too; the ones kept are those of "
                            + files.main().path() + ", which runs without the try-once flag.");
                }
            } catch (IOException e) {
                throw JobErrors.unreadable(e);
            }
        }
        settings.putAll(named);
        return new Ran(settings, file, notes);
    }

    /** A board started with its try-once flag reads the staged file in the place of the config file. */
    private static String ranFile(OpenCard card, boolean once) throws CardException, IOException {
        if (!once || card.switchesPartition()) {
            return ConfigFiles.NAME;
        }
        if (card.volume().find(ConfigName.TRY_ONCE).isEmpty()) {
            throw CardException.refused(
                    "nothing is staged on this card, so that what a try-once start ran does not stand on it any more",
                    "If it was adopted since, leave the try-once start out; else say the settings.",
                    NextStep.Plain.GIVE_SETTINGS);
        }
        return ConfigName.TRY_ONCE;
    }

    /** Settings written as {@code KEY=NUMBER}. */
    public Map<String, Long> named(List<String> texts) throws CardException {
        Map<String, Long> settings = new LinkedHashMap<>();
        for (String text : texts) {
            String[] parts = parts(text.strip());
            if (parts.length < 2 || TuningNumber.parse(parts[1]).isEmpty()) {
                throw CardException.usage(text + " is no setting", "Write it like arm_freq=2000.");
            }
            if (tables.vocabulary().find(parts[0]).isEmpty()) {
                List<String> near = new NearWords(tables.vocabulary().keys().stream()
                                .map(TuningKey::key)
                                .toList())
                        .to(parts[0]);
                throw CardException.usage(
                        parts[0] + " is no tuning key",
                        near.isEmpty()
                                ? "Keys are written as in the config file, such as arm_freq."
                                : "Did you mean " + String.join(", ", near) + "?");
            }
            settings.put(parts[0], TuningNumber.parse(parts[1]).getAsLong());
        }
        return settings;
    }

    /** Key and value; a key such as {@code dtparam=sd_overclock} has an equals sign of its own. */
    private String[] parts(String text) {
        int last = text.lastIndexOf('=');
        String key = last < 0 ? text : text.substring(0, last).strip();
        return tables.vocabulary().find(key).isPresent()
                ? new String[] {key, text.substring(last + 1).strip()}
                : text.split("\\s*=\\s*", 2);
    }

    private Map<String, Long> onCard(ConfigFiles files, BoardFacts facts, Map<String, Long> named)
            throws CardException {
        Map<String, Long> settings = new LinkedHashMap<>();
        for (Effective each : resolve(files, facts).effective()) {
            if (tables.vocabulary()
                    .findOnCard(each.key())
                    .filter(TuningKey::isKept)
                    .isEmpty()) {
                continue;
            }
            OptionalLong value = TuningNumber.parse(each.value());
            if (each.state() == EffectiveState.SET || isHarmless(each) && value.isPresent()) {
                settings.put(each.key(), value.orElseThrow());
            } else if (each.state() == EffectiveState.DEPENDS && !named.containsKey(each.key())) {
                throw CardException.usage(
                        "what " + each.key() + " was on this board depends on "
                                + VisibleText.of(String.join(", ", each.dependsOn())),
                        "",
                        new NextStep.GiveSetting(each.key()),
                        NextStep.Plain.GIVE_BOARD_DETAILS);
            }
        }
        return settings;
    }

    /** A doubt about a key that tunes nothing by itself, such as {@code arm_boost}: what it changes is asked about itself. */
    private boolean isHarmless(Effective each) {
        return each.state() == EffectiveState.DEPENDS
                && tables.vocabulary()
                        .findOnCard(each.key())
                        .filter(TuningKey::resets)
                        .isEmpty();
    }

    private Resolution resolve(ConfigFiles files, BoardFacts facts) {
        return new Resolver(tables).resolve(files.main().path(), files.main().document(), files.includes(), facts);
    }

    /** A sentence for each setting outside its published range. */
    List<String> outOfRange(Map<String, Long> settings) {
        return settings.entrySet().stream()
                .flatMap(
                        setting -> tables
                                .vocabulary()
                                .find(setting.getKey())
                                .flatMap(key -> outOfRange(key, setting.getValue()))
                                .stream())
                .toList();
    }

    private static Optional<String> outOfRange(TuningKey key, long value) {
        boolean outside = value < key.min().orElse(value) || value > key.max().orElse(value);
        return outside ? Optional.of(key.key() + "=" + value + " is outside its published range.") : Optional.empty();
    }
}
