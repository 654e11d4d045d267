package bootmend.device.system;

import com.sun.jna.Pointer;
import com.sun.jna.platform.win32.WinBase;
import com.sun.jna.platform.win32.WinNT;
import com.sun.jna.ptr.IntByReference;
import com.sun.jna.win32.StdCallLibrary;

/** The functions of Windows's kernel32 that are called here, under the names and with the arguments of its own pages. */
interface WindowsLibrary extends StdCallLibrary {

    WinNT.HANDLE CreateFile(
            String name,
            int access,
            int share,
            WinBase.SECURITY_ATTRIBUTES security,
            int disposition,
            int flags,
            WinNT.HANDLE template);

    boolean CloseHandle(WinNT.HANDLE handle);

    boolean ReadFile(WinNT.HANDLE handle, byte[] into, int length, IntByReference read, WinBase.OVERLAPPED place);

    boolean WriteFile(WinNT.HANDLE handle, byte[] from, int length, IntByReference written, WinBase.OVERLAPPED place);

    boolean FlushFileBuffers(WinNT.HANDLE handle);

    boolean DeviceIoControl(
            WinNT.HANDLE handle,
            int code,
            Pointer question,
            int questionLength,
            Pointer answer,
            int answerLength,
            IntByReference filled,
            Pointer overlapped);

    WinNT.HANDLE FindFirstVolume(char[] name, int length);

    boolean FindNextVolume(WinNT.HANDLE search, char[] name, int length);

    boolean FindVolumeClose(WinNT.HANDLE search);

    boolean GetVolumePathNamesForVolumeName(String volume, char[] places, int length, IntByReference needed);

    int GetLastError();
}
