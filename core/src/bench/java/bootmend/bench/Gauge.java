package bootmend.bench;

import com.sun.management.GarbageCollectionNotificationInfo;
import com.sun.management.ThreadMXBean;
import java.lang.management.GarbageCollectorMXBean;
import java.lang.management.ManagementFactory;
import java.lang.management.MemoryUsage;
import java.util.ArrayList;
import java.util.List;
import java.util.concurrent.atomic.AtomicLong;
import javax.management.Notification;
import javax.management.NotificationEmitter;
import javax.management.openmbean.CompositeData;

/**
 * Takes the time and memory of an operation on this thread.
 *
 * <p>What is held is the most that the heap had after any collection while the operation ran, less what it had before:
 * an upper bound, for a young collection leaves garbage among the old. Where nothing was collected, it is what was
 * allocated.
 */
final class Gauge {

    private static final long ENOUGH_NANOS = 1_000_000_000L;
    private static final int MOST_RUNS = 200;
    /** Notifications of collections come late, on a thread of their own. */
    private static final long NOTIFIED_MILLIS = 100;

    private final ThreadMXBean threads = (ThreadMXBean) ManagementFactory.getThreadMXBean();
    private final AtomicLong afterCollection = new AtomicLong();

    /** An operation that may fail. */
    @FunctionalInterface
    interface Operation {
        Object run() throws Exception;
    }

    /** @param nanos the median of {@code runs} runs; the rest is the last run's, in bytes */
    record Reading(int runs, long nanos, long allocated, long held) {
    }

    Gauge() {
        for (GarbageCollectorMXBean collector : ManagementFactory.getGarbageCollectorMXBeans()) {
            ((NotificationEmitter) collector).addNotificationListener(this::collected, null, null);
        }
    }

    private void collected(Notification notification, Object handback) {
        if (notification.getType().equals(GarbageCollectionNotificationInfo.GARBAGE_COLLECTION_NOTIFICATION)) {
            long used = GarbageCollectionNotificationInfo.from((CompositeData) notification.getUserData()).getGcInfo()
                    .getMemoryUsageAfterGc().entrySet().stream().filter(pool -> isHeap(pool.getKey()))
                    .map(java.util.Map.Entry::getValue).mapToLong(MemoryUsage::getUsed).sum();
            afterCollection.accumulateAndGet(used, Math::max);
        }
    }

    private static boolean isHeap(String pool) {
        return pool.contains("Eden") || pool.contains("Survivor") || pool.contains("Tenured") || pool.contains("Old");
    }

    /** Runs it for about a second, and at least once after a first run that does not count where that was short. */
    Reading of(Operation operation) throws Exception {
        long began = System.nanoTime();
        operation.run();
        long first = System.nanoTime() - began;
        int runs = (int) Math.max(1, Math.min(MOST_RUNS, ENOUGH_NANOS / Math.max(1, first)));
        List<Long> times = new ArrayList<>();
        for (int i = 0; i < runs; i++) {
            long start = System.nanoTime();
            operation.run();
            times.add(System.nanoTime() - start);
        }
        times.sort(null);
        return memory(operation, runs, times.get(times.size() / 2));
    }

    private Reading memory(Operation operation, int runs, long nanos) throws Exception {
        System.gc();
        Thread.sleep(NOTIFIED_MILLIS);
        Runtime runtime = Runtime.getRuntime();
        long before = runtime.totalMemory() - runtime.freeMemory();
        afterCollection.set(0);
        long thread = Thread.currentThread().getId();
        long allocatedBefore = threads.getThreadAllocatedBytes(thread);
        Object kept = operation.run();
        long allocated = threads.getThreadAllocatedBytes(thread) - allocatedBefore;
        Thread.sleep(NOTIFIED_MILLIS);
        long held = afterCollection.get() == 0 ? allocated : Math.max(0, afterCollection.get() - before);
        java.lang.ref.Reference.reachabilityFence(kept);
        return new Reading(runs, nanos, allocated, Math.min(allocated, held));
    }
}
