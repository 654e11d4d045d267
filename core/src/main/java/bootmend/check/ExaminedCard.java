package bootmend.check;

import bootmend.boot.BootDiagnosis;
import bootmend.fat.VolumeSpace;
import bootmend.finding.Finding;
import java.util.List;
import java.util.Optional;

/**
 * What was read from a card before anything is concluded from it.
 *
 * @param files what is on the boot partition
 * @param config the config file and those it includes, that file first; empty where there is none that can be read
 * @param configProblem why a config file that is there cannot be taken for one, such as a folder of its name
 * @param space how full the volume is; empty where it could not be counted
 * @param health what is wrong with the volume
 * @param interrupted what stands open of an earlier change to the card, in a clause
 * @param boot the boot chain of the boards that it is for; empty where it was not looked at
 */
public record ExaminedCard(
        CardFiles files,
        List<ConfigText> config,
        Optional<String> configProblem,
        Optional<VolumeSpace> space,
        List<Finding> health,
        Optional<String> interrupted,
        Optional<BootDiagnosis> boot) {

    public ExaminedCard {
        config = List.copyOf(config);
        health = List.copyOf(health);
    }

    /** Without a look at the boot chain. */
    public ExaminedCard(
            CardFiles files,
            List<ConfigText> config,
            Optional<String> configProblem,
            Optional<VolumeSpace> space,
            List<Finding> health,
            Optional<String> interrupted) {
        this(files, config, configProblem, space, health, interrupted, Optional.empty());
    }

    /** The same with the boot chain. */
    public ExaminedCard withBoot(BootDiagnosis diagnosis) {
        return new ExaminedCard(files, config, configProblem, space, health, interrupted, Optional.of(diagnosis));
    }
}
