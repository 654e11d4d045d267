package bootmend.fat.check;

import bootmend.fat.DirectoryEntry;
import bootmend.fat.Geometry;
import java.util.ArrayList;
import java.util.List;

/**
 * Everything that a volume's folders list, as one FAT copy has it.
 *
 * @param root the root folder's chain on FAT32, else an empty one
 * @param files all files and folders but the root
 * @param clusters which clusters they have
 * @param orphans places of long-name slots that belong to no entry and may be marked deleted
 * @param folderFindings what is wrong with the folders' content
 * @param complete whether all folders could be read, so that a cluster which nothing has is known to be lost
 */
record Tree(
        ChainCheck root,
        List<TreeFile> files,
        ClusterMap clusters,
        List<Long> orphans,
        List<VolumeFinding> folderFindings,
        boolean complete) {

    static final String ROOT = "root folder";

    List<VolumeFinding> findings(Geometry geometry) {
        List<VolumeFinding> findings = new ArrayList<>();
        if (!root.isComplete()) {
            new TreeFile(ROOT, DirectoryEntry.root(geometry), root, TreeFile.Standing.SOUND, List.of())
                    .finding(geometry)
                    .ifPresent(findings::add);
        }
        files.forEach(file -> file.finding(geometry).ifPresent(findings::add));
        findings.addAll(folderFindings);
        return findings;
    }
}
