package bootmend.tuning;

/**
 * A stock value that came later than the table of stock values.
 *
 * @param key the key
 * @param boards the boards it is for
 * @param stock the value
 */
record StockChange(String key, BoardSet boards, Stock.Changed stock) {

    static StockChange read(DataRow row, Vocabulary vocabulary, Sources sources) {
        if (vocabulary.find(row.required("key")).isEmpty()) {
            throw row.error(row.text("key") + " is no key");
        }
        return new StockChange(
                row.text("key"),
                BoardSet.parse(row.words("boards"), row),
                new Stock.Changed(row.optionalNumber("number"), row.required("when"), sources.citation(row, "source")));
    }
}
