package fuelwright.cli;

import com.fasterxml.jackson.core.JsonProcessingException;
import com.fasterxml.jackson.databind.ObjectMapper;
import com.fasterxml.jackson.databind.SerializationFeature;
import java.util.Map;

/** Summaries as JSON. */
final class Json {

    private static final ObjectMapper MAPPER = new ObjectMapper().enable(SerializationFeature.INDENT_OUTPUT);

    private Json() {}

    /** A number, or null where JSON has none. */
    static Double number(double value) {
        return Double.isFinite(value) ? Double.valueOf(value) : null;
    }

    static String write(Map<String, Object> map) {
        try {
            return MAPPER.writeValueAsString(map);
        } catch (JsonProcessingException e) {
            throw new IllegalArgumentException("map: not writable as JSON", e);
        }
    }

    /** To a thousandth; null where it isn't a number. */
    static Double rounded(double value) {
        return number(Double.isFinite(value) ? Math.round(value * 1000) / 1000.0 : value);
    }
}
