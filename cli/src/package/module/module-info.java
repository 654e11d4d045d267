/**
 * The whole of bootmend with its libraries, as it is packed with its own Java. image.sh compiles this, and stops where
 * `jdeps` finds a module that is not named here.
 */
module bootmend {

    // Charts as PNG.
    requires java.desktop;

    // Types that the JSON and command line libraries know how to turn into text.
    requires java.sql;

    // sun.misc.Unsafe, by which packed images in zstd are read.
    requires jdk.unsupported;

    // Keeps the device list's library from writing its log to the screen.
    uses org.slf4j.spi.SLF4JServiceProvider;

    provides org.slf4j.spi.SLF4JServiceProvider with
            org.slf4j.nop.NOPServiceProvider;
}
