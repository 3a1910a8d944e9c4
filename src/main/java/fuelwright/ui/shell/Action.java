package fuelwright.ui.shell;

import java.util.List;
import java.util.Locale;
import javafx.scene.input.KeyCombination;

/**
 * Something that the user can do by name or by key.
 *
 * @param name what it is called
 * @param keys what brings it; null where nothing does
 */
record Action(String name, KeyCombination keys, Runnable run) {

    /** Those whose names hold every word typed, in their own order. */
    static List<Action> matching(List<Action> all, String typed) {
        String[] words = typed.strip().toLowerCase(Locale.ROOT).split("\\s+");
        return all.stream()
                .filter(a -> {
                    String name = a.name().toLowerCase(Locale.ROOT);
                    for (String word : words) {
                        if (!name.contains(word)) {
                            return false;
                        }
                    }
                    return true;
                })
                .toList();
    }
}
