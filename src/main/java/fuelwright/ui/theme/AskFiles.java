package fuelwright.ui.theme;

import java.io.File;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
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

    /** Endings of jobs, tables and logs. */
    private static final List<String> KNOWN =
            List.of("*.fwjob", "*.csv", "*.CSV", "*.txt", "*.TXT", "*.tsv", "*.TSV", "*.log", "*.LOG");

    /** Where dialogues start: where a file was chosen or opened last; null until one was. */
    private static Path start;

    private static Consumer<Path> told = folder -> {};

    private AskFiles() {}

    /** Dialogues start beside this file, or in this folder, from now on. */
    public static void startIn(Path file) {
        Path whole = file.toAbsolutePath();
        Path folder = Files.isDirectory(whole) ? whole : whole.getParent();
        if (folder != null && Files.isDirectory(folder) && !folder.equals(start)) {
            start = folder;
            told.accept(folder);
        }
    }

    /** Where dialogues start; empty where the system decides. */
    public static Optional<Path> start() {
        return Optional.ofNullable(start).filter(Files::isDirectory);
    }

    /** @param keep told where dialogues start from now on */
    public static void onStart(Consumer<Path> keep) {
        told = keep;
    }

    private static FileChooser chooser(String title) {
        FileChooser chooser = new FileChooser();
        chooser.setTitle(title);
        start().ifPresent(folder -> chooser.setInitialDirectory(folder.toFile()));
        return chooser;
    }

    private static void chose(File file, Consumer<Path> chosen) {
        if (file != null) {
            startIn(file.toPath());
            chosen.accept(file.toPath());
        }
    }

    /** Asks for files to read; nothing happens where none is chosen. */
    public static void choose(Node owner, Consumer<List<Path>> chosen) {
        FileChooser chooser = chooser(Words.of("open.title"));
        chooser.getExtensionFilters()
                .addAll(
                        new FileChooser.ExtensionFilter(Words.of("open.known"), KNOWN),
                        new FileChooser.ExtensionFilter(Words.of("open.all"), "*.*"));
        List<File> files = chooser.showOpenMultipleDialog(owner.getScene().getWindow());
        if (files != null && !files.isEmpty()) {
            startIn(files.get(0).toPath());
            chosen.accept(files.stream().map(File::toPath).toList());
        }
    }

    /** Asks for a folder to write into; nothing happens where none is chosen. */
    public static void folder(Node owner, String title, Consumer<Path> chosen) {
        DirectoryChooser chooser = new DirectoryChooser();
        chooser.setTitle(title);
        start().ifPresent(folder -> chooser.setInitialDirectory(folder.toFile()));
        chose(chooser.showDialog(owner.getScene().getWindow()), chosen);
    }

    /** Asks for a file to save as; nothing happens where none is chosen. */
    public static void save(Node owner, String title, String name, Consumer<Path> chosen) {
        FileChooser chooser = chooser(title);
        chooser.setInitialFileName(name);
        chooser.getExtensionFilters().add(new FileChooser.ExtensionFilter(Words.of("open.jobs"), "*.fwjob"));
        File file = chooser.showSaveDialog(owner.getScene().getWindow());
        chose(file, chosen);
    }

    /** Asks for one file to read; nothing happens where none is chosen. */
    public static void one(Node owner, String title, Consumer<Path> chosen) {
        FileChooser chooser = chooser(title);
        File file = chooser.showOpenDialog(owner.getScene().getWindow());
        chose(file, chosen);
    }

    /** Asks for a PDF file to write; nothing happens where none is chosen. */
    public static void pdf(Node owner, String title, String name, Consumer<Path> chosen) {
        FileChooser chooser = chooser(title);
        chooser.setInitialFileName(name);
        chooser.getExtensionFilters().add(new FileChooser.ExtensionFilter("PDF", "*.pdf"));
        File file = chooser.showSaveDialog(owner.getScene().getWindow());
        chose(file, chosen);
    }

    /** Asks for a picture file to write; nothing happens where none is chosen. */
    public static void picture(Node owner, String name, Consumer<Path> chosen) {
        FileChooser chooser = chooser(Words.of("action.picture.save"));
        chooser.setInitialFileName(name + ".svg");
        chooser.getExtensionFilters()
                .addAll(
                        new FileChooser.ExtensionFilter("SVG", "*.svg"),
                        new FileChooser.ExtensionFilter("PNG", "*.png"));
        File file = chooser.showSaveDialog(owner.getScene().getWindow());
        chose(file, chosen);
    }
}
