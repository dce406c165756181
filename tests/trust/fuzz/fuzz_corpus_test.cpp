// The inputs that were kept, given to the readers again with every run: each was of its own kind
// when it was found, or broke something once.
#include <gtest/gtest.h>

#include <QDir>
#include <QFile>

#include "tests/trust/campaign.h"
#include "tests/trust/fuzz/fuzzed.h"

namespace combwright {
namespace {

using Reader = void (*)(const std::uint8_t* bytes, std::size_t size);

long readAllOf(const char* kept, Reader reader) {
    const QDir folder(QStringLiteral(COMBWRIGHT_SOURCE_DIR "/tests/trust/fuzz/corpus/") +
                      QLatin1String(kept));
    long read = 0;
    for (const QString& name : folder.entryList(QDir::Files, QDir::Name)) {
        QFile file(folder.filePath(name));
        EXPECT_TRUE(file.open(QIODevice::ReadOnly)) << name.toStdString();
        const QByteArray bytes = file.readAll();
        // So that the one that ends the program is known.
        std::cout << "    " << name.toStdString() << '\r' << std::flush;
        reader(reinterpret_cast<const std::uint8_t*>(bytes.constData()),
               static_cast<std::size_t>(bytes.size()));
        ++read;
    }
    return read;
}

TEST(FuzzCorpus, EveryTableThatWasKeptIsRead) {
    const long read = readAllOf("table", [](const std::uint8_t* bytes, std::size_t size) {
        test::readAnyTable(bytes, size);
    });
    EXPECT_GT(read, 10);
    test::report("tables", read);
}

TEST(FuzzCorpus, EveryJsonThatWasKeptIsRead) {
    const long read = readAllOf("json", &test::readAnyJson);
    EXPECT_GT(read, 10);
    test::report("texts", read);
}

}  // namespace
}  // namespace combwright
