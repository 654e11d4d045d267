package bootmend.earlier;

import java.nio.charset.StandardCharsets;

/** The texts that {@code fixtures/src/kernel/init} had a Linux kernel write, made again here. */
final class KernelCards {

    private KernelCards() {}

    /** What {@code text I} prints there. */
    static String text(int i) {
        StringBuilder text = new StringBuilder();
        text.append("# Board of the lab, edit ").append(i).append('\n');
        text.append("# Lines that start with a number sign are comments.\n\n");
        text.append("dtparam=audio=on\ncamera_auto_detect=1\ndisplay_auto_detect=1\nauto_initramfs=1\n");
        text.append("dtoverlay=vc4-kms-v3d\nmax_framebuffers=2\ndisable_fw_kms_setup=1\narm_64bit=1\n");
        text.append("disable_overscan=1\n\n");
        text.append("[cm4]\notg_mode=1\n\n[pi5]\ndtoverlay=dwc2,dr_mode=host\n\n[all]\n");
        text.append("arm_freq=").append(1500 + i).append('\n');
        if (i % 3 != 0) {
            text.append("over_voltage=").append(i % 7).append('\n');
        }
        if (i % 5 != 0) {
            text.append("gpu_freq=").append(500 + i % 50).append('\n');
        }
        for (int n = 0; n < i * 7 % 24; n++) {
            text.append("# note ").append(n).append(": cooler and supply as on the bench sheet\n");
        }
        return text.toString();
    }

    /** What {@code long_text I} prints there. */
    static String longText(int i) {
        StringBuilder text = new StringBuilder(text(i));
        for (int n = 0; n < 40; n++) {
            text.append("dtoverlay=gpio-led,gpio=")
                    .append(n)
                    .append(",label=lamp")
                    .append(n * 13 + i)
                    .append('\n');
        }
        return text.toString();
    }

    static byte[] bytes(String text) {
        return text.getBytes(StandardCharsets.US_ASCII);
    }
}
