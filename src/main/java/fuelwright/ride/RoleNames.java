package fuelwright.ride;

import fuelwright.unit.Dimension;
import fuelwright.unit.Unit;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.concurrent.ConcurrentHashMap;
import java.util.regex.Pattern;

/**
 * Which role a heading's words suggest, and how strongly. Trade words in English and German, and the parameter descriptions of SAE
 * J1979 (from memory). The first rule that fits decides; what is commanded or a look-alike is caught before what it looks like.
 */
final class RoleNames {

    /**
     * What a heading suggests.
     *
     * @param role the role, or OTHER
     * @param strength 3 the usual name, 2 clear, 1 perhaps
     * @param why a remark for look-alikes, may be empty
     */
    record Suggestion(Role role, int strength, String why) {}

    private record Rule(Pattern pattern, Role role, int strength, String why) {}

    private static final List<Rule> RULES = new ArrayList<>();
    private static final int MOST_KNOWN = 1000;
    private static final Map<Heading, Suggestion> KNOWN = new ConcurrentHashMap<>();

    private static final String MIXTURE = "(lambda|λ|lam|afr|a f|air fuel( ratio)?|fuel air|equiv(alence)?|mixture)";

    static {
        other(" (raw|frame|checksum|crc|hex) ", "raw data");
        rule(
                " (command|commanded|cmd|target|desired|set ?point|set|demand|demanded|requested|request|soll|goal|wanted|aim)\\b.* "
                        + MIXTURE + " | " + MIXTURE
                        + " .*\\b(command|commanded|cmd|target|desired|set ?point|demand|soll|goal) ",
                Role.COMMANDED_LAMBDA,
                3);
        other(
                " (command|commanded|cmd|target|desired|set ?point|demand|demanded|requested|soll|goal|wanted|limit) ",
                "commanded, not measured");
        other(
                " (error|deviation|std|stdev|heater|status|state|mode|flag valid|duty|impedance|resistance|age|delta|rate of change) ",
                "about another channel, not the reading itself");
        rule(
                " (fuel cut|fuel cutoff|fuel cut off|fuel shut ?off|dfco|decel cut|overrun|over run|schubabschaltung) ",
                Role.FUEL_CUT,
                3);
        rule(
                " (short (term )?(fuel )?trim|stft|shrtft|st ?trim|short fuel trim|short term trim|kurzzeit\\w*) ",
                Role.SHORT_TRIM,
                3);
        rule(" (stft|shrtft)\\w* ", Role.SHORT_TRIM, 3);
        rule(" (long (term )?(fuel )?trim|ltft|longft|lt ?trim|langzeit\\w*) ", Role.LONG_TRIM, 3);
        rule(" (ltft|longft)\\w* ", Role.LONG_TRIM, 3);
        rule(
                " (lambda|λ|o2|closed loop|mixture|afr) (correction|trim|integrator|regulator|control|controller|feedback) ",
                Role.SHORT_TRIM,
                2);
        other(" (narrow ?band|narrow) ", "a narrow-band sensor: it tells rich from lean, not how much");
        rule(" (wide ?band|wb|wb ?o2|uego) .*\\b(volts?|voltage|v|output) ", Role.WIDEBAND_VOLTS, 3);
        rule(
                " (o2|oxygen|o2s\\d*|ho2s\\d*|bank \\d( sensor \\d)?|sensor \\d|o2 sensor)\\b.*\\b(equiv(alence)? ratio|lambda) ",
                Role.LAMBDA,
                3);
        rule(" (lambda|λ) ", Role.LAMBDA, 3);
        rule(" lambda ?\\d* ", Role.LAMBDA, 3);
        rule(" (equiv(alence)?( ratio)?|phi|fuel air( equiv(alence)?)?( ratio)?|eq ratio) ", Role.EQUIVALENCE_RATIO, 3);
        rule(" (afr|a f|a f ratio|air fuel( ratio)?|afr ?\\d+|luft kraftstoff\\w*) ", Role.AFR, 3);
        rule(" (wide ?band|uego|wb|wb ?o2|wb ?\\d|mixture|gemisch) ", Role.LAMBDA, 2);
        other(
                " (o2|oxygen|o2s|ho2s|o2 ?\\d|lambdasonde|sonde|ego) ",
                "an oxygen sensor's voltage tells rich from lean, not how much");
        other(
                " (wheel|front|rear) rpm | (turbo|turbine|input shaft|output shaft|fan|pump) (speed|rpm) ",
                "not the engine's speed");
        rule(
                " (engine|eng|motor|crank|crankshaft) (speed|rpm|revs?|revolutions) | rpm | engine r min | motordrehzahl | motordrehz | drehzahl | drehz | umdr | umdrehung(en)? | revs | engine revolutions ",
                Role.ENGINE_SPEED,
                3);
        rule(" (rpms|rev|ne|engine n) ", Role.ENGINE_SPEED, 2);
        other(" (pedal|grip|twist ?grip|accelerator|app|actuator) ", "the rider's wish, not the throttle's opening");
        rule(" relative throttle( position)? ", Role.THROTTLE, 1);
        rule(
                " absolute throttle( position)? [b-f] | throttle( position)? [b-f] | tps ?[2-9] | throttle ?[2-9] ",
                Role.THROTTLE,
                1);
        rule(" (gasgriff|gasgriffstellung|griff) ", Role.THROTTLE, 1);
        rule(" (drossel|drosselstellung) ", Role.THROTTLE, 2);
        rule(
                " (throttle|tps|throttle (position|pos|opening|angle|plate)|absolute throttle( position)?|drosselklappe\\w*|tp) ",
                Role.THROTTLE,
                3);
        rule(
                " (baro|barometer|barometric( pressure)?|atmospheric( pressure)?|atmosphere|ambient pressure|air pressure|luftdruck|umgebungsdruck) ",
                Role.BAROMETER,
                3);
        rule(
                " (map|manifold( absolute)? pressure|manifold|intake( manifold)?( absolute)? pressure|inlet( manifold)? pressure|boost( pressure)?|"
                        + "saugrohrdruck|ansaugdruck|ansaug druck|ladedruck|manifold vacuum|intake vacuum|manifold air pressure) ",
                Role.MANIFOLD_PRESSURE,
                3);
        rule(
                " (inj|injector|injection|fuel)( \\d)? (pulse|pulse ?width|pw|time|duration|open|opening|opening time|on time)( \\d)? "
                        + "| pulse ?width | pw ?\\d? | ipw | einspritzzeit | inj ms | injection ",
                Role.INJECTOR_PULSE,
                3);
        rule(
                " (coolant|ect|clt|engine coolant( temp(erature)?)?|water temp(erature)?|kuhlmittel\\w*|kuehlmittel\\w*|kühlmittel\\w*|kuehlwasser\\w*|kühlwasser\\w*|wassertemp\\w*) ",
                Role.COOLANT,
                3);
        rule(" wasser (?!druck|pumpe|stand)", Role.COOLANT, 2);
        rule(" (engine temp(erature)?|motortemp\\w*|(cylinder )?head temp(erature)?|cht) ", Role.COOLANT, 2);
        other(
                " (ambient|outside|oil|fuel|gearbox|board|ecu|catalyst|cat|tyre|tire) (air )?temp(erature)?",
                "a temperature that isn't used");
        rule(
                " (intake air( temp(erature)?)?|iat|inlet air|intake temp(erature)?|air temp(erature)?|charge (air )?temp(erature)?|act|ansaugluft\\w*|ansaugtemp\\w*|ansaug temp\\w*|mat) ",
                Role.INTAKE_AIR,
                3);
        rule(" ansaug (?!druck|rohr)", Role.INTAKE_AIR, 2);
        rule(" (lufttemp\\w*|luft temp\\w*) ", Role.INTAKE_AIR, 1);
        rule(" (egt|egt ?\\d|exhaust( gas)? temp(erature)?|abgastemp\\w*) ", Role.EXHAUST_TEMPERATURE, 3);
        rule(
                " (battery|batt|vbat|control module voltage|module voltage|supply voltage|system voltage|bordspannung|batteriespannung) ",
                Role.BATTERY,
                3);
        rule(
                " (vehicle speed|road speed|ground speed|gps speed|vss|(front |rear )?wheel speed|geschwindigkeit|velocity|kmh|kph|mph|vehicle speed sensor) ",
                Role.ROAD_SPEED,
                3);
        rule(" speed ", Role.ROAD_SPEED, 1);
        rule(" (gear|gear position|gang) ", Role.GEAR, 3);
        rule(" (knock|klopf\\w*|detonation|knock (level|count|sensor|retard)) ", Role.KNOCK, 3);
        other(" dwell ", "coil dwell");
        rule(
                " (ignition( advance| timing| angle)?|timing( advance)?|spark( advance| timing)?|ign|advance|zündwinkel|zundwinkel|zündzeitpunkt|"
                        + "ign adv|ignition timing advance for 1 cylinder) ",
                Role.IGNITION,
                3);
        rule(" (power|leistung|wheel power|engine power) ", Role.POWER, 2);
        rule(" (torque|drehmoment|wheel torque|engine torque) ", Role.TORQUE, 2);
    }

