package fuelwright.ui.session;

import fuelwright.job.Job;
import fuelwright.ui.theme.Words;
import java.util.ArrayList;
import java.util.List;
import java.util.function.Function;

/** What is different between two jobs, in words. */
final class Changes {

    private record Part(String key, Function<Job, Object> value) {}

    private static final List<Part> PARTS = List.of(
            new Part("machine", Job::machine),
            new Part("fuel", Job::fuelTable),
            new Part("target", Job::targetTable),
            new Part("rides", Job::rides),
            new Part("ratio", Job::displayRatio),
            new Part("targetratio", Job::targetRatio),
            new Part("screens", Job::screens),
            new Part("proposal", Job::proposal),
            new Part("limits", Job::limits),
            new Part("answers", Job::answers),
            new Part("hardware", Job::hardware),
            new Part("name", Job::name));

    /** More parts than that are changed at once only by another job in place of the old one. */
    private static final int MOST = 4;

    private Changes() {}

    /** The parts that differ, each with the stage where it is changed. */
    static String words(Job before, Job after) {
        List<String> words = new ArrayList<>();
        for (Part part : PARTS) {
            if (!part.value().apply(before).equals(part.value().apply(after))) {
                words.add(Words.of("change." + part.key()));
            }
        }
        return words.isEmpty() || words.size() > MOST ? Words.of("change.job") : String.join(", ", words);
    }
}
