package bootmend.device.system;

import bootmend.CardException;
import bootmend.ReportedIOException;
import com.sun.jna.Memory;
import com.sun.jna.Native;
import com.sun.jna.platform.win32.WinBase;
import com.sun.jna.platform.win32.WinNT;
import com.sun.jna.ptr.IntByReference;
import com.sun.jna.win32.W32APIOptions;
import java.io.Closeable;
import java.io.IOException;
import java.nio.ByteBuffer;
import java.nio.ByteOrder;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/**
 * The real calls to Windows; never run on that system, only against recorded answers.
 *
 * <p>Source: the pages of CreateFileW, FindFirstVolumeW, GetVolumePathNamesForVolumeNameW and of the control codes below, and
 * winioctl.h for their numbers. Values from memory.
 */
final class WindowsKernel implements WindowsCalls {

    private static final int GET_DEVICE_NUMBER = 0x002D1080;
    private static final int GET_VOLUME_DISK_EXTENTS = 0x00560000;
    private static final int GET_DRIVE_GEOMETRY_EX = 0x000700A0;
    private static final int GET_LENGTH_INFO = 0x0007405C;
    private static final int IS_WRITABLE = 0x00070024;
    private static final int QUERY_PROPERTY = 0x002D1400;
    private static final int EJECT_MEDIA = 0x002D4808;
    private static final int LOCK_VOLUME = 0x00090018;
    private static final int DISMOUNT_VOLUME = 0x00090020;

    /** {@code STORAGE_PROPERTY_ID}. */
    private static final int DEVICE_PROPERTY = 0;

    private static final int ALIGNMENT_PROPERTY = 6;

    private static final int ERROR_ACCESS_DENIED = 5;
    private static final int ERROR_WRITE_PROTECT = 19;
    private static final int ERROR_SHARING_VIOLATION = 32;

    /** Characters of a volume's name, and of the places where it is mounted. The first by its page, the second a bound. */
    private static final int NAME = 64;

    private static final int PLACES = 1 << 14;
    private static final int MOST_VOLUMES = 1024;
    private static final int ANSWER = 8192;

    private final WindowsLibrary kernel;

    WindowsKernel(WindowsLibrary kernel) {
        this.kernel = kernel;
    }

    /** Loaded when it is first asked, so that image files need no helper library. */
    static WindowsCalls ofThisComputer() throws IOException {
        try {
            return new WindowsKernel(Native.load("kernel32", WindowsLibrary.class, W32APIOptions.DEFAULT_OPTIONS));
        } catch (LinkageError e) {
            throw new ReportedIOException(HelperLibrary.missing(e));
        }
    }

    @Override
    public List<Volume> volumes() throws IOException {
        List<Volume> volumes = new ArrayList<>();
        char[] name = new char[NAME];
        WinNT.HANDLE search = kernel.FindFirstVolume(name, name.length);
        if (WinBase.INVALID_HANDLE_VALUE.equals(search)) {
            throw new IOException("the system did not list its volumes (error " + kernel.GetLastError() + ")");
        }
        try {
            do {
                volume(text(name)).ifPresent(volumes::add);
            } while (volumes.size() < MOST_VOLUMES && kernel.FindNextVolume(search, name, name.length));
        } finally {
            kernel.FindVolumeClose(search);
        }
        return volumes;
    }

    /** @param listed with the backslash at its end that names the volume's root, not the volume */
    private Optional<Volume> volume(String listed) {
        String device = listed.replaceAll("\\\\+$", "");
        List<Integer> disks = disksOf(device);
        return disks.isEmpty() ? Optional.empty() : Optional.of(new Volume(device, places(listed), disks));
    }

    private List<String> places(String listed) {
        char[] places = new char[PLACES];
        boolean told = kernel.GetVolumePathNamesForVolumeName(listed, places, places.length, new IntByReference());
        List<String> found = new ArrayList<>();
        int at = 0;
        while (told && at < places.length && places[at] != 0) {
            int end = at;
            while (end < places.length && places[end] != 0) {
                end++;
            }
            found.add(new String(places, at, end - at));
            at = end + 1;
        }
        return found;
    }

    private static String text(char[] chars) {
        int end = 0;
        while (end < chars.length && chars[end] != 0) {
            end++;
        }
        return new String(chars, 0, end);
    }

    @Override
    public String systemLetter() {
        return System.getenv().getOrDefault("SystemDrive", "C:");
    }

    /** A disk of several numbers is asked by its extents; a CD drive's number is of another count. */
    @Override
    public List<Integer> disksOf(String device) {
        WinNT.HANDLE handle = open(device, 0);
        if (WinBase.INVALID_HANDLE_VALUE.equals(handle)) {
            return List.of();
        }
        try {
            // A volume over several disks has no number of its own, so only one that says it is something else is left
            // out.
            Optional<ByteBuffer> number = ask(handle, GET_DEVICE_NUMBER, new byte[0]);
            if (number.isPresent() && !WindowsAnswers.isDisk(number.get())) {
                return List.of();
            }
            return ask(handle, GET_VOLUME_DISK_EXTENTS, new byte[0])
                    .map(WindowsAnswers::disks)
                    .orElse(List.of());
        } finally {
            kernel.CloseHandle(handle);
        }
    }

    @Override
    public Optional<WindowsAnswers.Drive> drive(String device) {
        WinNT.HANDLE handle = open(device, WinNT.GENERIC_READ);
        if (WinBase.INVALID_HANDLE_VALUE.equals(handle)) {
            // Without an administrator's rights the driver answers what needs no reading.
            handle = open(device, 0);
        }
        if (WinBase.INVALID_HANDLE_VALUE.equals(handle)) {
            return Optional.empty();
        }
        try {
            return drive(handle);
        } finally {
            kernel.CloseHandle(handle);
        }
    }

