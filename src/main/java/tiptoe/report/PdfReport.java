package tiptoe.report;

import com.openhtmltopdf.outputdevice.helper.BaseRendererBuilder.FontStyle;
import com.openhtmltopdf.pdfboxout.PdfRendererBuilder;
import com.openhtmltopdf.svgsupport.BatikSVGDrawer;
import com.openhtmltopdf.util.XRLog;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.InputStream;
import java.util.function.Supplier;
import tiptoe.wording.RecordWording;

/** The HTML page as PDF, with its fonts inside. */
final class PdfReport {
  private static final String FONTS = "/net/sf/jasperreports/fonts/dejavu/";
  private static final String FAMILY = "DejaVu Sans";

  static {
    XRLog.setLoggingEnabled(false);
  }

  private PdfReport() {}

  static byte[] of(RecordWording findings) throws IOException {
    ByteArrayOutputStream pdf = new ByteArrayOutputStream();
    PdfRendererBuilder builder = new PdfRendererBuilder();
    builder.useFont(font("DejaVuSans.ttf"), FAMILY, 400, FontStyle.NORMAL, true);
    builder.useFont(font("DejaVuSans-Bold.ttf"), FAMILY, 700, FontStyle.NORMAL, true);
    builder.useFont(font("DejaVuSans-Oblique.ttf"), FAMILY, 400, FontStyle.ITALIC, true);
    builder.useSVGDrawer(new BatikSVGDrawer());
    // Nothing is ever fetched: the page refers to nothing outside itself.
    builder.useUriResolver((base, uri) -> null);
    builder.withHtmlContent(HtmlReport.of(findings), null);
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
