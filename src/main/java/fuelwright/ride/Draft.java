package fuelwright.ride;

import fuelwright.ride.Channel.Confidence;
import fuelwright.unit.Unit;

/** A channel while it is being decided. */
final class Draft {

    final int column;
    final Heading heading;
    final ColumnForm form;
    final double[] values;
    final Stats stats;
    Role role = Role.OTHER;
    Unit unit = Unit.ONE;
    Confidence confidence = Confidence.LEFT_OUT;
    String remark = "";
    int strength;
    boolean said;

    Draft(int column, Heading heading, ColumnForm form, double[] values) {
        this.column = column;
        this.heading = heading;
        this.form = form;
        this.values = values;
        this.stats = Stats.of(values, values.length);
    }

    void leaveOut(String why) {
        confidence = Confidence.LEFT_OUT;
        say(why);
    }

    void look(String why) {
        confidence = confidence == Confidence.LEFT_OUT ? confidence : Confidence.LOOK;
        say(why);
    }

    void say(String more) {
        remark = remark.isEmpty() ? more : remark + "; " + more;
    }

    void scale(double factor, double offset) {
        for (int i = 0; i < values.length; i++) {
            values[i] = values[i] * factor + offset;
        }
    }

    void toCanonical(Unit from) {
        unit = from;
        if (from.toCanonical(1) != 1 || from.toCanonical(0) != 0) {
            for (int i = 0; i < values.length; i++) {
                values[i] = from.toCanonical(values[i]);
            }
        }
    }

    Channel channel() {
        return new Channel(heading.text(), role, unit, Column.owning(values), confidence, remark);
    }
}
