package fuelwright.ui.rides;

import fuelwright.ride.LogForm;
import fuelwright.ride.Ride;
import fuelwright.ride.RideOptions;
import fuelwright.ui.theme.Figures;
import fuelwright.ui.theme.Parts;
import fuelwright.ui.theme.Words;
import java.nio.charset.Charset;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.List;
import java.util.function.Consumer;
import java.util.function.Function;
import java.util.stream.Collectors;
import javafx.scene.control.ComboBox;
import javafx.scene.control.Label;
import javafx.scene.control.TextField;
import javafx.scene.layout.GridPane;
import javafx.scene.layout.Priority;
import javafx.scene.layout.Region;
import javafx.scene.layout.VBox;
import javafx.util.StringConverter;

/** How the file of a ride was taken to be written, to be overruled; and the lines that are no rows. */
final class FilePane {

    private static final List<Character> DELIMITERS = List.of(',', ';', '\t', '|');
    private static final List<Charset> CHARSETS = List.of(
            StandardCharsets.UTF_8,
            Charset.forName("windows-1252"),
            StandardCharsets.UTF_16LE,
            StandardCharsets.UTF_16BE);
    private static final int LINES_SHOWN = 40;
    private static final double MOST_HZ = 2000;

    private FilePane() {}

    static VBox of(RidesModel model, Ride ride, LogForm form) {
        GridPane grid = new GridPane();
        grid.setHgap(8);
        grid.setVgap(4);
        RideOptions said = model.options();
        row(
                grid,
                "rides.file.delimiter",
                said.delimiter().isPresent(),
                choice(
                        "rides.file.delimiter",
                        DELIMITERS,
                        form.delimiter(),
                        LogForm::delimiterWords,
                        sign -> model.read(options -> options.withDelimiter(sign))));
        row(
                grid,
                "rides.file.decimal",
                said.decimalSign().isPresent(),
                choice(
                        "rides.file.decimal",
                        List.of('.', ','),
                        form.decimalSign(),
                        sign -> Words.of(sign == ',' ? "rides.file.comma" : "rides.file.point"),
                        sign -> model.read(options -> options.withDecimalSign(sign))));
        List<Charset> charsets = new ArrayList<>(CHARSETS);
        Charset now = said.charset().orElseGet(() -> charsetOf(form));
        if (!charsets.contains(now)) {
            charsets.add(now);
        }
        row(
                grid,
                "rides.file.encoding",
                said.charset().isPresent(),
                choice(
                        "rides.file.encoding",
                        charsets,
                        now,
                        LogForm::charsetWords,
                        charset -> model.read(options -> options.withCharset(charset))));
        if (form.timeHeading().isEmpty()) {
            row(grid, "rides.file.rate", true, rate(model, said));
        } else {
            row(
                    grid,
                    "rides.file.time",
                    false,
                    choice(
                            "rides.file.time",
                            form.headings(),
                            form.timeHeading(),
                            heading -> heading,
                            heading -> model.time(form.timeHeading(), heading)));
        }
        VBox box = new VBox(8, Parts.label(Words.of("rides.file"), "section"), grid);
        boolean anything = !said.equals(RideOptions.defaults());
        if (anything) {
            box.getChildren()
                    .addAll(
                            Parts.text(
                                    Words.of(
                                            model.session().reading().remembered(ride)
                                                    ? "rides.file.remembered"
                                                    : "rides.file.said"),
                                    "muted",
                                    "small"),
                            Parts.button("rides.file.forget", model::forget, "compact"));
        }
        return box;
    }

    private static Charset charsetOf(LogForm form) {
        String words = form.charsetWords();
        return CHARSETS.stream()
                .filter(c -> words.startsWith(LogForm.charsetWords(c)))
                .findFirst()
                .orElse(form.charset());
    }

    private static void row(GridPane grid, String key, boolean said, Region control) {
        int row = grid.getRowCount();
        Label name = Parts.label(Words.of(key), "field-name", "small");
        name.setMinWidth(Region.USE_PREF_SIZE);
        name.setLabelFor(control);
        grid.add(name, 0, row);
        grid.add(control, 1, row);
        Label how = Parts.label(Words.of(said ? "rides.file.byhand" : "rides.file.found"), "muted", "small");
        how.setMinWidth(Region.USE_PREF_SIZE);
        grid.add(how, 2, row);
        GridPane.setHgrow(control, Priority.ALWAYS);
    }

    private static <T> ComboBox<T> choice(
            String key, List<T> all, T now, Function<T, String> words, Consumer<T> chosen) {
        ComboBox<T> box = new ComboBox<>();
        box.getItems().setAll(all);
        box.setValue(now);
        box.setConverter(new StringConverter<>() {
            @Override
            public String toString(T value) {
                return value == null ? "" : Parts.capital(words.apply(value));
            }

            @Override
            public T fromString(String text) {
                throw new UnsupportedOperationException("not typed");
            }
        });
        box.setMaxWidth(Double.MAX_VALUE);
        box.setMinWidth(0);
        box.getStyleClass().addAll("compact", "file-choice");
        box.setId(key.replace('.', '-'));
        box.setAccessibleText(Words.of(key));
        box.setOnAction(e -> {
            if (box.getValue() != null && !box.getValue().equals(now)) {
                chosen.accept(box.getValue());
            }
        });
        return box;
    }

    private static TextField rate(RidesModel model, RideOptions said) {
        TextField field = new TextField(Figures.shortest(said.sampleRateHz().orElse(10)));
        field.setAccessibleText(Words.of("rides.file.rate"));
        field.setOnAction(e -> {
            try {
                double hz = Double.parseDouble(field.getText().strip().replace(',', '.'));
                if (hz > 0 && hz <= MOST_HZ) {
                    field.getStyleClass().remove("bad-field");
                    model.read(options -> options.withSampleRate(hz));
                    return;
                }
            } catch (NumberFormatException wrong) {
                // said by the frame below
            }
            if (!field.getStyleClass().contains("bad-field")) {
                field.getStyleClass().add("bad-field");
            }
        });
        return field;
    }

    /** The lines that are no rows, bad ones first, with their numbers. */
    static VBox leftOut(LogForm form) {
        VBox box = new VBox(4, Parts.label(Words.of("rides.leftout"), "section"));
        form.leftOut().stream()
                .sorted(java.util.Comparator.comparing(l -> !l.bad()))
                .forEach(left -> {
                    box.getChildren()
                            .add(Parts.fact(
                                    Parts.capital(left.what()),
                                    Figures.count(left.count()),
                                    left.bad() ? "strong" : "muted"));
                    box.getChildren().add(Parts.text(lines(left), "muted", "small"));
                });
        return box;
    }

    private static String lines(LogForm.LeftOut left) {
        List<Integer> first = left.firstLines();
        String numbers = first.stream().limit(LINES_SHOWN).map(String::valueOf).collect(Collectors.joining(", "));
        long more = left.count() - Math.min(LINES_SHOWN, first.size());
        return more > 0
                ? Words.of("rides.lines.more", numbers, Figures.count(more))
                : Words.of(left.count() == 1 ? "rides.line" : "rides.lines", numbers);
    }
}
