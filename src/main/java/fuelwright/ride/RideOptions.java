package fuelwright.ride;

import fuelwright.unit.Unit;
import java.nio.charset.Charset;
import java.util.LinkedHashMap;
import java.util.Locale;
import java.util.Map;
import java.util.Objects;
import java.util.Optional;
import java.util.OptionalDouble;

/**
 * What the user says about a log where the reader's own decision isn't wanted. Everything left empty is decided by the reader, which
 * says what it decided.
 *
 * @param roles role by heading, as the file writes it or without its unit, in any case
 * @param units unit by heading, likewise
 * @param afrScale the ratio that an AFR display was set to, above 0; empty: 14.7, and said
 * @param delimiter what stands between fields
 * @param decimalSign {@code '.'} or {@code ','}
 * @param charset the encoding
 * @param sampleRateHz rows a second where the file has no time column, above 0; where it has one, the time column wins
 * @param widebandScale the two-point scale of wideband volts
 * @param secondAfrScale the ratio that the AFR display of a second logger on the same ride was set to: its log has a display of its own
 */
public record RideOptions(
        Map<String, Role> roles,
        Map<String, Unit> units,
        OptionalDouble afrScale,
        Optional<Character> delimiter,
        Optional<Character> decimalSign,
        Optional<Charset> charset,
        OptionalDouble sampleRateHz,
        Optional<WidebandScale> widebandScale,
        OptionalDouble secondAfrScale) {

    public RideOptions {
        roles = Map.copyOf(roles);
        units = Map.copyOf(units);
        Objects.requireNonNull(delimiter, "delimiter");
        Objects.requireNonNull(charset, "charset");
        Objects.requireNonNull(widebandScale, "widebandScale");
        requirePositive("afrScale", afrScale);
        requirePositive("sampleRateHz", sampleRateHz);
        requirePositive("secondAfrScale", secondAfrScale);
        decimalSign.ifPresent(sign -> {
            if (sign != '.' && sign != ',') {
                throw new IllegalArgumentException("decimalSign " + sign + " must be . or ,");
            }
        });
    }

    private static void requirePositive(String name, OptionalDouble value) {
        if (value.isPresent() && !(value.getAsDouble() > 0 && value.getAsDouble() < Double.POSITIVE_INFINITY)) {
            throw new IllegalArgumentException(name + " " + value.getAsDouble() + " must be above 0 and finite");
        }
    }

    /** Nothing said: the reader decides everything. */
    public static RideOptions defaults() {
        return new RideOptions(
                Map.of(),
                Map.of(),
                OptionalDouble.empty(),
                Optional.empty(),
                Optional.empty(),
                Optional.empty(),
                OptionalDouble.empty(),
                Optional.empty(),
                OptionalDouble.empty());
    }

    /** These options with one more role. */
    public RideOptions withRole(String heading, Role role) {
        Map<String, Role> more = new LinkedHashMap<>(roles);
        more.put(heading, role);
        return new RideOptions(
                more, units, afrScale, delimiter, decimalSign, charset, sampleRateHz, widebandScale, secondAfrScale);
    }

    /** These options with one more unit. */
    public RideOptions withUnit(String heading, Unit unit) {
        Map<String, Unit> more = new LinkedHashMap<>(units);
        more.put(heading, unit);
        return new RideOptions(
                roles, more, afrScale, delimiter, decimalSign, charset, sampleRateHz, widebandScale, secondAfrScale);
    }

    public RideOptions withAfrScale(double ratio) {
        return withAfrScale(OptionalDouble.of(ratio));
    }

    private RideOptions withAfrScale(OptionalDouble ratio) {
        return new RideOptions(
                roles, units, ratio, delimiter, decimalSign, charset, sampleRateHz, widebandScale, secondAfrScale);
    }

    public RideOptions withSecondAfrScale(OptionalDouble ratio) {
        return new RideOptions(
                roles, units, afrScale, delimiter, decimalSign, charset, sampleRateHz, widebandScale, ratio);
    }

    /** These options for the log of a second logger: with its own display's ratio. */
    public RideOptions ofSecond() {
        return withAfrScale(secondAfrScale);
    }

    public RideOptions withDelimiter(char sign) {
        return new RideOptions(
                roles,
                units,
                afrScale,
                Optional.of(sign),
                decimalSign,
                charset,
                sampleRateHz,
                widebandScale,
                secondAfrScale);
    }

    public RideOptions withDecimalSign(char sign) {
        return new RideOptions(
                roles,
                units,
                afrScale,
                delimiter,
                Optional.of(sign),
                charset,
                sampleRateHz,
                widebandScale,
                secondAfrScale);
    }

    public RideOptions withCharset(Charset encoding) {
        return new RideOptions(
                roles,
                units,
                afrScale,
                delimiter,
                decimalSign,
                Optional.of(encoding),
                sampleRateHz,
                widebandScale,
                secondAfrScale);
    }

    public RideOptions withSampleRate(double hz) {
        return new RideOptions(
                roles,
                units,
                afrScale,
                delimiter,
                decimalSign,
                charset,
                OptionalDouble.of(hz),
                widebandScale,
                secondAfrScale);
    }

    public RideOptions withWidebandScale(WidebandScale scale) {
        return new RideOptions(
                roles,
                units,
                afrScale,
                delimiter,
                decimalSign,
                charset,
                sampleRateHz,
                Optional.of(scale),
                secondAfrScale);
    }

    /** These options; where they say nothing, what {@code others} say. */
    public RideOptions or(RideOptions others) {
        Map<String, Role> allRoles = new LinkedHashMap<>(others.roles);
        allRoles.putAll(roles);
        Map<String, Unit> allUnits = new LinkedHashMap<>(others.units);
        allUnits.putAll(units);
        return new RideOptions(
                allRoles,
                allUnits,
                afrScale.isPresent() ? afrScale : others.afrScale,
                delimiter.or(() -> others.delimiter),
                decimalSign.or(() -> others.decimalSign),
                charset.or(() -> others.charset),
                sampleRateHz.isPresent() ? sampleRateHz : others.sampleRateHz,
                widebandScale.or(() -> others.widebandScale),
                secondAfrScale.isPresent() ? secondAfrScale : others.secondAfrScale);
    }

    Optional<Role> roleOf(Heading heading) {
        return lookUp(roles, heading);
    }

    Optional<Unit> unitOf(Heading heading) {
        return lookUp(units, heading);
    }

    private static <T> Optional<T> lookUp(Map<String, T> map, Heading heading) {
        return map.entrySet().stream()
                .filter(e -> names(e.getKey(), heading))
                .map(Map.Entry::getValue)
                .findFirst();
    }

    /** Whether a user's {@code text} means this heading. */
    static boolean names(String text, Heading heading) {
        String wanted = text.strip().toLowerCase(Locale.ROOT);
        return wanted.equals(heading.text().toLowerCase(Locale.ROOT))
                || wanted.equals(heading.name().toLowerCase(Locale.ROOT));
    }
}
