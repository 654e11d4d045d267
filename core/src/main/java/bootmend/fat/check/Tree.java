package bootmend.fat.check;

import bootmend.fat.DirectoryEntry;
import bootmend.fat.Geometry;
import bootmend.finding.Finding;
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
        List<Finding> folderFindings,
        boolean complete) {

    /** How the root folder is named among the files it shares clusters with. */
    static final String ROOT = "root folder";

    List<Finding> findings(Geometry geometry) {
        List<Finding> findings = new ArrayList<>();
        if (!root.isComplete()) {
            new TreeFile("", DirectoryEntry.root(geometry), root, TreeFile.Standing.SOUND, List.of())
                    .finding(geometry)
                    .ifPresent(findings::add);
        }
        files.forEach(file -> file.finding(geometry).ifPresent(findings::add));
        findings.addAll(folderFindings);
        return findings;
    }
}
