package fuelwright.ride;

/**
 * The rows of a log as figures, before anything is known of their meaning.
 *
 * @param rows how many
 * @param columns one array a column, each at least {@code rows} long; NaN is missing. Owned by the holder, may be modified
 * @param lines the line of each row
 * @param restarts rows before which a repeated heading stood, ascending
 * @param log what wasn't read
 */
record RawTable(int rows, double[][] columns, LineMap lines, IntList restarts, RowLog log) {}
