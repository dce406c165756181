// Which functions of the tree hand a text to the translator. Most files have one of their own
// (askWax("…") is translate("questions", "…")), so that a sentence stands in the code with as
// little around it as can be; lupdate follows no function, so the functions are found here and the
// sentences are written out for it: askWax(QT_TRANSLATE_NOOP("questions", "…")).
#pragma once

#include <QHash>
#include <QList>
#include <QString>
#include <QStringList>

namespace combwright::words {

struct TreeText {
    QString path;  ///< below the tree: "core/words/pad_line.cpp"
    QString text;
};

/// One argument of a function that ends in the translator.
struct SaidArgument {
    int argument = 0;  ///< from 0
    QString context;
    bool counted = false;  ///< goes with a number: needs its plurals
};

class SaidThrough {
  public:
    /// Finds the functions in all files, also those that hand on to one found before.
    explicit SaidThrough(const QList<TreeText>& files);

    /// The file with a QT_TRANSLATE_NOOP around each literal that is said through one of them, or
    /// stands in a table below a comment "// said: faults" that names its context (for layers that
    /// know no translator), or in the words of a choice.
    [[nodiscard]] QString laidOut(const TreeText& file) const;
    /// Calls with neither a literal nor a marked text in them: "core/x.cpp: askWax(name)". Where
    /// those texts come from is to be marked by hand.
    [[nodiscard]] QStringList handedOn(const TreeText& file) const;

  private:
    using SayingFunctions = QHash<QString, QList<SaidArgument>>;

    [[nodiscard]] const QList<SaidArgument>* find(const QString& path, const QString& name) const;
    bool learn(const TreeText& file, const QStringList& declared);

    QHash<QString, SayingFunctions> m_ofFile;
    SayingFunctions m_ofHeaders;
};

}  // namespace combwright::words
