package fuelwright.ride;

import fuelwright.unit.Unit;
import java.util.Objects;

/**
 * A column of a ride with its meaning.
 *
 * @param heading the heading as the file has it
 * @param role what it means
 * @param unit the unit that the file's figures are in; {@code values} are already in the role's canonical unit
 * @param values canonical values, as many as the ride has rows
 * @param confidence how sure the role is
 * @param remark why the role and unit were chosen, or why the channel is left out; one sentence, may be empty
 */
public record Channel(String heading, Role role, Unit unit, Column values, Confidence confidence, String remark) {

    /** How sure a role is. */
    public enum Confidence {
        /** Name, unit and values agree, or the user said so. */
        SURE,
        /** Used, but worth a look. */
        LOOK,
        /** Not used for anything. */
        LEFT_OUT
    }

    public Channel {
        Objects.requireNonNull(heading, "heading");
        Objects.requireNonNull(role, "role");
        Objects.requireNonNull(unit, "unit");
        Objects.requireNonNull(values, "values");
        Objects.requireNonNull(confidence, "confidence");
        Objects.requireNonNull(remark, "remark");
    }
}
