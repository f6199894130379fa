/**
 * A small language of key tables over YAML: which keys there are, what may stand behind each, and
 * what is wrong with what stands there.
 *
 * <p>In: the bytes of one file and a key table ({@link gradepost.yaml.ObjectSchema}). Out: a value,
 * or every {@link gradepost.yaml.Problem} found, with file, line and column. The tables are data,
 * so that schemas and documentation come from them too. No word of the railway is known here: a
 * table that needs one brings a type of its own ({@link gradepost.yaml.OwnKind}, {@link
 * gradepost.yaml.OwnText}) and what it knows of the world ({@link gradepost.yaml.Surroundings}).
 *
 * <p>Not promised: the whole of YAML. Aliases are few, nesting is not deep, and no type is guessed.
 */
@NullMarked
package gradepost.yaml;

import org.jspecify.annotations.NullMarked;
