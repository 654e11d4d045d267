package bootmend.cli.report;

import bootmend.cli.json.Json;
import bootmend.cli.outcome.BatchTotals;
import com.fasterxml.jackson.core.JsonGenerator;
import java.io.IOException;
import java.io.Writer;
import java.util.Map;
import java.util.function.Function;

/** One JSON document with an array {@code cards} that is written card by card; the cards' worst exit code comes last. */
public final class JsonReport<T> implements Report<T> {

    private final JsonGenerator json;
    private final Writer out;
    private final Function<T, Object> document;

    /**
     * @param head the fields before {@code cards}
     * @param document what stands for a card
     */
    public JsonReport(Writer out, Map<String, String> head, Function<T, Object> document) throws IOException {
        this.out = out;
        this.document = document;
        this.json = Json.mapper().createGenerator(out).useDefaultPrettyPrinter();
        json.writeStartObject();
        for (Map.Entry<String, String> field : head.entrySet()) {
            json.writeStringField(field.getKey(), field.getValue());
        }
        json.writeArrayFieldStart("cards");
    }

    @Override
    public void add(T card) throws IOException {
        json.writePOJO(document.apply(card));
    }

    @Override
    public void end(BatchTotals totals) throws IOException {
        json.writeEndArray();
        json.writeObjectField("totals", totals.counts().byState());
        json.writeNumberField("exitCode", totals.exitCode());
        json.writeEndObject();
        json.flush();
        out.write(System.lineSeparator());
        out.flush();
    }
}
