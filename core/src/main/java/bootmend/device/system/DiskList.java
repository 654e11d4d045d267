package bootmend.device.system;

import java.util.List;

/** The disks that are attached now; tests script what comes and goes. */
@FunctionalInterface
public interface DiskList {

    /** Disks with a medium, in the order of their paths. */
    List<AttachedDisk> now();

    /** This computer's disks. */
    static DiskList ofThisComputer() {
        return new OshiDisks(SystemDisks.ofThisComputer());
    }
}
