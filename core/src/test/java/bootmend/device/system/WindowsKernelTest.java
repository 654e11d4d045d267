package bootmend.device.system;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import bootmend.CardException;
import bootmend.ReportedIOException;
import com.sun.jna.Pointer;
import com.sun.jna.platform.win32.WinBase;
import com.sun.jna.platform.win32.WinNT;
import com.sun.jna.ptr.IntByReference;
import java.io.IOException;
import java.lang.reflect.Proxy;
import java.nio.ByteBuffer;
import java.nio.ByteOrder;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.junit.jupiter.api.Test;

/**
 * The calls to Windows on recorded answers, laid out byte by byte as winioctl.h and ntddstor.h have them (value from
 * memory); none was taken from a running system. Of the library only its types are used.
 */
class WindowsKernelTest {

    private static final String CARD = "\\\\.\\PHYSICALDRIVE2";
    private static final String BOOT = "\\\\?\\Volume{00000000-0000-0000-0000-000000000001}";
    private static final String DISC = "\\\\?\\Volume{00000000-0000-0000-0000-000000000002}";
    private static final String SPREAD = "\\\\?\\Volume{00000000-0000-0000-0000-000000000003}";

    private static final int GEOMETRY = 0x000700A0;
    private static final int LENGTH = 0x0007405C;
    private static final int WRITABLE = 0x00070024;
    private static final int EXTENTS = 0x00560000;
    private static final int NUMBER = 0x002D1080;
    private static final int LOCK = 0x00090018;
    private static final int DISMOUNT = 0x00090020;

    private static final int ACCESS_DENIED = 5;
    private static final int WRITE_PROTECT = 19;
    private static final int NO_SUCH_FILE = 2;

    private final List<String> events = new ArrayList<>();
    private final Map<String, byte[]> answers = new HashMap<>();
    private final Map<String, Integer> errors = new HashMap<>();
    private final List<String> handles = new ArrayList<>(List.of("none"));
    private final List<String> volumes = List.of(BOOT, DISC, SPREAD);
    private final byte[] medium = new byte[1 << 16];
    private int error;
    private int next;

    private final WindowsKernel kernel = new WindowsKernel((WindowsLibrary) Proxy.newProxyInstance(
            WindowsLibrary.class.getClassLoader(),
            new Class<?>[] {WindowsLibrary.class},
            (proxy, method, args) -> switch (method.getName()) {
                case "CreateFile" -> create((String) args[0], (int) args[1], (int) args[2], (int) args[4]);
                case "CloseHandle" -> does("close", args[0]);
                case "GetLastError" -> error;
                case "DeviceIoControl" ->
                    control(args[0], (int) args[1], (Pointer) args[2], (Pointer) args[4], (IntByReference) args[6]);
                case "FindFirstVolume" -> {
                    next = 0;
                    volume((char[]) args[0]);
                    yield new WinNT.HANDLE(Pointer.createConstant(999));
                }
                case "FindNextVolume" -> volume((char[]) args[1]);
                case "FindVolumeClose" -> true;
                case "GetVolumePathNamesForVolumeName" -> places((String) args[0], (char[]) args[1]);
                case "ReadFile", "WriteFile" ->
                    move(method.getName(), (byte[]) args[1], (int) args[2], args[3], (WinBase.OVERLAPPED) args[4]);
                case "FlushFileBuffers" -> does("flush", args[0]);
                default -> throw new UnsupportedOperationException(method.getName());
            }));

    private WinNT.HANDLE create(String name, int access, int share, int how) {
        assertThat(share).as("shared for reading and writing").isEqualTo(3);
        assertThat(how).as("only what is there is opened").isEqualTo(WinNT.OPEN_EXISTING);
        Integer fails = errors.get("open " + name + " " + Integer.toHexString(access));
        if (fails != null) {
            error = fails;
            return WinBase.INVALID_HANDLE_VALUE;
        }
        events.add("open " + name);
        handles.add(name);
        return new WinNT.HANDLE(Pointer.createConstant(handles.size() - 1L));
    }

    private String name(Object handle) {
        return handles.get((int) Pointer.nativeValue(((WinNT.HANDLE) handle).getPointer()));
    }

    private boolean does(String what, Object handle) {
        events.add(what + " " + name(handle));
        Integer fails = errors.get(what);
        error = fails == null ? 0 : fails;
        return fails == null;
    }

    private boolean control(Object handle, int code, Pointer question, Pointer answer, IntByReference filled) {
        String key =
                name(handle) + " " + Integer.toHexString(code) + (question == null ? "" : "/" + question.getByte(0));
        events.add(key);
        byte[] told = answers.get(key);
        if (told == null) {
            error = errors.getOrDefault(key, 1);
            return false;
        }
        answer.write(0, told, 0, told.length);
        filled.setValue(told.length);
        return true;
    }

