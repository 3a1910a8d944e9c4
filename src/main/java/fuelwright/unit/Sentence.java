package fuelwright.unit;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.Collections;
import java.util.List;
import java.util.Locale;
import java.util.Objects;
import java.util.stream.Collectors;

/**
 * A sentence whose physical figures stay figures until somebody reads it: window, command line and report read the same sentence in units of
 * their own. Immutable. Sentences that read the same in canonical units are equal.
 *
 * <p>What is added to a text with {@code +} becomes text: build a longer sentence from parts with {@link #of}.
 */
public final class Sentence {

    public static final Sentence NONE = text("");

    private final String template;
    private final List<Object> parts;
    private final String canonical;

    private Sentence(String template, List<Object> parts) {
        this.template = template;
        this.parts = parts;
        this.canonical = in(Units.CANONICAL);
    }

    /**
     * @param template as of {@link String#format}; a {@link Measured} and a sentence take the place of {@code %s}
     * @param parts immutable each: figures, words, sentences
     */
    public static Sentence of(String template, Object... parts) {
        return new Sentence(template, Collections.unmodifiableList(new ArrayList<>(Arrays.asList(parts))));
    }

    /** A sentence without a physical figure. */
    public static Sentence text(String text) {
        return new Sentence("%s", List.of(Objects.requireNonNull(text, "text")));
    }

    public static Sentence joined(String between, List<Sentence> sentences) {
        return new Sentence(
                sentences.stream().map(s -> "%s").collect(Collectors.joining(between.replace("%", "%%"))),
                List.copyOf(sentences));
    }

    /** As it is read in some units. */
    public String in(Units units) {
        if (isText()) {
            return (String) parts.get(0);
        }
        Object[] read = parts.stream()
                .map(p -> p instanceof Measured figure
                        ? units.words(figure)
                        : p instanceof Sentence sentence ? sentence.in(units) : p)
                .toArray();
        return String.format(Locale.ROOT, template, read);
    }

    private boolean isText() {
        return template.equals("%s") && parts.get(0) instanceof String;
    }

    /** This sentence with more behind it. */
    public Sentence then(Sentence more) {
        return of("%s%s", this, more);
    }

    /** As command line, files and report have it. */
    @Override
    public String toString() {
        return canonical;
    }

    @Override
    public boolean equals(Object other) {
        return other instanceof Sentence sentence && canonical.equals(sentence.canonical);
    }

    @Override
    public int hashCode() {
        return canonical.hashCode();
    }
}
