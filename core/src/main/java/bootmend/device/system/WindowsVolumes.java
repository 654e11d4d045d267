package bootmend.device.system;

import com.sun.jna.Memory;
import com.sun.jna.Pointer;
import com.sun.jna.platform.win32.Kernel32;
import com.sun.jna.platform.win32.WinBase;
import com.sun.jna.platform.win32.WinNT;
import com.sun.jna.ptr.IntByReference;
import java.io.Closeable;
import java.io.IOException;
import java.util.ArrayList;
import java.util.List;

/** The calls to Windows that {@link WindowsDisks} makes; tests put recorded answers in their place. */
interface WindowsVolumes {

    /** A volume that is on a disk, such as {@code E:}. */
    record Volume(String letter, int disk, boolean removable) {}

    /** Every volume with a letter and the number of the disk it is on. */
    List<Volume> all();

    /** The letter that Windows itself runs from. */
    String systemLetter();

    /** Bytes of the disk with that number; 0 where Windows does not say. */
    long bytes(int disk);

    /** Whether the disk with that number takes no writes. */
    boolean isReadOnly(int disk);

    /** Locks and dismounts a volume until it is closed. */
    Closeable lock(String letter) throws IOException;

    /** Has the disk with that number let go of its medium. */
    boolean eject(String letter);

    /**
     * The real calls; never run.
     *
     * <p>Source: winioctl.h and its pages: IOCTL_STORAGE_GET_DEVICE_NUMBER, IOCTL_DISK_GET_LENGTH_INFO,
     * IOCTL_DISK_IS_WRITABLE, FSCTL_LOCK_VOLUME, FSCTL_DISMOUNT_VOLUME, IOCTL_STORAGE_EJECT_MEDIA. Values from memory.
     */
    static WindowsVolumes ofThisComputer() {
        return new Real();
    }

    /** See {@link #ofThisComputer}. */
    final class Real implements WindowsVolumes {

        private static final int GET_DEVICE_NUMBER = 0x002D1080;
        private static final int GET_LENGTH_INFO = 0x0007405C;
        private static final int IS_WRITABLE = 0x00070024;
        private static final int EJECT_MEDIA = 0x002D4808;
        private static final int LOCK_VOLUME = 0x00090018;
        private static final int DISMOUNT_VOLUME = 0x00090020;
        private static final int DRIVE_REMOVABLE = 2;
        private static final int WRITE_PROTECT = 19;

        @Override
        public List<Volume> all() {
            List<Volume> volumes = new ArrayList<>();
            for (char drive = 'A'; drive <= 'Z'; drive++) {
                String letter = drive + ":";
                WinNT.HANDLE handle = open("\\\\.\\" + letter, 0);
                if (!WinBase.INVALID_HANDLE_VALUE.equals(handle)) {
                    Memory answer = new Memory(12);
                    if (control(handle, GET_DEVICE_NUMBER, answer)) {
                        volumes.add(new Volume(
                                letter,
                                answer.getInt(4),
                                Kernel32.INSTANCE.GetDriveType(letter + "\\") == DRIVE_REMOVABLE));
                    }
                    Kernel32.INSTANCE.CloseHandle(handle);
                }
            }
            return volumes;
        }

        @Override
        public String systemLetter() {
            return System.getenv().getOrDefault("SystemDrive", "C:");
        }

        @Override
        public long bytes(int disk) {
            WinNT.HANDLE handle = open(WindowsDisks.PREFIX + disk, WinNT.GENERIC_READ);
            Memory answer = new Memory(8);
            boolean told = control(handle, GET_LENGTH_INFO, answer);
            Kernel32.INSTANCE.CloseHandle(handle);
            return told ? answer.getLong(0) : 0;
        }

        @Override
        public boolean isReadOnly(int disk) {
            WinNT.HANDLE handle = open(WindowsDisks.PREFIX + disk, WinNT.GENERIC_READ);
            boolean writable = control(handle, IS_WRITABLE, null);
            int error = Kernel32.INSTANCE.GetLastError();
            Kernel32.INSTANCE.CloseHandle(handle);
            return !writable && error == WRITE_PROTECT;
        }

        @Override
        public Closeable lock(String letter) throws IOException {
            WinNT.HANDLE handle = open("\\\\.\\" + letter, WinNT.GENERIC_READ | WinNT.GENERIC_WRITE);
            if (!control(handle, LOCK_VOLUME, null) || !control(handle, DISMOUNT_VOLUME, null)) {
                Kernel32.INSTANCE.CloseHandle(handle);
                throw new IOException(
                        "volume " + letter + " is in use by a program, or needs an administrator's rights");
            }
            return () -> Kernel32.INSTANCE.CloseHandle(handle);
        }

        @Override
        public boolean eject(String letter) {
            WinNT.HANDLE handle = open("\\\\.\\" + letter, WinNT.GENERIC_READ | WinNT.GENERIC_WRITE);
            boolean done = control(handle, LOCK_VOLUME, null)
                    && control(handle, DISMOUNT_VOLUME, null)
                    && control(handle, EJECT_MEDIA, null);
            Kernel32.INSTANCE.CloseHandle(handle);
            return done;
        }

        private static WinNT.HANDLE open(String name, int access) {
            return Kernel32.INSTANCE.CreateFile(
                    name, access, WinNT.FILE_SHARE_READ | WinNT.FILE_SHARE_WRITE, null, WinNT.OPEN_EXISTING, 0, null);
        }

        private static boolean control(WinNT.HANDLE handle, int code, Memory answer) {
            Pointer buffer = answer;
            return Kernel32.INSTANCE.DeviceIoControl(
                    handle,
                    code,
                    null,
                    0,
                    buffer,
                    answer == null ? 0 : (int) answer.size(),
                    new IntByReference(),
                    null);
        }
    }
}