    private boolean volume(char[] name) {
        if (next == volumes.size()) {
            return false;
        }
        fill(name, volumes.get(next++) + "\\\0");
        return true;
    }

    private static boolean places(String volume, char[] places) {
        fill(places, volume.startsWith(BOOT) ? "E:\\\0C:\\cards\\boot\\\0\0" : "\0");
        return true;
    }

    private static void fill(char[] target, String text) {
        text.getChars(0, text.length(), target, 0);
    }

    private boolean move(String call, byte[] bytes, int length, Object moved, WinBase.OVERLAPPED at) {
        int place = at.Offset;
        events.add(call + " " + length + " at " + ((long) at.OffsetHigh << 32 | at.Offset & 0xFFFFFFFFL));
        if (errors.containsKey(call)) {
            error = errors.get(call);
            return false;
        }
        int count = Math.min(length, Math.max(0, medium.length - place));
        if (call.equals("ReadFile")) {
            System.arraycopy(medium, place, bytes, 0, count);
        } else {
            System.arraycopy(bytes, 0, medium, place, count);
        }
        ((IntByReference) moved).setValue(count);
        return true;
    }

    @Test
    void sizeSectorsAndWhatItIs() {
        answer(CARD, GEOMETRY, little(32).putInt(8, 11).putInt(20, 512).putLong(24, 31914983424L));
        answer(CARD, LENGTH, little(8).putLong(0, 31914983424L));
        answer(CARD, WRITABLE, little(0));
        answers.put(CARD + " 2d1400/0", descriptor("  000000001206 "));
        answers.put(
                CARD + " 2d1400/6", little(28).putInt(16, 512).putInt(20, 4096).array());

        assertThat(kernel.drive(CARD))
                .contains(new WindowsAnswers.Drive(
                        31914983424L, 512, 4096, true, false, "usb", Optional.of("000000001206")));
        assertThat(events).last().isEqualTo("close " + CARD);
    }

    @Test
    void aLockedCardAndLargeSectors() {
        answer(CARD, GEOMETRY, little(32).putInt(8, 12).putInt(20, 4096).putLong(24, 1L << 40));
        errors.put(CARD + " " + Integer.toHexString(WRITABLE), WRITE_PROTECT);

        WindowsAnswers.Drive drive = kernel.drive(CARD).orElseThrow();

        assertThat(drive.readOnly()).isTrue();
        assertThat(drive.removable()).isFalse();
        assertThat(drive.logicalSector()).isEqualTo(4096);
        assertThat(drive.physicalSector()).isEqualTo(4096);
        assertThat(drive.bytes()).isEqualTo(1L << 40);
    }

    /** Rights to read are not needed for what the driver tells. */
    @Test
    void aDiskThatMayNotBeReadStillTellsWhatItIs() {
        errors.put("open " + CARD + " 80000000", ACCESS_DENIED);
        answer(CARD, GEOMETRY, little(32).putInt(8, 11).putInt(20, 512).putLong(24, 1L << 30));

        assertThat(kernel.drive(CARD)).isPresent();
    }

    @Test
    void answersThatNoDriverGivesAreNone() {
        for (int sector : new int[] {0, 1, 513, 1 << 20, Integer.MIN_VALUE}) {
            answer(CARD, GEOMETRY, little(32).putInt(20, sector).putLong(24, 1L << 30));
            assertThat(kernel.drive(CARD)).isEmpty();
        }
        answer(CARD, GEOMETRY, little(8));
        assertThat(kernel.drive(CARD)).isEmpty();
        assertThat(WindowsAnswers.disks(little(8).putInt(0, Integer.MAX_VALUE))).isEmpty();
        assertThat(WindowsAnswers.disks(little(2))).isEmpty();
        assertThat(WindowsAnswers.descriptor(little(36).putInt(24, 1 << 30))
                        .orElseThrow()
                        .serial())
                .isEmpty();
        assertThat(WindowsAnswers.descriptor(little(36).putInt(24, -5))
                        .orElseThrow()
                        .serial())
                .isEmpty();
    }

    /** A CD drive's device number 2 is no disk 2; a volume over two disks is on both, and has no number. */
    @Test
    void volumesByTheirExtents() throws IOException {
        answer(BOOT, NUMBER, little(12).putInt(0, 7).putInt(4, 2));
        answer(BOOT, EXTENTS, little(32).putInt(0, 1).putInt(8, 2).putLong(16, 1 << 20));
        answer(DISC, NUMBER, little(12).putInt(0, 2).putInt(4, 2));
        answer(DISC, EXTENTS, little(32).putInt(0, 1).putInt(8, 2));
        answer(SPREAD, EXTENTS, little(56).putInt(0, 2).putInt(8, 4).putInt(32, 5));

        assertThat(kernel.volumes())
                .containsExactly(
                        new WindowsCalls.Volume(BOOT, List.of("E:\\", "C:\\cards\\boot\\"), List.of(2)),
                        new WindowsCalls.Volume(SPREAD, List.of(), List.of(4, 5)));
    }

