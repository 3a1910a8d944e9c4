package fuelwright.work;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.node.ObjectNode;
import fuelwright.job.OptionsJson;
import fuelwright.ride.LogRecipe;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/** A log recipe as JSON. */
final class RecipeText {

    private RecipeText() {}

    static void write(LogRecipe recipe, ObjectNode node) {
        recipe.headings().forEach(node.putArray("headings")::add);
        OptionsJson.write(recipe.options(), node);
    }

    /** Empty where it isn't one, or holds a figure that can't be. */
    static Optional<LogRecipe> read(JsonNode node) {
        List<String> headings = new ArrayList<>();
        node.path("headings").forEach(h -> headings.add(h.asText()));
        if (headings.isEmpty()) {
            return Optional.empty();
        }
        try {
            return Optional.of(new LogRecipe(headings, OptionsJson.read(node)));
        } catch (IllegalArgumentException e) {
            return Optional.empty();
        }
    }
}
