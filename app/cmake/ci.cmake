# What tests/run builds: fast to compile; core/trade is optimised by its own list file.
# cmake -C app/cmake/ci.cmake -B build/ci -G Ninja
set(CMAKE_BUILD_TYPE "" CACHE STRING "")
set(CMAKE_CXX_FLAGS "-O0 -g1" CACHE STRING "")
set(CMAKE_UNITY_BUILD ON CACHE BOOL "")
set(CMAKE_UNITY_BUILD_BATCH_SIZE 16 CACHE STRING "")
find_program(COMBWRIGHT_CCACHE ccache)
if(COMBWRIGHT_CCACHE)
    set(CMAKE_CXX_COMPILER_LAUNCHER ${COMBWRIGHT_CCACHE} CACHE STRING "")
    set(CMAKE_C_COMPILER_LAUNCHER ${COMBWRIGHT_CCACHE} CACHE STRING "")
endif()
