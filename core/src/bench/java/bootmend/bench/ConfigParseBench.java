package bootmend.bench;

import bootmend.config.ConfigDocument;
import org.openjdk.jmh.annotations.Benchmark;
import org.openjdk.jmh.annotations.BenchmarkMode;
import org.openjdk.jmh.annotations.Mode;
import org.openjdk.jmh.annotations.Param;
import org.openjdk.jmh.annotations.Scope;
import org.openjdk.jmh.annotations.Setup;
import org.openjdk.jmh.annotations.State;

/** Reading a config file's bytes into a document: the demo card's, and one of 1,000 lines. */
@State(Scope.Benchmark)
@BenchmarkMode(Mode.AverageTime)
public class ConfigParseBench {

    @Param({"demo", "1000"})
    public String config;

    private byte[] bytes;

    @Setup
    public void prepare() {
        bytes = config.equals("demo") ? ConfigText.demo() : ConfigText.ofLines(Integer.parseInt(config));
    }

    @Benchmark
    public ConfigDocument parse() {
        return ConfigDocument.parse(bytes);
    }
}
