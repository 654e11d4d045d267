package bootmend.record;

import bootmend.CardException;
import bootmend.NextStep;
import bootmend.card.ConfigFiles;
import bootmend.card.JobErrors;
import bootmend.card.OpenCard;
import bootmend.config.VisibleText;
import bootmend.request.CardRequest;
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

    Map<String, Long> of(TrialRequest request, BoardFacts facts) throws CardException {
        Map<String, Long> named = named(request.settings());
        Map<String, Long> settings = new LinkedHashMap<>();
        if (request.card().isPresent()) {
            settings.putAll(onCard(request.card().get(), facts, named));
        }
        settings.putAll(named);
        return settings;
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

    private Map<String, Long> onCard(CardRequest request, BoardFacts facts, Map<String, Long> named)
            throws CardException {
        Map<String, Long> settings = new LinkedHashMap<>();
        for (Effective each : resolve(request, facts).effective()) {
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

    private Resolution resolve(CardRequest request, BoardFacts facts) throws CardException {
        try (OpenCard card = OpenCard.open(workplace.opener(), request, false)) {
            ConfigFiles files = ConfigFiles.read(card.volume());
            return new Resolver(tables)
                    .resolve(files.main().path(), files.main().document(), files.includes(), facts);
        } catch (IOException e) {
            throw JobErrors.unreadable(e);
        }
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
