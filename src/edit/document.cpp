#include "edit/edit.hpp"

#include "plan/io.hpp"

#include <utility>

namespace gangway::edit {

namespace {
constexpr std::size_t kRecentVersions = 256; ///< a view that lags further behind starts anew
}

Document::Document(plan::Plan plan, std::filesystem::path file)
    : plan_(std::move(plan)), file_(std::move(file)) {}

Document Document::recovered(plan::Plan plan, std::filesystem::path file) {
    Document document(std::move(plan), std::move(file));
    document.state_ = document.newest_state_ = document.saved_state_ + 1;
    return document;
}

bool Document::changed() const {
    return state_ != saved_state_;
}

void Document::run(const Command& command) {
    const bool merges =
        stepOpen() && !command.merge_key.empty() && undo_.back().merge_key == command.merge_key;
    if (!merges) undo_.push_back({command.name, command.merge_key, {}, {}, state_, state_});
    Step& step = undo_.back();
    Draft draft(plan_, step.delta);
    command.apply(draft);
    settle(draft);
    if (step.delta.empty()) {
        undo_.pop_back();
        return;
    }
    step.name = command.describe ? command.describe(plan_, step.delta) : command.name;
    step.touched.add(draft.touched());
    step.after = state_ = ++newest_state_;
    redo_.clear();
    may_merge_ = true;
    touch(draft.touched());
}

bool Document::stepOpen() const {
    return may_merge_ && !undo_.empty();
}

void Document::closeStep() {
    may_merge_ = false;
}

bool Document::canUndo() const {
    return !undo_.empty();
}
bool Document::canRedo() const {
    return !redo_.empty();
}
std::string Document::undoName() const {
    return undo_.empty() ? std::string() : undo_.back().name;
}
std::string Document::redoName() const {
    return redo_.empty() ? std::string() : redo_.back().name;
}

void Document::undo() {
    if (undo_.empty()) return;
    Step& step = redo_.emplace_back(std::move(undo_.back()));
    undo_.pop_back();
    step.delta.undo(plan_);
    state_ = step.before;
    closeStep();
    touch(step.touched);
}

void Document::redo() {
    if (redo_.empty()) return;
    Step& step = undo_.emplace_back(std::move(redo_.back()));
    redo_.pop_back();
    step.delta.redo(plan_);
    state_ = step.after;
    closeStep();
    touch(step.touched);
}

void Document::touch(const Touched& touched) {
    ++version_;
    recent_.push_back(touched);
    if (recent_.size() > kRecentVersions) recent_.pop_front();
}

std::optional<Touched> Document::touchedSince(std::uint64_t version) const {
    if (version > version_ || version_ - version > recent_.size()) return std::nullopt;
    Touched all;
    for (std::size_t i = recent_.size() - (version_ - version); i < recent_.size(); ++i)
        all.add(recent_[i]);
    return all;
}

std::expected<void, std::string> Document::save(const std::filesystem::path& file) {
    const std::filesystem::path target = file.empty() ? file_ : file;
    if (target.empty()) return std::unexpected("the plan has no file yet; choose a name to save it under");
    if (auto written = plan::writeFile(plan_, target); !written) return written;
    discardJournal(file_);
    discardJournal(target);
    file_ = target;
    saved_state_ = state_;
    closeStep();
    return {};
}

std::expected<void, std::string> Document::writeJournal() const {
    if (!changed()) {
        discardJournal(file_);
        return {};
    }
    const auto journal = journalPath(file_);
    if (!journal) return std::unexpected(journal.error());
    std::error_code failure;
    std::filesystem::create_directories(journal->parent_path(), failure);
    if (failure)
        return std::unexpected("the folder for unsaved work, '" + journal->parent_path().string() +
                               "', can't be made: " + failure.message());
    return plan::writeFile(plan_, *journal);
}

} // namespace gangway::edit
