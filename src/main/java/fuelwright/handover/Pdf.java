package fuelwright.handover;

import com.openhtmltopdf.outputdevice.helper.BaseRendererBuilder.FontStyle;
import com.openhtmltopdf.pdfboxout.PdfBoxRenderer;
import com.openhtmltopdf.pdfboxout.PdfRendererBuilder;
import com.openhtmltopdf.svgsupport.BatikSVGDrawer;
import com.openhtmltopdf.util.XRLog;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.util.Calendar;
import java.util.GregorianCalendar;
import java.util.Locale;
import java.util.Objects;
import java.util.TimeZone;
import java.util.logging.Level;
import java.util.logging.Logger;
import org.apache.pdfbox.pdmodel.PDDocument;

/**
 * A well-formed page as PDF. The same page gives the same bytes: dates and id are fixed. Nothing is fetched, from the network or from the
 * disk: the font comes with the program, pictures stand in the page.
 */
final class Pdf {

    /** The name by which a page asks for the program's own font. */
    static final String FONT = "Sheet";

    private static final String FONT_FOLDER = "/net/sf/jasperreports/fonts/dejavu/";
    private static final String REGULAR = FONT_FOLDER + "DejaVuSansCondensed.ttf";
    private static final String BOLD = FONT_FOLDER + "DejaVuSansCondensed-Bold.ttf";
    private static final int NORMAL_WEIGHT = 400;
    private static final int BOLD_WEIGHT = 700;

    /** It warns of fonts that no page of ours uses. Held on to, or the logger would be collected with its level. */
    private static final Logger LIBRARY = Logger.getLogger("org.apache.pdfbox");

    static {
        LIBRARY.setLevel(Level.SEVERE);
    }

    private Pdf() {}

    static byte[] of(String page) {
        XRLog.setLoggingEnabled(false);
        ByteArrayOutputStream bytes = new ByteArrayOutputStream();
        PdfRendererBuilder builder = new PdfRendererBuilder();
        builder.useFastMode();
        builder.useUriResolver((base, uri) -> null);
        builder.useSVGDrawer(new BatikSVGDrawer());
        builder.useFont(() -> font(REGULAR), FONT, NORMAL_WEIGHT, FontStyle.NORMAL, true);
        builder.useFont(() -> font(BOLD), FONT, BOLD_WEIGHT, FontStyle.NORMAL, true);
        builder.withProducer("Fuelwright");
        builder.withHtmlContent(page, null);
        builder.toStream(bytes);
        try (PdfBoxRenderer renderer = builder.buildPdfRenderer()) {
            renderer.layout();
            renderer.createPDFWithoutClosing();
            try (PDDocument document = renderer.getPdfDocument()) {
                document.getDocumentInformation().setCreationDate(beginning());
                document.getDocumentInformation().setModificationDate(beginning());
                document.setDocumentId(0L);
                document.save(bytes);
            }
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
        return bytes.toByteArray();
    }

    private static InputStream font(String name) {
        return Objects.requireNonNull(Pdf.class.getResourceAsStream(name), name);
    }

    /** A date that says nothing. */
    private static Calendar beginning() {
        Calendar calendar = new GregorianCalendar(TimeZone.getTimeZone("UTC"), Locale.ROOT);
        calendar.clear();
        calendar.set(2000, Calendar.JANUARY, 1);
        return calendar;
    }
}
