package fuelwright.ui.handover;

import fuelwright.job.CellsNow;
import fuelwright.job.HardwareProfile;
import fuelwright.job.Job;
import fuelwright.table.Axis;
import fuelwright.table.Numerals;
import fuelwright.table.Table;
import fuelwright.ui.theme.Parts;
import fuelwright.ui.theme.Words;
import fuelwright.work.HardwareStep;
import java.util.Arrays;
import java.util.EnumMap;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.stream.Collectors;

/**
 * What is said of the tuning hardware as it stands in the form, and the job that follows from it. Pure.
 *
 * @param texts what is typed; an empty text is 'as the fuel table', or no bound
 * @param orientation empty: as the fuel table's file
 */
record HardwareForm(
        Map<Field, String> texts,
        HardwareProfile.Holds holds,
        Optional<Table.Orientation> orientation,
        boolean decimalComma) {

    /** What is typed. */
    enum Field {
        STEP,
        LEAST,
        MOST,
        SPEEDS,
        LOADS;

        String key() {
            return "hardware." + name().toLowerCase(java.util.Locale.ROOT);
        }
    }

    private static final int MOST_BREAKPOINTS = 64;

    HardwareForm {
        texts = java.util.Collections.unmodifiableMap(new EnumMap<>(texts));
    }

    static HardwareForm of(Job job) {
        HardwareProfile hardware = job.hardware();
        Map<Field, String> texts = new EnumMap<>(Field.class);
        texts.put(
                Field.STEP,
                job.proposal().step() > 0 ? Numerals.shortest(job.proposal().step()) : "");
        texts.put(Field.LEAST, bound(hardware.least()));
        texts.put(Field.MOST, bound(hardware.most()));
        texts.put(Field.SPEEDS, hardware.speed().map(HardwareForm::list).orElse(""));
        texts.put(Field.LOADS, hardware.load().map(HardwareForm::list).orElse(""));
        return new HardwareForm(texts, hardware.holds(), hardware.orientation(), job.decimalComma());
    }

    private static String bound(double value) {
        return Double.isInfinite(value) ? "" : Numerals.shortest(value);
    }

    static String list(Axis axis) {
        return Arrays.stream(axis.toArray()).mapToObj(Numerals::shortest).collect(Collectors.joining(" "));
    }

    HardwareForm with(Field field, String text) {
        Map<Field, String> other = new EnumMap<>(texts);
        other.put(field, text);
        return new HardwareForm(other, holds, orientation, decimalComma);
    }

    HardwareForm with(HardwareProfile.Holds other) {
        return new HardwareForm(texts, other, orientation, decimalComma);
    }

    HardwareForm with(Optional<Table.Orientation> other) {
        return new HardwareForm(texts, holds, other, decimalComma);
    }

    HardwareForm withComma(boolean other) {
        return new HardwareForm(texts, holds, orientation, other);
    }

    /** What is wrong with a field, a sentence; empty where nothing is. */
    Optional<String> problem(Field field, Job job) {
        Table fuel = job.fuelTable().orElseThrow();
        if (text(field).isEmpty()) {
            return Optional.empty();
        }
        if (field == Field.SPEEDS || field == Field.LOADS) {
            try {
                axis(field, fuel);
                return Optional.empty();
            } catch (IllegalArgumentException e) {
                return Optional.of(Words.of("hardware.nobreakpoints", MOST_BREAKPOINTS));
            }
        }
        OptionalDouble value = number(field);
        if (value.isEmpty() || field == Field.STEP && value.getAsDouble() <= 0) {
            return Optional.of(Words.of(field == Field.STEP ? "hardware.nostep" : "machine.nonumber"));
        }
        if (field == Field.STEP) {
            return HardwareStep.problem(
                            fuel, holds, value.getAsDouble(), job.proposal().deadTimeMs())
                    .map(i -> Parts.sentence(i.what()));
        }
        boolean crossed = field == Field.MOST
                && number(Field.LEAST).isPresent()
                && value.getAsDouble() <= number(Field.LEAST).getAsDouble();
        return crossed ? Optional.of(Words.of("hardware.crossed")) : Optional.empty();
    }

    private String text(Field field) {
        return texts.get(field).strip();
    }

    private OptionalDouble number(Field field) {
        String text = text(field);
        return Numerals.parse(text, text.indexOf(',') >= 0);
    }

    /** The typed breakpoints; empty where they are those of the fuel table. */
    private Optional<Axis> axis(Field field, Table fuel) {
        String text = text(field);
        if (text.isEmpty()) {
            return Optional.empty();
        }
        double[] breakpoints = Arrays.stream(text.split("[\\s;]+"))
                .map(t -> t.endsWith(",") ? t.substring(0, t.length() - 1) : t)
                .mapToDouble(t -> Numerals.parse(t, t.indexOf(',') >= 0)
                        .orElseThrow(() -> new IllegalArgumentException("'" + t + "' is no number")))
                .toArray();
        if (breakpoints.length > MOST_BREAKPOINTS) {
            throw new IllegalArgumentException("breakpoints: " + breakpoints.length);
        }
        Axis like = field == Field.SPEEDS ? fuel.speed() : fuel.load();
        Axis typed = new Axis(like.kind(), breakpoints);
        return typed.equals(like) ? Optional.empty() : Optional.of(typed);
    }

    /** The job with that hardware; empty while a field has a problem. */
    Optional<Job> on(Job job) {
        Table fuel = job.fuelTable().orElseThrow();
        if (Arrays.stream(Field.values()).anyMatch(f -> problem(f, job).isPresent())) {
            return Optional.empty();
        }
        boolean chosen = job.hardware().comma().isPresent() || decimalComma != job.decimalComma();
        HardwareProfile hardware = new HardwareProfile(
                job.hardware().name(),
                holds,
                number(Field.LEAST).orElse(Double.NEGATIVE_INFINITY),
                number(Field.MOST).orElse(Double.POSITIVE_INFINITY),
                axis(Field.SPEEDS, fuel),
                axis(Field.LOADS, fuel),
                orientation,
                chosen ? Optional.of(decimalComma) : Optional.empty(),
                Optional.empty(),
                job.hardware().told());
        Optional<Table> cells = holds == HardwareProfile.Holds.VALUE
                ? Optional.empty()
                : job.hardware().cells().filter(c -> CellsNow.fits(c, CellsNow.none(hardware, fuel)));
        Job next = job.withHardware(hardware.withCells(cells))
                .withProposal(job.proposal().withStep(number(Field.STEP).orElse(0)));
        return Optional.of(
                next.equals(job) ? job : next.withHardware(next.hardware().asTold()));
    }
}
