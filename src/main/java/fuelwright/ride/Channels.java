package fuelwright.ride;

import fuelwright.issue.Issue;
import fuelwright.ride.Channel.Confidence;
import fuelwright.unit.Dimension;
import fuelwright.unit.Unit;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/** Turns figures into channels: unit of each, canonical values, and what looks wrong about them. */
final class Channels {

    private final String file;
    private final RideOptions options;
    private final int headingLine;
    private final List<Issue> issues = new ArrayList<>();
    private Optional<Unit> temperatures = Optional.empty();

    Channels(String file, RideOptions options, int headingLine) {
        this.file = file;
        this.options = options;
        this.headingLine = headingLine;
    }

    List<Issue> issues() {
        return issues;
    }

    /** The finished channels, in file order. */
    List<Channel> of(List<Draft> drafts) {
        RoleGuess roles = new RoleGuess(file, options, headingLine);
        roles.assign(drafts);
        issues.addAll(roles.issues());
        temperatures = temperatures(drafts);
        MixtureUnits mixtures = new MixtureUnits(this, options);
        for (Draft draft : drafts) {
            if (draft.role == Role.OTHER) {
                draft.unit = statedUnit(draft).orElse(Unit.ONE);
            } else if (draft.role.isMixture() || draft.role == Role.COMMANDED_LAMBDA) {
                mixtures.convert(draft);
            } else if (draft.role == Role.THROTTLE) {
                new ThrottleUnit(this).convert(draft, chosenUnit(draft));
            } else {
                draft.toCanonical(UnitChoice.of(draft, chosenUnit(draft), this));
                trimAsFactor(draft);
            }
            if (draft.confidence != Confidence.LEFT_OUT) {
                Plausible.dropImpossible(draft, this);
            }
        }
        new GaugePressure(this).convert(drafts);
        return drafts.stream().map(Draft::channel).toList();
    }

    /** The unit that temperatures of this file are in, by those that state theirs, or whose figures leave no choice; empty where that isn't one. */
    private Optional<Unit> temperatures(List<Draft> drafts) {
        List<Unit> units = drafts.stream()
                .filter(d -> d.role == Role.COOLANT || d.role == Role.INTAKE_AIR)
                .filter(d -> d.stats.count() > 0)
                .flatMap(d -> chosenUnit(d).or(() -> UnitChoice.onlyTemperature(d)).stream())
                .distinct()
                .toList();
        return units.size() == 1 ? Optional.of(units.get(0)) : Optional.empty();
    }

    /** The unit of the file's other temperatures. */
    Optional<Unit> temperatures() {
        return temperatures;
    }

    /** A trim that stays about 1 is a factor, not a percentage: 1.08 is 8 % more fuel. */
    private void trimAsFactor(Draft draft) {
        boolean trim = draft.role == Role.SHORT_TRIM || draft.role == Role.LONG_TRIM;
        Stats stats = draft.stats;
        if (!trim || draft.said || isSaid(draft) || stats.distinct() < 4 || stats.p02() < 0.5 || stats.p98() > 1.6) {
            return;
        }
        if (statedUnit(draft).isPresent()) {
            doubt(draft, "stays about 1: a factor rather than %?", "choose % by hand if it is right");
        } else {
            draft.scale(100, -100);
            doubt(
                    draft,
                    "stays about 1: read as a factor, 1.01 being 1 % more fuel",
                    "choose % by hand if that is wrong");
        }
    }

    /** What the user or the file says the unit is; the user's word first. */
    Optional<Unit> chosenUnit(Draft draft) {
        Dimension wanted = draft.role.dimension();
        return statedUnit(draft)
                .filter(u -> u.dimension() == wanted
                        || u.dimension() == Dimension.VOLTAGE
                        || u == Unit.PERCENT && wanted == Dimension.NUMBER);
    }

    private Optional<Unit> statedUnit(Draft draft) {
        Optional<Unit> said = options.unitOf(draft.heading);
        if (said.isPresent()) {
            return said;
        }
        Optional<Unit> glued = Heading.unitOf(draft.form.suffix());
        return draft.heading.unit().or(() -> glued);
    }

    boolean isSaid(Draft draft) {
        return options.unitOf(draft.heading).isPresent();
    }

    /** A warning about a channel; {@code what} follows its heading. */
    void warn(Draft draft, String what, String todo) {
        issues.add(Say.doubt(file, headingLine, draft.column + 1, draft.heading.text(), what, todo));
    }

    void note(String what) {
        issues.add(Say.note(file, what));
    }

    /** Marks a draft as worth a look and warns. */
    void doubt(Draft draft, String what, String todo) {
        if (draft.confidence == Confidence.SURE && !draft.said) {
            draft.confidence = Confidence.LOOK;
        }
        draft.say(what);
        warn(draft, what, todo);
    }
}
