package bootmend.device.system;

import com.sun.jna.LastErrorException;
import com.sun.jna.NativeLong;
import com.sun.jna.Pointer;
import com.sun.jna.ptr.IntByReference;
import com.sun.jna.ptr.LongByReference;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;

/** A C library that answers as it is told and keeps what it was asked. */
final class RecordedLibrary implements PosixDisk.CLibrary {

    private final List<String> asked = new ArrayList<>();
    private final Map<String, Integer> errors = new HashMap<>();
    private final Map<String, Integer> once = new HashMap<>();

    /** @param call such as {@code fsync} or {@code ioctl 20006416} */
    RecordedLibrary fails(String call, int error) {
        errors.put(call, error);
        return this;
    }

    RecordedLibrary failsOnce(String call, int error) {
        once.put(call, error);
        return this;
    }

    List<String> asked() {
        return asked;
    }

    private int answer(String call, int result) {
        asked.add(call);
        Integer first = once.remove(call);
        if (first != null) {
            throw new LastErrorException(first);
        }
        if (errors.containsKey(call)) {
            throw new LastErrorException(errors.get(call));
        }
        return result;
    }

    @Override
    public int open(String path, int flags, Object... mode) {
        return answer("open " + path + " " + flags, 5);
    }

    @Override
    public int close(int descriptor) {
        return answer("close", 0);
    }

    @Override
    public NativeLong pread(int descriptor, Pointer into, NativeLong length, long offset) {
        return new NativeLong(answer("pread " + length + " " + offset, length.intValue()));
    }

    @Override
    public NativeLong pwrite(int descriptor, Pointer from, NativeLong length, long offset) {
        return new NativeLong(answer("pwrite " + length + " " + offset, length.intValue()));
    }

    @Override
    public int fsync(int descriptor) {
        return answer("fsync", 0);
    }

    @Override
    public int flock(int descriptor, int operation) {
        return answer("flock", 0);
    }

    @Override
    public int ioctl(int descriptor, NativeLong request, Object... argument) {
        int result = answer("ioctl " + Long.toHexString(request.longValue()), 0);
        if (argument.length == 1 && argument[0] instanceof IntByReference size) {
            size.setValue(512);
        }
        if (argument.length == 1 && argument[0] instanceof LongByReference count) {
            count.setValue(62333952);
        }
        return result;
    }
}
