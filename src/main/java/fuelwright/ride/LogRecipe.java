package fuelwright.ride;

import fuelwright.unit.Unit;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.function.Function;

/**
 * What was said about a log, remembered for the next one of the same logger: it is used again where the same headings come in the same
 * order. What was said of a single column is used wherever a column of that name comes.
 *
 * @param headings as the file has them, the time column included
 * @param options what the user said
 */
public record LogRecipe(List<String> headings, RideOptions options) {

    public LogRecipe {
        headings = List.copyOf(headings);
    }

    /** Whether a log with these headings is of the same kind: the same ones in the same order, case and spaces aside. */
    public boolean fits(List<String> others) {
        if (others.size() != headings.size()) {
            return false;
        }
        for (int i = 0; i < others.size(); i++) {
            if (!plain(headings.get(i)).equals(plain(others.get(i)))) {
                return false;
            }
        }
        return true;
    }

    /**
     * What was said about single columns of other logs, for a log with these headings. A column of which two recipes say different things is
     * left to the reader, and so are a second column of a role and volts, which mean nothing without their scale.
     */
    public static RideOptions byColumns(List<LogRecipe> recipes, List<String> headings) {
        RideOptions known = RideOptions.defaults();
        for (String heading : headings) {
            Optional<Role> role = agreed(recipes, heading, RideOptions::roles);
            Optional<Unit> unit = agreed(recipes, heading, RideOptions::units);
            if (role.isPresent() && isFree(role.get(), known)) {
                known = known.withRole(heading, role.get());
            }
            known = unit.isPresent() ? known.withUnit(heading, unit.get()) : known;
        }
        return known;
    }

    private static boolean isFree(Role role, RideOptions known) {
        boolean many = role == Role.OTHER || role.isMixture();
        return role != Role.WIDEBAND_VOLTS && (many || !known.roles().containsValue(role));
    }

    private static <T> Optional<T> agreed(
            List<LogRecipe> recipes, String heading, Function<RideOptions, Map<String, T>> said) {
        List<T> all = recipes.stream()
                .filter(r -> r.headings.stream().anyMatch(h -> plain(h).equals(plain(heading))))
                .flatMap(r -> said.apply(r.options).entrySet().stream())
                .filter(e -> plain(e.getKey()).equals(plain(heading)))
                .map(Map.Entry::getValue)
                .distinct()
                .toList();
        return all.size() == 1 ? Optional.of(all.get(0)) : Optional.empty();
    }

    private static String plain(String heading) {
        return heading.strip().replaceAll("\\s+", " ").toLowerCase(Locale.ROOT);
    }
}
