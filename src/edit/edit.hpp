// Every change to a plan is a command with a name people understand, done through one history that can
// undo and redo it and keeps a journal for recovery.
#pragma once

#include "edit/draft.hpp"
#include "plan/plan.hpp"

#include <cstddef>
#include <cstdint>
#include <deque>
#include <expected>
#include <filesystem>
#include <functional>
#include <optional>
#include <string>
#include <string_view>
#include <vector>

namespace gangway::edit {

/// A change: what it is called and what it does to the plan.
struct Command {
    std::string name;      ///< "Agree K-04"
    std::string merge_key; ///< commands in a row with one key are one undo step; empty: never merged
    std::function<void(Draft&)> apply;
    /// Names the whole step after it was done, when that depends on where the step began ("Move K-04 by 71
    /// mm" after a long drag). Not set: `name`.
    std::function<std::string(const plan::Plan& after, const Delta& step)> describe = {};
};

/// Brings a changed plan back in order: plates follow what their distances are kept from, nothing refers to
/// what was removed, nothing on a wall lies past its ends. Every command ends with it.
void settle(Draft& draft);

/// The open document: plan, history, whether it differs from the file.
class Document {
public:
    Document() = default;
    explicit Document(plan::Plan plan, std::filesystem::path file = {});

    const plan::Plan& plan() const { return plan_; }
    const std::filesystem::path& file() const { return file_; }
    /// A document from a journal: its plan is what was lost, its file does not hold it yet.
    static Document recovered(plan::Plan plan, std::filesystem::path file);

    /// Differs from what was last saved or opened; false again when undo or redo leads back to that.
    bool changed() const;
    /// Rises with every change of the plan; views redo their work only when it did.
    std::uint64_t version() const { return version_; }

    /// Applies a command and settles the plan. It becomes one undo step with the one before when both have
    /// the same merge key and nothing came between them: no undo, no redo, no save, no closeStep(). A command
    /// that touches nothing leaves no step. Undo is unlimited; its cost is what the step touched.
    void run(const Command& command);
    /// True between the first of a run of merging commands and what ends the run.
    bool stepOpen() const;
    /// Ends the run of commands that merge, as when the mouse button of a drag is let go.
    void closeStep();
    bool canUndo() const;
    bool canRedo() const;
    std::string undoName() const; ///< of the step that undo would take back; empty when there is none
    std::string redoName() const;
    void undo();
    void redo();

    /// What was touched since a version; nullopt when that is too long ago to tell.
    std::optional<Touched> touchedSince(std::uint64_t version) const;

    /// Saves to `file` (the document's own when empty), which becomes the document's own, and removes the
    /// journal. On failure nothing changes and the message says what to do.
    [[nodiscard]] std::expected<void, std::string> save(const std::filesystem::path& file = {});

    /// Writes the plan as it is to the journal in the user's state folder ($XDG_STATE_HOME, else
    /// ~/.local/state: XDG Base Directory Specification 0.8), or removes the journal when nothing is
    /// unsaved; called after each change. Atomic, so that a crash leaves the journal before.
    [[nodiscard]] std::expected<void, std::string> writeJournal() const;

private:
    struct Step {
        std::string name;
        std::string merge_key;
        Delta delta;
        Touched touched;
        std::uint64_t before = 0; ///< number of the content before the step, and after it
        std::uint64_t after = 0;
    };
    void touch(const Touched& touched);

    plan::Plan plan_;
    std::filesystem::path file_;
    std::vector<Step> undo_;
    std::vector<Step> redo_;
    std::uint64_t version_ = 1;
    // Each content the plan has had carries a number; undo brings the number back with the content.
    std::uint64_t state_ = 1;
    std::uint64_t newest_state_ = 1;
    std::uint64_t saved_state_ = 1;
    bool may_merge_ = false;
    std::deque<Touched> recent_; ///< of the newest versions, the newest last
};

/// Where the journal of a plan file is or would be: gangway/journal/<name>-<hash of its absolute path>
/// in the user's state folder. The error says which variable is missing.
std::expected<std::filesystem::path, std::string> journalPath(const std::filesystem::path& file);
/// Journal left by a session that did not end well, for a plan file: one that can be read and holds
/// another plan than the file does. Empty when there is none. An empty `file` means a plan never saved.
std::filesystem::path journalFor(const std::filesystem::path& file);
/// Deletes a journal after it was recovered or refused.
void discardJournal(const std::filesystem::path& file);

/// Answers take their fingerprint from the plan they are applied to. `plate_id` may be of no plate: the
/// command then changes nothing. `at` is ISO 8601 UTC.
Command agreePlate(const plan::Plan& plan, const std::string& plate_id, const std::string& by,
                   const std::string& at);
Command queryPlate(const plan::Plan& plan, const std::string& plate_id, const std::string& by,
                   const std::string& at, const std::string& note);
/// "Show", "Ghost" or "Hide layer 'furniture'"; a layer the plan lacks is added with its id as its name.
Command setLayerVisibility(const std::string& layer_id, plan::Visibility visibility);

} // namespace gangway::edit
