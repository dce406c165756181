#include "tests/support/ui_program.h"

int main(int argc, char** argv) {
    const combwright::test::UiProgram program(argc, argv);
    return RUN_ALL_TESTS();
}
