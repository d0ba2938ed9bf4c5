#include "app/panels.hpp"

#include <catch2/catch.hpp>

using namespace gangway::app;

TEST_CASE("a text is broken between words, and what is left out is marked") {
    ImFontAtlas atlas;
    const ImFont& font = *atlas.AddFontDefault();
    REQUIRE(atlas.Build());
    const auto wide = [&font](const std::string& text) {
        return font.CalcTextSizeA(font.FontSize, 1e6F, 0, text.c_str()).x;
    };
    const std::string text = "doorbell transformer behind the coats";
    CHECK(linesWithin(font, text, wide(text), 2) == std::vector<std::string>{text});
    const float width = wide("doorbell transformer ");
    CHECK(linesWithin(font, text, width, 2) ==
          std::vector<std::string>{"doorbell transformer", "behind the coats"});
    const auto cut = linesWithin(font, text, wide("doorbell trans..."), 1);
    CHECK(cut == std::vector<std::string>{"doorbell trans..."});
    // A letter of two bytes is left out whole.
    CHECK(linesWithin(font, "caf\xC3\xA9 caf\xC3\xA9", wide("caf..."), 1) ==
          std::vector<std::string>{"caf..."});
    CHECK(linesWithin(font, "", 10, 2) == std::vector<std::string>{""});
}
