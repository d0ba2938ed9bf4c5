// Every change to a plan is a command with a name people understand, done through one history that can
// undo and redo it and keeps a journal for recovery.
#pragma once

#include "plan/plan.hpp"

#include <cstdint>
#include <expected>
#include <filesystem>
#include <functional>
#include <string>
#include <string_view>
#include <vector>

namespace gangway::edit {

/// A change: what it is called and what it does to a copy of the plan.
struct Command {
    std::string name;        ///< "Agree K-04"
    std::string merge_key;   ///< commands in a row with one key are one undo step; empty: never merged
    std::function<void(plan::Plan&)> apply;
};

/// The open document: plan, history, whether it differs from the file.
class Document {
public:
    Document() = default;
    explicit Document(plan::Plan plan, std::filesystem::path file = {});

    const plan::Plan& plan() const { return plan_; }
    const std::filesystem::path& file() const { return file_; }
    bool changed() const; ///< differs from what was last saved or opened
    /// Rises with every change of the plan; views redo their work only when it did.
    std::uint64_t version() const { return version_; }

    void run(const Command& command);
    bool canUndo() const;
    bool canRedo() const;
    std::string undoName() const;
    std::string redoName() const;
    void undo();
    void redo();

    /// Saves to `file` (the document's own when empty) and removes the journal.
    [[nodiscard]] std::expected<void, std::string> save(const std::filesystem::path& file = {});

    /// Writes the plan as it is to the journal beside the user's state folder; called after each change.
    [[nodiscard]] std::expected<void, std::string> writeJournal() const;

private:
    struct Step {
        std::string name;
        std::string merge_key;
        plan::Plan before;
    };
    plan::Plan plan_;
    std::filesystem::path file_;
    std::vector<Step> undo_;
    std::vector<Step> redo_;
    std::uint64_t version_ = 1;
    std::uint64_t saved_version_ = 1;
};

/// Journal left by a session that did not end well, for a plan file; empty when there is none.
std::filesystem::path journalFor(const std::filesystem::path& file);
/// Deletes a journal after it was recovered or refused.
void discardJournal(const std::filesystem::path& file);

Command agreePlate(const plan::Plan& plan, const std::string& plate_id, const std::string& by, const std::string& at);
Command queryPlate(const plan::Plan& plan, const std::string& plate_id, const std::string& by, const std::string& at,
                   const std::string& note);
Command setLayerVisibility(const std::string& layer_id, plan::Visibility visibility);
Command movePlate(const plan::Plan& plan, const std::string& plate_id, double u_mm, double v_mm);

} // namespace gangway::edit
