package bootmend.device;

/** One access that a {@link RecordingDevice} saw. */
public sealed interface DeviceEvent {

    /** A read of {@code length} bytes at byte {@code offset}. */
    record Read(long offset, int length) implements DeviceEvent {}

    /** A write of {@code bytes} at byte {@code offset}. */
    record Write(long offset, byte[] bytes) implements DeviceEvent {}

    /** Everything written before was forced to the medium. */
    record Force() implements DeviceEvent {}
}
