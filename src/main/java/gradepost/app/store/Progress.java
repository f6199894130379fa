package gradepost.app.store;

/** Told how far the work has come; whoever listens decides whether anyone wants to know. */
public interface Progress {
  /** Nobody wants to know. */
  Progress SILENT =
      new Progress() {
        @Override
        public void expect(int papers) {}

        @Override
        public void done(String paper) {}
      };

  /** So many papers will be made. */
  void expect(int papers);

  /** One of them is ready. */
  void done(String paper);
}
