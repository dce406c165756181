// What stands on every page of a file that is no season to go on with: a what-if, or the season as
// it stood on a day. It belongs to what is open, so it is set where a file is opened, and each page
// takes it up when it is made.
#pragma once

#include <QString>

namespace combwright {

/// Empty for a season as it is. Read and set in the window's own thread.
const QString& paperMark();
void setPaperMark(const QString& mark);

/// Sets the mark for as long as it lives; for a command and for tests.
class PaperMarkWhile {
  public:
    explicit PaperMarkWhile(const QString& mark) : m_before(paperMark()) { setPaperMark(mark); }
    ~PaperMarkWhile() { setPaperMark(m_before); }
    PaperMarkWhile(const PaperMarkWhile&) = delete;
    PaperMarkWhile& operator=(const PaperMarkWhile&) = delete;

  private:
    QString m_before;
};

}  // namespace combwright
