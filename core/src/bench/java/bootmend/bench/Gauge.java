package bootmend.bench;

import com.sun.management.GarbageCollectionNotificationInfo;
import com.sun.management.ThreadMXBean;
import java.lang.management.GarbageCollectorMXBean;
import java.lang.management.ManagementFactory;
import java.lang.management.MemoryUsage;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.concurrent.atomic.AtomicLong;
import java.util.function.LongSupplier;
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
        void run() throws Exception;
    }

    /**
     * @param nanos the median of {@code runs} runs
     * @param allocated bytes, of the last run, as what follows
     * @param count what was counted
     */
    record Reading(int runs, long nanos, long allocated, long held, long count) {}

    Gauge() {
        for (GarbageCollectorMXBean collector : ManagementFactory.getGarbageCollectorMXBeans()) {
            ((NotificationEmitter) collector).addNotificationListener(this::collected, null, null);
        }
    }

    private void collected(Notification notification, Object handback) {
        if (notification.getType().equals(GarbageCollectionNotificationInfo.GARBAGE_COLLECTION_NOTIFICATION)) {
            long used = GarbageCollectionNotificationInfo.from((CompositeData) notification.getUserData())
                    .getGcInfo()
                    .getMemoryUsageAfterGc()
                    .entrySet()
                    .stream()
                    .filter(pool -> isHeap(pool.getKey()))
                    .map(Map.Entry::getValue)
                    .mapToLong(MemoryUsage::getUsed)
                    .sum();
            afterCollection.accumulateAndGet(used, Math::max);
        }
    }

    private static boolean isHeap(String pool) {
        return pool.contains("Eden") || pool.contains("Survivor") || pool.contains("Tenured") || pool.contains("Old");
    }

    /**
     * Runs it for about a second after a first run that does not count; what takes longer is run twice.
     *
     * @param counter counts something else that the operation does
     */
    Reading of(Operation operation, LongSupplier counter) throws Exception {
        long first = time(operation);
        int runs = (int) Math.max(1, Math.min(MOST_RUNS, ENOUGH_NANOS / Math.max(1, first)));
        List<Long> times = new ArrayList<>();
        while (times.size() < runs - 1) {
            times.add(time(operation));
        }
        System.gc();
        Thread.sleep(NOTIFIED_MILLIS);
        Runtime runtime = Runtime.getRuntime();
        long before = runtime.totalMemory() - runtime.freeMemory();
        afterCollection.set(0);
        long countBefore = counter.getAsLong();
        long allocatedBefore =
                threads.getThreadAllocatedBytes(Thread.currentThread().getId());
        times.add(time(operation));
        long allocated = threads.getThreadAllocatedBytes(Thread.currentThread().getId()) - allocatedBefore;
        long count = counter.getAsLong() - countBefore;
        Thread.sleep(NOTIFIED_MILLIS);
        long held = afterCollection.get() == 0 ? allocated : Math.max(0, afterCollection.get() - before);
        times.sort(null);
        return new Reading(runs, times.get(times.size() / 2), allocated, Math.min(allocated, held), count);
    }

    private static long time(Operation operation) throws Exception {
        long start = System.nanoTime();
        operation.run();
        return System.nanoTime() - start;
    }
}
