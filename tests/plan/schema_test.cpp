// The JSON schema and the reader must know the same keys, needs and words.
#include "plan/io.hpp"
#include "plan/known_keys.hpp"
#include "plan/text_files.hpp"

#include <catch2/catch.hpp>
#include <nlohmann/json.hpp>

using namespace gangway::plan;
using namespace gangway::plan::testing;
using nlohmann::ordered_json;

namespace {
ordered_json schema() {
    return ordered_json::parse(
        slurp(std::filesystem::path(GANGWAY_ASSETS_DIR) / "schema" / "plan.schema.json"));
}
} // namespace

TEST_CASE("the schema lists exactly the keys that the reader knows, in the order they are written") {
    const ordered_json all = schema();
    for (const auto& [type, keys] : allKnownKeys()) {
        INFO(type);
        const ordered_json& described = type == "plan" ? all : all["$defs"][type];
        std::vector<std::string> in_schema;
        for (const auto& property : described["properties"].items())
            in_schema.push_back(property.key());
        std::vector<std::string> in_reader;
        for (const KnownKey& key : keys)
            in_reader.push_back(key.key);
        CHECK(in_schema == in_reader);
    }
}

TEST_CASE("the schema asks for the keys that the reader asks for") {
    const ordered_json all = schema();
    for (const auto& [type, keys] : allKnownKeys()) {
        INFO(type);
        const ordered_json& described = type == "plan" ? all : all["$defs"][type];
        std::vector<std::string> in_reader;
        for (const KnownKey& key : keys)
            if (key.required) in_reader.push_back(key.key);
        const auto in_schema = described.contains("required")
                                   ? described["required"].get<std::vector<std::string>>()
                                   : std::vector<std::string>{};
        CHECK(in_schema == in_reader);
    }
}

TEST_CASE("the schema allows the words that the reader allows") {
    const ordered_json all = schema();
    for (const auto& [type, keys] : allKnownKeys())
        for (const KnownKey& key : keys) {
            INFO(type << " " << key.key);
            const ordered_json& property = (type == "plan" ? all : all["$defs"][type])["properties"][key.key];
            std::vector<std::string> in_schema;
            if (property.contains("enum"))
                for (const auto& word : property["enum"])
                    if (word != "") in_schema.push_back(word);
            CHECK(in_schema == key.words);
        }
}

TEST_CASE("every key of the schema is explained") {
    const ordered_json all = schema();
    for (const auto& [type, keys] : allKnownKeys())
        for (const KnownKey& key : keys) {
            INFO(type << " " << key.key);
            const ordered_json& property = (type == "plan" ? all : all["$defs"][type])["properties"][key.key];
            CHECK_FALSE(property.value("description", "").empty());
        }
}
