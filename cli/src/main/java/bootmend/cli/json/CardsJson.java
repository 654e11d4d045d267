package bootmend.cli.json;

import bootmend.cli.outcome.BatchTotals;
import com.fasterxml.jackson.core.JsonFactory;
import com.fasterxml.jackson.core.JsonGenerator;
import com.fasterxml.jackson.databind.ObjectMapper;
import java.io.Closeable;
import java.io.IOException;
import java.io.Writer;
import java.util.Map;

/** One JSON document with an array {@code cards} that is written card by card; the cards' worst exit code comes last. */
public final class CardsJson implements Closeable {

    private final JsonGenerator json;
    private final Writer out;

    /** @param head the fields before {@code cards} */
    public CardsJson(Writer out, Map<String, String> head) throws IOException {
        this.out = out;
        this.json = new JsonFactory(new ObjectMapper()).createGenerator(out).useDefaultPrettyPrinter();
        json.disable(JsonGenerator.Feature.AUTO_CLOSE_TARGET);
        json.writeStartObject();
        for (Map.Entry<String, String> field : head.entrySet()) {
            json.writeStringField(field.getKey(), field.getValue());
        }
        json.writeArrayFieldStart("cards");
    }

    public void add(Object card) throws IOException {
        json.writePOJO(card);
    }

    public void end(BatchTotals totals) throws IOException {
        json.writeEndArray();
        json.writeObjectField("totals", totals.counts().byState());
        json.writeNumberField("exitCode", totals.exitCode());
        json.writeEndObject();
        json.flush();
        out.write(System.lineSeparator());
        out.flush();
    }

    /** Leaves the writer below open. */
    @Override
    public void close() throws IOException {
        json.disable(JsonGenerator.Feature.AUTO_CLOSE_JSON_CONTENT);
        json.close();
    }
}
