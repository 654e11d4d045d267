package bootmend.cli;

import java.lang.module.ModuleDescriptor;
import picocli.CommandLine.IVersionProvider;

/** The version that the jar's manifest names, or the module that bootmend is where it is packed with its own Java. */
final class Version implements IVersionProvider {

    @Override
    public String[] getVersion() {
        ModuleDescriptor module = Version.class.getModule().getDescriptor();
        String version = module == null
                ? Version.class.getPackage().getImplementationVersion()
                : module.rawVersion().orElse(null);
        return new String[] {"bootmend " + (version == null ? "(not packaged)" : version)};
    }
}
