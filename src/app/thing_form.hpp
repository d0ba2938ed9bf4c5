// The boxes and choices that the cards of things are made of. What a card asks for is a command made for the
// plan as it is shown; it is run when the whole card is drawn, so that nothing changes under a card's feet.
#pragma once

#include "app/furnish.hpp"
#include "edit/edit.hpp"

#include <expected>
#include <functional>
#include <string>
#include <vector>

namespace gangway::app::form {

using Refusable = edit::Refusable;

/// A box to type into with its name above. Enter or leaving it asks for what `apply` makes of the text; a
/// text that can't be used stays, with the reason below.
struct Box {
    std::string key;   ///< "width": the place is "thing:width"
    std::string label; ///< "Width"
    std::string shown; ///< as the plan has it
    std::function<Refusable(const std::string& text)> apply;
    std::string help = {}; ///< when the pointer rests on it
};

/// A length in the house's units; `apply` gets mm.
Box lengthBox(const State& state, const std::string& key, const std::string& label, double value_mm,
              std::function<Refusable(double value_mm)> apply, const std::string& help = {});
/// A plain number: degrees, watts, a count.
Box numberBox(const std::string& key, const std::string& label, double value,
              std::function<Refusable(double value)> apply, const std::string& help = {});
Box textBox(const std::string& key, const std::string& label, const std::string& value,
            std::function<Refusable(const std::string& text)> apply, const std::string& help = {});

/// Boxes side by side in `columns` of one width (0: as many as there are boxes).
void boxes(State& state, const std::vector<Box>& row, std::size_t columns = 0);

/// Small words over what follows.
void caption(const State& state, const std::string& words);
void note(const State& state, const std::string& words);

/// One of several words, side by side; the place is "thing:key:word".
void choice(State& state, const std::string& key, const std::string& label,
            const std::vector<std::string>& words, std::size_t chosen,
            const std::function<Refusable(std::size_t)>& apply);
/// The same as a list that opens.
void list(State& state, const std::string& key, const std::string& label,
          const std::vector<std::string>& words, std::size_t chosen,
          const std::function<Refusable(std::size_t)>& apply);
/// Paint chips and "#RRGGBB"; empty is "as usual".
void colourRow(State& state, const std::string& key, const std::string& label, const std::string& value,
               const std::function<Refusable(const std::string&)>& apply);

/// A button that is one of several to choose from; `width` 0: as wide as its words.
bool chooseButton(const State& state, const char* words, bool chosen, float width = 0);
/// A button of the card, `width` pixels wide.
bool button(State& state, const std::string& key, const char* words, float width);
/// The removing button and what goes with the thing.
void removeButton(State& state, const Refusable& removal);

/// Takes a command to be run after the card, or keeps the reason why not below `key`.
void ask(State& state, const std::string& key, const Refusable& command,
         std::function<void(State&)> then = {});
void mistake(State& state, const std::string& key, const std::string& label = {});

} // namespace gangway::app::form
