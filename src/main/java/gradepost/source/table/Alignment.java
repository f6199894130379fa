package gradepost.source.table;

import java.util.Arrays;
import java.util.List;

/** Which of the present entries each row of a table is: the same ones first, then in order. */
final class Alignment {
  private static final long MOST_CELLS = 25_000_000;

  /** For each row the index of its entry, or −1 for a new one; indices only rise. */
  static int[] of(List<List<String>> present, List<List<String>> rows) {
    int[] partner = new int[rows.size()];
    Arrays.fill(partner, -1);
    int head = 0;
    while (head < present.size()
        && head < rows.size()
        && present.get(head).equals(rows.get(head))) {
      partner[head] = head++;
    }
    int p = present.size();
    int r = rows.size();
    while (p > head && r > head && present.get(p - 1).equals(rows.get(r - 1))) {
      partner[--r] = --p;
    }
    same(present, rows, head, p, r, partner);
    changed(head, p, r, partner);
    return partner;
  }

  /** The longest common subsequence between the head and the tail. */
  private static void same(
      List<List<String>> present, List<List<String>> rows, int head, int p, int r, int[] partner) {
    int n = p - head;
    int m = r - head;
    if ((long) n * m > MOST_CELLS) {
      return;
    }
    int[][] longest = new int[n + 1][m + 1];
    for (int i = n - 1; i >= 0; i--) {
      for (int j = m - 1; j >= 0; j--) {
        longest[i][j] =
            present.get(head + i).equals(rows.get(head + j))
                ? longest[i + 1][j + 1] + 1
                : Math.max(longest[i + 1][j], longest[i][j + 1]);
      }
    }
    int i = 0;
    int j = 0;
    while (i < n && j < m) {
      if (present.get(head + i).equals(rows.get(head + j))) {
        partner[head + j++] = head + i++;
      } else if (longest[i + 1][j] >= longest[i][j + 1]) {
        i++;
      } else {
        j++;
      }
    }
  }

  /** Between two that are the same, rows are taken for entries that were changed, as they come. */
  private static void changed(int head, int p, int r, int[] partner) {
    int entry = head;
    for (int j = head; j < r; j++) {
      if (partner[j] >= 0) {
        entry = partner[j] + 1;
        continue;
      }
      int next = p;
      for (int k = j + 1; k < r; k++) {
        if (partner[k] >= 0) {
          next = partner[k];
          break;
        }
      }
      if (entry < next) {
        partner[j] = entry++;
      }
    }
  }

  private Alignment() {}
}
