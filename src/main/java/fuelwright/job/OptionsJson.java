package fuelwright.job;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.node.ObjectNode;
import fuelwright.ride.RideOptions;
import fuelwright.ride.Role;
import fuelwright.ride.WidebandScale;
import fuelwright.unit.Unit;
import java.nio.charset.Charset;
import java.nio.charset.IllegalCharsetNameException;
import java.nio.charset.UnsupportedCharsetException;
import java.util.Map;
import java.util.OptionalDouble;
import java.util.TreeMap;

/** What was said about a log, as JSON. What a later version wrote and this one doesn't know is passed over. */
public final class OptionsJson {

    private OptionsJson() {}

    /** Writes the options into {@code node}; what is left to the reader isn't written. */
    public static void write(RideOptions options, ObjectNode node) {
        ObjectNode roles = node.putObject("roles");
        new TreeMap<>(options.roles()).forEach((heading, role) -> roles.put(heading, role.name()));
        ObjectNode units = node.putObject("units");
        new TreeMap<>(options.units()).forEach((heading, unit) -> units.put(heading, unit.name()));
        options.afrScale().ifPresent(ratio -> node.put("afrScale", ratio));
        options.secondAfrScale().ifPresent(ratio -> node.put("secondAfrScale", ratio));
        options.delimiter().ifPresent(sign -> node.put("delimiter", sign.toString()));
        options.decimalSign().ifPresent(sign -> node.put("decimalSign", sign.toString()));
        options.charset().ifPresent(charset -> node.put("charset", charset.name()));
        options.sampleRateHz().ifPresent(rate -> node.put("sampleRateHz", rate));
        options.widebandScale()
                .ifPresent(s -> node.putArray("widebandScale")
                        .add(s.volt1())
                        .add(s.lambda1())
                        .add(s.volt2())
                        .add(s.lambda2()));
    }

    /**
     * Reads them back.
     *
     * @throws IllegalArgumentException if it holds a figure or a name that can't be
     */
    public static RideOptions read(JsonNode node) {
        RideOptions options = RideOptions.defaults();
        for (Map.Entry<String, JsonNode> entry : node.path("roles").properties()) {
            options = options.withRole(
                    entry.getKey(), Role.valueOf(entry.getValue().asText()));
        }
        for (Map.Entry<String, JsonNode> entry : node.path("units").properties()) {
            options = options.withUnit(
                    entry.getKey(), Unit.valueOf(entry.getValue().asText()));
        }
        if (node.has("afrScale")) {
            options = options.withAfrScale(node.get("afrScale").asDouble());
        }
        if (node.path("secondAfrScale").isNumber()) {
            options = options.withSecondAfrScale(
                    OptionalDouble.of(node.get("secondAfrScale").asDouble()));
        }
        if (node.path("delimiter").asText().length() == 1) {
            options = options.withDelimiter(node.get("delimiter").asText().charAt(0));
        }
        if (node.path("decimalSign").asText().length() == 1) {
            options = options.withDecimalSign(node.get("decimalSign").asText().charAt(0));
        }
        if (node.has("charset")) {
            options = options.withCharset(charset(node.get("charset").asText()));
        }
        if (node.has("sampleRateHz")) {
            options = options.withSampleRate(node.get("sampleRateHz").asDouble());
        }
        JsonNode scale = node.path("widebandScale");
        return scale.size() == 4
                ? options.withWidebandScale(new WidebandScale(
                        scale.get(0).asDouble(),
                        scale.get(1).asDouble(),
                        scale.get(2).asDouble(),
                        scale.get(3).asDouble()))
                : options;
    }

    private static Charset charset(String name) {
        try {
            return Charset.forName(name);
        } catch (IllegalCharsetNameException | UnsupportedCharsetException e) {
            throw new IllegalArgumentException("charset " + name + " is not known here", e);
        }
    }
}
