package gradepost.text;

import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.TreeMap;
import java.util.TreeSet;

/**
 * A catalogue of mistakes. Each has a key, and under it the sentences {@code .what} was found,
 * {@code .allowed} and {@code .maybe}, of which the last two may be missing. Each is declared once,
 * with the holes that it has: what fills them is then checked by the compiler. Beside them may
 * stand phrases, each under its bare key, which fill holes of other texts.
 */
public final class Mistakes {
  /** The file that lies beside the class which declares them. */
  public static final String FILE = "mistakes.properties";

  private static final List<String> SENTENCES = List.of(".what", ".allowed", ".maybe");

  private final Catalogue catalogue;
  private final Set<String> declared = new TreeSet<>();
  private final Set<String> phrases = new TreeSet<>();

  private Mistakes(Catalogue catalogue) {
    this.catalogue = catalogue;
  }

  /** The mistakes of the file {@value #FILE} beside a class. */
  public static Mistakes beside(Class<?> neighbour) {
    return of(Catalogue.beside(neighbour, FILE));
  }

  /** The mistakes of a file of any name beside a class. */
  public static Mistakes beside(Class<?> neighbour, String file) {
    return of(Catalogue.beside(neighbour, file));
  }

  /** The mistakes of a catalogue. */
  public static Mistakes of(Catalogue catalogue) {
    return new Mistakes(catalogue);
  }

  /** The keys of the mistakes that are declared. */
  public Set<String> declared() {
    return Set.copyOf(declared);
  }

  /** Texts of the catalogue that nothing declared has. */
  public Set<String> unused() {
    Set<String> unused = new TreeSet<>(catalogue.keys());
    unused.removeAll(phrases);
    declared.forEach(key -> SENTENCES.forEach(sentence -> unused.remove(key + sentence)));
    return unused;
  }

  /** A mistake that is told of one thing. */
  public interface One<A> {
    /** The mistake, told of it. */
    Mistake with(A a);
  }

  /** A mistake that is told of two things. */
  public interface Two<A, B> {
    /** The mistake, told of them. */
    Mistake with(A a, B b);
  }

  /** A mistake that is told of three things. */
  public interface Three<A, B, C> {
    /** The mistake, told of them. */
    Mistake with(A a, B b, C c);
  }

  /** A mistake that is told of four things. */
  public interface Four<A, B, C, D> {
    /** The mistake, told of them. */
    Mistake with(A a, B b, C c, D d);
  }

  /** A mistake that is told of five things. */
  public interface Five<A, B, C, D, E> {
    /** The mistake, told of them. */
    Mistake with(A a, B b, C c, D d, E e);
  }

  /** A mistake that is told of six things. */
  public interface Six<A, B, C, D, E, F> {
    /** The mistake, told of them. */
    Mistake with(A a, B b, C c, D d, E e, F f);
  }

  /** A phrase that is always the same words. */
  public String phrase(String key) {
    checkPhrase(key, Set.of());
    return catalogue.raw(key);
  }

  /**
   * A phrase that is told of one thing.
   *
   * @param parts its holes, all filled by that thing
   */
  public <T> Phrase<T> phrase(String key, Hole<T> parts) {
    checkPhrase(key, parts.names());
    return new Phrase<>(thing -> catalogue.text(key, parts.filled(thing)));
  }

  private void checkPhrase(String key, Set<String> given) {
    if (!catalogue.has(key) || !phrases.add(key)) {
      throw new TextFault("no text for " + key + ", or it is declared twice");
    }
    checkHoles(key, catalogue.holes(key), given);
  }

  private static void checkHoles(String key, Set<String> wanted, Set<String> given) {
    if (!wanted.equals(given)) {
      throw new TextFault(
          key + " wants " + new TreeSet<>(wanted) + " and is given " + new TreeSet<>(given));
    }
  }

  /** A mistake that is always told in the same words. */
  public Mistake declare(String key) {
    check(key, List.of());
    return told(key, List.of());
  }

  /** A mistake with one hole. */
  public <A> One<A> declare(String key, Hole<A> one) {
    check(key, List.of(one));
    return a -> told(key, List.of(one.filled(a)));
  }

  /** A mistake with two holes. */
  public <A, B> Two<A, B> declare(String key, Hole<A> one, Hole<B> two) {
    check(key, List.of(one, two));
    return (a, b) -> told(key, List.of(one.filled(a), two.filled(b)));
  }

  /** A mistake with three holes. */
  public <A, B, C> Three<A, B, C> declare(String key, Hole<A> one, Hole<B> two, Hole<C> three) {
    check(key, List.of(one, two, three));
    return (a, b, c) -> told(key, List.of(one.filled(a), two.filled(b), three.filled(c)));
  }

  /** A mistake with four holes. */
  public <A, B, C, D> Four<A, B, C, D> declare(
      String key, Hole<A> one, Hole<B> two, Hole<C> three, Hole<D> four) {
    check(key, List.of(one, two, three, four));
    return (a, b, c, d) ->
        told(key, List.of(one.filled(a), two.filled(b), three.filled(c), four.filled(d)));
  }

  /** A mistake with five holes. */
  public <A, B, C, D, E> Five<A, B, C, D, E> declare(
      String key, Hole<A> one, Hole<B> two, Hole<C> three, Hole<D> four, Hole<E> five) {
    check(key, List.of(one, two, three, four, five));
    return (a, b, c, d, e) ->
        told(
            key,
            List.of(one.filled(a), two.filled(b), three.filled(c), four.filled(d), five.filled(e)));
  }

  /** A mistake with six holes. */
  public <A, B, C, D, E, F> Six<A, B, C, D, E, F> declare(
      String key,
      Hole<A> one,
      Hole<B> two,
      Hole<C> three,
      Hole<D> four,
      Hole<E> five,
      Hole<F> six) {
    check(key, List.of(one, two, three, four, five, six));
    return (a, b, c, d, e, f) ->
        told(
            key,
            List.of(
                one.filled(a),
                two.filled(b),
                three.filled(c),
                four.filled(d),
                five.filled(e),
                six.filled(f)));
  }

  private void check(String key, List<Hole<?>> holes) {
    if (!catalogue.has(key + ".what") || !declared.add(key)) {
      throw new TextFault("no text for " + key + ", or it is declared twice");
    }
    Set<String> wanted = new TreeSet<>();
    SENTENCES.forEach(sentence -> wanted.addAll(catalogue.holes(key + sentence)));
    Set<String> given = new TreeSet<>();
    for (Hole<?> hole : holes) {
      for (String name : hole.names()) {
        if (!given.add(name)) {
          throw new TextFault(key + " fills {" + name + "} twice");
        }
      }
    }
    checkHoles(key, wanted, given);
  }

  private Mistake told(String key, List<Map<String, String>> filled) {
    Map<String, String> values = new TreeMap<>();
    filled.forEach(values::putAll);
    return new Mistake(
        key,
        sentence(key + ".what", values),
        sentence(key + ".allowed", values),
        sentence(key + ".maybe", values));
  }

  private String sentence(String text, Map<String, String> values) {
    return catalogue.has(text) ? catalogue.text(text, values) : "";
  }
}