    @Test
    void readsWritesAndFlushesOnOneHandle() throws IOException {
        medium[5] = 7;
        try (RawFile disk = kernel.open(CARD, true)) {
            ByteBuffer read = ByteBuffer.allocate(512);
            assertThat(disk.read(read, 0)).isEqualTo(512);
            assertThat(read.array()[5]).isEqualTo((byte) 7);
            ByteBuffer source = ByteBuffer.wrap("new".getBytes(StandardCharsets.US_ASCII));
            assertThat(disk.write(source, 1024)).isEqualTo(3);
            assertThat(source.hasRemaining()).isFalse();
            disk.sync();
            assertThat(disk.lock()).isTrue();
        }
        assertThat(medium[1024]).isEqualTo((byte) 'n');
        assertThat(events)
                .containsExactly(
                        "open " + CARD, "ReadFile 512 at 0", "WriteFile 3 at 1024", "flush " + CARD, "close " + CARD);
    }

    @Test
    void placesPastFourGibibytes() throws IOException {
        errors.put("ReadFile", 38);
        try (RawFile disk = kernel.open(CARD, false)) {
            assertThat(disk.read(ByteBuffer.allocate(512), 31914983424L))
                    .as("the end")
                    .isNegative();
        }
        assertThat(events).contains("ReadFile 512 at 31914983424");
    }

    @Test
    void whatFailsIsTold() throws IOException {
        try (RawFile disk = kernel.open(CARD, true)) {
            errors.put("flush", 1);
            assertThatThrownBy(disk::sync).hasMessageContaining("error 1 of the system");
            errors.put("ReadFile", 23);
            assertThatThrownBy(() -> disk.read(ByteBuffer.allocate(512), 0)).hasMessageContaining("error 23");
            errors.put("WriteFile", WRITE_PROTECT);
            assertThatThrownBy(() -> disk.write(ByteBuffer.allocate(512), 0)).hasMessageContaining("write-protected");
        }
        RawFile disk = kernel.open(CARD, true);
        errors.put("close", 6);
        assertThatThrownBy(disk::close).hasMessageContaining("error 6");
    }

    @Test
    void whyItCannotBeOpened() {
        errors.put("open " + CARD + " c0000000", ACCESS_DENIED);
        assertThatThrownBy(() -> kernel.open(CARD, true))
                .isInstanceOfSatisfying(ReportedIOException.class, reported -> {
                    CardException e = reported.report();
                    assertThat(e).hasMessageContaining("no right to write to it");
                    assertThat(e.remedy()).contains("administrator", "E:");
                });
        errors.put("open " + CARD + " 80000000", NO_SUCH_FILE);
        assertThatThrownBy(() -> kernel.open(CARD, false)).hasMessageContaining("error 2");
    }

    @Test
    void aVolumeIsLockedAndDismountedUntilItIsClosed() throws IOException {
        answer(BOOT, LOCK, little(0));
        answer(BOOT, DISMOUNT, little(0));
        kernel.lock(BOOT).close();
        assertThat(events).containsExactly("open " + BOOT, BOOT + " 90018", BOOT + " 90020", "close " + BOOT);

        answers.remove(BOOT + " 90018");
        events.clear();
        assertThatThrownBy(() -> kernel.lock(BOOT)).hasMessageContaining("in use by a program");
        assertThat(events).as("let go of").last().isEqualTo("close " + BOOT);
    }

    private void answer(String device, int code, ByteBuffer bytes) {
        answers.put(device + " " + Integer.toHexString(code), bytes(bytes));
    }

    private static ByteBuffer little(int size) {
        return ByteBuffer.allocate(size).order(ByteOrder.LITTLE_ENDIAN);
    }

    private static byte[] descriptor(String serial) {
        byte[] text = serial.getBytes(StandardCharsets.US_ASCII);
        ByteBuffer bytes = little(36 + text.length + 1).putInt(24, 36).putInt(28, 7);
        bytes.put(10, (byte) 1);
        bytes.position(36);
        return bytes(bytes.put(text));
    }

    private static byte[] bytes(ByteBuffer buffer) {
        byte[] bytes = new byte[buffer.capacity()];
        buffer.get(0, bytes);
        return bytes;
    }
}
