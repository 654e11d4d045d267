import java.io.File;
import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.lang.classfile.Attributes;
import java.lang.classfile.ClassFile;
import java.lang.classfile.ClassFileVersion;
import java.lang.classfile.ClassHierarchyResolver;
import java.lang.classfile.ClassModel;
import java.lang.classfile.ClassTransform;
import java.lang.constant.ClassDesc;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.jar.JarEntry;
import java.util.jar.JarFile;
import java.util.zip.ZipFile;

/**
 * Unpacks a jar so that every class in it can go into Java's ahead-of-time cache: {@code java ArchivableClasses.java JAR
 * FOLDER}, with JDK 24 or newer. Of classes that the jar has for several versions of Java, the running one's is taken.
 *
 * <p>The cache takes no class whose file is older than Java 6, and picocli's are of Java 5. Such classes are written again
 * as files of Java 8, with the stack maps that those must have; their code stays as it is. Records are made plain.
 */
final class ArchivableClasses {

    private static final int JAVA_6 = 50;
    private static final int JAVA_8 = 52;
    private static final String CLASS = ".class";
    private static final ClassTransform NEWER = (builder, element) -> {
        if (element instanceof ClassFileVersion) {
            builder.withVersion(JAVA_8, 0);
        } else {
            builder.with(element);
        }
    };
    /** Passes code on piece by piece, because code that is passed on whole gets no stack maps. */
    private static final ClassTransform CODE_AGAIN =
            ClassTransform.transformingMethodBodies((builder, element) -> builder.with(element));

    private final JarFile jar;
    private final ClassFile classes;

    private ArchivableClasses(JarFile jar) {
        this.jar = jar;
        this.classes = ClassFile.of(
                ClassFile.StackMapsOption.GENERATE_STACK_MAPS,
                ClassFile.ClassHierarchyResolverOption.of(ClassHierarchyResolver.ofResourceParsing(this::classOf)
                        .orElse(ClassHierarchyResolver.defaultResolver())));
    }

    public static void main(String[] arguments) throws IOException {
        Path folder = Path.of(arguments[1]);
        try (JarFile jar = new JarFile(new File(arguments[0]), true, ZipFile.OPEN_READ, Runtime.version())) {
            List<JarEntry> entries =
                    jar.versionedStream().filter(entry -> !entry.isDirectory()).toList();
            ArchivableClasses archivable = new ArchivableClasses(jar);
            for (JarEntry entry : entries) {
                Path file = folder.resolve(entry.getName());
                Files.createDirectories(file.getParent());
                Files.write(file, archivable.content(entry));
            }
        }
    }

    private byte[] content(JarEntry entry) throws IOException {
        byte[] bytes;
        try (InputStream in = jar.getInputStream(entry)) {
            bytes = in.readAllBytes();
        }
        if (!entry.getName().endsWith(CLASS)) {
            return bytes;
        }
        ClassModel model = classes.parse(bytes);
        if (model.findAttribute(Attributes.record()).isPresent()) {
            return classes.transformClass(model, PlainRecord.of(model));
        }
        return model.majorVersion() >= JAVA_6 ? bytes : classes.transformClass(model, NEWER.andThen(CODE_AGAIN));
    }

    /** The class's file, or null where it is not in the jar. */
    private InputStream classOf(ClassDesc type) {
        String descriptor = type.descriptorString();
        JarEntry entry = jar.getJarEntry(descriptor.substring(1, descriptor.length() - 1) + CLASS);
        try {
            return entry == null ? null : jar.getInputStream(entry);
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }
}
