package bootmend.view;

import bootmend.CardException;
import bootmend.card.ConfigFiles;
import bootmend.card.OpenCard;
import bootmend.device.system.AttachedDisk;
import bootmend.device.system.DiskList;
import bootmend.request.CardRequest;
import bootmend.workplace.Workplace;
import java.io.IOException;
import java.nio.file.Files;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;

/** Lists the disks that are attached to this computer, and which of them look like boot cards; writes nothing. */
public final class CardsJob {

    private final Workplace workplace;
    private final DiskList disks;
    private final Map<AttachedDisk, Look> looks = new HashMap<>();

    public CardsJob(Workplace workplace) {
        this(workplace, DiskList.ofThisComputer());
    }

    CardsJob(Workplace workplace, DiskList disks) {
        this.workplace = workplace;
        this.disks = disks;
    }

    /** The disks that are attached now; one that is listed as it was the last time is not opened again. */
    public List<AttachedCard> run() {
        List<AttachedDisk> now = disks.now();
        looks.keySet().retainAll(now);
        return now.stream().map(this::card).toList();
    }

    private AttachedCard card(AttachedDisk disk) {
        Look look = looks.get(disk);
        if (look == null) {
            look = look(disk);
            if (look.boot() != AttachedCard.Boot.UNKNOWN) {
                looks.put(disk, look);
            }
        }
        return new AttachedCard(
                disk.name().text(),
                disk.bytes(),
                disk.model(),
                disk.bus(),
                disk.removable(),
                disk.readOnly(),
                look.boot(),
                look.words(),
                disk.system(),
                disk.partitions().stream()
                        .map(part -> new AttachedCard.Part(
                                part.device().text(), part.bytes(), part.name(), part.mountedAt()))
                        .toList(),
                disk.mountedAt());
    }

    private record Look(AttachedCard.Boot boot, String words) {}

    private Look look(AttachedDisk disk) {
        Optional<String> system = disk.system();
        if (system.isPresent()) {
            return new Look(AttachedCard.Boot.NO, "it holds the running system: " + system.get());
        }
        if (Files.exists(disk.path()) && !Files.isReadable(disk.path())) {
            return new Look(AttachedCard.Boot.UNKNOWN, "you have no right to read it");
        }
        try (OpenCard card = OpenCard.open(workplace.opener(), CardRequest.of(disk.path()), false)) {
            return card.volume().find(ConfigFiles.NAME).isPresent()
                    ? new Look(
                            AttachedCard.Boot.YES,
                            "partition " + card.partition().number() + ", "
                                    + card.partition().reason())
                    : new Look(AttachedCard.Boot.NO, "its first FAT partition has no " + ConfigFiles.NAME);
        } catch (CardException e) {
            return new Look(AttachedCard.Boot.NO, e.getMessage());
        } catch (IOException e) {
            return new Look(AttachedCard.Boot.UNKNOWN, e.getMessage());
        }
    }
}
