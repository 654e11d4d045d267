package bootmend.change;

import bootmend.CardException;
import bootmend.config.ConfigName;
import bootmend.device.OverlayDevice;
import bootmend.fat.DirectoryEntry;
import bootmend.fat.FatVolume;
import bootmend.fat.SectorChange;
import bootmend.fat.VolumeEdit;
import bootmend.fat.check.VolumeCheck;
import bootmend.fat.check.VolumeFinding;
import bootmend.fat.check.VolumeRepair;
import de.waldheinz.fs.BlockDevice;
import java.io.IOException;
import java.time.LocalDateTime;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.TreeMap;
import java.util.stream.Collectors;

/**
 * Works out how a damaged volume is mended, stage by stage, each on what the stages before would leave.
 *
 * <p>Whether a finding is mended is not claimed but looked up: after the last stage the volume is looked at once more as
 * it would then be. Partition tables are never touched.
 */
public final class RepairPlanner {

    private static final String TITLE = "repair";

    private final BlockDevice volume;
    private final long volumeStart;
    private final LocalDateTime written;
    private final boolean inPlaceAllowed;
    private final List<PlanStep> steps = new ArrayList<>();
    private final List<FileChange> files = new ArrayList<>();
    private final Map<Long, byte[]> changed = new TreeMap<>();
    private VolumeCheck health;

    /**
     * @param volume the boot partition
     * @param volumeStart its first byte on the card
     * @param written the time that a config file saved anew gets, local
     * @param inPlaceAllowed whether it may be overwritten where it stands if no cluster is free
     */
    public RepairPlanner(BlockDevice volume, long volumeStart, LocalDateTime written, boolean inPlaceAllowed) {
        this.volume = volume;
        this.volumeStart = volumeStart;
        this.written = written;
        this.inPlaceAllowed = inPlaceAllowed;
    }

    /**
     * The findings and the plan; called once.
     *
     * @param freeLost whether clusters that belong to no file are freed
     */
    public Repair plan(boolean freeLost) throws CardException, IOException {
        VolumeCheck before = health();
        List<RepairFinding> config = List.of();
        if (!before.isCutOff()) {
            mend(PlanStep.Kind.MEND_BOOT_SECTOR, VolumeRepair.bootSectors());
            mend(PlanStep.Kind.MEND_FAT, VolumeRepair.fatCopies());
            mend(PlanStep.Kind.MEND_FILES, VolumeRepair.filesAndFolders());
            if (freeLost) {
                mend(PlanStep.Kind.FREE_LOST, VolumeRepair.lostClusters());
            }
            mend(PlanStep.Kind.MEND_FS_INFO, VolumeRepair.fsInfo());
            config = config();
            mend(PlanStep.Kind.MARK_CLEAN, VolumeRepair.marks());
        }
        CardId id = CardId.of(FatVolume.open(mended()), volumeStart);
        List<RepairFinding> findings = new ArrayList<>(findings(before.findings(), health().findings()));
        findings.addAll(config);
        return new Repair(new Plan(id, Plan.Purpose.REPAIR, TITLE, files, steps), findings);
    }

    private void mend(PlanStep.Kind kind, VolumeRepair mend) throws IOException {
        List<SectorChange> changes = mend.changes(health());
        add(kind, changes.stream().map(change -> change.moved(volumeStart)).toList());
    }

    /** Gives the config file its name and a form that a board reads; the findings say what came of it. */
    private List<RepairFinding> config() throws CardException, IOException {
        ConfigLook before = ConfigLook.at(FatVolume.open(mended()));
        if (before.file().isPresent() && isSound(before.file().get())) {
            if (before.misnamed()) {
                rename(FatVolume.open(mended()), before.file().get());
            }
            if (before.text().isPresent()) {
                save(FatVolume.open(mended()), before.text().get());
            }
        }
        Set<String> left = ConfigLook.at(FatVolume.open(mended())).findings().stream()
                .map(RepairFinding::id)
                .collect(Collectors.toSet());
        return before.findings().stream()
                .map(finding -> finding.withMended(!left.contains(finding.id())))
                .toList();
    }

    /** Whether nothing that is left unmended concerns the file. */
    private boolean isSound(DirectoryEntry file) throws IOException {
        return health().findings().stream().noneMatch(finding -> finding.where().equals(file.name()));
    }

    /** The sector with the short entry is written first: once it is, the file has its name whatever becomes of the rest. */
    private void rename(FatVolume named, DirectoryEntry file) throws IOException {
        VolumeEdit edit = new VolumeEdit(named);
        edit.putLowerCaseName(file, ConfigName.NAME);
        edit.deleteLongName(file);
        List<SectorChange> changes = edit.takeStep();
        Map<Boolean, List<SectorChange>> byEntry = changes.stream()
                .map(change -> change.moved(volumeStart))
                .collect(Collectors.partitioningBy(change -> holds(change, volumeStart + file.offset())));
        add(PlanStep.Kind.RENAME, byEntry.get(true));
        add(PlanStep.Kind.RENAME, byEntry.get(false));
    }

    private static boolean holds(SectorChange change, long offset) {
        return offset >= change.offset() && offset < change.offset() + change.after().length;
    }

    private void save(FatVolume saved, ConfigLook.Saved text) throws CardException, IOException {
        DirectoryEntry file = saved.find(ConfigName.NAME)
                .orElseThrow(() -> new IOException(ConfigName.NAME + " is not found under its name"));
        ChangePlanner planner = new ChangePlanner(saved, CardId.of(saved, volumeStart), written, inPlaceAllowed);
        planner.replace(ConfigName.NAME, file, text.before(), text.after());
        Plan plan = planner.plan(TITLE);
        files.addAll(plan.files());
        plan.steps().forEach(step -> add(step.kind(), step.changes()));
    }

    private void add(PlanStep.Kind kind, List<SectorChange> changes) {
        steps.add(new PlanStep(kind, changes));
        for (SectorChange change : changes) {
            changed.put(change.offset() - volumeStart, change.after());
            health = null;
        }
    }

    /** A full look at the volume as the stages so far would leave it. */
    private VolumeCheck health() throws IOException {
        if (health == null) {
            health = VolumeCheck.of(mended());
        }
        return health;
    }

    /** The volume as the stages so far would leave it. */
    private BlockDevice mended() {
        return new OverlayDevice(volume, changed);
    }

    /** What was found before, and what came to light once that was mended. */
    private static List<RepairFinding> findings(List<VolumeFinding> before, List<VolumeFinding> after) {
        Set<String> found = keys(before);
        Set<String> left = keys(after);
        List<RepairFinding> findings = new ArrayList<>();
        before.forEach(finding -> findings.add(RepairFinding.of(finding, !left.contains(finding.key()))));
        after.stream()
                .filter(finding -> !found.contains(finding.key()))
                .forEach(finding -> findings.add(RepairFinding.of(finding, false)));
        return findings;
    }

    private static Set<String> keys(List<VolumeFinding> findings) {
        return findings.stream().map(VolumeFinding::key).collect(Collectors.toSet());
    }
}
