// libFuzzer's door: FUZZED_TABLE or FUZZED_JSON says which reader it goes to
// (tests/trust/fuzz/run).
#include <QCoreApplication>
#include <QLocale>

#include "tests/trust/fuzz/fuzzed.h"

extern "C" int LLVMFuzzerInitialize(int* argc, char*** argv) {
    static const QCoreApplication application(*argc, *argv);
    QLocale::setDefault(QLocale::c());
    return 0;
}

extern "C" int LLVMFuzzerTestOneInput(const std::uint8_t* bytes, std::size_t size) {
#ifdef FUZZED_TABLE
    combwright::test::readAnyTable(bytes, size, 256);
#else
    combwright::test::readAnyJson(bytes, size);
#endif
    return 0;
}
