package fuelwright.ui.plot;

import fuelwright.ui.theme.Words;
import java.util.ArrayList;
import java.util.List;
import java.util.function.Function;
import java.util.stream.IntStream;
import javafx.geometry.Point2D;
import javafx.geometry.Rectangle2D;

/** Which Stops lie beyond what is in sight of a map that scrolls. Pure. */
final class StopsBeyond {

    private StopsBeyond() {}

    /**
     * How many there are in each direction, in words; empty where all are seen.
     *
     * @param middleOf where a cell's middle is on the whole map
     * @param seen the part of it that is in sight, without the axes
     */
    static String words(HeatMap map, Function<Integer, Point2D> middleOf, Rectangle2D seen) {
        List<Point2D> stops = IntStream.range(0, map.cells().size())
                .filter(c -> map.cells().get(c).stop())
                .mapToObj(middleOf::apply)
                .toList();
        List<String> all = new ArrayList<>();
        say(all, "right", stops.stream().filter(p -> p.getX() > seen.getMaxX()).count());
        say(all, "left", stops.stream().filter(p -> p.getX() < seen.getMinX()).count());
        say(all, "up", stops.stream().filter(p -> p.getY() < seen.getMinY()).count());
        say(all, "down", stops.stream().filter(p -> p.getY() > seen.getMaxY()).count());
        return String.join("   ", all);
    }

    private static void say(List<String> all, String way, long count) {
        if (count > 0) {
            all.add(Words.of("grid.stops." + way, count));
        }
    }
}
