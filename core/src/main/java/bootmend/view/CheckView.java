package bootmend.view;

import bootmend.boot.FirmwareVersion;
import bootmend.finding.Finding;
import bootmend.finding.Purpose;
import bootmend.finding.Severity;
import java.time.Instant;
import java.util.List;

/**
 * What a check of a card found, as a user is shown it.
 *
 * @param card what is on the card
 * @param boards ids of the boards that it was checked for; empty where nothing on it tells a board
 * @param boardsGiven whether these were asked for, rather than found on the card
 * @param findings the heaviest first
 * @param firmware builds of boot firmware on the card, those that its boards take first
 * @param when when it was checked
 */
public record CheckView(
        CardView card,
        Purpose purpose,
        List<String> boards,
        boolean boardsGiven,
        List<Finding> findings,
        List<FirmwareVersion> firmware,
        Instant when) {

    public CheckView {
        boards = List.copyOf(boards);
        findings = List.copyOf(findings);
        firmware = List.copyOf(firmware);
    }

    public boolean hasBlocker() {
        return count(Severity.BLOCKER) > 0;
    }

    public int count(Severity severity) {
        return (int) findings.stream()
                .filter(finding -> finding.severity() == severity)
                .count();
    }
}
