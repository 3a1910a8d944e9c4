package fuelwright.handover;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import fuelwright.table.Axis;
import fuelwright.table.Quantity;
import fuelwright.table.Table;
import java.util.List;
import java.util.function.Consumer;
import org.junit.jupiter.api.Test;

class EntryCheckTest {

    private static final EntryDifference.Place HIGH = EntryDifference.Place.HIGH_LOAD;
    private static final EntryDifference.Place LIGHT = EntryDifference.Place.LIGHT_LOAD;

    private static final double STEP = 0.5;

    /** Efficiencies on steps of 0.5, no two cells alike. */
    private static Table table() {
        Axis speed = new Axis(Axis.Kind.ENGINE_SPEED, 1000, 2000, 3000, 4000, 5000);
        Axis load = new Axis(Axis.Kind.THROTTLE, 0, 20, 50, 100);
        double[] cells = {
            21.5, 25, 30.5, 34, 38.5, 43, 47.5, 52, 56.5, 60, 65.5, 69, 73.5, 78, 82.5, 87, 91.5, 96, 100.5, 105
        };
        return Table.of(Quantity.VOLUMETRIC_EFFICIENCY, speed, load, cells);
    }

    private static Table trims() {
        Table t = table();
        double[] cells = t.toArray();
        for (int c = 0; c < cells.length; c++) {
            cells[c] = cells[c] / 10 - 4;
        }
        return t.with(Quantity.FUEL_TRIM, cells);
    }

    private static List<EntryDifference> check(Table meant, Consumer<double[]> slip) {
        double[] cells = meant.toArray();
        slip.accept(cells);
        return EntryCheck.compare(meant, meant.withValues(cells), STEP, 0, c -> meant.loadAt(c) >= 60 ? HIGH : LIGHT);
    }

    private static void set(Table meant, int cell, double typed, Slip expected) {
        List<EntryDifference> found = check(meant, c -> c[cell] = typed);
        assertEquals(1, found.size());
        assertEquals(cell, found.get(0).cell());
        assertEquals(expected, found.get(0).slip(), found.toString());
    }

    @Test
    void entry01_what_was_meant_is_no_difference() {
        assertEquals(List.of(), check(table(), c -> {}));
    }

    @Test
    void entry02_less_than_a_step_is_rounding_and_a_whole_step_is_a_slip() {
        assertEquals(List.of(), check(table(), c -> c[3] += 0.49));
        assertEquals(1, check(table(), c -> c[3] += 0.5).size());
        assertEquals(1, check(table(), c -> c[3] -= 0.5).size());
    }

    @Test
    void entry03_without_a_step_any_difference_counts_but_not_how_it_is_written() {
        Table meant = table();
        double[] cells = meant.toArray();
        cells[2] = cells[2] * (1 + 1e-12);
        cells[5] += 0.01;
        List<EntryDifference> found = EntryCheck.compare(meant, meant.withValues(cells), 0, 0, c -> LIGHT);
        assertEquals(1, found.size());
        assertEquals(5, found.get(0).cell());
    }

    /** Hand-worked: 43 typed as 40 is 43/40 − 1 = 7.5 % less fuel for the same air, so lambda 7.5 % higher. */
    @Test
    void entry04_effect_on_mixture_is_meant_over_typed_fuel() {
        EntryDifference d = check(table(), c -> c[5] = 40).get(0);
        assertEquals(7.5, d.mixturePercent(), 1e-9);
        assertTrue(d.isLean());
        assertFalse(d.isStop());
    }

    /** Hand-worked: pulses 5 and 4 ms with 1 ms dead time deliver 4 and 3, 33.3 %; without dead time 25 %. */
    @Test
    void entry05_dead_time_makes_a_pulse_slip_bigger() {
        Table meant = table().with(Quantity.INJECTOR_PULSE, pulses(5));
        double[] typed = meant.toArray();
        typed[7] = 4;
        Table got = meant.withValues(typed);
        assertEquals(
                100.0 / 3,
                EntryCheck.compare(meant, got, 0, 1, c -> LIGHT).get(0).mixturePercent(),
                1e-9);
        assertEquals(25, EntryCheck.compare(meant, got, 0, 0, c -> LIGHT).get(0).mixturePercent(), 1e-9);
    }

    /** Hand-worked: trims compose, +10 % meant and −10 % typed is 1.1/0.9 − 1 = 22.2 % lean. */
    @Test
    void entry06_trims_compose() {
        Table meant = table().with(Quantity.FUEL_TRIM, pulses(10));
        double[] typed = meant.toArray();
        typed[7] = -10;
        EntryDifference d = EntryCheck.compare(meant, meant.withValues(typed), 0, 0, c -> LIGHT)
                .get(0);
        assertEquals(200.0 / 9, d.mixturePercent(), 1e-9);
        assertEquals(Slip.SIGN, d.slip());
    }

