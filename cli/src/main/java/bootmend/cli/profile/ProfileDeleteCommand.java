package bootmend.cli.profile;

import bootmend.cli.option.JsonOption;
import bootmend.cli.run.Question;
import bootmend.record.ProfileJob;
import bootmend.record.ProfileView;
import bootmend.workplace.Workplace;
import java.util.concurrent.Callable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;
import picocli.CommandLine.Spec;

/** {@code bootmend profile delete}. */
@Command(
        name = "delete",
        header = "Deletes a profile; cards are not touched.",
        mixinStandardHelpOptions = true,
        description = "Deletes a profile from this computer; cards are not touched. Asks first.",
        footer = {"", "Example:", "  bootmend profile delete cart-3"})
final class ProfileDeleteCommand implements Callable<Integer> {

    private final Workplace workplace;
    private final Question question;

    @Parameters(paramLabel = "NAME", description = "The profile's name.")
    private String name;

    @Option(names = "--yes", description = "Delete it without asking.")
    private boolean yes;

    @Mixin
    private JsonOption json;

    @Spec
    private CommandSpec spec;

    ProfileDeleteCommand(Workplace workplace, Question question) {
        this.workplace = workplace;
        this.question = question;
    }

    @Override
    public Integer call() {
        ProfileAnswer answer = new ProfileAnswer(spec.commandLine(), json);
        return answer.of(
                () -> {
                    ProfileJob job = new ProfileJob(workplace);
                    ProfileView profile = job.show(name);
                    boolean deleted = yes || question.ask("Delete the profile " + name + "?");
                    if (deleted) {
                        job.delete(name);
                    }
                    return new Deletion(profile, deleted);
                },
                done -> answer.screen().line(done.deleted() ? "Deleted: " + name + "." : "Nothing was deleted."));
    }

    /** What was, or was not, deleted. */
    record Deletion(ProfileView profile, boolean deleted) {}
}
