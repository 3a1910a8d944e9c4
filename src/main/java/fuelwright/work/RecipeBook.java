package fuelwright.work;

import com.fasterxml.jackson.core.JsonProcessingException;
import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import com.fasterxml.jackson.databind.SerializationFeature;
import com.fasterxml.jackson.databind.node.ArrayNode;
import com.fasterxml.jackson.databind.node.ObjectNode;
import fuelwright.ride.LogRecipe;
import fuelwright.ride.RideOptions;
import fuelwright.ride.RideReader;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardCopyOption;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/**
 * What the user said about logs, remembered by their headings and used again when a log with the same headings comes. One small JSON
 * file; one that is damaged counts as empty and is written anew. The newest of a heading replaces the older one.
 *
 * <p>Thread safety: its methods exclude each other; two programs that write at once: the later one wins.
 */
public final class RecipeBook {

    private static final int MOST = 200;
    private static final ObjectMapper MAPPER = new ObjectMapper().enable(SerializationFeature.INDENT_OUTPUT);

    private final Path file;

    /** @param folder where the book lies; made when something is first remembered */
    public RecipeBook(Path folder) {
        this.file = folder.resolve("log-recipes.json");
    }

    /** The user's own book: in {@code $XDG_STATE_HOME}, else in {@code ~/.local/state}. */
    public static RecipeBook ofUser() {
        String state = System.getenv("XDG_STATE_HOME");
        Path folder = state == null || state.isBlank()
                ? Path.of(System.getProperty("user.home"), ".local", "state")
                : Path.of(state);
        return new RecipeBook(folder.resolve("fuelwright"));
    }

    /** Every recipe, the newest first. */
    public synchronized List<LogRecipe> all() {
        List<LogRecipe> recipes = new ArrayList<>();
        try {
            if (Files.isRegularFile(file)) {
                for (JsonNode node : MAPPER.readTree(file.toFile()).path("recipes")) {
                    RecipeText.read(node).ifPresent(recipes::add);
                }
            }
        } catch (IOException e) {
            return List.of();
        }
        return List.copyOf(recipes);
    }

    /** What was said about logs with these headings; where nothing was, what was said about single columns of them. */
    public Optional<RideOptions> find(List<String> headings) {
        return find(all(), headings);
    }

    private static Optional<RideOptions> find(List<LogRecipe> recipes, List<String> headings) {
        return exact(recipes, headings)
                .or(() -> Optional.of(LogRecipe.byColumns(recipes, headings)))
                .filter(options -> !options.equals(RideOptions.defaults()));
    }

    private static Optional<RideOptions> exact(List<LogRecipe> recipes, List<String> headings) {
        return recipes.stream().filter(r -> r.fits(headings)).findFirst().map(LogRecipe::options);
    }

    /**
     * What was said about logs like this one. Where its headings can't be found by themselves, they are looked for as each recipe has
     * them written.
     */
    public Optional<RideOptions> find(Path log) {
        try {
            List<LogRecipe> recipes = all();
            if (recipes.isEmpty()) {
                return Optional.empty();
            }
            List<String> plain = RideReader.headings(log, RideOptions.defaults());
            for (LogRecipe recipe : recipes) {
                boolean own = recipe.options().delimiter().isPresent()
                        || recipe.options().decimalSign().isPresent()
                        || recipe.options().charset().isPresent();
                if (recipe.fits(plain) || own && recipe.fits(RideReader.headings(log, recipe.options()))) {
                    return Optional.of(recipe.options()).filter(o -> !o.equals(RideOptions.defaults()));
                }
            }
            return find(recipes, plain);
        } catch (IOException e) {
            // Whoever reads the log itself will say so.
            return Optional.empty();
        }
    }

    /**
     * Remembers what was said about logs with these headings; nothing said is forgotten.
     *
     * @throws WorkException if the file can't be written
     */
    public synchronized void remember(List<String> headings, RideOptions options) {
        if (headings.isEmpty()) {
            return;
        }
        List<LogRecipe> kept =
                new ArrayList<>(all().stream().filter(r -> !r.fits(headings)).toList());
        // Nothing said is kept too where else what is known of single columns would come in again.
        if (!options.equals(RideOptions.defaults()) || find(kept, headings).isPresent()) {
            kept.add(0, new LogRecipe(headings, options));
        }
        write(kept.subList(0, Math.min(MOST, kept.size())));
    }

    /**
     * Forgets what was said about logs with these headings.
     *
     * @return whether there was something
     * @throws WorkException if the file can't be written
     */
    public synchronized boolean forget(List<String> headings) {
        boolean there = exact(all(), headings)
                .filter(o -> !o.equals(RideOptions.defaults()))
                .isPresent();
        if (there) {
            remember(headings, RideOptions.defaults());
        }
        return there;
    }

    private void write(List<LogRecipe> recipes) {
        ObjectNode root = MAPPER.createObjectNode();
        ArrayNode list = root.putArray("recipes");
        recipes.forEach(r -> RecipeText.write(r, list.addObject()));
        try {
            Files.createDirectories(file.getParent());
            Path part = Files.createTempFile(file.getParent(), "log-recipes", ".part");
            Files.writeString(part, MAPPER.writeValueAsString(root));
            Files.move(part, file, StandardCopyOption.REPLACE_EXISTING);
        } catch (JsonProcessingException e) {
            throw new IllegalStateException("recipes can't be written as JSON", e);
        } catch (IOException e) {
            throw WorkException.writing(file, e);
        }
    }
}
