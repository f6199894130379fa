package gradepost.render;

import gradepost.render.chart.TemplateFault;
import java.util.LinkedHashMap;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.regex.MatchResult;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.w3c.dom.Element;
import org.w3c.dom.NamedNodeMap;
import org.w3c.dom.Node;

/**
 * What markup and styles would load from elsewhere: a paper is whole in itself, so that it says the
 * same everywhere and tells nobody that it is read. Only {@code data:} and places of the page are
 * taken; a link that somebody may follow loads nothing.
 */
final class Loads {
  private static final Set<String> LINKS = Set.of("a", "bookmark");
  private static final Set<String> NEVER =
      Set.of("script", "link", "iframe", "frame", "base", "embed", "applet");
  private static final Set<String> ADDRESSES =
      Set.of("src", "srcset", "href", "xlink:href", "data", "poster", "background", "action");
  private static final Pattern ESCAPE = Pattern.compile("\\\\([0-9a-fA-F]{1,6})\\s?");
  private static final Pattern STYLE =
      Pattern.compile(
          "@import\\b[^;]*|(?:url|src)\\(\\s*['\"]?(?!data:|#|\\s*['\"]?\\s*\\))[^)]*|image-set\\([^)]*",
          Pattern.CASE_INSENSITIVE);

  /** Refuses an element that loads. */
  static void refuse(Element element) throws TemplateFault {
    String name = element.getNodeName().toLowerCase(Locale.ROOT);
    Map<String, String> attributes = new LinkedHashMap<>();
    NamedNodeMap all = element.getAttributes();
    for (int i = 0; i < all.getLength(); i++) {
      Node attribute = all.item(i);
      attributes.put(attribute.getNodeName().toLowerCase(Locale.ROOT), attribute.getNodeValue());
    }
    refuse(name, attributes);
    if (name.equals("style")) {
      refuse(element.getTextContent());
    }
  }

  /**
   * Refuses an element of this name with these attributes, if it loads.
   *
   * @param attributes by their names in lower case
   */
  static void refuse(String name, Map<String, String> attributes) throws TemplateFault {
    if (NEVER.contains(name) || (attributes.containsKey("http-equiv") && !policy(attributes))) {
      throw fault("<" + name + ">");
    }
    for (Map.Entry<String, String> attribute : attributes.entrySet()) {
      String key = attribute.getKey();
      String value = attribute.getValue().strip();
      boolean address = ADDRESSES.contains(key) && !(key.equals("href") && LINKS.contains(name));
      if (address && !within(value)) {
        throw fault(value);
      } else if (key.startsWith("on")) {
        throw fault(key);
      } else if (key.equals("style")) {
        refuse(value);
      }
    }
  }

  /** Refuses styles that load. */
  static void refuse(String styles) throws TemplateFault {
    Matcher plain = ESCAPE.matcher(styles.replaceAll("(?s)/\\*.*?\\*/", ""));
    Optional<String> found =
        STYLE
            .matcher(plain.replaceAll(m -> Matcher.quoteReplacement(character(m.group(1)))))
            .results()
            .findFirst()
            .map(MatchResult::group);
    if (found.isPresent()) {
      throw fault(found.get());
    }
  }

  private static String character(String hexadecimal) {
    int code = Integer.parseInt(hexadecimal, 16);
    return Character.isValidCodePoint(code) ? Character.toString(code) : "";
  }

  /** A rule of what may be loaded can only make it less. */
  private static boolean policy(Map<String, String> attributes) {
    return "Content-Security-Policy".equalsIgnoreCase(attributes.get("http-equiv"));
  }

  /** Whether an address is of the page itself. */
  static boolean within(String address) {
    return address.isEmpty() || address.startsWith("#") || address.startsWith("data:");
  }

  /** What is said of an address that is not. */
  static TemplateFault fault(String address) {
    String line = address.replaceAll("\\s+", " ").strip();
    return new TemplateFault(
        "the templates load from outside the paper: %s; allowed: data: in the paper itself"
            .formatted(line.length() > 80 ? line.substring(0, 80) + "…" : line));
  }

  private Loads() {}
}
