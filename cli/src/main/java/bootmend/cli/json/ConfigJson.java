package bootmend.cli.json;

import bootmend.view.ConfigView;

/** A config file as JSON; its field names are part of the interface. */
record ConfigJson(String path, int bytes, String sha256) {

    static ConfigJson of(ConfigView view) {
        return new ConfigJson(view.path(), view.bytes(), view.sha256());
    }
}
