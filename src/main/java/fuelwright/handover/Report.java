package fuelwright.handover;

import java.util.Map;

/** The report for the owner: one HTML file that needs no network, readable on a phone, printable on A4 and Letter. */
final class Report {

    private static final String TEMPLATE = "report.ftlh";

    private Report() {}

    static String write(Handed handed) {
        return Template.write(TEMPLATE, content(handed, false));
    }

    /** The report as the PDF is made from. */
    static String forPaper(Handed handed) {
        return Template.write(TEMPLATE, content(handed, true));
    }

    private static Map<String, Object> content(Handed handed, boolean paper) {
        Map<String, Object> content = ReportContent.of(handed);
        content.put("paper", paper);
        return content;
    }
}
