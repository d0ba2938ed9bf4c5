// Findings as SARIF 2.1.0 (OASIS Standard, 27 March 2020), for tools that review changes of files.
#pragma once

#include "plan/finding.hpp"

#include <filesystem>
#include <string>
#include <vector>

namespace gangway::cli {

/// One run with every rule and a result for each finding, at the line of its first object in the plan file.
/// `scope`: what was checked and the cautions, as a notification of the run.
std::string sarif(const std::filesystem::path& plan_file, const std::vector<plan::Finding>& findings,
                  const std::string& scope);

} // namespace gangway::cli
