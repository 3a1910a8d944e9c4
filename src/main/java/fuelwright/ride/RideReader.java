package fuelwright.ride;

import fuelwright.issue.Loaded;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.NoSuchFileException;
import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import java.util.function.BooleanSupplier;
import java.util.function.DoubleConsumer;

/**
 * Reads a log, in whatever dialect it was written, into a {@link Ride}. What was decided, skipped and doubted is in the ride's remarks
 * and, the same, in the issues of the result. A bad row never stops a load; a file that is no log, that has no engine speed or
 * neither time nor a sample rate is refused with an error that says where, what and what to do.
 *
 * <p>Thread safety: no state; any number of reads at once.
 */
public final class RideReader {

    /** How the rows are read: fast, or by the reference that the fast way has to equal. */
    interface RowSource {
        RawTable read(Encoded encoded, Layout layout, DoubleConsumer progress, BooleanSupplier cancelled)
                throws IOException;
    }

    private RideReader() {}

    /**
     * Reads {@code file}.
     *
     * @param progress is given 0 to 1, from any thread
     * @param cancelled asked now and then; once true, the read stops and is refused as cancelled
     */
    public static Loaded<Ride> read(
            Path file, RideOptions options, DoubleConsumer progress, BooleanSupplier cancelled) {
        return read(file, options, true, progress, cancelled);
    }

    /** Reads the log of a second logger: it need not have the engine speed. Otherwise as {@link #read}. */
    public static Loaded<Ride> readSecond(
            Path file, RideOptions options, DoubleConsumer progress, BooleanSupplier cancelled) {
        return read(file, options, false, progress, cancelled);
    }

    private static Loaded<Ride> read(
            Path file, RideOptions options, boolean whole, DoubleConsumer progress, BooleanSupplier cancelled) {
        Path leaf = file.getFileName();
        String name = leaf == null ? file.toString() : leaf.toString();
        if (Files.isDirectory(file)) {
            return Loaded.refused(Say.error(name, 0, 0, "this is a folder", "choose a log file in it"));
        }
        try (ByteSource source = ByteSource.of(file)) {
            return read(name, source, options, whole, progress, cancelled, FastRows::read);
        } catch (NoSuchFileException e) {
            return Loaded.refused(Say.error(name, 0, 0, "there is no such file", "check the name and the folder"));
        } catch (IOException e) {
            return unreadable(name, e);
        }
    }

    /** Reads a log from memory; {@code content} must not change meanwhile. */
    public static Loaded<Ride> read(String name, byte[] content, RideOptions options) {
        return read(name, content, options, FastRows::read);
    }

    static Loaded<Ride> read(String name, byte[] content, RideOptions options, RowSource rows) {
        try {
            return read(name, ByteSource.of(content), options, true, p -> {}, () -> false, rows);
        } catch (IOException e) {
            return unreadable(name, e);
        }
    }

    private static Loaded<Ride> unreadable(String name, IOException e) {
        return Loaded.refused(Say.error(
                name, 0, 0, "the file can't be read (" + e.getMessage() + ")", "check the disk and the file's rights"));
    }

    private static Loaded<Ride> read(
            String name,
            ByteSource source,
            RideOptions options,
            boolean whole,
            DoubleConsumer progress,
            BooleanSupplier cancelled,
            RowSource rows)
            throws IOException {
        Loaded<Encoded> encoded = Encoded.of(name, source, options);
        if (encoded.value().isEmpty()) {
            return Loaded.refused(encoded.issues());
        }
        Loaded<Layout> layout = layout(name, encoded.value().get(), options);
        if (layout.value().isEmpty()) {
            return Loaded.refused(layout.issues());
        }
        RawTable raw = rows.read(encoded.value().get(), layout.value().get(), progress, cancelled);
        if (cancelled.getAsBoolean()) {
            return Loaded.refused(Say.error(name, 0, 0, "reading was cancelled", "read it again when you like"));
        }
        return new RideAssembly(name, encoded.value().get(), layout.value().get(), raw, options).ride(whole);
    }

    /**
     * The headings of a log as they are read with these options; empty where none are found. Only the file's beginning is looked at.
     *
     * @throws IOException if the file can't be read
     */
    public static List<String> headings(Path file, RideOptions options) throws IOException {
        try (ByteSource source = ByteSource.of(file)) {
            Optional<Encoded> encoded =
                    Encoded.of(file.toString(), source, options).value();
            if (encoded.isEmpty()) {
                return List.of();
            }
            return layout(file.toString(), encoded.get(), options)
                    .value()
                    .map(l -> l.headings().stream().map(Heading::text).toList())
                    .orElse(List.of());
        }
    }

    static Loaded<Layout> layout(String name, Encoded encoded, RideOptions options) throws IOException {
        Sample sample = Sample.of(encoded);
        return DialectGuess.of(sample, encoded.charset(), options)
                .map(dialect -> HeaderRow.find(name, sample, dialect))
                .orElseGet(() -> Loaded.refused(Say.error(
                        name,
                        1,
                        1,
                        "no table of figures was found between commas, semicolons, tabs or vertical bars",
                        "choose the log as the logger exported it: one heading row, one row a sample")));
    }
}