    private RoleNames() {}

    private static void rule(String pattern, Role role, int strength) {
        RULES.add(new Rule(Pattern.compile(pattern), role, strength, ""));
    }

    private static void other(String pattern, String why) {
        RULES.add(new Rule(Pattern.compile(pattern), Role.OTHER, 0, why));
    }

    /** What a heading suggests, its unit taken into account. Logs of one logger have the same headings: the last ones are remembered. */
    static Suggestion of(Heading heading) {
        Suggestion known = KNOWN.get(heading);
        if (known == null) {
            known = workOut(heading);
            if (KNOWN.size() >= MOST_KNOWN) {
                KNOWN.clear();
            }
            KNOWN.put(heading, known);
        }
        return known;
    }

    private static Suggestion workOut(Heading heading) {
        String words = heading.words();
        Optional<Unit> unit = heading.unit();
        for (Rule rule : RULES) {
            if (rule.pattern().matcher(words).find()) {
                boolean whole = rule.pattern().matcher(words).matches();
                int strength = rule.strength() * 2 + (whole ? 1 : 0) - (words.contains(" 2 ") ? 1 : 0);
                Suggestion suggestion = new Suggestion(rule.role(), strength, rule.why());
                return unit.isPresent() ? byUnit(suggestion, unit.get()) : suggestion;
            }
        }
        return unit.map(RoleNames::byUnitAlone).orElse(new Suggestion(Role.OTHER, 0, ""));
    }

