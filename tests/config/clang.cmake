# cmake -C tests/config/clang.cmake -S . -B build-clang: the second compiler
set(CMAKE_CXX_COMPILER clang++-19 CACHE STRING "")
# std::stable_sort of GCC 12's library calls what the same library marks deprecated.
set(CMAKE_CXX_FLAGS -Wno-deprecated-declarations CACHE STRING "")
