// Where the program's own files are: assets and shaders, beside the build or installed.
#pragma once

#include <filesystem>

namespace gangway::plan {

/// assets/ of the source tree this was built from, or $GANGWAY_ASSETS when set.
std::filesystem::path assetsFolder();
/// shaders/ of the source tree, or $GANGWAY_SHADERS when set.
std::filesystem::path shadersFolder();

} // namespace gangway::plan
