package fuelwright.job;

import java.util.Arrays;
import java.util.Collection;
import java.util.Locale;
import java.util.stream.Collectors;

/** What is to be done before an engine starts with other throttle bodies, in the order of the work; common practice, no source. */
public enum FirstStart {
    SENSOR("throttle sensor re-learnt"),
    BALANCE("bodies balanced"),
    IDLE("idle bypass reset"),
    TRIMS("learnt trims reset");

    private final String words;

    FirstStart(String words) {
        this.words = words;
    }

    /** What is then done, in a few words. */
    public String words() {
        return words;
    }

    /** As keys and files name it. */
    public String key() {
        return name().toLowerCase(Locale.ROOT);
    }

    /** The words of several, in the order of the work. */
    public static String words(Collection<FirstStart> some) {
        return Arrays.stream(values())
                .filter(some::contains)
                .map(FirstStart::words)
                .collect(Collectors.joining(", "));
    }
}
