// The bench below the board: the box under the cursor frame by frame, a line to type its counts
// into and read them back, what each letter and digit stands for, and what the evening came to.
#pragma once

#include <QBoxLayout>
#include <QLabel>
#include <QLineEdit>
#include <functional>
#include <optional>
#include <vector>

#include "ui/shell/session.h"
#include "ui/storeroom/bench_row.h"

namespace combwright {

/// The box on the bench in words and drawings.
struct BenchView {
    QString mark;
    QString head;   ///< "both sides; 8 found of 9"
    QString alarm;  ///< what must not be missed, said in the warning tone: a hold, a change since
    std::vector<BenchRowFrame> frames;
    std::optional<std::size_t> current;
    QString facts;  ///< "web yes · comb of '24 × 3 · scraped off 70 g"
    QString why;    ///< why the verdict of the current frame follows
};

class BenchPanel : public QWidget {
    Q_OBJECT

  public:
    explicit BenchPanel(Session& session, QWidget* parent = nullptr);
    /// Nothing: no box is under the cursor.
    void show(const std::optional<BenchView>& view);
    /// `gone`: where each part of it has gone, for whoever asks.
    void showEvening(const QString& sum, const QString& gone);
    /// Reads a line back in words as it is typed; `bad` where it cannot be kept.
    struct Echo {
        QString words;
        bool bad = false;
    };
    void readBackBy(std::function<Echo(const QString&)> reader) { m_reader = std::move(reader); }
    /// The cursor into the line, which begins with that text.
    void beginLine(const QString& text);
    /// The same to correct a look that was kept: `says` tells which, `why` is asked for below it.
    void beginCorrection(const QString& text, const QString& why, const QString& says);
    bool correcting() const { return !m_correct->isHidden(); }
    QLineEdit& why() { return *m_why; }
    void clearLine();
    bool typing() const { return m_line->hasFocus(); }
    QLineEdit& line() { return *m_line; }

  Q_SIGNALS:
    void lineEntered(const QString& text);
    void lineCorrected(const QString& text, const QString& why);
    void lineLeft();  ///< given up by Escape
    void frameClicked(int frame);

  protected:
    bool eventFilter(QObject* watched, QEvent* event) override;

  private:
    void readBack();
    void restyle();

    Session& m_session;
    QLabel* m_head;
    QLabel* m_alarm;
    BenchRow* m_row;
    QLabel* m_facts;
    QLabel* m_because;
    QLabel* m_correct;
    QLineEdit* m_line;
    QLineEdit* m_why;
    QLabel* m_echo;
    QLabel* m_letters;
    QLabel* m_evening;
    std::function<Echo(const QString&)> m_reader;
};

}  // namespace combwright
