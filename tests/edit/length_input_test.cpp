#include "edit/length_input.hpp"

#include <catch2/catch.hpp>

using gangway::edit::parseLength;

TEST_CASE("a length can be typed as a number, a sum, and in metric or inch units") {
    struct Typed {
        const char* text;
        double mm;
    };
    // Inches by the international inch, 25.4 mm exactly; 5'-6 7/16" is 66 7/16 in = 1687.5125 mm by
    // arithmetic.
    for (const auto& typed : {Typed{"1050", 1050},
                              {"1200+71/2", 1235.5},
                              {"  450 mm ", 450},
                              {"45 cm", 450},
                              {"1.05m", 1050},
                              {"2*71", 142},
                              {"(1200-86)/2", 557},
                              {"-12.5", -12.5},
                              {"1\"", 25.4},
                              {"3'", 914.4},
                              {"5' 6 7/16\"", 1687.5125},
                              {"5'-6 7/16\"", 1687.5125},
                              {"66 7/16\"", 1687.5125},
                              {"7/16\"", 11.1125},
                              {"1m+20cm+3", 1203},
                              {"3'+1\"", 939.8}}) {
        INFO(typed.text);
        const auto value = parseLength(typed.text);
        REQUIRE(value);
        CHECK(*value == Approx(typed.mm).margin(1e-9));
    }
}

TEST_CASE("what is no length is answered in words that name the place") {
    struct Wrong {
        const char* text;
        const char* says;
    };
    for (const auto& wrong : {Wrong{"", "type a length"},
                              {"abc", "'abc'"},
                              {"banana", "can't read 'banana' as a length; type one such as 1050 or 45 cm"},
                              {"12 ell", "'ell'"},
                              {"(3", "breaks off"},
                              {"4/0", "divide by 0"},
                              {"5+", "breaks off"},
                              {"1e400", "'e400'"},
                              {"nan", "'nan'"},
                              {"inf", "'inf'"}}) {
        INFO(wrong.text);
        const auto value = parseLength(wrong.text);
        REQUIRE_FALSE(value);
        INFO(value.error());
        CHECK(value.error().find(wrong.says) != std::string::npos);
    }
    // A thousand brackets are refused, not followed into a full stack.
    CHECK_FALSE(parseLength(std::string(1000, '(')));
    CHECK_FALSE(parseLength(std::string(100000, '-') + "1"));
}
