package fuelwright.job;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.node.ArrayNode;
import com.fasterxml.jackson.databind.node.ObjectNode;
import fuelwright.estimate.CellNeed;
import fuelwright.estimate.HighLoadCells;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.function.ToDoubleFunction;

/** Results as JSON; the fields are documented in {@code docs/job-format.md}. */
final class ResultsJson {

    private ResultsJson() {}

    static void write(Results results, ObjectNode node) {
        results.errorPercent().ifPresent(v -> node.put("errorPercent", v));
        node.put("done", results.done()).put("stops", results.stops());
        results.highLoad()
                .ifPresent(h -> node.put("highLoadCells", h.cells()).put("highLoadNotMeasured", h.notMeasured()));
        column(results, node.putArray("shortfallPercent"), CellNeed::shortfallPercent);
        column(results, node.putArray("uncertaintyPercent"), CellNeed::uncertaintyPercent);
        column(results, node.putArray("independentReadings"), CellNeed::independentReadings);
        ArrayNode peaks = node.putArray("peaks");
        results.peaks()
                .forEach(p -> peaks.addObject()
                        .put("ride", p.ride())
                        .put("powerKw", p.powerKw())
                        .put("errorKw", p.errorKw())
                        .put("rpm", p.rpm()));
    }

    private static void column(Results results, ArrayNode array, ToDoubleFunction<CellNeed> figure) {
        results.cells().forEach(c -> array.add(figure.applyAsDouble(c)));
    }

    /**
     * @param count how many cells the fuel table has
     * @throws IllegalArgumentException if a figure is missing, can't be, or the cells are of another table
     */
    static Results read(JsonNode node, int count) {
        List<CellNeed> cells = new ArrayList<>();
        for (int c = 0; c < count; c++) {
            cells.add(new CellNeed(
                    figure(node, "shortfallPercent", c, count),
                    figure(node, "uncertaintyPercent", c, count),
                    figure(node, "independentReadings", c, count)));
        }
        List<Results.Peak> peaks = new ArrayList<>();
        node.path("peaks")
                .forEach(p -> peaks.add(new Results.Peak(
                        p.path("ride").asText(),
                        JobJson.needed(p, "powerKw"),
                        JobJson.needed(p, "errorKw"),
                        JobJson.needed(p, "rpm"))));
        return new Results(
                cells,
                JobJson.number(node, "errorPercent"),
                node.path("done").asBoolean(),
                node.path("stops").asInt(),
                peaks,
                highLoad(node));
    }

    private static Optional<HighLoadCells> highLoad(JsonNode node) {
        JsonNode cells = node.path("highLoadCells");
        JsonNode not = node.path("highLoadNotMeasured");
        return cells.isInt() && not.isInt()
                ? Optional.of(new HighLoadCells(cells.asInt(), not.asInt()))
                : Optional.empty();
    }

    private static double figure(JsonNode node, String name, int cell, int count) {
        JsonNode array = node.path(name);
        if (array.size() != count || !array.path(cell).isNumber()) {
            throw new IllegalArgumentException(name + " must hold " + count + " numbers");
        }
        return array.path(cell).asDouble();
    }
}