    private Optional<WindowsAnswers.Drive> drive(WinNT.HANDLE handle) {
        Optional<WindowsAnswers.Geometry> geometry =
                ask(handle, GET_DRIVE_GEOMETRY_EX, new byte[0]).flatMap(WindowsAnswers::geometry);
        if (geometry.isEmpty()) {
            return Optional.empty();
        }
        Optional<WindowsAnswers.Descriptor> descriptor =
                ask(handle, QUERY_PROPERTY, property(DEVICE_PROPERTY)).flatMap(WindowsAnswers::descriptor);
        int physical = ask(handle, QUERY_PROPERTY, property(ALIGNMENT_PROPERTY))
                .map(WindowsAnswers::physicalSector)
                .orElse(0);
        long length = ask(handle, GET_LENGTH_INFO, new byte[0])
                .filter(answer -> answer.remaining() >= Long.BYTES)
                .map(answer -> answer.getLong(0))
                .orElse(geometry.get().bytes());
        boolean readOnly =
                ask(handle, IS_WRITABLE, new byte[0]).isEmpty() && kernel.GetLastError() == ERROR_WRITE_PROTECT;
        return Optional.of(new WindowsAnswers.Drive(
                length,
                geometry.get().sector(),
                Math.max(physical, geometry.get().sector()),
                geometry.get().removable()
                        || descriptor.map(WindowsAnswers.Descriptor::removable).orElse(false),
                readOnly,
                descriptor.map(WindowsAnswers.Descriptor::bus).orElse(DiskFacts.UNKNOWN_BUS),
                descriptor.flatMap(WindowsAnswers.Descriptor::serial)));
    }

    /** {@code STORAGE_PROPERTY_QUERY} of the standard kind. */
    private static byte[] property(int id) {
        byte[] query = new byte[12];
        query[0] = (byte) id;
        return query;
    }

    @Override
    public RawFile open(String device, boolean change) throws IOException {
        WinNT.HANDLE handle = open(device, WinNT.GENERIC_READ | (change ? WinNT.GENERIC_WRITE : 0));
        if (WinBase.INVALID_HANDLE_VALUE.equals(handle)) {
            throw notOpened(kernel.GetLastError(), change);
        }
        return new WindowsDisk(kernel, handle);
    }

    private static IOException notOpened(int error, boolean change) {
        return switch (error) {
            case ERROR_ACCESS_DENIED ->
                new ReportedIOException(CardException.refused(
                        "you have no right to " + (change ? "write to" : "read") + " it",
                        "Run this as an administrator, or name the drive where the card's boot partition is seen, such as "
                                + "E:, which needs no such right."));
            case ERROR_WRITE_PROTECT -> new ReportedIOException(ChangeRules.writeProtected(false));
            case ERROR_SHARING_VIOLATION ->
                new ReportedIOException(CardException.refused(
                        "another program is using it", "Close what shows the card, then try again."));
            default -> new IOException("error " + error + " of the system");
        };
    }

    @Override
    public Closeable lock(String volume) throws IOException {
        WinNT.HANDLE handle = open(volume, WinNT.GENERIC_READ | WinNT.GENERIC_WRITE);
        if (WinBase.INVALID_HANDLE_VALUE.equals(handle)) {
            int error = kernel.GetLastError();
            throw new IOException(
                    error == ERROR_ACCESS_DENIED
                            ? "locking " + volume + " needs an administrator's rights"
                            : volume + " could not be opened (error " + error + ")");
        }
        if (ask(handle, LOCK_VOLUME, new byte[0]).isEmpty()
                || ask(handle, DISMOUNT_VOLUME, new byte[0]).isEmpty()) {
            int error = kernel.GetLastError();
            kernel.CloseHandle(handle);
            throw new IOException(volume + " is in use by a program (error " + error + ")");
        }
        return () -> {
            if (!kernel.CloseHandle(handle)) {
                throw new IOException(
                        "the system reported error " + kernel.GetLastError() + " when it let go of " + volume);
            }
        };
    }

    @Override
    public boolean eject(String device) {
        WinNT.HANDLE handle = open(device, WinNT.GENERIC_READ);
        if (WinBase.INVALID_HANDLE_VALUE.equals(handle)) {
            return false;
        }
        boolean done = ask(handle, EJECT_MEDIA, new byte[0]).isPresent();
        kernel.CloseHandle(handle);
        return done;
    }

    private WinNT.HANDLE open(String name, int access) {
        return kernel.CreateFile(
                name, access, WinNT.FILE_SHARE_READ | WinNT.FILE_SHARE_WRITE, null, WinNT.OPEN_EXISTING, 0, null);
    }

    /** What the driver filled in; nothing where it refused, for the reason that {@code GetLastError} then has. */
    private Optional<ByteBuffer> ask(WinNT.HANDLE handle, int code, byte[] question) {
        try (Memory answer = new Memory(ANSWER);
                Memory asked = new Memory(Math.max(1, question.length))) {
            asked.write(0, question, 0, question.length);
            IntByReference filled = new IntByReference();
            if (!kernel.DeviceIoControl(
                    handle, code, question.length == 0 ? null : asked, question.length, answer, ANSWER, filled, null)) {
                return Optional.empty();
            }
            int length = Math.max(0, Math.min(filled.getValue(), ANSWER));
            return Optional.of(ByteBuffer.wrap(answer.getByteArray(0, length)).order(ByteOrder.LITTLE_ENDIAN));
        }
    }
}
