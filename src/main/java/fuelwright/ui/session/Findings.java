package fuelwright.ui.session;

import fuelwright.issue.Issue;
import fuelwright.issue.Loaded;
import fuelwright.job.Job;
import fuelwright.ui.theme.Words;
import fuelwright.work.Analysis;
import java.time.Duration;
import java.util.List;
import java.util.Optional;
import javafx.beans.property.ReadOnlyBooleanWrapper;
import javafx.beans.property.ReadOnlyObjectWrapper;

/** The analysis that follows from the job: the newest there is, whether it is out of date, and why there is none. */
final class Findings {

    private static final Duration DEBOUNCE = Duration.ofMillis(150);

    private final Services services;
    private final Errand errand;
    private final Notices notices;
    final ReadOnlyObjectWrapper<Analysis> analysis = new ReadOnlyObjectWrapper<>();
    final ReadOnlyBooleanWrapper stale = new ReadOnlyBooleanWrapper();
    final ReadOnlyBooleanWrapper settling = new ReadOnlyBooleanWrapper();
    final ReadOnlyObjectWrapper<List<Issue>> refusal = new ReadOnlyObjectWrapper<>(List.of());

    Findings(Services services, Errand errand, Notices notices) {
        this.services = services;
        this.errand = errand;
        this.notices = notices;
        analysis.addListener((p, old, now) -> settling.set(now != null && !now.settled()));
    }

    /** The job has changed. */
    void follow(Job job) {
        refusal.set(List.of());
        Optional<Analysis> same = stale.get()
                ? Optional.empty()
                : Optional.ofNullable(analysis.get()).flatMap(a -> a.of(job));
        if (same.isPresent()) {
            analysis.set(same.get());
        } else if (job.isReady()) {
            stale.set(analysis.get() != null);
            workOut(job);
        } else {
            errand.cancel("", "analyse");
            notices.forgetRefusals();
            stale.set(false);
            analysis.set(null);
        }
    }

    void workOut(Job job) {
        errand.run(
                "analyse",
                analysis.get() == null ? Duration.ZERO : DEBOUNCE,
                Words.of("doing.analysing"),
                (p, c) -> {
                    Optional<Analysis> first = services.firstAnswer(job, c);
                    return new Answer(first, first.isPresent() ? null : services.analyse(job, p, c));
                },
                answer -> answer.whole == null,
                answer -> take(job, answer));
    }

    /**
     * What came of a job: a first answer, or the whole.
     *
     * @param whole null where there is a first answer
     */
    private record Answer(Optional<Analysis> first, Loaded<Analysis> whole) {}

    /** A first answer is shown at once, but what is shown stays out of date until the whole one takes its place. */
    private void take(Job job, Answer answer) {
        if (answer.whole != null) {
            take(answer.whole);
            return;
        }
        analysis.set(answer.first.orElseThrow());
        errand.run(
                "analyse",
                Duration.ZERO,
                Words.of("doing.settling"),
                (p, c) -> services.analyse(job, p, c),
                this::take);
    }

    private void take(Loaded<Analysis> loaded) {
        notices.forgetRefusals();
        notices.add(loaded.issues());
        refusal.set(loaded.value().isPresent() ? List.of() : loaded.issues());
        stale.set(false);
        analysis.set(loaded.value().orElse(null));
    }
}
