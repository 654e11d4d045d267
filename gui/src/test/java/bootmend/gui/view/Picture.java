package bootmend.gui.view;

import java.awt.image.BufferedImage;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import javafx.scene.image.PixelFormat;
import javafx.scene.image.WritableImage;
import javax.imageio.ImageIO;

/** Writes what a scene shows to a PNG file. */
final class Picture {

    private Picture() {}

    static void write(WritableImage image, Path file) throws IOException {
        int width = (int) image.getWidth();
        int height = (int) image.getHeight();
        int[] pixels = new int[width * height];
        image.getPixelReader().getPixels(0, 0, width, height, PixelFormat.getIntArgbInstance(), pixels, 0, width);
        BufferedImage picture = new BufferedImage(width, height, BufferedImage.TYPE_INT_ARGB);
        picture.setRGB(0, 0, width, height, pixels, 0, width);
        Files.createDirectories(file.toAbsolutePath().getParent());
        ImageIO.write(picture, "png", file.toFile());
    }
}
