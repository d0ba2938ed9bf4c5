// Where a value stands in its file, for messages.
#include "catalogue/json_files.hpp"

#include <catch2/catch.hpp>

using namespace gangway::catalogue::detail;

namespace {

std::size_t byteOf(const std::string& text, TextPlace place) {
    std::size_t start = 0;
    for (std::size_t line = 1; line < place.line; ++line)
        start = text.find('\n', start) + 1;
    return start + place.column - 1;
}

bool beginsWith(const std::string& text, std::size_t byte, const Json& value) {
    if (value.is_number()) return std::stod(text.substr(byte, 40)) == value.get<double>();
    if (value.is_null()) return text[byte] == '[' || text[byte] == '{'; // how flatten() shows empty ones
    return text.compare(byte, value.dump().size(), value.dump()) == 0;
}

} // namespace

TEST_CASE("every value of the shipped files is found where the JSON library says it is") {
    std::vector<std::string> problems;
    std::size_t values = 0;
    for (const char* folder : {"catalogue", "packs"}) {
        const auto files = readJsonFiles(std::string(GANGWAY_ASSETS_DIR) + "/" + folder, folder, problems);
        REQUIRE(files);
        for (const JsonFile& file : *files) {
            const Json flat = file.content.flatten();
            for (const auto& item : flat.items()) {
                ++values;
                const std::size_t byte = byteOf(file.text, placeOf(file.text, item.key()));
                if (!beginsWith(file.text, byte, item.value())) FAIL(file.name << ": " << item.key());
            }
        }
    }
    CHECK(problems.empty());
    CHECK(values > 2000);
}

TEST_CASE("a value is found behind quotes, brackets in texts, nested lists and on one line") {
    const std::string text =
        R"({ "a\"}": "x]},\\", "b" : [ [1, 2],{"c":[]} , -3.5e2,true ],"d/e~":null, "f": {"g": "h"}})";
    const auto found = [&](const std::string& pointer) {
        return text.substr(placeOf(text, pointer).column - 1, 4);
    };
    CHECK(found("/b/0/1") == "2],{");
    CHECK(found("/b/1/c") == "[]} ");
    CHECK(found("/b/2") == "-3.5");
    CHECK(found("/b/3") == "true");
    CHECK(found("/d~1e~0") == "null"); // RFC 6901: ~1 is /, ~0 is ~
    CHECK(found("/f/g") == "\"h\"}");
    CHECK(found("/f/missing") == "{\"g\""); // the last one on the way
    CHECK(found("/b/7") == "[ [1");
    CHECK(found("/b/1/c/0") == "[]} ");
    CHECK(found("") == "{ \"a");
}
