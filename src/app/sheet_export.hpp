// Sheets written as files: all of them or none, saying how far it is, and ending when it is asked to.
#pragma once

#include "app/sheet_source.hpp"

#include <functional>
#include <map>
#include <mutex>
#include <stop_token>
#include <utility>
#include <vector>

namespace gangway::app {

struct ExportFormats {
    bool pdf = true;                            ///< one file a kind, or one under a cover
    bool svg = false, dxf = false, png = false; ///< one file a sheet
    bool xlsx = true;                           ///< the schedules as a workbook, beside the kind "schedule"
    bool any() const { return pdf || svg || dxf || png; }
};

struct ExportOrder {
    std::shared_ptr<const SheetSource> source;
    std::vector<std::string> kinds; ///< their words, in the order of a set
    ExportFormats formats;
    std::filesystem::path folder; ///< made where it is missing
    std::string stem;             ///< of the plan's file: "house"
    double dpi = 150;             ///< of PNG files
    /// What is drawn already, by the kind's word; the others are drawn from the source, and a cover always
    /// is, because its index holds what is written beside it.
    std::map<std::string, std::shared_ptr<const drawing::Drawing>> drawn;
};

/// How far it is. Told on one thread and read on another.
class ExportProgress {
public:
    explicit ExportProgress(std::function<void()> changed) : changed_(std::move(changed)) {}
    void tell(std::string words, std::size_t done, std::size_t of);
    /// What is being done, and how much of all is done, 0 to 1.
    std::pair<std::string, float> now() const;

private:
    std::function<void()> changed_;
    mutable std::mutex mutex_;
    std::string words_;
    std::size_t done_ = 0, of_ = 1;
};

struct Exported {
    std::vector<std::filesystem::path> files; ///< written, in order; empty unless all were
    std::size_t sheets = 0;                   ///< each counted once, whatever its formats
    std::vector<std::string> left_out;        ///< kinds that the house has nothing for, in words
    std::string problem;                      ///< a sentence; empty: none
    bool cancelled = false;
};

/// Draws and writes. Files are written into a folder of their own first and put in place when all are there:
/// what is cancelled, or fails until then, leaves the folder as it was.
[[nodiscard]] Exported exportSheets(const ExportOrder& order, ExportProgress& progress,
                                    const std::stop_token& stop);

} // namespace gangway::app