    private static Suggestion byUnit(Suggestion suggestion, Unit unit) {
        Role role = suggestion.role();
        Dimension of = unit.dimension();
        if (role == Role.OTHER || of == role.dimension()) {
            return role.isMixture() ? mixtureByUnit(suggestion, unit) : suggestion;
        }
        if (role == Role.ROAD_SPEED && unit == Unit.RPM) {
            return new Suggestion(Role.ENGINE_SPEED, 2, "");
        }
        if (role == Role.ENGINE_SPEED && of == Dimension.ROAD_SPEED) {
            return new Suggestion(Role.ROAD_SPEED, 2, "");
        }
        if (role.isMixture() && of == Dimension.VOLTAGE) {
            return new Suggestion(Role.WIDEBAND_VOLTS, suggestion.strength(), "");
        }
        boolean harmless = unit == Unit.ONE
                || role == Role.THROTTLE && of == Dimension.VOLTAGE
                || unit == Unit.DEGREE && role.dimension() == Dimension.TEMPERATURE
                || unit == Unit.PERCENT && (role == Role.KNOCK || role == Role.FUEL_CUT)
                || of == Dimension.NUMBER
                || role.dimension() == Dimension.NUMBER
                || role == Role.IGNITION && (unit == Unit.CELSIUS || unit == Unit.KELVIN);
        if (harmless) {
            return suggestion;
        }
        return new Suggestion(
                Role.OTHER, 0, "looks like " + role.words() + " by name, but its unit is " + unit.symbol());
    }

    private static Suggestion mixtureByUnit(Suggestion suggestion, Unit unit) {
        Role role = switch (unit) {
            case LAMBDA -> Role.LAMBDA;
            case AIR_FUEL_RATIO -> Role.AFR;
            case EQUIVALENCE_RATIO -> suggestion.role() == Role.LAMBDA ? Role.LAMBDA : Role.EQUIVALENCE_RATIO;
            default -> suggestion.role();
        };
        return new Suggestion(role, suggestion.strength(), suggestion.why());
    }

    private static Suggestion byUnitAlone(Unit unit) {
        return switch (unit) {
            case RPM -> new Suggestion(Role.ENGINE_SPEED, 1, "");
            case LAMBDA -> new Suggestion(Role.LAMBDA, 2, "");
            case AIR_FUEL_RATIO -> new Suggestion(Role.AFR, 2, "");
            case KILOMETRE_PER_HOUR, MILE_PER_HOUR -> new Suggestion(Role.ROAD_SPEED, 1, "");
            default -> new Suggestion(Role.OTHER, 0, "");
        };
    }
}
