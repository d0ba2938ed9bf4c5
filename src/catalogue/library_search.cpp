#include "catalogue/library.hpp"

#include <algorithm>
#include <cctype>
#include <sstream>

namespace gangway::catalogue {
namespace {

std::string lower(const std::string& text) {
    std::string small;
    for (const char letter : text)
        small += static_cast<char>(std::tolower(static_cast<unsigned char>(letter)));
    return small;
}

std::vector<std::string> wordsOf(const std::string& text) {
    std::istringstream stream(lower(text));
    std::vector<std::string> words;
    for (std::string word; stream >> word;)
        words.push_back(word);
    return words;
}

/// 0 when the word does not occur, 1 in the middle of a word, 2 at a word's start.
int found(const std::string& text, const std::string& word) {
    int best = 0;
    for (std::size_t at = text.find(word); at != std::string::npos; at = text.find(word, at + 1)) {
        const bool starts = at == 0 || std::isalnum(static_cast<unsigned char>(text[at - 1])) == 0;
        best = std::max(best, starts ? 2 : 1);
    }
    return best;
}

/// How well a word is met: 6, 5 in the name; 4, 3 in the category; 2, 1 elsewhere; 0 nowhere.
int rank(const plan::LibraryPlate& plate, const std::string& word) {
    if (const int in_name = found(lower(plate.name), word)) return 4 + in_name;
    if (const int in_category = found(lower(plate.category), word)) return 2 + in_category;
    std::string rest = plate.format + " " + plate.note;
    for (const plan::Module& module : plate.modules)
        rest += " " + module.type + " " + module.label;
    return found(lower(rest), word);
}

/// Sum over the words; 0 when one of them is not met.
int rankOfAll(const plan::LibraryPlate& plate, const std::vector<std::string>& words) {
    int sum = 1;
    for (const std::string& word : words) {
        const int points = rank(plate, word);
        if (points == 0) return 0;
        sum += points;
    }
    return sum;
}

} // namespace

std::vector<const plan::LibraryPlate*> search(const Library& library, const std::string& text,
                                              const std::string& category) {
    const std::vector<std::string> words = wordsOf(text);
    std::vector<std::pair<int, const plan::LibraryPlate*>> hits;
    for (const plan::LibraryPlate& plate : library.plates) {
        if (!category.empty() && plate.category != category) continue;
        if (const int points = rankOfAll(plate, words)) hits.emplace_back(points, &plate);
    }
    std::ranges::stable_sort(hits, [](const auto& a, const auto& b) {
        return a.first != b.first ? a.first > b.first : lower(a.second->name) < lower(b.second->name);
    });
    std::vector<const plan::LibraryPlate*> plates;
    for (const auto& [points, plate] : hits)
        plates.push_back(plate);
    return plates;
}

} // namespace gangway::catalogue
