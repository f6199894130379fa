package gradepost.app.making;

import gradepost.app.issue.ArchivedInputs.Because;
import gradepost.app.issue.LastIssue;
import gradepost.app.store.Answer;
import gradepost.source.pack.PackFile;
import java.nio.file.Path;

/**
 * An issue that is to be made.
 *
 * @param file of the pack, for messages
 * @param now the pack as it is to be issued
 * @param last the issue that it is compared with
 * @param told what is told of it so far
 */
public record Due(Path file, PackFile now, LastIssue last, Because because, Answer told) {}
