package fuelwright.handover;

import freemarker.core.HTMLOutputFormat;
import freemarker.template.Configuration;
import freemarker.template.Template;
import freemarker.template.TemplateException;
import freemarker.template.TemplateExceptionHandler;
import java.io.IOException;
import java.io.StringWriter;
import java.io.UncheckedIOException;
import java.util.Locale;

/**
 * The report for the owner: one HTML file that needs no network, readable on a phone, printable on A4 and Letter. Everything that comes from
 * the job is escaped by the template engine.
 */
final class Report {

    private static final String TEMPLATE = "report.ftlh";

    private Report() {}

    static String write(Handed handed) {
        StringWriter text = new StringWriter();
        try {
            template().process(ReportContent.of(handed), text);
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        } catch (TemplateException e) {
            throw new IllegalStateException("the report's template fails: " + e.getMessage(), e);
        }
        return text.toString();
    }

    private static Template template() throws IOException {
        Configuration configuration = new Configuration(Configuration.VERSION_2_3_34);
        configuration.setClassForTemplateLoading(Report.class, "");
        configuration.setDefaultEncoding("UTF-8");
        configuration.setLocale(Locale.ROOT);
        configuration.setNumberFormat("computer");
        configuration.setOutputFormat(HTMLOutputFormat.INSTANCE);
        configuration.setTemplateExceptionHandler(TemplateExceptionHandler.RETHROW_HANDLER);
        configuration.setLogTemplateExceptions(false);
        return configuration.getTemplate(TEMPLATE);
    }
}
