#include "app/theme.hpp"

#include <catch2/catch.hpp>

using namespace gangway::app;

// Expected ratios worked out from WCAG 2.1's formula.
TEST_CASE("contrast follows WCAG 2.1") {
    CHECK(contrast(0x0072B2, 0xFFFFFF) == Approx(5.185).margin(0.005));
    CHECK(contrast(0xD55E00, 0xFFFFFF) == Approx(3.867).margin(0.005));
    CHECK(contrast(0x767676, 0xFFFFFF) == Approx(4.542).margin(0.005));
    CHECK(contrast(0xFFFFFF, 0x000000) == Approx(21));
}

TEST_CASE("every text colour of both themes has at least 4.5 to 1 on what it is written on") {
    for (const Tokens& t : {kLight, kDark}) {
        for (const unsigned text : {t.ink, t.soft_ink, t.accent, t.agreed, t.query, t.fault}) {
            CHECK(contrast(text, t.paper) >= 4.5);
            CHECK(contrast(text, t.raised) >= 4.5);
        }
        for (const unsigned ground : {t.accent, t.agreed, t.query})
            CHECK(contrast(t.on_accent, ground) >= 4.5);
    }
}
