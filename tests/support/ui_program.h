// What a test program with widgets sets up before its first test: no display, no folder of the
// person's own, and one way of writing numbers.
#pragma once

#include <gtest/gtest.h>

#include <QApplication>
#include <QLocale>
#include <QTemporaryDir>
#include <memory>

namespace combwright::test {

class UiProgram {
  public:
    UiProgram(int& argc, char** argv) {
        testing::InitGoogleTest(&argc, argv);
        // Test discovery runs this program at build time without the environment of the test run.
        if (qEnvironmentVariableIsEmpty("QT_QPA_PLATFORM")) qputenv("QT_QPA_PLATFORM", "offscreen");
        if (qEnvironmentVariableIsEmpty("QT_LOGGING_RULES"))
            qputenv("QT_LOGGING_RULES", "qt.qpa.*=false");
        // What a person's own folders hold is theirs: a test neither reads nor changes it.
        for (const char* folder : {"XDG_CONFIG_HOME", "XDG_STATE_HOME", "XDG_CACHE_HOME"})
            qputenv(folder, m_home.filePath(QLatin1String(folder)).toLocal8Bit());
        QApplication::setAttribute(Qt::AA_DontUseNativeDialogs);
        m_application = std::make_unique<QApplication>(argc, argv);
        QLocale::setDefault(QLocale::c());
    }

  private:
    QTemporaryDir m_home;
    std::unique_ptr<QApplication> m_application;
};

}  // namespace combwright::test
