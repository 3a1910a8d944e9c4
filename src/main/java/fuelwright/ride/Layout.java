package fuelwright.ride;

import fuelwright.issue.Issue;
import java.util.List;

/**
 * Where the table of figures is in a file, and how its columns are written.
 *
 * @param dialect how the file is written
 * @param headings one a column
 * @param headingFields the heading row's fields as they stand, to know it again
 * @param unitFields the units row's fields, empty where there is no such row
 * @param forms one a column
 * @param dataStart where in the bytes the first row starts
 * @param dataLine 1-based line of the first row
 * @param headingLine 1-based line of the headings
 * @param usualWidth how many fields a row usually has
 * @param shortRowsUsual whether many rows have fewer: then a short row isn't taken for a cut one
 * @param baseDay the day that dated times count from, days since 1970-01-01
 * @param issues what was decided and doubted
 */
record Layout(
        Dialect dialect,
        List<Heading> headings,
        List<String> headingFields,
        List<String> unitFields,
        List<ColumnForm> forms,
        long dataStart,
        int dataLine,
        int headingLine,
        int usualWidth,
        boolean shortRowsUsual,
        long baseDay,
        List<Issue> issues) {

    int columns() {
        return headings.size();
    }
}
