#include "edit/edit.hpp"

#include "plan/io.hpp"

#include <utility>

namespace gangway::edit {

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
        may_merge_ && !command.merge_key.empty() && undo_.back().merge_key == command.merge_key;
    if (merges)
        undo_.back().name = command.name;
    else
        undo_.push_back({command.name, command.merge_key, plan_, state_});
    if (undo_.size() > kUndoSteps) undo_.erase(undo_.begin());
    redo_.clear();
    command.apply(plan_);
    state_ = ++newest_state_;
    ++version_;
    may_merge_ = true;
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
    takeStep(undo_, redo_);
}
void Document::redo() {
    takeStep(redo_, undo_);
}

void Document::takeStep(std::vector<Step>& from, std::vector<Step>& to) {
    if (from.empty()) return;
    Step step = std::move(from.back());
    from.pop_back();
    std::swap(step.plan, plan_);
    std::swap(step.state, state_);
    to.push_back(std::move(step));
    ++version_;
    closeStep();
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
