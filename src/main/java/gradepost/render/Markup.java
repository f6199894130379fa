package gradepost.render;

import gradepost.render.chart.Fonts;
import gradepost.render.chart.MissingGlyphException;
import gradepost.render.chart.TemplateFault;
import java.io.IOException;
import java.io.StringReader;
import javax.xml.XMLConstants;
import javax.xml.parsers.DocumentBuilder;
import javax.xml.parsers.DocumentBuilderFactory;
import javax.xml.parsers.ParserConfigurationException;
import org.w3c.dom.Document;
import org.w3c.dom.Element;
import org.w3c.dom.Node;
import org.xml.sax.InputSource;
import org.xml.sax.SAXException;
import org.xml.sax.SAXParseException;
import org.xml.sax.helpers.DefaultHandler;

/** Reads what the templates made, strictly, and checks that every character can be printed. */
final class Markup {
  private final DocumentBuilder builder;
  private final Fonts fonts;

  Markup(Fonts fonts) {
    this.fonts = fonts;
    try {
      DocumentBuilderFactory factory = DocumentBuilderFactory.newDefaultInstance();
      factory.setFeature(XMLConstants.FEATURE_SECURE_PROCESSING, true);
      factory.setFeature("http://apache.org/xml/features/disallow-doctype-decl", true);
      // All of it is walked anyway.
      factory.setFeature("http://apache.org/xml/features/dom/defer-node-expansion", false);
      builder = factory.newDocumentBuilder();
      builder.setErrorHandler(new DefaultHandler());
    } catch (ParserConfigurationException e) {
      throw new IllegalStateException(e);
    }
  }

  /**
   * @throws MissingGlyphException when the font lacks a character of the text
   */
  Document read(String markup) throws IOException {
    try {
      Document document = builder.parse(new InputSource(new StringReader(markup)));
      check(document.getDocumentElement());
      return document;
    } catch (SAXParseException e) {
      throw new TemplateFault(
          "the templates made markup that is not well formed, near \""
              + near(markup, e.getLineNumber(), e.getColumnNumber())
              + "\": "
              + e.getMessage(),
          e);
    } catch (SAXException e) {
      throw new TemplateFault(String.valueOf(e.getMessage()), e);
    }
  }

  private static String near(String markup, int line, int column) {
    String[] lines = markup.split("\n", -1);
    if (line < 1 || line > lines.length) {
      return "";
    }
    String text = lines[line - 1];
    int end = Math.min(text.length(), Math.max(0, column));
    return text.substring(Math.max(0, end - 60), end);
  }

  private void check(Node node) throws TemplateFault {
    for (Node child = node.getFirstChild(); child != null; child = child.getNextSibling()) {
      if (child.getNodeType() == Node.TEXT_NODE) {
        fonts.require(child.getNodeValue());
      } else if (child instanceof Element element) {
        Loads.refuse(element);
        if (!element.getNodeName().equals("style")) {
          check(element);
        }
      }
    }
  }
}
