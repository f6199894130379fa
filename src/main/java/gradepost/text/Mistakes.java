package gradepost.text;

import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.TreeMap;
import java.util.TreeSet;

/**
 * A catalogue of mistakes. Each has a key, and under it the sentences {@code .what} was found,
 * {@code .allowed} and {@code .maybe}, of which the last two may be missing. Each is declared once,
 * with the holes that it has: what fills them is then checked by the compiler.
 */
public final class Mistakes {
  /** The file that lies beside the class which declares them. */
  public static final String FILE = "mistakes.properties";

  private static final List<String> SENTENCES = List.of(".what", ".allowed", ".maybe");

  private final Catalogue catalogue;
  private final Set<String> declared = new TreeSet<>();

  private Mistakes(Catalogue catalogue) {
    this.catalogue = catalogue;
  }

  /** The mistakes of the file {@value #FILE} beside a class. */
  public static Mistakes beside(Class<?> neighbour) {
    return of(Catalogue.beside(neighbour, FILE));
  }

  /** The mistakes of a catalogue. */
  public static Mistakes of(Catalogue catalogue) {
    return new Mistakes(catalogue);
  }

  /** Texts of the catalogue that no declared mistake has. */
  public Set<String> unused() {
    Set<String> unused = new TreeSet<>(catalogue.keys());
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

  private void check(String key, List<Hole<?>> holes) {
    Set<String> wanted = new TreeSet<>();
    SENTENCES.forEach(sentence -> wanted.addAll(catalogue.holes(key + sentence)));
    Map<String, Hole<?>> given = new TreeMap<>();
    holes.forEach(hole -> given.put(hole.name(), hole));
    if (!catalogue.has(key + ".what") || !declared.add(key)) {
      throw new TextFault("no text for " + key + ", or it is declared twice");
    }
    if (!wanted.equals(given.keySet()) || given.size() < holes.size()) {
      throw new TextFault(key + " wants " + wanted + " and is given " + given.keySet());
    }
  }

  private Mistake told(String key, List<Map.Entry<String, String>> filled) {
    Map<String, String> values = new TreeMap<>();
    filled.forEach(each -> values.put(each.getKey(), each.getValue()));
    return new Mistake(
        sentence(key + ".what", values),
        sentence(key + ".allowed", values),
        sentence(key + ".maybe", values));
  }

  private String sentence(String text, Map<String, String> values) {
    return catalogue.has(text) ? catalogue.text(text, values) : "";
  }
}
