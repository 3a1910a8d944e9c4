package fuelwright.handover;

/** The report for the owner: one HTML file that needs no network, readable on a phone, printable on A4 and Letter. */
final class Report {

    private static final String TEMPLATE = "report.ftlh";

    private Report() {}

    static String write(Handed handed) {
        return Template.write(TEMPLATE, ReportContent.of(handed));
    }
}
