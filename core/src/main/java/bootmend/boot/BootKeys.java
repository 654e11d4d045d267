package bootmend.boot;

import java.util.Set;

/** The config file's keys that say what a board starts from. */
public final class BootKeys {

    /** Every key that the boot chain reads. */
    public static final Set<String> ALL = Set.of(
            "kernel",
            "device_tree",
            "start_file",
            "fixup_file",
            "start_x",
            "start_debug",
            "gpu_mem",
            "gpu_mem_256",
            "gpu_mem_512",
            "gpu_mem_1024",
            "arm_64bit",
            "armstub",
            "os_prefix",
            "overlay_prefix",
            "upstream_kernel",
            "boot_ramdisk",
            "auto_initramfs",
            "dtoverlay",
            "ramfsfile",
            "cmdline");

    private BootKeys() {}
}