    @Test
    void entry07_a_cell_that_delivers_nothing_is_the_worst() {
        List<EntryDifference> found = check(table(), c -> {
            c[4] = 0;
            c[5] = 4.3;
        });
        assertEquals(4, found.get(0).cell());
        assertEquals(Double.POSITIVE_INFINITY, found.get(0).mixturePercent());
    }

    @Test
    void entry08_lean_at_high_load_comes_first_and_is_a_stop() {
        List<EntryDifference> found = check(table(), c -> {
            c[0] = 100;
            c[16] = 91;
            c[17] = 97;
        });
        assertEquals(16, found.get(0).cell());
        assertTrue(found.get(0).isStop());
        assertEquals(
                List.of(16, 0, 17), found.stream().map(EntryDifference::cell).toList());
        assertFalse(found.get(2).isStop(), "rich at high load is no Stop");
    }

    @Test
    void entry09_slips_of_one_figure_are_named() {
        set(table(), 6, 4.75, Slip.DECIMAL_POINT);
        set(table(), 6, 475, Slip.DECIMAL_POINT);
        set(table(), 6, 74.5, Slip.DIGITS_SWAPPED);
        set(table(), 6, 7.5, Slip.DIGIT_MISSING);
        set(table(), 6, 447.5, Slip.DIGIT_TOO_MANY);
        set(table(), 6, 0, Slip.NOT_TYPED);
        set(table(), 6, 67.5, Slip.ONE_DIGIT);
        set(table(), 6, 12, Slip.OTHER);
        set(table(), 6, 43, Slip.NEIGHBOUR);
        set(table(), 6, 25, Slip.NEIGHBOUR);
        set(trims(), 0, 1.85, Slip.SIGN);
    }

    @Test
    void entry10_swapped_neighbours_are_named_with_the_other_place() {
        List<EntryDifference> found = check(table(), c -> {
            c[6] = 52;
            c[7] = 47.5;
        });
        assertEquals(2, found.size());
        found.forEach(d -> assertEquals(Slip.SWAPPED, d.slip()));
        assertTrue(found.stream().anyMatch(d -> d.detail().equals("swapped with 3000 rpm, 20 %")), found.toString());
    }

    @Test
    void entry11_a_line_shifted_by_one_is_named() {
        List<EntryDifference> on = check(table(), c -> {
            for (int i = 9; i > 5; i--) {
                c[i] = c[i - 1];
            }
            c[5] = 11;
        });
        assertEquals(5, on.size());
        on.forEach(d -> assertEquals(Slip.LINE_SHIFTED, d.slip(), d.toString()));
        assertEquals("figures of the line of 20 % are shifted one on", on.get(0).detail());
        List<EntryDifference> back = check(table(), c -> System.arraycopy(c.clone(), 6, c, 5, 4));
        back.forEach(d -> assertEquals(Slip.LINE_SHIFTED, d.slip(), d.toString()));
        assertEquals(
                "figures of the line of 20 % are shifted one back", back.get(0).detail());
    }

    @Test
    void entry12_a_column_shifted_by_one_is_named() {
        List<EntryDifference> found = check(table(), c -> {
            c[17] = c[12];
            c[12] = c[7];
            c[7] = c[2];
            c[2] = 11;
        });
        found.forEach(d -> assertEquals(Slip.LINE_SHIFTED, d.slip(), d.toString()));
        assertEquals(
                "figures of the line of 3000 rpm are shifted one on",
                found.get(0).detail());
    }

    @Test
    void entry13_another_lines_figures_are_named_and_so_are_swapped_lines() {
        List<EntryDifference> wrong = check(table(), c -> System.arraycopy(c.clone(), 10, c, 5, 5));
        wrong.forEach(d -> assertEquals(Slip.WRONG_LINE, d.slip()));
        assertEquals("the line of 20 % holds the figures of 50 %", wrong.get(0).detail());
        List<EntryDifference> swapped = check(table(), c -> {
            double[] before = c.clone();
            for (int row = 0; row < 4; row++) {
                c[row * 5 + 1] = before[row * 5 + 3];
                c[row * 5 + 3] = before[row * 5 + 1];
            }
        });
        assertEquals(8, swapped.size());
        swapped.forEach(d -> assertEquals(Slip.LINE_SWAPPED, d.slip()));
        assertTrue(swapped.get(0).detail().endsWith("are swapped"));
    }

    @Test
    void entry14_a_slip_elsewhere_in_a_shifted_line_is_still_found() {
        List<EntryDifference> found = check(table(), c -> {
            System.arraycopy(c.clone(), 5, c, 6, 4);
            c[19] = 50.1;
        });
        assertEquals(5, found.size());
        assertEquals(19, found.get(0).cell());
        assertTrue(found.get(0).isStop());
    }

