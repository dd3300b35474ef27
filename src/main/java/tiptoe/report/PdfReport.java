package tiptoe.report;

import com.openhtmltopdf.outputdevice.helper.BaseRendererBuilder.FontStyle;
import com.openhtmltopdf.pdfboxout.PdfRendererBuilder;
import com.openhtmltopdf.svgsupport.BatikSVGDrawer;
import com.openhtmltopdf.util.XRLog;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.InputStream;
import java.util.List;
import java.util.function.Supplier;
import org.apache.pdfbox.Loader;
import org.apache.pdfbox.pdmodel.PDDocument;
import org.apache.pdfbox.text.PDFTextStripper;
import tiptoe.wording.RecordWording;

/** The HTML page as PDF, with its fonts inside. */
final class PdfReport {
  private static final String FONTS = "/net/sf/jasperreports/fonts/dejavu/";
  private static final String FAMILY = "DejaVu Sans";

  static {
    XRLog.setLoggingEnabled(false);
  }

  private PdfReport() {}

  /** Fewer lines than these on the last page are better brought on the one before. */
  private static final int FEW_LINES = 6;

  /** Of what stands at the head and the foot of every page. */
  private static final int MARGIN_LINES = 4;

  /** The page at the first of these spacings that leaves no page all but empty. */
  private static final List<String> SPACINGS = List.of("", "close", "wide");

  static byte[] of(RecordWording findings) throws IOException {
    if (findings.isWell()) {
      byte[] brief = print(withWordsOfFigures(HtmlReport.brief(findings)));
      if (pages(brief) == 1) {
        return brief;
      }
    }
    String html = withWordsOfFigures(HtmlReport.of(findings));
    byte[] first = null;
    for (String spacing : SPACINGS) {
      byte[] pdf = print(html.replace("<body>", "<body class=\"" + spacing + "\">"));
      first = first == null ? pdf : first;
      if (!endsAlmostEmpty(pdf)) {
        return pdf;
      }
    }
    return first;
  }

  /** What the library takes for the words of a figure. */
  private static String withWordsOfFigures(String html) {
    return html.replace("role=\"img\" aria-label=", "alt=");
  }

  private static int pages(byte[] pdf) throws IOException {
    try (PDDocument document = Loader.loadPDF(pdf)) {
      return document.getNumberOfPages();
    }
  }

  private static boolean endsAlmostEmpty(byte[] pdf) throws IOException {
    try (PDDocument document = Loader.loadPDF(pdf)) {
      PDFTextStripper text = new PDFTextStripper();
      text.setStartPage(document.getNumberOfPages());
      long lines = text.getText(document).lines().filter(line -> !line.isBlank()).count();
      return document.getNumberOfPages() > 1 && lines < FEW_LINES + MARGIN_LINES;
    }
  }

  static byte[] print(String html) throws IOException {
    ByteArrayOutputStream pdf = new ByteArrayOutputStream();
    PdfRendererBuilder builder = new PdfRendererBuilder();
    builder.useFont(font("DejaVuSans.ttf"), FAMILY, 400, FontStyle.NORMAL, true);
    builder.useFont(font("DejaVuSans-Bold.ttf"), FAMILY, 700, FontStyle.NORMAL, true);
    builder.useFont(font("DejaVuSans-Oblique.ttf"), FAMILY, 400, FontStyle.ITALIC, true);
    builder.useSVGDrawer(new BatikSVGDrawer());
    // Nothing is ever fetched: the page refers to nothing outside itself.
    builder.useUriResolver((base, uri) -> null);
    builder.withHtmlContent(html, null);
    builder.usePdfUaAccessibility(true);
    builder.withProducer("Tiptoe");
    builder.toStream(pdf);
    try {
      builder.run();
    } catch (VirtualMachineError e) {
      throw e;
    } catch (Error e) {
      // The runtime raises a plain Error, or one of linking, where a machine has no fonts to draw
      // with.
      throw new IOException("the fonts of this machine could not be used: " + e.getMessage(), e);
    }
    return pdf.toByteArray();
  }

  private static com.openhtmltopdf.extend.FSSupplier<InputStream> font(String file) {
    Supplier<InputStream> stream = () -> PdfReport.class.getResourceAsStream(FONTS + file);
    return stream::get;
  }
}
