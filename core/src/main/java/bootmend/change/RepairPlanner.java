package bootmend.change;

import bootmend.CardException;
import bootmend.config.ConfigName;
import bootmend.device.OverlayDevice;
import bootmend.fat.DirectoryEntry;
import bootmend.fat.FatVolume;
import bootmend.fat.SectorChange;
import bootmend.fat.VolumeEdit;
import bootmend.fat.check.VolumeCheck;
import bootmend.fat.check.VolumeRepair;
import bootmend.finding.Finding;
import bootmend.finding.Place;
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
 * Works out how a damaged volume is repaired, stage by stage, each on what the stages before would leave.
 *
 * <p>Whether a finding is repaired is not claimed but looked up: after the last stage the volume is looked at once more as
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
        List<Finding> config = List.of();
        if (!before.isCutOff()) {
            repair(PlanStep.Kind.REPAIR_BOOT_SECTOR, VolumeRepair.bootSectors());
            repair(PlanStep.Kind.REPAIR_FAT, VolumeRepair.fatCopies());
            repair(PlanStep.Kind.REPAIR_FILES, VolumeRepair.filesAndFolders());
            if (freeLost) {
                repair(PlanStep.Kind.FREE_LOST, VolumeRepair.lostClusters());
            }
            repair(PlanStep.Kind.REPAIR_FS_INFO, VolumeRepair.fsInfo());
            config = config();
            repair(PlanStep.Kind.MARK_CLEAN, VolumeRepair.marks());
        }
        CardId id = CardId.of(FatVolume.open(repaired()), volumeStart);
        List<Finding> findings = new ArrayList<>(findings(before.findings(), health().findings()));
        findings.addAll(config);
        return new Repair(Plan.ofSectors(id, Plan.Purpose.REPAIR, TITLE, files, steps), findings);
    }

    private void repair(PlanStep.Kind kind, VolumeRepair repair) throws IOException {
        List<SectorChange> changes = repair.changes(health());
        add(kind, changes.stream().map(change -> change.moved(volumeStart)).toList());
    }

    /** Gives the config file its name and a form that a board reads; the findings say what came of it. */
    private List<Finding> config() throws CardException, IOException {
        ConfigLook before = ConfigLook.at(FatVolume.open(repaired()));
        if (before.file().isPresent() && isSound(before.file().get())) {
            if (before.misnamed()) {
                rename(FatVolume.open(repaired()), before.file().get());
            }
            if (before.text().isPresent()) {
                save(FatVolume.open(repaired()), before.text().get());
            }
        }
        Set<String> left = ConfigLook.at(FatVolume.open(repaired())).findings().stream()
                .map(Finding::id)
                .collect(Collectors.toSet());
        return before.findings().stream()
                .map(finding -> finding.afterRepair(left.contains(finding.id())))
                .toList();
    }

    /** Whether nothing that is left unrepaired concerns the file. */
    private boolean isSound(DirectoryEntry file) throws IOException {
        return health().findings().stream().noneMatch(finding -> finding.where().equals(Place.file(file.name())));
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
            health = VolumeCheck.of(repaired());
        }
        return health;
    }

    /** The volume as the stages so far would leave it. */
    private BlockDevice repaired() {
        return new OverlayDevice(volume, changed);
    }

    /** What was found before, and what came to light once that was repaired. */
    private static List<Finding> findings(List<Finding> before, List<Finding> after) {
        Set<Finding.Key> found = keys(before);
        Set<Finding.Key> left = keys(after);
        List<Finding> findings = new ArrayList<>();
        before.forEach(finding -> findings.add(finding.afterRepair(left.contains(finding.key()))));
        after.stream()
                .filter(finding -> !found.contains(finding.key()))
                .forEach(finding -> findings.add(finding.afterRepair(true)));
        return findings;
    }

    private static Set<Finding.Key> keys(List<Finding> findings) {
        return findings.stream().map(Finding::key).collect(Collectors.toSet());
    }
}