    @Test
    void entry15_a_target_slip_is_lean_where_lambda_is_higher() {
        Table meant = table().with(Quantity.LAMBDA, pulses(0.9));
        double[] typed = meant.toArray();
        typed[3] = 0.99;
        EntryDifference d = EntryCheck.compare(meant, meant.withValues(typed), 0, 0, c -> HIGH)
                .get(0);
        assertEquals(10, d.mixturePercent(), 1e-9);
        assertTrue(d.isStop());
    }

    @Test
    void entry16_tables_that_cant_be_compared_are_a_programmers_mistake() {
        Table other = Table.of(
                Quantity.VOLUMETRIC_EFFICIENCY,
                new Axis(Axis.Kind.ENGINE_SPEED, 1000, 2000),
                new Axis(Axis.Kind.THROTTLE, 0, 100),
                new double[] {1, 2, 3, 4});
        assertFalse(EntryCheck.comparable(table(), other));
        assertThrows(IllegalArgumentException.class, () -> EntryCheck.compare(table(), other, 0, 0, c -> LIGHT));
    }

    private static double[] pulses(double value) {
        double[] cells = new double[20];
        java.util.Arrays.fill(cells, value);
        return cells;
    }

    private static Slip whole(java.util.function.IntUnaryOperator from) {
        Table meant = table();
        List<EntryDifference> found = check(meant, c -> {
            for (int k = 0; k < c.length; k++) {
                c[k] = meant.at(from.applyAsInt(k));
            }
        });
        assertEquals(1, found.stream().map(EntryDifference::slip).distinct().count(), found.toString());
        return found.get(0).slip();
    }

    @Test
    void entry_a_table_typed_the_wrong_way_round_is_named_as_such() {
        Table t = table();
        assertEquals(Slip.MIRRORED, whole(c -> t.cell(t.loadIndex(c), 4 - t.speedIndex(c))));
        assertEquals(Slip.MIRRORED, whole(c -> t.cell(3 - t.loadIndex(c), t.speedIndex(c))));
        assertEquals(Slip.MIRRORED, whole(c -> 19 - c));
    }

    @Test
    void entry_what_the_hardware_held_before_tells_a_cell_passed_over_and_the_old_table() {
        Table meant = table();
        double[] before = meant.toArray();
        for (int c = 0; c < before.length; c++) {
            before[c] -= 7.5;
        }
        Table old = meant.withValues(before);
        double[] typed = meant.toArray();
        typed[6] = before[6];
        List<EntryDifference> missed =
                EntryCheck.compare(meant, meant.withValues(typed), java.util.Optional.of(old), STEP, 0, c -> LIGHT);
        assertEquals(
                List.of(Slip.OLD_FIGURE),
                missed.stream().map(EntryDifference::slip).toList());
        List<EntryDifference> all = EntryCheck.compare(meant, old, java.util.Optional.of(old), STEP, 0, c -> LIGHT);
        assertEquals(meant.cells(), all.size());
        assertTrue(all.stream().allMatch(d -> d.slip() == Slip.OLD_TABLE));
    }

    /** Hand-worked: a multiplier of 1.20 left at 1 is 1.20/1 − 1 = 20 % lean. */
    @Test
    void entry_a_multiplier_left_at_one_was_not_typed() {
        Table meant = table().with(Quantity.MULTIPLIER, pulses(1.2));
        double[] typed = meant.toArray();
        typed[7] = 1;
        EntryDifference d = EntryCheck.compare(meant, meant.withValues(typed), 0.01, 0, c -> HIGH)
                .get(0);
        assertEquals(Slip.NOT_TYPED, d.slip());
        assertEquals(20, d.mixturePercent(), 1e-9);
        assertTrue(d.isStop());
    }

    @Test
    void entry_pasted_cells_without_headings_take_the_meant_tables_breakpoints_in_either_layout() {
        Table meant = table();
        StringBuilder down = new StringBuilder();
        StringBuilder across = new StringBuilder();
        for (int i = 0; i < 5; i++) {
            for (int j = 0; j < 4; j++) {
                down.append(j == 0 ? "" : "\t")
                        .append(String.valueOf(meant.at(meant.cell(j, i))).replace('.', ','));
            }
            down.append("\r\n");
        }
        for (int j = 0; j < 4; j++) {
            for (int i = 0; i < 5; i++) {
                across.append(i == 0 ? "" : ";").append(meant.at(meant.cell(j, i)));
            }
            across.append('\n');
        }
        for (String text : List.of(down.toString(), across.toString())) {
            var bare = fuelwright.table.BareCells.read(
                            "pasted", text.getBytes(java.nio.charset.StandardCharsets.UTF_8), meant)
                    .orElseThrow();
            assertEquals(meant, bare.value().orElseThrow());
            assertTrue(bare.issues().get(0).what().contains("no breakpoints"));
        }
        String headed = fuelwright.table.TableWriter.write(meant);
        assertTrue(fuelwright.table.BareCells.read("t", headed.getBytes(java.nio.charset.StandardCharsets.UTF_8), meant)
                .isEmpty());
    }
}
