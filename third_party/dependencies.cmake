# Every library from outside, found once; third_party/README.md says why each is here and
# third_party/packages.txt how Debian names it.
find_package(PkgConfig REQUIRED)
find_package(nlohmann_json 3.11 REQUIRED)
find_package(fmt 9 REQUIRED)
find_package(CLI11 REQUIRED)
find_package(glfw3 3.3 REQUIRED)
find_package(glm REQUIRED)
find_package(Freetype REQUIRED)
pkg_check_modules(EPOXY REQUIRED IMPORTED_TARGET epoxy)
pkg_check_modules(EGL REQUIRED IMPORTED_TARGET egl)
pkg_check_modules(CAIRO REQUIRED IMPORTED_TARGET cairo)
pkg_check_modules(CAIRO_FT REQUIRED IMPORTED_TARGET cairo-ft)
pkg_check_modules(QPDF REQUIRED IMPORTED_TARGET libqpdf)
pkg_check_modules(QRENCODE REQUIRED IMPORTED_TARGET libqrencode)
pkg_check_modules(XLSXWRITER REQUIRED IMPORTED_TARGET xlsxwriter)
find_package(embree 3 REQUIRED)
if(GANGWAY_TESTS OR GANGWAY_BENCH)
  pkg_check_modules(FCL REQUIRED IMPORTED_TARGET fcl)
endif()
if(GANGWAY_TESTS)
  pkg_check_modules(DXFLIB REQUIRED IMPORTED_TARGET dxflib)
endif()
pkg_check_modules(IMGUI REQUIRED IMPORTED_TARGET imgui)
find_path(TINYGLTF_INCLUDE_DIR tiny_gltf.h REQUIRED)
find_path(LEMON_INCLUDE_DIR lemon/network_simplex.h REQUIRED)

# tinygltf ships as a header with its implementation inside; meshes/ compiles it in one file.
add_library(third_party_tinygltf INTERFACE)
target_include_directories(third_party_tinygltf SYSTEM INTERFACE ${TINYGLTF_INCLUDE_DIR})

# LEMON's flow solver is templates only; nothing of its library is linked.
add_library(third_party_lemon INTERFACE)
target_include_directories(third_party_lemon SYSTEM INTERFACE ${LEMON_INCLUDE_DIR})
