# cmake -C tests/config/clang.cmake -S . -B build-clang: the second compiler
set(CMAKE_CXX_COMPILER clang++-19 CACHE STRING "")
