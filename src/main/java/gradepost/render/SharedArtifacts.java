package gradepost.render;

import org.apache.pdfbox.cos.COSDictionary;
import org.apache.pdfbox.cos.COSName;
import org.apache.pdfbox.pdmodel.PDDocument;
import org.apache.pdfbox.pdmodel.PDPage;
import org.apache.pdfbox.pdmodel.PDResources;
import org.apache.pdfbox.pdmodel.common.PDRectangle;

/**
 * The property lists by which a page says what of it is no content: rules and shades, and running
 * heads. The layout library makes a new one with a box of its own for every cell and line, ten
 * thousand in a pack, and looks each up among all others; here two stand for all.
 */
final class SharedArtifacts extends COSDictionary {
  private static final COSName RULES = COSName.getPDFName("Rules");
  private static final COSName RUNNING = COSName.getPDFName("Running");
  private static final COSName PAGINATION = COSName.getPDFName("Pagination");

  SharedArtifacts() {
    setItem(RULES, of(COSName.getPDFName("Layout")));
    setItem(RUNNING, of(PAGINATION));
  }

  private static COSDictionary of(COSName type) {
    COSDictionary artifact = new COSDictionary();
    artifact.setItem(COSName.TYPE, type);
    artifact.setDirect(true);
    return artifact;
  }

  /** A new page whose artifacts are these. */
  PDPage page(PDDocument document, float width, float height) {
    COSDictionary resources = new COSDictionary();
    resources.setItem(COSName.PROPERTIES, this);
    PDPage page = new PDPage(new PDRectangle(width, height));
    page.setResources(new PDResources(resources));
    document.addPage(page);
    return page;
  }

  @Override
  public boolean containsValue(Object value) {
    return value instanceof COSDictionary list && list.containsKey(COSName.TYPE);
  }

  @Override
  public COSName getKeyForValue(Object value) {
    return value instanceof COSDictionary list && PAGINATION.equals(list.getCOSName(COSName.TYPE))
        ? RUNNING
        : RULES;
  }
}
