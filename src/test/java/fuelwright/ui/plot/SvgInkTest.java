package fuelwright.ui.plot;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.StringReader;
import javafx.geometry.VPos;
import javafx.scene.paint.Color;
import javafx.scene.text.TextAlignment;
import javax.xml.parsers.DocumentBuilderFactory;
import org.junit.jupiter.api.Test;
import org.w3c.dom.Document;
import org.w3c.dom.Element;
import org.xml.sax.InputSource;

/** Checked by the XML parser of the JDK, and by what SVG 1.1 says of the attributes. */
class SvgInkTest {

    private static Document parsed(SvgInk ink) throws Exception {
        return DocumentBuilderFactory.newInstance()
                .newDocumentBuilder()
                .parse(new InputSource(new StringReader(ink.document())));
    }

    @Test
    void aPictureIsWellFormedWhateverTheTextHolds() throws Exception {
        SvgInk ink = new SvgInk(100, 50, Color.WHITE);
        ink.setTextAlign(TextAlignment.RIGHT);
        ink.setTextBaseline(VPos.CENTER);
        String text = "a < b & \"c\" > d ± λ";
        ink.fillText(text + "\u0001", 10, 20);
        Element found = (Element) parsed(ink).getElementsByTagName("text").item(0);
        assertEquals(text, found.getTextContent());
        assertEquals("end", found.getAttribute("text-anchor"));
    }

    @Test
    void clipsAndTurnsEndWhereTheyWereKept() throws Exception {
        SvgInk ink = new SvgInk(100, 50, Color.WHITE);
        ink.save();
        ink.beginPath();
        ink.rect(0, 0, 10, 10);
        ink.clip();
        ink.translate(5, 5);
        ink.rotate(90);
        ink.strokeLine(0, 0, 5, 5);
        ink.restore();
        ink.strokeLine(1, 1, 2, 2);
        Document document = parsed(ink);
        Element inside = (Element) document.getElementsByTagName("line").item(0);
        Element outside = (Element) document.getElementsByTagName("line").item(1);
        assertEquals("rotate(90)", ((Element) inside.getParentNode()).getAttribute("transform"));
        assertEquals("svg", outside.getParentNode().getNodeName());
    }

    @Test
    void coloursLinesAndSeeThroughAreKept() throws Exception {
        SvgInk ink = new SvgInk(100, 50, Color.WHITE);
        ink.setStroke(Color.web("#b35806", 0.5));
        ink.setLineWidth(2.5);
        ink.setLineDashes(4, 2);
        ink.strokePolyline(new double[] {0, 1, 2}, new double[] {3, 4, 5}, 2);
        Element line = (Element) parsed(ink).getElementsByTagName("polyline").item(0);
        assertEquals("0,3 1,4", line.getAttribute("points"));
        assertEquals("#b35806", line.getAttribute("stroke"));
        assertEquals("0.50", line.getAttribute("stroke-opacity"));
        assertEquals("2.50", line.getAttribute("stroke-width"));
        assertEquals("4 2", line.getAttribute("stroke-dasharray"));
        assertTrue(ink.document().startsWith("<?xml"));
    }
}
