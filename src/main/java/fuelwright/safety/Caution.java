package fuelwright.safety;

import fuelwright.unit.Measured;
import fuelwright.unit.Sentence;
import fuelwright.unit.Unit;
import fuelwright.unit.Units;
import java.util.List;
import java.util.Locale;
import java.util.Objects;
import java.util.Optional;
import java.util.SortedSet;
import java.util.TreeSet;

/**
 * A safety finding.
 *
 * @param rule the rule's fixed name, for instance {@code lean-under-load}; stable, used in files
 * @param level how grave
 * @param title a few words, without figures: with {@code about} it tells the cautions of one rule apart, and stays the same when the rides
 *     are fitted again
 * @param found what was found, with figures and units: one or two sentences
 * @param todo what to do about it, one sentence
 * @param cells the cells of the fuel table that it concerns, by number; may be empty
 * @param moments where in the rides it was seen, worst first; may be empty
 * @param about the ride, the sensor or the place of the table that it is about, where the rule says one for each; else empty
 */
public record Caution(
        String rule,
        Level level,
        String title,
        Sentence found,
        String todo,
        SortedSet<Integer> cells,
        List<Moment> moments,
        String about) {

    /** The key of the note above a table's grid that carries a Stop caution. */
    public static final String NOTE_KEY = "caution";

    private static final String LAMBDA = "lambda";

    /** How grave a caution is. Declared from worst to least. */
    public enum Level {
        STOP("Stop"),
        CHECK("Check"),
        NOTE("Note");

        private final String words;

        Level(String words) {
            this.words = words;
        }

        public String words() {
            return words;
        }
    }

    /**
     * A stretch of a ride.
     *
     * @param ride index of the ride in the job
     * @param rideName the ride's name
     * @param startS start on the ride's clock, s
     * @param lengthS how long, s
     * @param worst the worst figure in it, in the rule's own unit (lambda for lean events)
     * @param speedRpm engine speed at the worst moment, rpm
     * @param load load at the worst moment, in the table's unit
     * @param unit unit of the worst figure, as sentences have it
     */
    public record Moment(
            int ride,
            String rideName,
            double startS,
            double lengthS,
            double worst,
            double speedRpm,
            double load,
            String unit) {

        /** A moment whose worst figure is a lambda. */
        public Moment(
                int ride, String rideName, double startS, double lengthS, double worst, double speedRpm, double load) {
            this(ride, rideName, startS, lengthS, worst, speedRpm, load, LAMBDA);
        }

        /** The worst figure with its unit: {@code lambda 0.98}, {@code 96.2 %}. */
        public String worstWords() {
            return worstWords(Units.CANONICAL);
        }

        /** The same in the units that somebody reads. */
        public String worstWords(Units units) {
            Optional<Unit> known = unit.isEmpty() ? Optional.empty() : Unit.parse(unit);
            return known.map(u -> units.words(Measured.of(worst, u, u == Unit.LAMBDA ? 2 : 1)))
                    .orElseGet(() ->
                            String.format(Locale.ROOT, "%.1f %s", worst, unit).strip());
        }

        /** Whether the worst figure is a mixture. */
        public boolean isMixture() {
            return unit.equals(LAMBDA);
        }
    }

    public Caution {
        Objects.requireNonNull(rule, "rule");
        Objects.requireNonNull(level, "level");
        Objects.requireNonNull(title, "title");
        Objects.requireNonNull(found, "found");
        Objects.requireNonNull(todo, "todo");
        cells = java.util.Collections.unmodifiableSortedSet(new TreeSet<>(cells));
        moments = List.copyOf(moments);
        Objects.requireNonNull(about, "about");
    }

    /** The only caution of its rule and title. */
    public Caution(
            String rule,
            Level level,
            String title,
            Sentence found,
            String todo,
            SortedSet<Integer> cells,
            List<Moment> moments) {
        this(rule, level, title, found, todo, cells, moments, "");
    }

    /** The same, where what was found holds no physical figure. */
    public Caution(
            String rule,
            Level level,
            String title,
            String found,
            String todo,
            SortedSet<Integer> cells,
            List<Moment> moments) {
        this(rule, level, title, Sentence.text(found), todo, cells, moments);
    }

    /** What was found, as command line, files and report have it. */
    public String what() {
        return found.toString();
    }

    /** What was found, in the units that somebody reads. */
    public String what(Units units) {
        return found.in(units);
    }

    /** The same, about one ride, sensor or place among several. */
    public Caution about(String other) {
        return new Caution(rule, level, title, found, todo, cells, moments, other);
    }

    /** The same, with more to be said after what was found. */
    Caution saying(Sentence more) {
        return new Caution(rule, level, title, found.then(more), todo, cells, moments, about);
    }

    /** The same, to be shown: its figures are text from here on, in the units that somebody reads. */
    public Caution in(Units units) {
        return new Caution(rule, level, title, Sentence.text(found.in(units)), todo, cells, moments, about);
    }

    /** What it is known by from one fit to the next: the title, and what it is about. */
    public String name() {
        return about.isEmpty() ? title : title + " (" + about + ")";
    }

    public boolean isStop() {
        return level == Level.STOP;
    }

    /** The first moment, which is the worst one. */
    public Optional<Moment> worst() {
        return moments.stream().findFirst();
    }

    /** One line: level, title, what. */
    public String sentence() {
        return said().toString();
    }

    /** The same, to be read in whatever units. */
    public Sentence said() {
        return Sentence.of("%s · %s: %s", level.words(), title, found);
    }
}
