package fuelwright.ui.theme;

import java.io.File;
import java.nio.file.Path;
import java.util.List;
import java.util.function.Consumer;
import javafx.scene.Node;
import javafx.stage.DirectoryChooser;
import javafx.stage.FileChooser;

/** The dialogue that asks for files. */
public final class AskFiles {

    /** Asks for a folder. */
    @FunctionalInterface
    public interface FolderQuestion {
        void ask(Node owner, String title, Consumer<Path> chosen);
    }

    private AskFiles() {}

    /** Asks for files to read; nothing happens where none is chosen. */
    public static void choose(Node owner, Consumer<List<Path>> chosen) {
        FileChooser chooser = new FileChooser();
        chooser.setTitle(Words.of("open.title"));
        chooser.getExtensionFilters()
                .addAll(
                        new FileChooser.ExtensionFilter(Words.of("open.csv"), "*.csv", "*.txt", "*.tsv", "*.fwjob"),
                        new FileChooser.ExtensionFilter(Words.of("open.all"), "*.*"));
        List<File> files = chooser.showOpenMultipleDialog(owner.getScene().getWindow());
        if (files != null && !files.isEmpty()) {
            chosen.accept(files.stream().map(File::toPath).toList());
        }
    }

    /** Asks for a folder to write into; nothing happens where none is chosen. */
    public static void folder(Node owner, String title, Consumer<Path> chosen) {
        DirectoryChooser chooser = new DirectoryChooser();
        chooser.setTitle(title);
        File folder = chooser.showDialog(owner.getScene().getWindow());
        if (folder != null) {
            chosen.accept(folder.toPath());
        }
    }

    /** Asks for a file to save as; nothing happens where none is chosen. */
    public static void save(Node owner, String title, String name, Consumer<Path> chosen) {
        FileChooser chooser = new FileChooser();
        chooser.setTitle(title);
        chooser.setInitialFileName(name);
        chooser.getExtensionFilters().add(new FileChooser.ExtensionFilter(Words.of("open.jobs"), "*.fwjob"));
        File file = chooser.showSaveDialog(owner.getScene().getWindow());
        if (file != null) {
            chosen.accept(file.toPath());
        }
    }

    /** Asks for one file to read; nothing happens where none is chosen. */
    public static void one(Node owner, String title, Consumer<Path> chosen) {
        FileChooser chooser = new FileChooser();
        chooser.setTitle(title);
        File file = chooser.showOpenDialog(owner.getScene().getWindow());
        if (file != null) {
            chosen.accept(file.toPath());
        }
    }

    /** Asks for a PDF file to write; nothing happens where none is chosen. */
    public static void pdf(Node owner, String title, String name, Consumer<Path> chosen) {
        FileChooser chooser = new FileChooser();
        chooser.setTitle(title);
        chooser.setInitialFileName(name);
        chooser.getExtensionFilters().add(new FileChooser.ExtensionFilter("PDF", "*.pdf"));
        File file = chooser.showSaveDialog(owner.getScene().getWindow());
        if (file != null) {
            chosen.accept(file.toPath());
        }
    }

    /** Asks for a picture file to write; nothing happens where none is chosen. */
    public static void picture(Node owner, String name, Consumer<Path> chosen) {
        FileChooser chooser = new FileChooser();
        chooser.setTitle(Words.of("action.picture.save"));
        chooser.setInitialFileName(name + ".svg");
        chooser.getExtensionFilters()
                .addAll(
                        new FileChooser.ExtensionFilter("SVG", "*.svg"),
                        new FileChooser.ExtensionFilter("PNG", "*.png"));
        File file = chooser.showSaveDialog(owner.getScene().getWindow());
        if (file != null) {
            chosen.accept(file.toPath());
        }
    }
}
